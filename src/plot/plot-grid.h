/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-grid: cells of pieces × features, tinted by the share of the band that is used.
 */

#pragma once

#include <cairo.h>

#include "core-judge.h"
#include "plot-theme.h"

G_BEGIN_DECLS

/* One cell, small on purpose: there may be 400,000. */
typedef struct {
  gfloat used; /* share of the half band from the middle to the limit that the worst station uses, 0..; NAN:
                  none to tell */
  guint8 verdict; /* TmVerdict */
  guint8 side;    /* TmSide */
  guint8 due;     /* gboolean */
  guint8 point;   /* TmPoint of plot-mark.h: LEFT, RIGHT when out below or above the band; else NONE */
} TmGridCell;

/* Draws one cell: blue by share while in, orange and hatched too close, vermilion with an arrow
 * towards smaller or larger when out, grey when due and not measured, empty when not due. */
void tm_grid_cell_draw (const TmGridCell *cell, cairo_t *cr, double x, double y, double width, double height,
                        gboolean focused, const TmTheme *theme);

/* The cell of a judgement. */
TmGridCell tm_grid_cell (const TmJudgement *judgement, gboolean due);

G_END_DECLS
