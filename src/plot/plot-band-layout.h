/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-layout: where each part of a band plot goes at a given size.
 */

#pragma once

#include "plot-band-private.h"

G_BEGIN_DECLS

typedef struct {
  double width, height;
  double label_right; /* right end of the row labels; 0: there is no room for any */
  double left, right; /* of the size axis */
  double top, bottom; /* of the limit lines: bottom is the axis */
  double rows_top, row_height;
  guint n_pin_rows;
  double limits_y; /* middle of the limits' numbers; NAN: no room, as for all that follow */
  double proven_y;
  double ticks_y;
  double mate_y;
  double fit_y, fit_second_y; /* the second when the words need two lines */
} TmBandLayout;

void tm_band_layout_fill (TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen, double width,
                          double height);

/* @count along the axis, in the drawing's units. */
double tm_band_layout_x (const TmBandLayout *layout, const TmBandPlot *plot, double count);

/* The words of the fit in one line, or the first of two; free it. */
char *tm_band_fit_line (const TmBandPlot *plot);

/* The largest pin that went, or the smallest that did not: they close in on the size.  NULL: none. */
const TmBandPin *tm_band_tightest_pin (const TmBandPlot *plot, gboolean went);

G_END_DECLS
