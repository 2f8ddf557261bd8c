/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-chart: the pictures of a batch: the run chart of one feature in the order of pieces, the dispersion
 * under it, the histogram and the probability plot.
 */

#pragma once

#include <cairo.h>

#include "core-batch.h"
#include "plot-theme.h"

G_BEGIN_DECLS

/* What is drawn on the run chart besides the points, the limits, the target and the events. */
typedef enum {
  TM_CHART_SHOW_GUARD = 1 << 0,
  TM_CHART_SHOW_CONTROL = 1 << 1, /* control limits */
  TM_CHART_SHOW_TREND = 1 << 2,   /* the line of the present stretch and its forecast to the guard */
  TM_CHART_SHOW_EWMA = 1 << 3,
  TM_CHART_SHOW_CUSUM = 1 << 4, /* in a lane of its own under the points */
} TmChartShow;

/* Borrowed; must outlive the plot.  Independent of size and theme. */
typedef struct _TmChartPlot TmChartPlot;
TmChartPlot *tm_chart_plot_new (const TmBatch *batch, guint show) G_GNUC_WARN_UNUSED_RESULT;
void tm_chart_plot_free (TmChartPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmChartPlot, tm_chart_plot_free)

/* Mean of stations with a whisker to the smallest and largest (drawn while there is room for it), limits,
 * target, events as marked lines, each stretch on its own, a mark at each point that a rule speaks of with
 * its words; the piece @focus (its index; -1: none) marked.  Drawn from at most a few values a pixel, however
 * many pieces there are. */
void tm_chart_plot_draw (const TmChartPlot *plot, cairo_t *cr, double width, double height, gint focus,
                         const TmTheme *theme);
/* Moving ranges, ranges or standard deviations with their limits, on the same axis of pieces. */
void tm_chart_plot_draw_dispersion (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                                    const TmTheme *theme);
/* With the band, and the curve of the fitted shape. */
void tm_chart_plot_draw_histogram (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                                   const TmTheme *theme);
/* Quantiles against the normal distribution's, with the line of mean and deviation. */
void tm_chart_plot_draw_probability (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                                     const TmTheme *theme);

/* Index of the piece drawn nearest to @x; -1: none. */
gint tm_chart_plot_piece_at (const TmChartPlot *plot, double width, double height, double x);

/* Each picture in words, translated. */
char *tm_chart_plot_describe (const TmChartPlot *plot) G_GNUC_WARN_UNUSED_RESULT;
char *tm_chart_plot_describe_dispersion (const TmChartPlot *plot) G_GNUC_WARN_UNUSED_RESULT;
char *tm_chart_plot_describe_histogram (const TmChartPlot *plot) G_GNUC_WARN_UNUSED_RESULT;
char *tm_chart_plot_describe_probability (const TmChartPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
