/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-cells.h"

#include <math.h>

#include "core-judge.h"

/* Of a frame of 16 ms judging takes this much at a time; at first more, so that an ordinary job shows whole.
 */
#define SLICE_US (4 * 1000)
#define FIRST_US (25 * 1000)
/* How often the clock is looked at. */
#define LOOK_EVERY 16
/* How often those who look are told while judging goes on. */
#define TELL_US (100 * 1000)

struct _TmBatchCells {
  GObject parent_instance;

  const TmJob *job; /* borrowed */
  guint n_pieces;
  guint n_features;
  TmGridCell *cells;    /* [piece * n_features + feature], as made */
  gsize n_judged;       /* of the cells, from the first */
  guint *columns;       /* piece shown in each column */
  guint *rows;          /* feature shown in each row */
  GHashTable *shown_at; /* piece or feature -> its column or row + 1 */
  TmBatchSort sort;
  guint generation;
  guint judge_id;
  gint64 told_at;
};

enum { SIGNAL_CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmBatchCells, tm_batch_cells, G_TYPE_OBJECT)

/* -------- Judging -------- */

/* Out, then too close, then not measured, then in: the order of tm_judge_feature(). */
static int
rank_verdict (guint8 verdict)
{
  static const int ranks[TM_N_VERDICTS] = {
    [TM_VERDICT_IN] = 0,
    [TM_VERDICT_NOT_MEASURED] = 1,
    [TM_VERDICT_TOO_CLOSE] = 2,
    [TM_VERDICT_OUT] = 3,
  };
  return ranks[verdict];
}

static gboolean
is_worse (const TmGridCell *one, const TmGridCell *other)
{
  int a = rank_verdict (one->verdict), b = rank_verdict (other->verdict);

  if (a != b)
    return a > b;
  return isfinite (one->used) && !(one->used <= other->used);
}

/* @place (may be NULL) gets the place that it speaks of. */
static TmGridCell
judge_cell (const TmJob *job, guint piece_index, const TmFeature *feature, guint *place)
{
  const TmPiece *piece = g_ptr_array_index (job->pieces, piece_index);
  gboolean due = tm_job_feature_is_due (job, feature, piece, piece_index);
  TmGridCell worst = { .used = NAN, .verdict = TM_VERDICT_NOT_MEASURED };

  for (guint i = 1; i <= feature->places; i++)
    {
      g_auto (TmJudgement) judgement = { 0 };
      TmGridCell cell;

      tm_judge (job, piece, feature, i, &judgement);
      cell = tm_grid_cell (&judgement, due);
      if (i > 1 && !is_worse (&cell, &worst))
        continue;
      worst = cell;
      if (place != NULL)
        *place = i;
    }
  return worst;
}

static gsize
count_cells (TmBatchCells *self)
{
  return (gsize)self->n_pieces * self->n_features;
}

static void
judge_at (TmBatchCells *self, gsize at)
{
  guint piece = (guint)(at / self->n_features);
  guint feature = (guint)(at % self->n_features);

  self->cells[at] = judge_cell (self->job, piece, g_ptr_array_index (self->job->features, feature), NULL);
}

/* Judges on until all is judged or @slice_us have passed.  Returns: whether there is more. */
static gboolean
judge_for (TmBatchCells *self, gint64 slice_us)
{
  gint64 end = g_get_monotonic_time () + slice_us;
  gsize n = count_cells (self);

  while (self->n_judged < n)
    {
      judge_at (self, self->n_judged++);
      if (self->n_judged % LOOK_EVERY == 0 && g_get_monotonic_time () > end)
        break;
    }
  return self->n_judged < n;
}

/* -------- Order -------- */

/* A larger number is worse: the verdict before the share of the band. */
static double
weigh (const TmGridCell *cell)
{
  return rank_verdict (cell->verdict) * 1e3 + (isfinite (cell->used) ? CLAMP (cell->used, 0.0, 900.0) : 0)
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
  for (gsize i = 0; i < self->n_judged; i++)
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
  if (self->sort == TM_BATCH_BY_WORST && self->n_judged == count_cells (self))
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

static gboolean
judge_cb (gpointer data)
{
  TmBatchCells *self = data;
  gboolean more = judge_for (self, SLICE_US);

  if (more)
    {
      if (g_get_monotonic_time () - self->told_at > TELL_US)
        tell (self);
      return G_SOURCE_CONTINUE;
    }
  self->judge_id = 0;
  if (self->sort == TM_BATCH_BY_WORST)
    put_in_order (self);
  tell (self);
  return G_SOURCE_REMOVE;
}

/* -------- The object -------- */

static void
drop_cells (TmBatchCells *self)
{
  g_clear_handle_id (&self->judge_id, g_source_remove);
  g_clear_pointer (&self->cells, g_free);
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
      self->columns = g_new (guint, self->n_pieces);
      self->rows = g_new (guint, self->n_features);
      if (judge_for (self, FIRST_US))
        self->judge_id = g_idle_add (judge_cb, self);
      put_in_order (self);
    }
  tell (self);
}

/* The feature itself and those that take a bonus from its size. */
static void
judge_again (TmBatchCells *self, guint piece, const TmFeature *feature)
{
  for (guint i = 0; i < self->n_features; i++)
    {
      const TmFeature *other = g_ptr_array_index (self->job->features, i);
      gsize at = (gsize)piece * self->n_features + i;

      if ((other == feature || g_str_equal (other->size_feature, feature->balloon)) && at < self->n_judged)
        judge_at (self, at);
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
  gsize n;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 1.0);

  n = count_cells (self);
  return n > 0 ? (double)self->n_judged / (double)n : 1.0;
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
  gsize at;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), NULL);
  g_return_val_if_fail (column < self->n_pieces && row < self->n_features, NULL);

  at = (gsize)self->columns[column] * self->n_features + self->rows[row];
  return at < self->n_judged ? &self->cells[at] : NULL;
}

guint
tm_batch_cells_place (TmBatchCells *self, guint column, guint row)
{
  guint place = 1;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 1);
  g_return_val_if_fail (column < self->n_pieces && row < self->n_features, 1);

  judge_cell (self->job, self->columns[column], tm_batch_cells_feature (self, row), &place);
  return place;
}

guint
tm_batch_cells_n_measured (TmBatchCells *self)
{
  guint n = 0;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (self), 0);

  for (gsize at = 0; at < self->n_judged; at++)
    if (self->cells[at].verdict != TM_VERDICT_NOT_MEASURED)
      {
        /* One is enough: on to the next piece. */
        n++;
        at += self->n_features - at % self->n_features - 1;
      }
  return n;
}

G_STATIC_ASSERT (sizeof (TmGridCell) <= 8);
