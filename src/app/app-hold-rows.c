/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-hold-rows.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-growing-list.h"
#include "app-tip.h"
#include "app-view-parts.h"

/* Of the serial and of what is decided. */
#define NAME_CHARS    12
#define DECIDED_CHARS 10

enum { CELL_NAME, CELL_WORDS, CELL_DECIDED, N_CELLS };

static const TmPiece *
find_piece (TmHoldRows *rows, const TmHoldLine *line)
{
  return tm_job_find_piece (tm_document_job (rows->document), line->serial);
}

static const char *
describe_decision (const TmPiece *piece)
{
  return piece == NULL ? _ ("not in the job any more") : tm_words_disposition (piece);
}

static char *
describe_line (const TmHoldLine *line, const TmPiece *piece)
{
  char *words = tm_words_hold_line (line);
  char *with_note;

  if (piece == NULL || *piece->disposition_note == '\0')
    return words;
  with_note = g_strdup_printf ("%s · %s", words, piece->disposition_note);
  g_free (words);
  return with_note;
}

static void
show_row (TmHoldRows *rows, GtkListItem *item)
{
  const TmHoldLine *line = g_ptr_array_index (rows->list->lines, gtk_list_item_get_position (item));
  const TmPiece *piece = find_piece (rows, line);
  GtkWidget *cell = gtk_widget_get_first_child (gtk_list_item_get_child (item));
  const char *decided = describe_decision (piece);
  g_autofree char *title = g_strdup_printf (_ ("Piece %s"), line->serial);
  g_autofree char *words = describe_line (line, piece);
  g_autofree char *sentence
      = g_strdup_printf ("%s, %s, %s", title, words, *decided != '\0' ? decided : _ ("not decided"));
  const char *texts[N_CELLS] = { [CELL_NAME] = title, [CELL_WORDS] = words, [CELL_DECIDED] = decided };

  for (guint i = 0; i < N_CELLS; i++, cell = gtk_widget_get_next_sibling (cell))
    gtk_label_set_text (GTK_LABEL (cell), texts[i]);
  tm_access_name_row (gtk_list_item_get_child (item), sentence);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmHoldRows *rows)
{
  static const char *const classes[N_CELLS] = { "numeric", "dim-label", "heading" };
  static const int widths[N_CELLS] = { NAME_CHARS, -1, DECIDED_CHARS };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  for (guint i = 0; i < N_CELLS; i++)
    {
      GtkLabel *label = tm_view_label_new (classes[i], FALSE);

      gtk_label_set_width_chars (label, widths[i]);
      gtk_widget_set_hexpand (GTK_WIDGET (label), i == CELL_WORDS);
      tm_tip_own_text (GTK_WIDGET (label));
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (label));
    }
  gtk_list_item_set_child (item, box);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmHoldRows *rows)
{
  g_hash_table_add (rows->bound, item);
  show_row (rows, item);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmHoldRows *rows)
{
  g_hash_table_remove (rows->bound, item);
}

static GListModel *
list_serials (const TmHoldList *list)
{
  GtkStringList *serials = gtk_string_list_new (NULL);

  for (guint i = 0; i < list->lines->len; i++)
    gtk_string_list_append (serials, ((const TmHoldLine *)g_ptr_array_index (list->lines, i))->serial);
  return G_LIST_MODEL (serials);
}

void
tm_hold_rows_init (TmHoldRows *rows, TmDocument *document, TmHoldList *list)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  TmGrowingList *serials = tm_growing_list_new (list_serials (list));

  rows->document = g_object_ref (document);
  rows->list = tm_hold_list_ref (list);
  rows->bound = g_hash_table_new (NULL, NULL);
  rows->selection = GTK_SELECTION_MODEL (gtk_multi_selection_new (G_LIST_MODEL (serials)));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), rows);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), rows);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), rows);
  rows->view = GTK_LIST_VIEW (gtk_list_view_new (rows->selection, factory));
  tm_growing_list_follow (serials, GTK_WIDGET (rows->view));
  gtk_widget_add_css_class (GTK_WIDGET (rows->view), "tm-choices");
  gtk_widget_add_css_class (GTK_WIDGET (rows->view), "tm-hold-rows");
  tm_name_widget (GTK_WIDGET (rows->view), _ ("Pieces held back"));
}

void
tm_hold_rows_clear (TmHoldRows *rows)
{
  g_object_unref (rows->document);
  tm_hold_list_unref (rows->list);
  g_hash_table_unref (rows->bound);
}

void
tm_hold_rows_refresh (TmHoldRows *rows)
{
  GHashTableIter iter;
  gpointer item;

  g_hash_table_iter_init (&iter, rows->bound);
  while (g_hash_table_iter_next (&iter, &item, NULL))
    show_row (rows, item);
}

/* Rows are made when the list is laid out: not before its first frame. */
static gboolean
focus_cb (GtkWidget *view, GdkFrameClock *clock, gpointer data)
{
  if (gtk_widget_get_first_child (view) == NULL)
    return G_SOURCE_CONTINUE;
  gtk_widget_child_focus (view, GTK_DIR_TAB_FORWARD);
  return G_SOURCE_REMOVE;
}

void
tm_hold_rows_focus (TmHoldRows *rows)
{
  gtk_widget_add_tick_callback (GTK_WIDGET (rows->view), focus_cb, NULL, NULL);
}

GPtrArray *
tm_hold_rows_chosen (TmHoldRows *rows)
{
  GtkBitset *chosen = gtk_selection_model_get_selection (rows->selection);
  GPtrArray *pieces = g_ptr_array_new ();
  GtkBitsetIter iter;
  guint position;

  for (gboolean more = gtk_bitset_iter_init_first (&iter, chosen, &position); more;
       more = gtk_bitset_iter_next (&iter, &position))
    {
      const TmPiece *piece = find_piece (rows, g_ptr_array_index (rows->list->lines, position));

      if (piece != NULL)
        g_ptr_array_add (pieces, (gpointer)piece);
    }
  gtk_bitset_unref (chosen);
  return pieces;
}
