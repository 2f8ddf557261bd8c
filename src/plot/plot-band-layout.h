/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-layout: where each part of a band plot goes at a given size.
 */

#pragma once

#include "plot-band-private.h"

G_BEGIN_DECLS

#define TM_BAND_MOST_PINS 4
#define TM_BAND_PART_TEXT 0.88 /* size of the name and value of one method among several */

/* Where a pin and its words stand among the rows of pins. */
typedef struct {
  const TmBandPin *pin;
  guint row;
  double text_x;
  TmAlign align;
  double from, to; /* what it takes up across */
} TmBandPinPlace;

typedef struct {
  double width, height;
  double label_right; /* right end of the row labels; 0: there is no room for any */
  double left, right; /* of the size axis */
  double top, bottom; /* of the limit lines: bottom is the axis */
  double rows_top, row_height;
  double part_height; /* of the row of one method among several */
  double pins_top;
  guint n_pin_rows;
  TmBandPinPlace pins[TM_BAND_MOST_PINS];
  guint n_pins;
  double plan_top, plan_height; /* the cut being planned, over the axis; 0: none */
  double plan_now_y;            /* middle of where the size is */
  double plan_peak, plan_base;  /* top and foot of the spread after the cut */
  double plan_grip;             /* radius of what is dragged, its middle on the foot */
  double limits_y;              /* middle of the limits' numbers; NAN: no room, as for all that follow */
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

/* Chooses which pins are shown (the largest that went, the smallest that did not, those to pull) and
 * spreads them over as few rows as keep their words apart; needs the columns (plot-band-pins.c). */
void tm_band_layout_pins (TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen);

G_END_DECLS
