/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-cells.h"

#include <math.h>

#include "app-batch-portion.h"
#include "core-judge.h"

/* Judged at once, less than a frame takes, so that an ordinary job shows whole; the rest on a thread. */
#define FIRST_US (6 * 1000)
/* How often those who look are told while judging goes on out of sight. */
#define TELL_US (100 * 1000)

struct _TmBatchCells {
  GObject parent_instance;

  const TmJob *job; /* borrowed */
  guint n_pieces;
  guint n_features;
  TmGridCell *cells;    /* [piece * n_features + feature], as made */
  guint8 *judged;       /* gboolean of each piece */
  guint n_judged;       /* pieces */
  guint *columns;       /* piece shown in each column */
  guint *rows;          /* feature shown in each row */
  GHashTable *shown_at; /* piece or feature -> its column or row + 1 */
  TmBatchSort sort;
  guint generation;
  guint seen_from, seen_to;   /* columns in sight, the last one not included: they are judged first */
  guint next_id;              /* the next portion is about to be begun */
  TmBatchPortion *portion;    /* that a thread judges */
  guint taken_from, taken_to; /* its pieces */
  GArray *fresh;              /* gsize: cells that were judged anew since it was begun */
  gint64 told_at;
};

enum { SIGNAL_CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmBatchCells, tm_batch_cells, G_TYPE_OBJECT)

static void begin_portion (TmBatchCells *self);

/* -------- Cells -------- */

static gsize
count_cells (TmBatchCells *self)
{
  return (gsize)self->n_pieces * self->n_features;
}

static gsize
find_cell (TmBatchCells *self, guint piece, guint feature)
{
  return (gsize)piece * self->n_features + feature;
}

static void
judge_at (TmBatchCells *self, guint piece, guint feature)
{
  self->cells[find_cell (self, piece, feature)]
      = tm_batch_judge_cell (self->job, piece, g_ptr_array_index (self->job->features, feature), NULL);
}

static void
mark_judged (TmBatchCells *self, guint piece)
{
  self->n_judged += !self->judged[piece];
  self->judged[piece] = TRUE;
}

/* The first pieces, as many as there is time for. */
static void
judge_first (TmBatchCells *self)
{
  gint64 end = g_get_monotonic_time () + FIRST_US;

  for (guint piece = 0; piece < self->n_pieces && g_get_monotonic_time () < end; piece++)
    {
      for (guint i = 0; i < self->n_features; i++)
        judge_at (self, piece, i);
      mark_judged (self, piece);
    }
}

/* -------- Order -------- */

/* A larger number is worse: the verdict before the share of the band. */
static double
weigh (const TmGridCell *cell)
{
  return tm_batch_rank_verdict (cell->verdict) * 1e3
         + (isfinite (cell->used) ? CLAMP (cell->used, 0.0, 900.0) : 0)
         - (cell->verdict == TM_VERDICT_NOT_MEASURED ? 2e3 : 0);
}

static int
compare_weight_cb (gconstpointer a, gconstpointer b, gpointer data)
{
  const double *weights = data;
  double one = weights[*(const guint *)a], other = weights[*(const guint *)b];

  return (one < other) - (one > other);
}

/* Puts the numbers of @order that weigh most first; equal ones stay as they are. */
static void
sort_by (guint *order, guint n, double *weights)
{
  g_qsort_with_data (order, (gint)n, sizeof *order, compare_weight_cb, weights);
}

static void
sort_by_worst (TmBatchCells *self)
{
  g_autofree double *of_pieces = g_new (double, self->n_pieces);
  g_autofree double *of_features = g_new (double, self->n_features);

  for (guint i = 0; i < self->n_pieces; i++)
    of_pieces[i] = -INFINITY;
  for (guint i = 0; i < self->n_features; i++)
    of_features[i] = -INFINITY;
  for (gsize i = 0; i < count_cells (self); i++)
    {
      double weight = weigh (&self->cells[i]);
      gsize piece = i / self->n_features, feature = i % self->n_features;

      of_pieces[piece] = MAX (of_pieces[piece], weight);
      of_features[feature] = MAX (of_features[feature], weight);
    }
  sort_by (self->columns, self->n_pieces, of_pieces);
  sort_by (self->rows, self->n_features, of_features);
}

static void
put_in_order (TmBatchCells *self)
{
  for (guint i = 0; i < self->n_pieces; i++)
    self->columns[i] = i;
  for (guint i = 0; i < self->n_features; i++)
    self->rows[i] = i;
  if (self->sort == TM_BATCH_BY_WORST && self->n_judged == self->n_pieces)
    sort_by_worst (self);
  g_hash_table_remove_all (self->shown_at);
  for (guint i = 0; i < self->n_pieces; i++)
    g_hash_table_insert (self->shown_at, tm_batch_cells_piece (self, i), GUINT_TO_POINTER (i + 1));
  for (guint i = 0; i < self->n_features; i++)
    g_hash_table_insert (self->shown_at, tm_batch_cells_feature (self, i), GUINT_TO_POINTER (i + 1));
}

static void
tell (TmBatchCells *self)
{
  self->told_at = g_get_monotonic_time ();
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* -------- Judging on -------- */

static gboolean
is_seen (TmBatchCells *self, guint from, guint to)
{
  for (guint i = self->seen_from; i < MIN (self->seen_to, self->n_pieces); i++)
    if (self->columns[i] >= from && self->columns[i] < to)
      return TRUE;
  return FALSE;
}

/* What the thread found, but for what was recorded since it began. */
static void
take_cells (TmBatchCells *self, guint from, guint to, const TmGridCell *cells)
{
  g_autofree TmGridCell *fresh = g_new (TmGridCell, self->fresh->len);

  for (guint i = 0; i < self->fresh->len; i++)
    fresh[i] = self->cells[g_array_index (self->fresh, gsize, i)];
  memcpy (self->cells + find_cell (self, from, 0), cells,
          (gsize)(to - from) * self->n_features * sizeof *cells);
  for (guint i = 0; i < self->fresh->len; i++)
    self->cells[g_array_index (self->fresh, gsize, i)] = fresh[i];
  for (guint piece = from; piece < to; piece++)
    mark_judged (self, piece);
}

static void
judged_cb (guint from, guint to, const TmGridCell *cells, gpointer data)
{
  TmBatchCells *self = data;

  self->portion = NULL;
  take_cells (self, from, to, cells);
  if (self->n_judged < self->n_pieces)
    begin_portion (self);
  else if (self->sort == TM_BATCH_BY_WORST)
    put_in_order (self);
  if (self->n_judged == self->n_pieces || is_seen (self, from, to)
      || g_get_monotonic_time () - self->told_at > TELL_US)
    tell (self);
}

/* A piece that is not judged yet: in sight, else the first.  There is one. */
static guint
find_next (TmBatchCells *self)
{
  const guint8 *next;

  for (guint i = self->seen_from; i < MIN (self->seen_to, self->n_pieces); i++)
    if (!self->judged[self->columns[i]])
      return self->columns[i];
  next = memchr (self->judged, FALSE, self->n_pieces);
  g_assert (next != NULL);
  return (guint)(next - self->judged);
}

/* While the job's definitions are being changed, which ends with tm_batch_cells_set_job(), nothing is begun.
 */
static void
begin_portion (TmBatchCells *self)
{
  guint from = find_next (self), to = from + 1;

  if (self->job->pieces->len != self->n_pieces || self->job->features->len != self->n_features)
    return;
  while (to < self->n_pieces && !self->judged[to])
    to++;
  g_array_set_size (self->fresh, 0);
  self->taken_from = from;
  self->taken_to = to;
  self->portion = tm_batch_portion_start (self->job, from, to, judged_cb, self);
}

static gboolean
next_cb (gpointer data)
{
  TmBatchCells *self = data;

  self->next_id = 0;
  begin_portion (self);
  return G_SOURCE_REMOVE;
}

/* -------- The object -------- */

static void
drop_cells (TmBatchCells *self)
{
  g_clear_handle_id (&self->next_id, g_source_remove);
  g_clear_pointer (&self->portion, tm_batch_portion_stop);
  g_clear_pointer (&self->cells, g_free);
  g_clear_pointer (&self->judged, g_free);
  g_clear_pointer (&self->columns, g_free);
  g_clear_pointer (&self->rows, g_free);
  g_hash_table_remove_all (self->shown_at);
  self->n_pieces = self->n_features = 0;
  self->n_judged = 0;
}

static void
tm_batch_cells_finalize (GObject *object)
{
  TmBatchCells *self = TM_BATCH_CELLS (object);

  drop_cells (self);
  g_hash_table_unref (self->shown_at);
  g_array_unref (self->fresh);
  G_OBJECT_CLASS (tm_batch_cells_parent_class)->finalize (object);
}

static void
tm_batch_cells_class_init (TmBatchCellsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_batch_cells_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
}

static void
tm_batch_cells_init (TmBatchCells *self)
{
  self->shown_at = g_hash_table_new (NULL, NULL);
  self->fresh = g_array_new (FALSE, FALSE, sizeof (gsize));
}

TmBatchCells *
tm_batch_cells_new (void)
{
  return g_object_new (TM_TYPE_BATCH_CELLS, NULL);
}

void
tm_batch_cells_set_job (TmBatchCells *self, const TmJob *job)
{
  g_return_if_fail (TM_IS_BATCH_CELLS (self));

  drop_cells (self);
  self->job = job;
  self->generation++;
  if (job != NULL)
    {
      self->n_pieces = job->pieces->len;
      self->n_features = job->features->len;
      self->cells = g_new0 (TmGridCell, count_cells (self));
      self->judged = g_new0 (guint8, self->n_pieces);
      self->columns = g_new (guint, self->n_pieces);
      self->rows = g_new (guint, self->n_features);
      judge_first (self);
      put_in_order (self);
      /* By then it is known what is in sight. */
      if (self->n_judged < self->n_pieces)
        self->next_id = g_idle_add (next_cb, self);
    }
  tell (self);
}

/* A thread may be judging the piece by the record as it was: that must not overwrite what is judged now. */
static void
judge_now (TmBatchCells *self, guint piece, guint feature)
{
  gsize at = find_cell (self, piece, feature);
  gboolean taken = self->portion != NULL && piece >= self->taken_from && piece < self->taken_to;

  if (!taken && !self->judged[piece])
    return;
  judge_at (self, piece, feature);
  if (taken)
    g_array_append_val (self->fresh, at);
}

/* The feature itself and those that take a bonus from its size. */
static void
judge_again (TmBatchCells *self, guint piece, const TmFeature *feature)
{
  for (guint i = 0; i < self->n_features; i++)
    {
      const TmFeature *other = g_ptr_array_index (self->job->features, i);

      if (other == feature || g_str_equal (other->size_feature, feature->balloon))
        judge_now (self, piece, i);
    }
}

void
tm_batch_cells_judge (TmBatchCells *self, const TmPiece *piece, const TmFeature *feature)
{
  gint column;

  g_return_if_fail (TM_IS_BATCH_CELLS (self));
  g_return_if_fail (piece != NULL && feature != NULL);

  column = tm_batch_cells_column_of (self, piece);
  if (column < 0)
    return;
  judge_again (self, self->columns[column], feature);
  if (self->sort == TM_BATCH_BY_WORST)
    put_in_order (self);
  tell (self);
}

guint
tm_batch_cells_generation (TmBatchCells *self)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 0);

  return self->generation;
}

void
tm_batch_cells_set_sort (TmBatchCells *self, TmBatchSort sort)
{
  g_return_if_fail (TM_IS_BATCH_CELLS (self));

  if (self->sort == sort)
    return;
  self->sort = sort;
  put_in_order (self);
  tell (self);
}

TmBatchSort
tm_batch_cells_sort (TmBatchCells *self)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), TM_BATCH_AS_MADE);

  return self->sort;
}

double
tm_batch_cells_progress (TmBatchCells *self)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 1.0);

  return self->n_pieces > 0 ? (double)self->n_judged / self->n_pieces : 1.0;
}

void
tm_batch_cells_see (TmBatchCells *self, guint from, guint to)
{
  g_return_if_fail (TM_IS_BATCH_CELLS (self));

  self->seen_from = from;
  self->seen_to = to;
}

guint
tm_batch_cells_n_columns (TmBatchCells *self)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 0);

  return self->n_pieces;
}

guint
tm_batch_cells_n_rows (TmBatchCells *self)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 0);

  return self->n_features;
}

TmPiece *
tm_batch_cells_piece (TmBatchCells *self, guint column)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self) && column < self->n_pieces, NULL);

  return g_ptr_array_index (self->job->pieces, self->columns[column]);
}

TmFeature *
tm_batch_cells_feature (TmBatchCells *self, guint row)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self) && row < self->n_features, NULL);

  return g_ptr_array_index (self->job->features, self->rows[row]);
}

gint
tm_batch_cells_column_of (TmBatchCells *self, const TmPiece *piece)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), -1);

  return GPOINTER_TO_INT (g_hash_table_lookup (self->shown_at, piece)) - 1;
}

gint
tm_batch_cells_row_of (TmBatchCells *self, const TmFeature *feature)
{
  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), -1);

  return GPOINTER_TO_INT (g_hash_table_lookup (self->shown_at, feature)) - 1;
}

const TmGridCell *
tm_batch_cells_get (TmBatchCells *self, guint column, guint row)
{
  guint piece;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), NULL);
  g_return_val_if_fail (column < self->n_pieces && row < self->n_features, NULL);

  piece = self->columns[column];
  return self->judged[piece] ? &self->cells[find_cell (self, piece, self->rows[row])] : NULL;
}

guint
tm_batch_cells_place (TmBatchCells *self, guint column, guint row)
{
  guint place = 1;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 1);
  g_return_val_if_fail (column < self->n_pieces && row < self->n_features, 1);

  tm_batch_judge_cell (self->job, self->columns[column], tm_batch_cells_feature (self, row), &place);
  return place;
}

guint
tm_batch_cells_n_measured (TmBatchCells *self)
{
  guint n = 0;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 0);

  for (guint piece = 0; piece < self->n_pieces; piece++)
    for (guint i = 0; self->judged[piece] && i < self->n_features; i++)
      if (self->cells[find_cell (self, piece, i)].verdict != TM_VERDICT_NOT_MEASURED)
        {
          n++;
          break;
        }
  return n;
}

G_STATIC_ASSERT (sizeof (TmGridCell) <= 8);
