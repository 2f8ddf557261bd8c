/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-section.h"

#include "app-access.h"
#include "app-dialog.h"
#include "app-form.h"

void
tm_gauge_section_build (TmGaugeSection *section, GtkBox *into, const char *title, const char *description)
{
  section->group = section->list = tm_form_group (into, title, description);
  section->rows = g_ptr_array_new ();
}

static void
next_cb (GtkWidget *second)
{
  gtk_widget_grab_focus (second);
}

void
tm_gauge_section_add_fields (TmGaugeSection *section, const char *first, const char *second,
                             GCallback changed_cb, GCallback add_cb, gpointer data)
{
  GtkWidget *box = gtk_widget_get_parent (GTK_WIDGET (section->group));

  section->first = tm_form_entry (section->group, first);
  section->second = tm_form_entry (section->group, second);
  g_signal_connect_swapped (section->first, "entry-activated", G_CALLBACK (next_cb), section->second);
  g_signal_connect_swapped (section->second, "entry-activated", add_cb, data);
  g_signal_connect_swapped (section->first, "changed", changed_cb, data);
  g_signal_connect_swapped (section->second, "changed", changed_cb, data);
  section->says
      = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (section->says, TRUE);
  gtk_label_set_xalign (section->says, 0);
  gtk_widget_add_css_class (GTK_WIDGET (section->says), "tm-section-says");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (section->says));
  /* What the fields are read as stands right under them, above the rows. */
  section->list = tm_form_group (GTK_BOX (box), NULL, NULL);
  tm_access_name_inside (GTK_WIDGET (section->list), GTK_TYPE_LIST_BOX,
                         adw_preferences_group_get_title (section->group));
  gtk_widget_set_visible (GTK_WIDGET (section->list), FALSE);
}

static GtkWidget *
new_remove_button (const char *name, gpointer row, GCallback remove_cb, gpointer data)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("user-trash-symbolic");

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, name);
  tm_name_widget (button, name);
  g_object_set_data (G_OBJECT (button), "row", row);
  g_signal_connect (button, "clicked", remove_cb, data);
  return button;
}

static void
add_row (TmGaugeSection *section, GtkWidget *row)
{
  adw_preferences_group_add (section->list, row);
  gtk_widget_set_visible (GTK_WIDGET (section->list), TRUE);
  g_ptr_array_add (section->rows, row);
}

void
tm_gauge_section_add_row (TmGaugeSection *section, const char *title, const char *about,
                          const char *remove_name, gpointer row, GCallback remove_cb, gpointer data)
{
  GtkWidget *widget = adw_action_row_new ();
  g_autofree char *title_markup = g_markup_escape_text (title, -1);
  g_autofree char *about_markup = g_markup_escape_text (about, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (widget), title_markup);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (widget), about_markup);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (widget), 3);
  if (remove_cb != NULL)
    adw_action_row_add_suffix (ADW_ACTION_ROW (widget),
                               new_remove_button (remove_name, row, remove_cb, data));
  add_row (section, widget);
}

void
tm_gauge_section_say_none (TmGaugeSection *section, const char *text)
{
  GtkWidget *widget = adw_action_row_new ();
  g_autofree char *markup = g_markup_escape_text (text, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (widget), markup);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (widget), 3);
  gtk_widget_add_css_class (widget, "dim-label");
  add_row (section, widget);
}

void
tm_gauge_section_drop_rows (TmGaugeSection *section)
{
  for (guint i = 0; i < section->rows->len; i++)
    adw_preferences_group_remove (section->list, g_ptr_array_index (section->rows, i));
  g_ptr_array_set_size (section->rows, 0);
  gtk_widget_set_visible (GTK_WIDGET (section->list), section->list == section->group);
}
