/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "plot-chart-private.h"
#include "plot-label.h"

#define MARGIN      0.22 /* of the band, shown beyond each limit */
#define LEAST_AHEAD 20.0 /* pieces that a forecast may reach beyond the last in any case */
#define MOST_AHEAD  1.5  /* likewise, in lengths of the stretch that it comes from */

/* -------- Words of numbers -------- */

double
tm_chart_count (const TmChartPlot *plot, double relative)
{
  return (double)plot->batch->series.reference + relative;
}

char *
tm_chart_size_text (const TmChartPlot *plot, double relative)
{
  const double count = CLAMP (tm_chart_count (plot, relative), -(double)TM_COUNT_MAX, (double)TM_COUNT_MAX);

  return tm_count_format ((gint64)llround (count), plot->unit, MIN (plot->decimals + 1, TM_MAX_DECIMALS));
}

/* Two digits that count, in the shop's small unit. */
char *
tm_chart_length_text (const TmChartPlot *plot, double counts)
{
  const TmUnit unit = tm_unit_small (plot->unit);
  const double value = fabs (counts) / (double)MAX (1, tm_unit_counts (unit));
  g_autofree char *number = NULL;
  double digits = 0.0;

  if (value > 0)
    digits = 1.0 - floor (log10 (value * (1 + 1e-9)));
  number = tm_count_format ((gint64)llround (CLAMP (counts, -4e18, 4e18)), unit, (guint)CLAMP (digits, 0, 6));
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (unit));
}

/* The number at the end of a serial; FALSE where there is none that can be counted on. */
static gboolean
split_serial (const char *serial, guint64 *number, gsize *from)
{
  const gsize length = strlen (serial);

  *from = length;
  while (*from > 0 && g_ascii_isdigit (serial[*from - 1]))
    (*from)--;
  if (*from == length || length - *from > 15)
    return FALSE;
  *number = g_ascii_strtoull (serial + *from, NULL, 10);
  return TRUE;
}

/* TRUE where the serials before @piece count in ones, so that those to come can be told. */
static gboolean
continue_serials (const TmSeries *series, guint piece, char **name)
{
  const char *last = series->points[series->n_points - 1].piece->serial;
  guint64 number, before;
  gsize from, from_before;

  if (!split_serial (last, &number, &from))
    return FALSE;
  if (series->n_points > 1
      && (!split_serial (series->points[series->n_points - 2].piece->serial, &before, &from_before)
          || number != before + 1))
    return FALSE;
  *name = g_strdup_printf ("%.*s%0*" G_GUINT64_FORMAT, (int)from, last, (int)(strlen (last) - from),
                           number + (piece - (series->n_points - 1)));
  return TRUE;
}

char *
tm_chart_piece_name (const TmChartPlot *plot, guint piece)
{
  const TmSeries *series = &plot->batch->series;
  char *name;

  if (piece < series->n_points)
    return g_strdup (series->points[piece].piece->serial);
  if (series->n_points > 0 && continue_serials (series, piece, &name))
    return name;
  return g_strdup_printf ("%u", piece + 1);
}

/* A group reaches to the next; one of individuals is its own piece. */
static guint
find_group_end (const TmBatch *batch, guint group)
{
  const TmChart *chart = &batch->chart;

  if (batch->options.group_size <= 1)
    return chart->groups[group].from + 1;
  return group + 1 < chart->n_groups ? chart->groups[group + 1].from : batch->series.n_points;
}

char *
tm_chart_item_name (const TmChartPlot *plot, guint item)
{
  g_autofree char *first = tm_chart_piece_name (plot, plot->items[item].first), *last = NULL;

  if (plot->items[item].last == plot->items[item].first)
    return g_steal_pointer (&first);
  last = tm_chart_piece_name (plot, plot->items[item].last);
  /* Translators: a group of pieces, from the first serial number to the last. */
  return g_strdup_printf (_ ("%s to %s"), first, last);
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

/* -------- Items -------- */

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

static void
fill_items (TmChartPlot *plot)
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

static void
fill_envelopes (TmChartPlot *plot)
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

/* -------- Events and marks -------- */

static void
clear_event_cb (gpointer data)
{
  g_free (((TmFrameEvent *)data)->label);
}

static int
compare_events_cb (gconstpointer a, gconstpointer b)
{
  const double first = ((const TmFrameEvent *)a)->at, second = ((const TmFrameEvent *)b)->at;

  return first < second ? -1 : first > second;
}

/* What happened between the same two pieces stands at one line. */
static gboolean
join_event (GArray *events, const TmFrameEvent *event)
{
  TmFrameEvent *last;
  char *both;

  if (events->len == 0)
    return FALSE;
  last = &g_array_index (events, TmFrameEvent, events->len - 1);
  if (last->at < event->at || last->at > event->at)
    return FALSE;
  /* Translators: two events between the same two pieces. */
  both = g_strdup_printf (_ ("%s, %s"), last->label, event->label);
  g_free (last->label);
  g_free (event->label);
  last->label = both;
  last->lesser = last->lesser && event->lesser;
  return TRUE;
}

static void
fill_events (TmChartPlot *plot)
{
  const TmSeries *series = &plot->batch->series;
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (TmFrameEvent));

  for (guint i = 0; i < series->n_events; i++)
    {
      const TmSeriesEvent *event = &series->events[i];
      const TmFrameEvent shown = { .at = MIN (event->before, series->n_points),
                                   .label = tm_event_label (event->event),
                                   .lesser = !event->resets };

      g_array_append_val (all, shown);
    }
  g_array_sort (all, compare_events_cb);
  for (guint i = 0; i < all->len; i++)
    {
      const TmFrameEvent *event = &g_array_index (all, TmFrameEvent, i);

      if (!join_event (plot->events, event))
        g_array_append_val (plot->events, *event);
    }
}

static void
add_hit (GArray *marks, const TmRuleHit *hit)
{
  TmChartMark mark = { .item = hit->point };

  if (marks->len == 0 || g_array_index (marks, TmChartMark, marks->len - 1).item != hit->point)
    g_array_append_val (marks, mark);
  g_array_index (marks, TmChartMark, marks->len - 1).rules |= TM_RULE_BIT (hit->rule);
}

static GArray *
collect_marks (const GArray *hits, guint n_items)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (TmChartMark));

  for (guint i = 0; hits != NULL && i < hits->len; i++)
    if (g_array_index (hits, TmRuleHit, i).point < n_items)
      add_hit (marks, &g_array_index (hits, TmRuleHit, i));
  for (guint i = 0; i < marks->len; i++)
    {
      TmChartMark *mark = &g_array_index (marks, TmChartMark, i);

      mark->fresh = mark->rules;
      if (i > 0 && mark[-1].item + 1 == mark->item)
        mark->fresh &= ~mark[-1].rules;
    }
  return marks;
}

/* -------- Control limits -------- */

static gboolean
same (double a, double b)
{
  return !(a < b) && !(a > b);
}

static void
add_run (GArray *runs, const TmChartRun *run)
{
  TmChartRun *last = runs->len > 0 ? &g_array_index (runs, TmChartRun, runs->len - 1) : NULL;

  if (!isfinite (run->lower) || !isfinite (run->upper))
    return;
  if (last != NULL && same (last->lower, run->lower) && same (last->upper, run->upper))
    last->to = run->to;
  else
    g_array_append_val (runs, *run);
}

static void
fill_runs (TmChartPlot *plot)
{
  const TmChart *chart = &plot->batch->chart;

  for (guint i = 0; i < chart->n_groups && chart->status == TM_CHART_OK; i++)
    {
      const TmChartGroup *group = &chart->groups[i];
      const TmChartItem *item = &plot->items[i];
      const double from = item->first;
      const double to = i + 1 < chart->n_groups ? chart->groups[i + 1].from : item->last + 1.0;
      const TmChartRun location
          = { from, to, group->location_lower, (group->location_lower + group->location_upper) / 2.0,
              group->location_upper };
      const TmChartRun dispersion
          = { from, to, group->dispersion_lower, group->dispersion_centre, group->dispersion_upper };

      add_run (plot->location_runs, &location);
      add_run (plot->dispersion_runs, &dispersion);
    }
}

/* -------- Axes -------- */

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

static void
choose_axis (TmChartPlot *plot)
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

/* From zero to a little over the largest that is shown. */
static void
choose_dispersion_axis (TmChartPlot *plot)
{
  const TmSpan span = tm_envelope_span (plot->dispersions, 0, tm_envelope_length (plot->dispersions));
  double low = 0.0, high = NAN;

  if (span.n > 0)
    tm_range_stretch (&low, &high, span.high);
  stretch_to_runs (plot->dispersion_runs, 0.0, &low, &high);
  plot->has_dispersion = span.n > 0;
  plot->dispersion_axis = tm_axis_new (0.0, high > 0 ? high * 1.15 : 1.0, plot->unit);
}

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
static void
choose_slots (TmChartPlot *plot)
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
static void
measure_numbers (TmChartPlot *plot)
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

/* -------- The plot -------- */

static void
take_band (TmChartPlot *plot)
{
  const TmSeries *series = &plot->batch->series;
  const TmFeature *feature = series->feature;

  plot->title = tm_feature_title (feature);
  plot->unit = feature->unit;
  plot->decimals = MAX (feature->lower.decimals, feature->upper.decimals);
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
  g_array_set_clear_func (plot->events, clear_event_cb);
  plot->location_runs = g_array_new (FALSE, FALSE, sizeof (TmChartRun));
  plot->dispersion_runs = g_array_new (FALSE, FALSE, sizeof (TmChartRun));
  plot->quantiles = g_array_new (FALSE, FALSE, sizeof (TmQuantilePoint));
  take_band (plot);
  fill_items (plot);
  fill_envelopes (plot);
  fill_events (plot);
  fill_runs (plot);
  plot->location_marks = collect_marks (batch->location_hits, plot->n_items);
  plot->dispersion_marks = collect_marks (batch->dispersion_hits, batch->chart.n_groups);
  choose_axis (plot);
  choose_dispersion_axis (plot);
  choose_slots (plot);
  measure_numbers (plot);
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
