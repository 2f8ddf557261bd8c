/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-access.h"

#include "app-dialog.h"

void
tm_access_hide_decoration (GtkWidget *widget)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_IMAGE (child) || GTK_IS_LIST_VIEW (child))
      g_object_set (child, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
    else if (!GTK_IS_POPOVER (child))
      tm_access_hide_decoration (child);
}

static void
describe_text (GtkEditable *text)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (text), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  gtk_editable_get_text (text), -1);
}

void
tm_access_name_inside (GtkWidget *widget, GType type, const char *name)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (g_type_is_a (G_OBJECT_TYPE (child), type))
      tm_name_widget (child, name);
    else
      tm_access_name_inside (child, type, name);
}

/* libadwaita 1.2 lets the row be read as the text box, but the text inside it has the focus; GTK 4.8
 * does not let what that holds be read but as its description. */
AdwEntryRow *
tm_access_entry_row_new (const char *title)
{
  AdwEntryRow *row = g_object_new (ADW_TYPE_ENTRY_ROW, "title", title, "accessible-role",
                                   GTK_ACCESSIBLE_ROLE_LIST_ITEM, NULL);
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (row));

  g_object_set (text, "accessible-role", GTK_ACCESSIBLE_ROLE_TEXT_BOX, NULL);
  tm_name_widget (GTK_WIDGET (text), title);
  g_signal_connect (text, "changed", G_CALLBACK (describe_text), NULL);
  tm_access_hide_decoration (GTK_WIDGET (row));
  return row;
}

/* The chosen word belongs to the spoken name: the row's own picture of it is not read. */
static void
name_choice (AdwComboRow *row)
{
  GObject *item = adw_combo_row_get_selected_item (row);
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));
  const char *word
      = GTK_IS_STRING_OBJECT (item) ? gtk_string_object_get_string (GTK_STRING_OBJECT (item)) : "";
  g_autofree char *name = g_strdup_printf ("%s: %s", title, word);

  tm_name_widget (GTK_WIDGET (row), name);
}

AdwComboRow *
tm_access_combo_row_new (const char *title)
{
  AdwComboRow *row = g_object_new (ADW_TYPE_COMBO_ROW, "title", title, NULL);

  tm_access_hide_decoration (GTK_WIDGET (row));
  name_choice (row);
  g_signal_connect (row, "notify::selected-item", G_CALLBACK (name_choice), NULL);
  return row;
}

static void
name_button (GtkDropDown *drop)
{
  const char *name = g_object_get_data (G_OBJECT (drop), "tm-name");
  GObject *item = gtk_drop_down_get_selected_item (drop);
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (drop));
  const char *word
      = GTK_IS_STRING_OBJECT (item) ? gtk_string_object_get_string (GTK_STRING_OBJECT (item)) : NULL;
  g_autofree char *spoken = word != NULL ? g_strdup_printf ("%s: %s", name, word) : g_strdup (name);

  if (button != NULL)
    tm_name_widget (button, spoken);
}

void
tm_access_name_drop_down (GtkDropDown *drop, const char *name)
{
  g_return_if_fail (GTK_IS_DROP_DOWN (drop));

  g_object_set_data_full (G_OBJECT (drop), "tm-name", g_strdup (name), g_free);
  tm_name_widget (GTK_WIDGET (drop), name);
  name_button (drop);
  g_signal_connect (drop, "notify::selected-item", G_CALLBACK (name_button), NULL);
}

void
tm_access_name_column_view (GtkColumnView *view, const char *name)
{
  g_return_if_fail (GTK_IS_COLUMN_VIEW (view));

  tm_name_widget (GTK_WIDGET (view), name);
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (view)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_LIST_VIEW (child))
      tm_name_widget (child, name);
}

/* A column view puts a cell between the child and its row. */
void
tm_access_name_row (GtkWidget *child, const char *name)
{
  GtkWidget *row;

  g_return_if_fail (GTK_IS_WIDGET (child));

  row = gtk_widget_get_parent (child);
  while (row != NULL && !GTK_IS_LIST_VIEW (gtk_widget_get_parent (row)))
    row = gtk_widget_get_parent (row);
  if (row != NULL)
    tm_name_widget (row, name);
}

void
tm_access_scroll_column_view (GtkColumnView *view, guint position)
{
  g_return_if_fail (GTK_IS_COLUMN_VIEW (view));

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (view)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_LIST_VIEW (child))
      gtk_widget_activate_action (child, "list.scroll-to-item", "u", position);
}

void
tm_access_show_page (GtkStack *stack, const char *name)
{
  GtkWidget *page;

  g_return_if_fail (GTK_IS_STACK (stack));

  page = gtk_stack_get_child_by_name (stack, name);
  g_return_if_fail (page != NULL);
  gtk_widget_set_visible (page, TRUE);
  gtk_stack_set_visible_child (stack, page);
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (stack)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_set_visible (child, child == page);
}
