/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-mark: the marks that carry a verdict by shape as well as by colour.
 */

#pragma once

#include "core-judge.h"
#include "plot-text.h"

G_BEGIN_DECLS

/* Which way an arrow points; NONE, for pass and fail, makes it a square on its corner. */
typedef enum { TM_POINT_LEFT, TM_POINT_RIGHT, TM_POINT_UP, TM_POINT_DOWN, TM_POINT_NONE } TmPoint;

const TmColour *tm_mark_colour (const TmTheme *theme, TmVerdict verdict);

/* A dot for in, a hatched ring for too close, an arrow that points to its side for out, an open
 * ring for a value that no verdict was given. */
void tm_mark_draw (const TmPen *pen, double x, double y, double radius, TmVerdict verdict, TmPoint point);

/* The same shape, open: a value that is typed and not recorded. */
void tm_mark_draw_hollow (const TmPen *pen, double x, double y, double radius, TmVerdict verdict,
                          TmPoint point);

/* A line from @from to @to with a bar at each end that lies inside @left…@right. */
void tm_whisker_draw (const TmPen *pen, double from, double to, double y, double left, double right,
                      double bar, const TmColour *colour);

/* Diagonal lines over a rectangle. */
void tm_hatch_draw (const TmPen *pen, double x, double y, double width, double height, double gap,
                    const TmColour *colour);

G_END_DECLS
