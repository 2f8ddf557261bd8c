/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-grid: pieces across, features down, drawn by ourselves: of 2,000 × 200 cells only those in sight.
 * Scrolls under its heads inside a GtkScrolledWindow.  One cell has the focus; its words are the name that an
 * assistive tool reads.
 *
 *   "chosen" ()  the focus is on another cell
 *   "jump" ()    the cell that has the focus is to be measured
 */

#pragma once

#include "app-batch-cells.h"
#include "app-scrolled.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_GRID (tm_batch_grid_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchGrid, tm_batch_grid, TM, BATCH_GRID, TmScrolled)

GtkWidget *tm_batch_grid_new (TmBatchCells *cells) G_GNUC_WARN_UNUSED_RESULT;

/* Puts the focus on a cell and brings it into sight; what is not in the cells is left where it was.  Says
 * nothing by a signal. */
void tm_batch_grid_go (TmBatchGrid *self, const TmPiece *piece, const TmFeature *feature);

/* Of the cell that has the focus; NULL where there is none. */
TmPiece *tm_batch_grid_piece (TmBatchGrid *self);
TmFeature *tm_batch_grid_feature (TmBatchGrid *self);

/* Height that @n_rows rows and the head of the columns take. */
int tm_batch_grid_height_of (TmBatchGrid *self, guint n_rows);

/* The cell under a point of the widget; FALSE: none.  -1: the head of the rows, or of the columns. */
gboolean tm_batch_grid_cell_at (TmBatchGrid *self, double x, double y, gint *column, gint *row);

G_END_DECLS
