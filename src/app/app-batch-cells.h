/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-cells: the cells of the batch's grid: each piece × each feature judged, in the order in which
 * they are shown.  A feature with several places shows the worst of them.
 *
 * An ordinary job is judged at once; of a large one portions are judged on a thread (app-batch-portion),
 * those in sight first, while the job may be changed: what is recorded meanwhile is told by
 * tm_batch_cells_judge().
 *
 *   "changed" ()  cells, their order or their number are others; also as judging goes on
 */

#pragma once

#include <glib-object.h>

#include "core-model.h"
#include "plot-grid.h"

G_BEGIN_DECLS

typedef enum {
  TM_BATCH_AS_MADE, /* pieces in the order made, features in the drawing's */
  TM_BATCH_BY_WORST /* both by their worst cell, the worst first */
} TmBatchSort;

#define TM_TYPE_BATCH_CELLS (tm_batch_cells_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchCells, tm_batch_cells, TM, BATCH_CELLS, GObject)

TmBatchCells *tm_batch_cells_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Judges all of @job, which is borrowed until the next call; NULL: none.  To be called again after its
 * definitions changed. */
void tm_batch_cells_set_job (TmBatchCells *self, const TmJob *job);

/* Judges one feature on one piece again, with the positions that take their bonus from it. */
void tm_batch_cells_judge (TmBatchCells *self, const TmPiece *piece, const TmFeature *feature);

/* Another number each time that pieces and features were set anew. */
guint tm_batch_cells_generation (TmBatchCells *self);

void tm_batch_cells_set_sort (TmBatchCells *self, TmBatchSort sort);
TmBatchSort tm_batch_cells_sort (TmBatchCells *self);

/* Which columns are in sight, the last one not included: they are judged before the others. */
void tm_batch_cells_see (TmBatchCells *self, guint from, guint to);

/* 0..1; 1: all are judged. */
double tm_batch_cells_progress (TmBatchCells *self);

/* Columns are pieces, rows are features, both as shown. */
guint tm_batch_cells_n_columns (TmBatchCells *self);
guint tm_batch_cells_n_rows (TmBatchCells *self);
TmPiece *tm_batch_cells_piece (TmBatchCells *self, guint column);
TmFeature *tm_batch_cells_feature (TmBatchCells *self, guint row);
gint tm_batch_cells_column_of (TmBatchCells *self, const TmPiece *piece); /* -1: not there */
gint tm_batch_cells_row_of (TmBatchCells *self, const TmFeature *feature);

/* Borrowed until the next change; NULL while it is not judged yet. */
const TmGridCell *tm_batch_cells_get (TmBatchCells *self, guint column, guint row);

/* The place that the cell speaks of: the worst, else the first that is not measured. */
guint tm_batch_cells_place (TmBatchCells *self, guint column, guint row);

/* How many of the job's pieces have a verdict of some feature. */
guint tm_batch_cells_n_measured (TmBatchCells *self);

G_END_DECLS
