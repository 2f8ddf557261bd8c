/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-list-row.h"

#include "app-dialog.h"
#include "app-tip.h"

static GtkWidget *
new_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  tm_tip_own_text (label);
  return label;
}

/* A word that would not fit beside the name stands under it. */
GtkWidget *
tm_list_row_new (const char *title, const char *under, const char *end, const char *sentence, const char *key)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *across = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  gtk_box_append (GTK_BOX (texts), new_label (title, NULL));
  if (*under != '\0')
    gtk_box_append (GTK_BOX (texts), new_label (under, "dim-label"));
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_widget_set_valign (texts, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (across), texts);
  if (*end != '\0')
    gtk_box_append (GTK_BOX (across), gtk_label_new (end));
  gtk_widget_add_css_class (across, "tm-two-lines");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), across);
  g_object_set_data_full (G_OBJECT (row), "key", g_strdup (key), g_free);
  tm_name_widget (row, sentence);
  return row;
}

const char *
tm_list_row_key (GtkListBoxRow *row)
{
  g_return_val_if_fail (GTK_IS_LIST_BOX_ROW (row), NULL);

  return g_object_get_data (G_OBJECT (row), "key");
}

GtkWidget *
tm_list_row_heading_new (const char *text)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *label = new_label (text, "dim-label");

  gtk_widget_add_css_class (label, "tm-list-heading");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_widget_set_focusable (row, FALSE);
  tm_name_widget (row, text);
  return row;
}

gboolean
tm_list_clear (GtkListBox *list)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (list));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  gboolean inside = focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (list));
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (list))) != NULL)
    gtk_list_box_remove (list, row);
  return inside;
}

gboolean
tm_list_select (GtkListBox *list, const char *key, gboolean focus)
{
  for (int i = 0;; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (list, i);

      if (row == NULL)
        return FALSE;
      if (g_strcmp0 (tm_list_row_key (row), key) != 0 || key == NULL)
        continue;
      gtk_list_box_select_row (list, row);
      if (focus)
        gtk_widget_grab_focus (GTK_WIDGET (row));
      return TRUE;
    }
}

static GtkListBoxRow *
find_focused_row (GtkListBox *list)
{
  GtkWidget *child = gtk_widget_get_focus_child (GTK_WIDGET (list));

  return GTK_IS_LIST_BOX_ROW (child) ? GTK_LIST_BOX_ROW (child) : NULL;
}

/* The next row, where the focus would go, does not take it for this once. */
static void
leave (GtkListBox *list, GtkDirectionType direction)
{
  GtkListBoxRow *row = find_focused_row (list);
  int step = direction == GTK_DIR_TAB_FORWARD ? 1 : -1;
  GtkListBoxRow *next
      = row != NULL ? gtk_list_box_get_row_at_index (list, gtk_list_box_row_get_index (row) + step) : NULL;
  gboolean focusable = next != NULL && gtk_widget_get_focusable (GTK_WIDGET (next));

  if (next != NULL)
    gtk_widget_set_focusable (GTK_WIDGET (next), FALSE);
  gtk_widget_child_focus (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (list))), direction);
  if (next != NULL)
    gtk_widget_set_focusable (GTK_WIDGET (next), focusable);
}

static gboolean
key_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state, GtkListBox *list)
{
  GdkModifierType held = state & gtk_accelerator_get_default_mod_mask ();

  if (keyval == GDK_KEY_Tab && held == 0)
    leave (list, GTK_DIR_TAB_FORWARD);
  else if ((keyval == GDK_KEY_ISO_Left_Tab || keyval == GDK_KEY_Tab) && held == GDK_SHIFT_MASK)
    leave (list, GTK_DIR_TAB_BACKWARD);
  else
    return FALSE;
  return TRUE;
}

void
tm_list_tab_leaves (GtkListBox *list)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_return_if_fail (GTK_IS_LIST_BOX (list));

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), list);
  gtk_widget_add_controller (GTK_WIDGET (list), keys);
}
