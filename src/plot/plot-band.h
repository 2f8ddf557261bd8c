/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band: the band plot of one place of one feature: limits, proven and guard zones, each
 * station with its reading and uncertainty, pins, the mate at the same scale.
 */

#pragma once

#include <cairo.h>

#include "core-cut-work.h"
#include "core-judge.h"
#include "core-model.h"
#include "plot-theme.h"

G_BEGIN_DECLS

/* Everything the drawing shows, computed once from the record; independent of size and theme. */
typedef struct _TmBandPlot TmBandPlot;

/* What stands in the entry, to be shown hollow beside the record. */
typedef struct {
  TmQuantity value;    /* not given: nothing that can be read is typed */
  const char *station; /* where it goes; NULL: the feature has no stations */
  const char *method;  /* by which it is taken; NULL or "": the feature's own */
} TmBandEntry;

/* @entry may be NULL.  What is typed, and the guard while nothing is read, go by its method. */
TmBandPlot *tm_band_plot_new (const TmJob *job, const TmJudgement *judgement,
                              const TmBandEntry *entry) G_GNUC_WARN_UNUSED_RESULT;
void tm_band_plot_free (TmBandPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmBandPlot, tm_band_plot_free)

/* The cut being planned: where the size is now with its spread, where it will be after, the aim and, where
 * the mate as measured narrows them, the limits that hold.  Copied; NULL: none. */
void tm_band_plot_set_plan (TmBandPlot *plot, const TmCutAdvice *plan);

/* The size that the plan leads to, and how far one mark of the dial moves it (0: unknown), in counts; FALSE:
 * no plan is shown. */
gboolean tm_band_plot_get_aim (const TmBandPlot *plot, gint64 *size, double *per_mark);

/* Keeps @plot's axis as that of @as, so that nothing moves under a finger that drags; NULL: its own
 * again. */
void tm_band_plot_hold_axis (TmBandPlot *plot, const TmBandPlot *as);

/* For dragging the aim: where the predicted size lies in a drawing of that size (FALSE: no plan shown), and
 * the size at a point of it. */
gboolean tm_band_plot_aim_at (const TmBandPlot *plot, double width, double height, double *x, double *y);
gint64 tm_band_plot_size_at (const TmBandPlot *plot, double width, double height, double x, double y);

/* Draws into 0,0 … width,height of @cr.  Any size, down to nothing, is safe. */
void tm_band_plot_draw (const TmBandPlot *plot, cairo_t *cr, double width, double height,
                        const TmTheme *theme);

/* The picture in words, for a screen reader and a picture's alternative text. Translated. */
char *tm_band_plot_describe (const TmBandPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

/* The small strip of the feature list: band, guard and where the readings lie. */
void tm_band_strip_draw (const TmJudgement *judgement, cairo_t *cr, double width, double height,
                         const TmTheme *theme);

/* A PNG of the plot, @scale pixels per unit. Returns: FALSE with @error on failure. */
GBytes *tm_band_plot_to_png (const TmBandPlot *plot, double width, double height, double scale,
                             const TmTheme *theme, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
