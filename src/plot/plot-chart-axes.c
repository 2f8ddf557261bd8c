/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the axes of a batch’s charts reach over.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

#define MARGIN      0.22 /* of the band, shown beyond each limit */
#define LEAST_AHEAD 20.0 /* pieces that a forecast may reach beyond the last in any case */
#define MOST_AHEAD  1.5  /* likewise, in lengths of the stretch that it comes from */

/* -------- Sizes -------- */

static void
stretch_to_runs (const GArray *runs, double base, double *low, double *high)
{
  for (guint i = 0; i < runs->len; i++)
    {
      const TmChartRun *run = &g_array_index (runs, TmChartRun, i);

      tm_range_stretch (low, high, base + run->lower);
      tm_range_stretch (low, high, base + run->upper);
    }
}

/* How fine sizes are that no pair of limits speaks for: a twentieth of their spread. */
static guint
guess_decimals (const TmChartPlot *plot, double spread)
{
  const double unit = (double)MAX (1, tm_unit_counts (plot->unit));

  if (!(spread > 0))
    return MAX (plot->decimals, 3);
  return MAX (plot->decimals, (guint)CLAMP (ceil (-log10 (spread / unit / 20.0)), 0.0, 8.0));
}

void
tm_chart_choose_axis (TmChartPlot *plot)
{
  const double base = (double)plot->batch->series.reference;
  const TmSpan low = tm_envelope_span (plot->lows, 0, plot->n_items);
  const TmSpan high = tm_envelope_span (plot->highs, 0, plot->n_items);
  const TmLimits *limits = &plot->band.limits;
  TmRange range = { .limits = *limits,
                    .guard = plot->band.guard,
                    .decimals = plot->decimals,
                    .unit = plot->unit,
                    .data_low = base + low.low,
                    .data_high = base + high.high,
                    .mate_low = NAN,
                    .mate_high = NAN,
                    .margin = MARGIN };

  if (!limits->has_lower || !limits->has_upper)
    range.decimals = guess_decimals (plot, high.high - low.low);
  if ((plot->show & TM_CHART_SHOW_CONTROL) != 0)
    stretch_to_runs (plot->location_runs, base, &range.data_low, &range.data_high);
  plot->has_axis = tm_range_choose (&range, &plot->axis);
}

/* From zero to a little over the largest that is shown; where nothing spreads, a step of the limits' last
 * digit. */
void
tm_chart_choose_dispersion_axis (TmChartPlot *plot)
{
  const TmSpan span = tm_envelope_span (plot->dispersions, 0, tm_envelope_length (plot->dispersions));
  double low = 0.0, high = NAN;

  if (span.n > 0)
    tm_range_stretch (&low, &high, span.high);
  stretch_to_runs (plot->dispersion_runs, 0.0, &low, &high);
  plot->has_dispersion = span.n > 0;
  if (!(high > 0))
    high = (double)MAX (1, tm_unit_counts (plot->unit)) * pow (10.0, -(double)plot->decimals);
  plot->dispersion_axis = tm_axis_new (0.0, high * 1.15, plot->unit);
}

/* -------- Pieces -------- */

/* As the forecast was made: through the largest size of each piece where they grow, else the smallest. */
static void
fit_ahead (TmChartPlot *plot)
{
  const TmSeries *series = &plot->batch->series;
  const gboolean grows = plot->batch->trend.slope > 0;
  const guint most = series->n_points - plot->trend_from;
  g_autofree double *x = g_new (double, most + 1), *y = g_new (double, most + 1);
  gsize n = 0;

  for (guint i = plot->trend_from; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      {
        x[n] = i + 1.0;
        y[n++] = grows ? series->points[i].largest : series->points[i].smallest;
      }
  tm_trend_line (x, y, n, &plot->ahead);
}

/* Of pieces still to be measured some are shown, not all of a large job; and events that are not far off. */
static double
find_shown (const TmChartPlot *plot)
{
  const double n = plot->batch->series.n_points;
  const double measured = plot->last >= 0 ? plot->items[plot->last].last + 1.0 : n;
  double shown = MIN (n, ceil (measured * 1.15 + 3.0));

  for (guint i = 0; i < plot->events->len; i++)
    {
      const double at = g_array_index (plot->events, TmFrameEvent, i).at;

      if (at <= measured * 2.0 + 20.0)
        shown = MAX (shown, MIN (n, at));
    }
  return shown;
}

/* The pieces on the axis: those that are shown, and those to come until the size meets the guard while it is
 * not far. */
void
tm_chart_choose_slots (TmChartPlot *plot)
{
  const TmBatch *batch = plot->batch;
  const double last = plot->last >= 0 ? plot->items[plot->last].last : 0.0;
  double ahead;

  plot->slots = MAX (1.0, find_shown (plot));
  plot->trend_from = batch->change.found ? batch->change.at : batch->stretch_from;
  plot->meets = TM_CHART_X (batch->forecast.at);
  plot->foretold = (plot->show & TM_CHART_SHOW_TREND) != 0 && batch->forecast.given && plot->last >= 0
                   && batch->series.n_measured > 3 && isfinite (plot->meets) && plot->meets > last
                   && plot->trend_from < batch->series.n_points;
  if (!plot->foretold)
    return;
  fit_ahead (plot);
  ahead = MAX (LEAST_AHEAD, MOST_AHEAD * (last + 1.0 - plot->trend_from));
  if (plot->meets <= last + ahead)
    plot->slots = MAX (plot->slots, (plot->meets + 1.0) * 1.02);
  else
    plot->slots = MAX (plot->slots, last + 1.0 + ahead / 3.0);
}

/* -------- Numbers beside them -------- */

static void
widen (TmPen *pen, double *widest, char *text, gboolean bold)
{
  const TmTextStyle style = { .bold = bold };
  const double width = tm_text_width (pen, text, &style) / pen->size;

  *widest = MAX (*widest, width);
  g_free (text);
}

/* The two charts share one column of numbers, so that their pieces stand under each other; known before
 * there is anything to draw on, so that a place can be asked for. */
void
tm_chart_measure_numbers (TmChartPlot *plot)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  g_auto (TmPen) pen = { 0 };

  tm_pen_init (&pen, cr, tm_theme_light ());
  widen (&pen, &plot->widest, g_strdup (_ ("target")), FALSE);
  widen (&pen, &plot->widest, g_strdup (plot->lower_text), TRUE);
  widen (&pen, &plot->widest, g_strdup (plot->upper_text), TRUE);
  if (plot->has_axis)
    widen (&pen, &plot->widest,
           tm_chart_size_text (plot, plot->axis.low - (double)plot->batch->series.reference), FALSE);
  if (plot->has_dispersion)
    widen (&pen, &plot->widest, tm_chart_length_text (plot, plot->dispersion_axis.high), FALSE);
  tm_pen_clear (&pen);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}
