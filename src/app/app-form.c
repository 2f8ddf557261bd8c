/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-form.h"

#include "app-access.h"
#include "app-dialog.h"

AdwPreferencesGroup *
tm_form_group (GtkBox *into, const char *title, const char *description)
{
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());

  adw_preferences_group_set_title (group, title);
  if (description != NULL)
    adw_preferences_group_set_description (group, description);
  gtk_box_append (into, GTK_WIDGET (group));
  return group;
}

AdwEntryRow *
tm_form_entry (AdwPreferencesGroup *group, const char *title)
{
  AdwEntryRow *row = tm_access_entry_row_new (title);

  adw_preferences_group_add (group, GTK_WIDGET (row));
  return row;
}

AdwEntryRow *
tm_form_plain_entry (AdwPreferencesGroup *group, const char *title)
{
  AdwEntryRow *row = tm_form_entry (group, "");

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  tm_name_widget (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (row))), title);
  return row;
}

AdwComboRow *
tm_form_choice (AdwPreferencesGroup *group, const char *title, const char *const *words)
{
  AdwComboRow *row = tm_access_combo_row_new (title);

  tm_form_set_words (row, words, 0);
  adw_preferences_group_add (group, GTK_WIDGET (row));
  return row;
}

char *
tm_form_text (AdwEntryRow *row)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (row))));
}

void
tm_form_set_text (AdwEntryRow *row, const char *text)
{
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (row)), text))
    gtk_editable_set_text (GTK_EDITABLE (row), text);
}

guint
tm_form_chosen (AdwComboRow *row)
{
  return adw_combo_row_get_selected (row);
}

void
tm_form_set_words (AdwComboRow *row, const char *const *words, guint chosen)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (words);

  adw_combo_row_set_model (row, G_LIST_MODEL (list));
  adw_combo_row_set_selected (row, chosen);
}

void
tm_form_mark_wrong (AdwEntryRow *row, gboolean wrong)
{
  if (wrong)
    {
      gtk_widget_add_css_class (GTK_WIDGET (row), "error");
      gtk_widget_grab_focus (GTK_WIDGET (row));
    }
  else
    gtk_widget_remove_css_class (GTK_WIDGET (row), "error");
}

gboolean
tm_form_refuse (AdwEntryRow *row, char **problem, char *line)
{
  tm_form_mark_wrong (row, TRUE);
  g_free (*problem);
  *problem = line;
  return FALSE;
}

static gboolean
focus_new_cb (gpointer data)
{
  GWeakRef *weak = data;
  g_autoptr (GtkWidget) widget = g_weak_ref_get (weak);

  if (widget != NULL && gtk_widget_get_mapped (widget))
    gtk_widget_grab_focus (widget);
  return G_SOURCE_REMOVE;
}

static void
free_weak (gpointer data)
{
  g_weak_ref_clear (data);
  g_free (data);
}

/* Low: after what is laid out and drawn. */
void
tm_form_focus_new (GtkWidget *widget)
{
  GWeakRef *weak = g_new (GWeakRef, 1);

  g_weak_ref_init (weak, widget);
  g_idle_add_full (G_PRIORITY_LOW, focus_new_cb, weak, free_weak);
}
