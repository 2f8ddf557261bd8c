/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-looks: pictures of cells that look alike, each drawn once: a tile of them (app-batch-tiles) is
 * then no more than copies.
 */

#pragma once

#include <cairo.h>

#include "plot-grid.h"

G_BEGIN_DECLS

typedef struct _TmBatchLooks TmBatchLooks;

TmBatchLooks *tm_batch_looks_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_batch_looks_free (TmBatchLooks *looks);

/* Forgets what was drawn for another size, theme or number of device pixels to one of the widget.  Returns:
 * whether it did. */
gboolean tm_batch_looks_prepare (TmBatchLooks *looks, int width, int height, int scale, const TmTheme *theme);

/* Puts a cell, without the focus, at a whole pixel.  Its share of the band is shown in 64 steps up to the
 * limit. */
void tm_batch_looks_put (TmBatchLooks *looks, const TmGridCell *cell, cairo_t *cr, int x, int y);

G_END_DECLS
