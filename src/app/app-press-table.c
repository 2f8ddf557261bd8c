/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-press-table.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-list-row.h"
#include "app-press-words.h"

/* Pixels. */
#define CELL_WIDTH 104

struct _TmPressTable {
  GtkBox parent_instance;

  GtkWidget *head;
  GtkLabel *middle;
  GtkListBox *list;
};

G_DEFINE_FINAL_TYPE (TmPressTable, tm_press_table, GTK_TYPE_BOX)

static GtkLabel *
add_cell (GtkWidget *box, const char *text, gboolean title)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), title ? 0 : 1);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, title);
  if (!title)
    gtk_widget_set_size_request (label, CELL_WIDTH, -1);
  gtk_widget_add_css_class (label, "numeric");
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
new_row (const TmPressRow *row)
{
  GtkWidget *list_row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  add_cell (box, row->title, TRUE);
  for (guint i = 0; i < TM_N_PRESS_COLUMNS; i++)
    add_cell (box, row->cells[i], FALSE);
  gtk_widget_add_css_class (box, "tm-press-line");
  if (row->over)
    gtk_widget_add_css_class (list_row, "tm-cannot");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (list_row), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (list_row), FALSE);
  tm_name_widget (list_row, row->sentence);
  return list_row;
}

void
tm_press_table_show (TmPressTable *self, const GPtrArray *rows, const char *middle)
{
  gboolean focused;

  g_return_if_fail (TM_IS_PRESS_TABLE (self));

  focused = tm_list_clear (self->list);
  gtk_label_set_text (self->middle, middle);
  for (guint i = 0; i < rows->len; i++)
    gtk_list_box_append (self->list, new_row (g_ptr_array_index (rows, i)));
  gtk_widget_set_visible (GTK_WIDGET (self), rows->len > 0);
  if (focused)
    gtk_widget_child_focus (GTK_WIDGET (self->list), GTK_DIR_TAB_FORWARD);
}

static void
tm_press_table_class_init (TmPressTableClass *klass)
{
}

static void
tm_press_table_init (TmPressTable *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_add_css_class (self->head, "tm-press-head");
  add_cell (self->head, _ ("At an interference that is"), TRUE);
  /* Translators: the least, the middle and the most interference. */
  add_cell (self->head, _ ("least"), FALSE);
  self->middle = add_cell (self->head, "", FALSE);
  add_cell (self->head, _ ("most"), FALSE);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-press-table");
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Figures of the press"));
  gtk_box_append (GTK_BOX (self), self->head);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->list));
}

GtkWidget *
tm_press_table_new (void)
{
  return g_object_new (TM_TYPE_PRESS_TABLE, NULL);
}
