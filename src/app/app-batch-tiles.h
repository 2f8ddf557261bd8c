/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-tiles: pictures of cells, each drawn once: a thousand cells in sight are then no more than
 * copies.
 */

#pragma once

#include <cairo.h>

#include "plot-grid.h"

G_BEGIN_DECLS

typedef struct _TmBatchTiles TmBatchTiles;

TmBatchTiles *tm_batch_tiles_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_batch_tiles_free (TmBatchTiles *tiles);

/* Forgets what was drawn for another theme or another number of device pixels to one of the widget. */
void tm_batch_tiles_prepare (TmBatchTiles *tiles, int width, int height, int scale, const TmTheme *theme);

/* Puts a cell, without the focus, at a whole pixel.  Its share of the band is shown in 64 steps. */
void tm_batch_tiles_put (TmBatchTiles *tiles, const TmGridCell *cell, cairo_t *cr, int x, int y);

G_END_DECLS
