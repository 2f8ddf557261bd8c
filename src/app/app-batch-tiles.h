/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-tiles: the grid in tiles of many cells, each drawn once and kept as a texture while it is near
 * what is in sight: to scroll is then to move textures, and to draw the few tiles that come into sight.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-batch-cells.h"
#include "plot-theme.h"

G_BEGIN_DECLS

/* Columns and rows of one tile: small enough for a processor's cache, large enough that few are in sight. */
#define TM_TILE_COLUMNS 8
#define TM_TILE_ROWS    10

typedef struct _TmBatchTiles TmBatchTiles;

/* Pixels of the widget: from one cell to the next, and what of that the cell takes. */
typedef struct {
  int step_x, step_y;
  int cell_x, cell_y;
} TmTileSizes;

/* Cells, not tiles; the last ones are not included. */
typedef struct {
  gint from_column, to_column;
  gint from_row, to_row;
} TmTileSpan;

TmBatchTiles *tm_batch_tiles_new (const TmTileSizes *sizes) G_GNUC_WARN_UNUSED_RESULT;
void tm_batch_tiles_free (TmBatchTiles *tiles);

/* Forgets what was drawn: the cells, or their order, are others. */
void tm_batch_tiles_forget (TmBatchTiles *tiles);

/* What the tiles are drawn with; forgets them where that is another. */
void tm_batch_tiles_prepare (TmBatchTiles *tiles, int scale, const TmTheme *theme);

/* Appends the tiles that hold the cells of @span, with the corner of the very first cell at @x, @y: whole
 * pixels, often far outside the widget. */
void tm_batch_tiles_append (TmBatchTiles *tiles, TmBatchCells *cells, const TmTileSpan *span, int x, int y,
                            GtkSnapshot *snapshot);

/* How many were drawn since the beginning. */
guint tm_batch_tiles_n_drawn (TmBatchTiles *tiles);

G_END_DECLS
