/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-chart.h"

#include <math.h>

#include "plot-chart-private.h"
#include "plot-label.h"

/* One more than the limits have, and where those are coarse a tenth of the scatter. */
static guint
choose_figures (const TmChartPlot *plot)
{
  const double sigma = plot->batch->chart.sigma / (double)MAX (1, tm_unit_counts (plot->unit));
  double digits = plot->decimals + 1.0;

  if (sigma > 0)
    digits = CLAMP (floor (1.0 - log10 (sigma)), digits, plot->decimals + 3.0);
  return (guint)MIN (digits, TM_MAX_DECIMALS);
}

static void
take_band (TmChartPlot *plot)
{
  const TmSeries *series = &plot->batch->series;
  const TmFeature *feature = series->feature;

  plot->title = tm_feature_title (feature);
  plot->unit = feature->unit;
  plot->decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  plot->figures = choose_figures (plot);
  plot->lower_text = tm_limit_text (series->limits.has_lower, series->limits.lower, &feature->lower,
                                    feature->unit, plot->decimals);
  plot->upper_text = tm_limit_text (series->limits.has_upper, series->limits.upper, &feature->upper,
                                    feature->unit, plot->decimals);
  plot->band
      = (TmFrameBand) { series->limits,
                        plot->lower_text,
                        plot->upper_text,
                        (plot->show & TM_CHART_SHOW_GUARD) != 0 && isfinite (series->guard) ? series->guard
                                                                                            : 0.0,
                        tm_chart_count (plot, series->target),
                        plot->decimals };
}

TmChartPlot *
tm_chart_plot_new (const TmBatch *batch, guint show)
{
  TmChartPlot *plot;

  g_return_val_if_fail (batch != NULL && batch->series.feature != NULL, NULL);
  plot = g_new0 (TmChartPlot, 1);
  plot->batch = batch;
  plot->show = show;
  plot->outs = g_array_new (FALSE, FALSE, sizeof (guint));
  plot->events = g_array_new (FALSE, FALSE, sizeof (TmFrameEvent));
  plot->location_runs = g_array_new (FALSE, FALSE, sizeof (TmChartRun));
  plot->dispersion_runs = g_array_new (FALSE, FALSE, sizeof (TmChartRun));
  plot->quantiles = g_array_new (FALSE, FALSE, sizeof (TmQuantilePoint));
  take_band (plot);
  tm_chart_fill_items (plot);
  tm_chart_fill_envelopes (plot);
  tm_chart_fill_events (plot);
  tm_chart_fill_runs (plot);
  plot->location_marks = tm_chart_collect_marks (batch->location_hits, plot->n_items, plot->location_counts);
  plot->dispersion_marks
      = tm_chart_collect_marks (batch->dispersion_hits, batch->chart.n_groups, plot->dispersion_counts);
  tm_chart_choose_axis (plot);
  tm_chart_choose_dispersion_axis (plot);
  tm_chart_choose_slots (plot);
  tm_chart_measure_numbers (plot);
  tm_chart_sort (plot);
  tm_chart_fill_bins (plot);
  tm_chart_fill_quantiles (plot);
  tm_chart_fit_shape (plot);
  return plot;
}

void
tm_chart_plot_free (TmChartPlot *plot)
{
  if (plot == NULL)
    return;
  g_free (plot->title);
  g_free (plot->lower_text);
  g_free (plot->upper_text);
  g_free (plot->items);
  g_array_unref (plot->outs);
  g_array_unref (plot->events);
  g_array_unref (plot->location_marks);
  g_array_unref (plot->dispersion_marks);
  g_array_unref (plot->location_runs);
  g_array_unref (plot->dispersion_runs);
  tm_envelope_free (plot->means);
  tm_envelope_free (plot->lows);
  tm_envelope_free (plot->highs);
  tm_envelope_free (plot->dispersions);
  tm_envelope_free (plot->ewma);
  tm_envelope_free (plot->ewma_lower);
  tm_envelope_free (plot->ewma_upper);
  tm_envelope_free (plot->cusum_high);
  tm_envelope_free (plot->cusum_low);
  g_free (plot->sorted);
  g_free (plot->bins.counts);
  g_array_unref (plot->quantiles);
  g_free (plot);
}
