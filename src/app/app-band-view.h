/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-band-view: the band plot as a widget: a picture with its words for a screen reader.
 *
 * While its plot shows a planned cut, the aim can be dragged, and the arrow keys move it when the picture has
 * the focus: the signal "aim-moved" (gint64 size, counts) asks for a plan that leads there.
 */

#pragma once

#include <gtk/gtk.h>

#include "plot-band.h"

G_BEGIN_DECLS

#define TM_TYPE_BAND_VIEW (tm_band_view_get_type ())
G_DECLARE_FINAL_TYPE (TmBandView, tm_band_view, TM, BAND_VIEW, GtkWidget)

GtkWidget *tm_band_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Takes ownership of @plot; NULL shows nothing.  While the aim is dragged its axis is that of the plot before
 * it. */
void tm_band_view_take_plot (TmBandView *self, TmBandPlot *plot);

/* Shows another plan on the plot that it has; NULL: none. */
void tm_band_view_set_plan (TmBandView *self, const TmCutAdvice *plan);

/* The smallest that a picture is shown at. */
#define TM_PICTURE_MIN_WIDTH  320
#define TM_PICTURE_MIN_HEIGHT 160

/* In a large window a picture grows as a whole, lettering too, so that it is read from further off:
 * by how much at this size. */
double tm_picture_scale (int width, int height);

/* The theme that goes with the present light or dark style. */
const TmTheme *tm_app_theme (void);

G_END_DECLS
