/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-row.h"

struct _TmDrawingRow {
  GObject parent_instance;

  const TmFeature *feature; /* borrowed */
  guint place;
};

G_DEFINE_FINAL_TYPE (TmDrawingRow, tm_drawing_row, G_TYPE_OBJECT)

static guint changed_signal;

static void
tm_drawing_row_class_init (TmDrawingRowClass *klass)
{
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
tm_drawing_row_init (TmDrawingRow *self)
{
}

const TmFeature *
tm_drawing_row_feature (TmDrawingRow *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_ROW (self), NULL);

  return self->feature;
}

guint
tm_drawing_row_place (TmDrawingRow *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_ROW (self), 0);

  return self->place;
}

static void
add_row (GPtrArray *rows, const TmFeature *feature, guint place)
{
  TmDrawingRow *row = g_object_new (TM_TYPE_DRAWING_ROW, NULL);

  row->feature = feature;
  row->place = place;
  g_ptr_array_add (rows, row);
}

static GPtrArray *
make_rows (const TmJob *job, GHashTable *unfolded)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      const guint n = feature->places > 1 && g_hash_table_contains (unfolded, feature) ? feature->places : 0;

      for (guint place = 0; place <= n; place++)
        add_row (rows, feature, place);
    }
  return rows;
}

static gboolean
shows (GListStore *store, guint at, const TmDrawingRow *row)
{
  g_autoptr (TmDrawingRow) old = g_list_model_get_item (G_LIST_MODEL (store), at);

  return old->feature == row->feature && old->place == row->place;
}

static void
announce_kept (GListStore *store, guint from, guint to)
{
  for (guint i = from; i < to; i++)
    {
      g_autoptr (TmDrawingRow) row = g_list_model_get_item (G_LIST_MODEL (store), i);

      g_signal_emit (row, changed_signal, 0);
    }
}

void
tm_drawing_rows_refresh (GListStore *store, const TmJob *job, GHashTable *unfolded)
{
  g_autoptr (GPtrArray) rows = make_rows (job, unfolded);
  const guint n_old = g_list_model_get_n_items (G_LIST_MODEL (store)), n_new = rows->len;
  guint n_head = 0, n_tail = 0;

  while (n_head < MIN (n_old, n_new) && shows (store, n_head, g_ptr_array_index (rows, n_head)))
    n_head++;
  while (n_tail < MIN (n_old, n_new) - n_head
         && shows (store, n_old - 1 - n_tail, g_ptr_array_index (rows, n_new - 1 - n_tail)))
    n_tail++;
  if (n_old > n_head + n_tail || n_new > n_head + n_tail)
    g_list_store_splice (store, n_head, n_old - n_head - n_tail, rows->pdata + n_head,
                         n_new - n_head - n_tail);
  announce_kept (store, 0, n_head);
  announce_kept (store, n_new - n_tail, n_new);
}

guint
tm_drawing_rows_find (GListStore *store, const char *balloon, guint place)
{
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (store));

  for (guint i = 0; balloon != NULL && i < n; i++)
    {
      g_autoptr (TmDrawingRow) row = g_list_model_get_item (G_LIST_MODEL (store), i);

      if (row->place == place && g_str_equal (row->feature->balloon, balloon))
        return i;
    }
  return G_MAXUINT;
}
