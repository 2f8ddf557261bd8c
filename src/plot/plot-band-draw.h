/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-draw: what the files that draw a band plot share.
 */

#pragma once

#include "plot-band-layout.h"

G_BEGIN_DECLS

/* All that one drawing of one plot needs. */
typedef struct {
  TmPen pen;
  const TmBandPlot *plot;
  TmBandLayout at;
} TmBandDrawing;

void tm_band_draw_line (const TmBandDrawing *d, double x1, double y1, double x2, double y2, double width,
                        const TmColour *colour, double opacity);

/* Where a count stands across; and the nearest place on the axis. */
double tm_band_draw_x (const TmBandDrawing *d, double count);
double tm_band_draw_inside (const TmBandDrawing *d, double x);

/* A row's name, right-aligned before the axis; @scale of the ordinary text size. */
void tm_band_draw_label (TmBandDrawing *d, const char *label, double y, double scale, gboolean dim);

/* The cut being planned (plot-band-draw-plan.c): its lines through all rows, under the marks; the numbers of
 * the limits that the mate narrows, which leave *@left…*@right between them; its own lanes. */
void tm_band_draw_plan_lines (TmBandDrawing *d);
void tm_band_draw_plan_numbers (TmBandDrawing *d, double *left, double *right);
void tm_band_draw_plan (TmBandDrawing *d);

/* The rows of pins (plot-band-draw-pins.c). */
void tm_band_draw_pins (TmBandDrawing *d);

G_END_DECLS
