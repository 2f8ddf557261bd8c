/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-live-read.h"

#include "app-dialog.h"
#include "app-form.h"

gboolean
tm_live_read (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  TmReadStatus status = tm_quantity_read (text, unit, out);
  gboolean wrong = status != TM_READ_OK && status != TM_READ_EMPTY;

  if (status != TM_READ_OK)
    *out = TM_QUANTITY_NONE;
  if (wrong)
    gtk_widget_add_css_class (GTK_WIDGET (row), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (row), "error");
  if (wrong && *problem == NULL)
    *problem = g_strdup_printf ("%s: “%s”: %s", adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)),
                                text, g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status)));
  return !wrong;
}

static GtkLabel *
add_line (GtkBox *into, const char *css_class)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (into, label);
  return GTK_LABEL (label);
}

void
tm_live_answer_build (TmLiveAnswer *answer, GtkBox *into, const char *name)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 4,
                                 "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  gtk_widget_add_css_class (box, "tm-answer");
  tm_name_widget (box, name);
  answer->large = add_line (GTK_BOX (box), "tm-answer-large");
  answer->under = add_line (GTK_BOX (box), "tm-answer-under");
  gtk_box_append (into, box);
}

static void
set_line (GtkLabel *line, const char *text)
{
  gtk_label_set_text (line, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (line), text != NULL && *text != '\0');
}

void
tm_live_answer_set (TmLiveAnswer *answer, const char *large, const char *under)
{
  set_line (answer->large, large);
  set_line (answer->under, under);
}
