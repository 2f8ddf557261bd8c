/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The groups that a chart of a batch draws, ready to be asked for by place.
 */

#include <math.h>

#include "plot-chart-private.h"

/* -------- Groups -------- */

/* A group reaches to the next; one of individuals is its own piece. */
static guint
find_group_end (const TmBatch *batch, guint group)
{
  const TmChart *chart = &batch->chart;

  if (batch->options.group_size <= 1)
    return chart->groups[group].from + 1;
  return group + 1 < chart->n_groups ? chart->groups[group + 1].from : batch->series.n_points;
}

/* The worst of a group's pieces: out before too close before in. */
static guint
rank_verdict (TmVerdict verdict)
{
  switch (verdict)
    {
    case TM_VERDICT_OUT:
      return 3;
    case TM_VERDICT_TOO_CLOSE:
      return 2;
    case TM_VERDICT_IN:
      return 1;
    case TM_VERDICT_NOT_MEASURED:
    case TM_N_VERDICTS:
    default:
      return 0;
    }
}

static void
join_point (TmChartItem *item, const TmSeriesPoint *point)
{
  tm_range_stretch (&item->low, &item->high, point->smallest);
  tm_range_stretch (&item->low, &item->high, point->largest);
  if (rank_verdict (point->verdict) > rank_verdict (item->verdict))
    item->verdict = (guint8)point->verdict;
}

static TmPoint
find_arrow (const TmSeries *series, const TmChartItem *item)
{
  if (!isfinite (series->lower) && !isfinite (series->upper))
    return TM_POINT_NONE;
  return item->high - series->upper > series->lower - item->low ? TM_POINT_UP : TM_POINT_DOWN;
}

/* Stands in the middle of those of its pieces that were measured. */
static TmChartItem
make_item (const TmSeries *series, guint from, guint end, double mean)
{
  TmChartItem item = { .first = from,
                       .last = MAX (end, from + 1) - 1,
                       .mean = isfinite (mean) ? mean : NAN,
                       .low = NAN,
                       .high = NAN,
                       .verdict = TM_VERDICT_NOT_MEASURED };
  gboolean any = FALSE;

  for (guint i = from; i < end && isfinite (item.mean); i++)
    {
      if (!isfinite (series->points[i].mean))
        continue;
      join_point (&item, &series->points[i]);
      item.first = any ? item.first : i;
      item.last = i;
      any = TRUE;
    }
  tm_range_stretch (&item.low, &item.high, item.mean);
  item.x = ((double)item.first + item.last) / 2.0;
  item.point = (guint8)find_arrow (series, &item);
  return item;
}

void
tm_chart_fill_items (TmChartPlot *plot)
{
  const TmBatch *batch = plot->batch;
  const TmSeries *series = &batch->series;
  guint stretch = 0;

  plot->n_items = batch->chart.n_groups;
  plot->items = g_new (TmChartItem, MAX (1, plot->n_items));
  plot->last = -1;
  plot->gapless = TRUE;
  for (guint i = 0; i < plot->n_items; i++)
    {
      const TmChartGroup *group = &batch->chart.groups[i];
      TmChartItem *item = &plot->items[i];

      *item = make_item (series, group->from, find_group_end (batch, i), group->location);
      while (stretch < series->n_breaks && series->breaks[stretch] <= item->first)
        stretch++;
      item->stretch = stretch;
      plot->gapless = plot->gapless && item->first == i && item->last == i;
      if (isfinite (item->mean))
        plot->last = (gint)i;
      if (item->verdict == TM_VERDICT_OUT)
        g_array_append_val (plot->outs, i);
    }
}

/* Pieces are measured evenly, so that a guess by proportion is nearly right; a plain bisection of a long run
 * would fetch memory from all over it, for every column of pixels. */
guint
tm_chart_find_item (const TmChartPlot *plot, double x)
{
  const double share = x * plot->n_items / MAX (1.0, plot->batch->series.n_points);
  guint low, high, step = 4;

  if (plot->n_items == 0)
    return 0;
  if (plot->gapless)
    return (guint)CLAMP (ceil (x), 0.0, plot->n_items);
  low = high = (guint)CLAMP (share, 0.0, plot->n_items - 1.0);
  while (low > 0 && plot->items[low].x >= x)
    {
      low -= MIN (low, step);
      step *= 4;
    }
  for (step = 4; high < plot->n_items && plot->items[high].x < x; step *= 4)
    high += MIN (plot->n_items - high, step);
  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (plot->items[middle].x < x)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* -------- Envelopes -------- */

static double
get_mean_cb (gconstpointer data, gsize at)
{
  return ((const TmChartItem *)data)[at].mean;
}

static double
get_low_cb (gconstpointer data, gsize at)
{
  return ((const TmChartItem *)data)[at].low;
}

static double
get_high_cb (gconstpointer data, gsize at)
{
  return ((const TmChartItem *)data)[at].high;
}

static double
get_dispersion_cb (gconstpointer data, gsize at)
{
  return ((const TmChartGroup *)data)[at].dispersion;
}

static double
get_ewma_cb (gconstpointer data, gsize at)
{
  return ((const TmEwmaPoint *)data)[at].value;
}

static double
get_ewma_lower_cb (gconstpointer data, gsize at)
{
  return ((const TmEwmaPoint *)data)[at].lower;
}

static double
get_ewma_upper_cb (gconstpointer data, gsize at)
{
  return ((const TmEwmaPoint *)data)[at].upper;
}

static double
get_cusum_high_cb (gconstpointer data, gsize at)
{
  return ((const TmCusumPoint *)data)[at].high;
}

static double
get_cusum_low_cb (gconstpointer data, gsize at)
{
  return -((const TmCusumPoint *)data)[at].low;
}

void
tm_chart_fill_envelopes (TmChartPlot *plot)
{
  const TmBatch *batch = plot->batch;
  const gboolean level = isfinite (batch->chart.centre) && batch->chart.sigma > 0;

  plot->means = tm_envelope_new (get_mean_cb, plot->items, plot->n_items);
  plot->lows = tm_envelope_new (get_low_cb, plot->items, plot->n_items);
  plot->highs = tm_envelope_new (get_high_cb, plot->items, plot->n_items);
  plot->dispersions = tm_envelope_new (get_dispersion_cb, batch->chart.groups, batch->chart.n_groups);
  if ((plot->show & TM_CHART_SHOW_EWMA) != 0 && batch->ewma != NULL && level)
    {
      plot->ewma = tm_envelope_new (get_ewma_cb, batch->ewma, batch->chart.n_groups);
      plot->ewma_lower = tm_envelope_new (get_ewma_lower_cb, batch->ewma, batch->chart.n_groups);
      plot->ewma_upper = tm_envelope_new (get_ewma_upper_cb, batch->ewma, batch->chart.n_groups);
    }
  if ((plot->show & TM_CHART_SHOW_CUSUM) != 0 && batch->cusum != NULL && level)
    {
      plot->cusum_high = tm_envelope_new (get_cusum_high_cb, batch->cusum, batch->chart.n_groups);
      plot->cusum_low = tm_envelope_new (get_cusum_low_cb, batch->cusum, batch->chart.n_groups);
    }
}
