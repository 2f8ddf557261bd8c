/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-form.h"

#include "app-access.h"

/* Pixels that stay free above and below a row that is scrolled to. */
#define ROOM_AROUND 12

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

static gboolean
keep_in_view_cb (GtkWidget *row, GdkFrameClock *clock, gpointer data)
{
  guint *frames_left = data;
  GtkWidget *scroller = gtk_widget_get_ancestor (row, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment;
  graphene_rect_t bounds;
  double top;

  /* The frame lays its widgets out after its callbacks. */
  if ((*frames_left)-- > 0)
    return G_SOURCE_CONTINUE;
  if (scroller == NULL
      || !gtk_widget_compute_bounds (row, gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (scroller)),
                                     &bounds))
    return G_SOURCE_REMOVE;
  adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  top = gtk_adjustment_get_value (adjustment) + (double)bounds.origin.y;
  gtk_adjustment_clamp_page (adjustment, top - ROOM_AROUND, top + (double)bounds.size.height + ROOM_AROUND);
  return G_SOURCE_REMOVE;
}

void
tm_form_keep_in_view (GtkWidget *row)
{
  guint *frames_left = g_new (guint, 1);

  *frames_left = 1;
  gtk_widget_add_tick_callback (row, keep_in_view_cb, frames_left, g_free);
}

gboolean
tm_form_refuse (AdwEntryRow *row, char **problem, char *line)
{
  tm_form_mark_wrong (row, TRUE);
  g_free (*problem);
  *problem = line;
  return FALSE;
}
