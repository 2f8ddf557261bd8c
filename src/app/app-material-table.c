/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-table.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-list-row.h"
#include "app-material-words.h"

enum { WHAT, VALUE, TABLES, SOURCE, N_COLUMNS };

/* Pixels. */
#define COLUMN_SPACING 18

typedef struct {
  const char *title;
  int width; /* pixels at least */
  float xalign;
} Column;

static const Column columns[N_COLUMNS] = {
  [WHAT] = { N_ ("Figure"), 196, 0 },
  [VALUE] = { N_ ("Value"), 116, 1 },
  [TABLES] = { N_ ("In the tables"), 116, 1 },
  [SOURCE] = { N_ ("Source"), 0, 0 },
};

struct _TmMaterialTable {
  GtkBox parent_instance;

  GtkListBox *list;
};

G_DEFINE_FINAL_TYPE (TmMaterialTable, tm_material_table, GTK_TYPE_BOX)

/* The last column takes what is left, and its text as many lines as it needs: a source is to be read whole.
 */
static GtkWidget *
new_cell (guint which, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), columns[which].xalign);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_valign (label, GTK_ALIGN_BASELINE);
  gtk_widget_add_css_class (label, "numeric");
  gtk_label_set_max_width_chars (GTK_LABEL (label), 1);
  gtk_widget_set_size_request (label, columns[which].width, -1);
  gtk_widget_set_hexpand (label, which == SOURCE);
  return label;
}

static GtkWidget *
new_cells (const char *const *texts, gboolean head)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, COLUMN_SPACING);

  for (guint i = 0; i < N_COLUMNS; i++)
    {
      GtkWidget *cell = new_cell (i, texts[i]);

      if (i == SOURCE && !head)
        gtk_widget_add_css_class (cell, "dim-label");
      gtk_box_append (GTK_BOX (box), cell);
    }
  return box;
}

static void
add_row (TmMaterialTable *self, GtkWidget *content, const char *sentence)
{
  GtkWidget *row = gtk_list_box_row_new ();

  gtk_widget_add_css_class (content, "tm-budget-line");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), content);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  tm_name_widget (row, sentence);
  gtk_list_box_append (self->list, row);
}

static void
add_note (TmMaterialTable *self, const char *note)
{
  GtkWidget *label = gtk_label_new (note);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "dim-label");
  add_row (self, label, note);
}

void
tm_material_table_show (TmMaterialTable *self, const TmElastic *material, const TmElastic *table)
{
  g_autoptr (GPtrArray) lines = NULL;
  g_auto (GStrv) notes = NULL;
  gboolean focused;

  g_return_if_fail (TM_IS_MATERIAL_TABLE (self));

  focused = tm_list_clear (self->list);
  lines = tm_words_material (material, table);
  notes = tm_words_material_notes (material);
  for (guint i = 0; i < lines->len; i++)
    {
      const TmMaterialLine *line = g_ptr_array_index (lines, i);
      const char *texts[N_COLUMNS] = { line->what, line->value, line->tables, line->source };

      add_row (self, new_cells (texts, FALSE), line->sentence);
    }
  for (guint i = 0; notes[i] != NULL; i++)
    add_note (self, notes[i]);
  if (focused)
    gtk_widget_child_focus (GTK_WIDGET (self->list), GTK_DIR_TAB_FORWARD);
}

GtkListBox *
tm_material_table_list (TmMaterialTable *self)
{
  g_return_val_if_fail (TM_IS_MATERIAL_TABLE (self), NULL);

  return self->list;
}

static void
tm_material_table_class_init (TmMaterialTableClass *klass)
{
}

static void
tm_material_table_init (TmMaterialTable *self)
{
  const char *titles[N_COLUMNS];
  GtkWidget *head;

  for (guint i = 0; i < N_COLUMNS; i++)
    titles[i] = g_dgettext (GETTEXT_PACKAGE, columns[i].title);
  head = new_cells (titles, TRUE);
  gtk_widget_add_css_class (head, "tm-budget-head");
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_append (GTK_BOX (self), head);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-budget");
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Figures of the material"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->list));
}

GtkWidget *
tm_material_table_new (void)
{
  return g_object_new (TM_TYPE_MATERIAL_TABLE, NULL);
}
