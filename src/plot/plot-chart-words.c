/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures of a batch in sentences, for those who do not see them.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

/* Of one kind are told; of the rest their number. */
#define MOST_TOLD 10

/* -------- Sentences -------- */

static void add (GString *out, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add (GString *out, const char *format, ...)
{
  va_list arguments;

  if (out->len > 0)
    g_string_append_c (out, ' ');
  va_start (arguments, format);
  g_string_append_vprintf (out, format, arguments);
  va_end (arguments);
}

static const char *
find_symbol (const TmChartPlot *plot)
{
  return tm_unit_symbol (plot->unit);
}

static void
add_limits (const TmChartPlot *plot, GString *out)
{
  const TmLimits *limits = &plot->band.limits;

  if (limits->has_lower && limits->has_upper && !limits->zero_bounded)
    add (out, _ ("The limits are %s and %s %s."), plot->lower_text, plot->upper_text, find_symbol (plot));
  else if (limits->has_upper)
    add (out, _ ("The upper limit is %s %s."), plot->upper_text, find_symbol (plot));
  else if (limits->has_lower)
    add (out, _ ("The lower limit is %s %s."), plot->lower_text, find_symbol (plot));
  else
    add (out, _ ("There are no limits."));
}

/* -------- Run chart -------- */

static void
add_measured (const TmChartPlot *plot, GString *out)
{
  const TmSpan span = tm_envelope_span (plot->means, 0, plot->n_items);
  g_autofree char *low = tm_chart_size_text (plot, span.low);
  g_autofree char *high = tm_chart_size_text (plot, span.high);

  if (!(span.high > span.low))
    add (out,
         ngettext ("%u of %u piece measured, at %s %s.", "%u of %u pieces measured, at %s %s.",
                   plot->batch->series.n_points),
         plot->n_sorted, plot->batch->series.n_points, low, find_symbol (plot));
  else
    add (out,
         ngettext ("%u of %u piece measured, from %s to %s %s.",
                   "%u of %u pieces measured, from %s to %s %s.", plot->batch->series.n_points),
         plot->n_sorted, plot->batch->series.n_points, low, high, find_symbol (plot));
}

static void
add_outs (const TmChartPlot *plot, GString *out)
{
  const guint n = plot->outs->len;

  for (guint i = 0; i < MIN (n, MOST_TOLD); i++)
    {
      g_autofree char *name = tm_chart_item_name (plot, g_array_index (plot->outs, guint, i));

      add (out, _ ("Piece %s lies outside."), name);
    }
  if (n > MOST_TOLD)
    add (out, ngettext ("So does %u more.", "So do %u more.", n - MOST_TOLD), n - MOST_TOLD);
}

static void
add_event (const TmChartPlot *plot, const TmFrameEvent *event, GString *out)
{
  const guint piece = (guint)event->at;
  g_autofree char *name = NULL;

  if (piece >= plot->batch->series.n_points)
    {
      add (out, _ ("After the last piece: %s."), event->label);
      return;
    }
  name = tm_chart_piece_name (plot, piece);
  add (out, _ ("Before piece %s: %s."), name, event->label);
}

static void
add_events (const TmChartPlot *plot, GString *out)
{
  const guint n = plot->events->len;

  for (guint i = 0; i < MIN (n, MOST_TOLD); i++)
    add_event (plot, &g_array_index (plot->events, TmFrameEvent, i), out);
  if (n > MOST_TOLD)
    add (out, ngettext ("There is %u event more.", "There are %u events more.", n - MOST_TOLD),
         n - MOST_TOLD);
}

static const TmChartMark *
get_mark (const GArray *marks, guint index)
{
  return &g_array_index (marks, TmChartMark, index);
}

/* The mark after the run of groups, one after another, at which @rule speaks from @from on. */
static guint
find_run_end (const GArray *marks, guint rule, guint from)
{
  guint end = from + 1;

  while (end < marks->len && get_mark (marks, end)->item == get_mark (marks, end - 1)->item + 1
         && (get_mark (marks, end)->rules & TM_RULE_BIT (rule)) != 0)
    end++;
  return end;
}

static void
append_run (const TmChartPlot *plot, guint first, guint last, GString *out)
{
  const guint from = plot->items[first].first, to = plot->items[last].last;
  g_autofree char *name = tm_chart_piece_name (plot, from), *end = NULL;

  if (out->len > 0)
    g_string_append (out, ", ");
  if (from == to)
    {
      g_string_append (out, name);
      return;
    }
  end = tm_chart_piece_name (plot, to);
  /* Translators: pieces in a row, from the first serial number to the last. */
  g_string_append_printf (out, _ ("%s to %s"), name, end);
}

/* All the pieces that one rule speaks of, those in a row as one. */
static void
add_rule (const TmChartPlot *plot, const GArray *marks, guint rule, GString *out)
{
  g_autoptr (GString) runs = g_string_new (NULL);
  guint told = 0, pieces = 0, more = 0;

  for (guint i = 0, end; i < marks->len; i = end)
    {
      end = i + 1;
      if ((get_mark (marks, i)->rules & TM_RULE_BIT (rule)) == 0)
        continue;
      end = find_run_end (marks, rule, i);
      if (told++ < MOST_TOLD)
        append_run (plot, get_mark (marks, i)->item, get_mark (marks, end - 1)->item, runs);
      else
        more += end - i;
      pieces += plot->items[get_mark (marks, end - 1)->item].last
                - plot->items[get_mark (marks, i)->item].first + 1;
    }
  if (more > 0)
    add (out, _ ("At pieces %s and %u points more: %s."), runs->str, more, _ (tm_run_rule_text (rule)));
  else if (pieces > 0)
    /* Translators: the pieces at which a run rule speaks, then what it says. */
    add (out, ngettext ("At piece %s: %s.", "At pieces %s: %s.", pieces), runs->str,
         _ (tm_run_rule_text (rule)));
}

static void
add_marks (const TmChartPlot *plot, const GArray *marks, const guint counts[TM_N_RUN_RULES], GString *out)
{
  for (guint rule = 0; rule < TM_N_RUN_RULES; rule++)
    if (counts[rule] > 0)
      add_rule (plot, marks, rule, out);
}

static void
add_control (const TmChartPlot *plot, GString *out)
{
  const GArray *runs = plot->location_runs;
  g_autofree char *lower = NULL, *upper = NULL;
  const TmChartRun *last;

  if ((plot->show & TM_CHART_SHOW_CONTROL) == 0)
    return;
  if (runs->len == 0)
    {
      add (out, plot->batch->chart.status == TM_CHART_NO_SPREAD
                    ? _ ("All are equal, so there are no control limits.")
                    : _ ("There are too few pieces for control limits."));
      return;
    }
  last = &g_array_index (runs, TmChartRun, runs->len - 1);
  upper = tm_chart_size_text (plot, last->upper);
  if (isfinite (last->lower))
    {
      lower = tm_chart_size_text (plot, last->lower);
      add (out, _ ("The control limits are %s and %s %s."), lower, upper, find_symbol (plot));
    }
  else
    add (out, _ ("The upper control limit is %s %s."), upper, find_symbol (plot));
  if (plot->location_marks->len == 0)
    add (out, _ ("No rule speaks."));
}

static void
add_meeting (const TmChartPlot *plot, GString *out)
{
  const TmForecast *forecast = &plot->batch->forecast;
  const double first = TM_CHART_X (forecast->low), last = TM_CHART_X (forecast->high);
  g_autofree char *at = NULL, *low = NULL, *high = NULL;

  if (!plot->foretold || !(plot->meets < 1e9))
    return;
  at = tm_chart_piece_name (plot, (guint)plot->meets);
  if (!isfinite (last) || !isfinite (first) || last > 1e9)
    {
      add (out, _ ("It meets the guarded limit about piece %s."), at);
      return;
    }
  low = tm_chart_piece_name (plot, (guint)MAX (0.0, first));
  high = tm_chart_piece_name (plot, (guint)MAX (0.0, last));
  add (out, _ ("It meets the guarded limit about piece %s, between %s and %s."), at, low, high);
}

static void
add_trend (const TmChartPlot *plot, GString *out)
{
  const TmTrend *trend = &plot->batch->trend;
  g_autofree char *slope = NULL, *from = NULL;

  if ((plot->show & TM_CHART_SHOW_TREND) == 0 || trend->status == TM_TREND_TOO_FEW || plot->n_sorted <= 3)
    return;
  if (!tm_chart_has_drift (plot))
    {
      add (out, _ ("No drift is shown."));
      return;
    }
  slope = tm_chart_length_text (plot, fabs (trend->slope));
  from = tm_chart_piece_name (plot, plot->trend_from);
  add (out,
       trend->slope > 0 ? _ ("From piece %s the size rises by %s a piece.")
                        : _ ("From piece %s the size falls by %s a piece."),
       from, slope);
  add_meeting (plot, out);
}

static void
add_change (const TmChartPlot *plot, GString *out)
{
  const TmLevelChange *change = &plot->batch->change;
  g_autofree char *at = NULL, *low = NULL, *high = NULL;

  if (!change->found || change->high >= plot->batch->series.n_points)
    return;
  at = tm_chart_piece_name (plot, change->at);
  if (change->low == change->high)
    {
      add (out, _ ("The level changed at piece %s."), at);
      return;
    }
  low = tm_chart_piece_name (plot, change->low);
  high = tm_chart_piece_name (plot, change->high);
  add (out, _ ("The level changed most likely at piece %s, between %s and %s."), at, low, high);
}

static void
add_memory (const TmChartPlot *plot, GString *out)
{
  const gint ewma = plot->batch->first_ewma, cusum = plot->batch->first_cusum;
  g_autofree char *first = NULL, *second = NULL;

  if (plot->ewma != NULL && ewma >= 0 && (guint)ewma < plot->n_items)
    {
      first = tm_chart_item_name (plot, (guint)ewma);
      add (out, _ ("The moving average leaves its limits at piece %s."), first);
    }
  else if (plot->ewma != NULL)
    add (out, _ ("The moving average stays within its limits."));
  if (plot->cusum_high != NULL && cusum >= 0 && (guint)cusum < plot->n_items)
    {
      second = tm_chart_item_name (plot, (guint)cusum);
      add (out, _ ("The cumulative sum signals at piece %s."), second);
    }
  else if (plot->cusum_high != NULL)
    add (out, _ ("The cumulative sum does not signal."));
}

char *
tm_chart_plot_describe (const TmChartPlot *plot)
{
  GString *out;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  add (out, _ ("%s by piece."), plot->title);
  if (plot->n_sorted == 0)
    add (out, _ ("There are no sizes yet."));
  else
    add_measured (plot, out);
  add_limits (plot, out);
  add_outs (plot, out);
  add_events (plot, out);
  if (plot->n_sorted > 0)
    {
      add_control (plot, out);
      add_marks (plot, plot->location_marks, plot->location_counts, out);
      add_trend (plot, out);
      add_change (plot, out);
      add_memory (plot, out);
    }
  return g_string_free (out, FALSE);
}

/* -------- Dispersion -------- */

static void
add_dispersions (const TmChartPlot *plot, GString *out)
{
  const TmSpan span = tm_envelope_span (plot->dispersions, 0, tm_envelope_length (plot->dispersions));
  g_autofree char *low = tm_chart_length_text (plot, span.low);
  g_autofree char *high = tm_chart_length_text (plot, span.high);

  switch (plot->batch->chart.kind)
    {
    case TM_CHART_RANGES:
      add (out, _ ("%s: ranges within each group, from %s to %s."), plot->title, low, high);
      break;
    case TM_CHART_DEVIATIONS:
      add (out, _ ("%s: standard deviations within each group, from %s to %s."), plot->title, low, high);
      break;
    case TM_CHART_INDIVIDUALS:
    default:
      add (out, _ ("%s: ranges from each piece to the next, from %s to %s."), plot->title, low, high);
      break;
    }
}

char *
tm_chart_plot_describe_dispersion (const TmChartPlot *plot)
{
  GString *out;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  if (!plot->has_dispersion)
    {
      add (out, _ ("%s: too few pieces to tell how they spread."), plot->title);
      return g_string_free (out, FALSE);
    }
  add_dispersions (plot, out);
  if (plot->dispersion_runs->len > 0)
    {
      const TmChartRun *run
          = &g_array_index (plot->dispersion_runs, TmChartRun, plot->dispersion_runs->len - 1);
      g_autofree char *centre = tm_chart_length_text (plot, run->centre);
      g_autofree char *upper = tm_chart_length_text (plot, run->upper);

      add (out, _ ("Usual are %s, at most %s."), centre, upper);
    }
  add_marks (plot, plot->dispersion_marks, plot->dispersion_counts, out);
  return g_string_free (out, FALSE);
}

/* -------- Sizes -------- */

static void
add_fullest_bar (const TmChartPlot *plot, GString *out)
{
  const TmChartBins *bins = &plot->bins;
  guint fullest = 0;
  g_autofree char *low = NULL, *high = NULL;

  if (bins->rule == TM_BINS_ONE)
    return;
  for (guint i = 1; i < bins->n; i++)
    if (bins->counts[i] > bins->counts[fullest])
      fullest = i;
  low = tm_chart_size_text (plot, bins->from + fullest * bins->width);
  high = tm_chart_size_text (plot, bins->from + (fullest + 1) * bins->width);
  add (out,
       ngettext ("The fullest of %u bar holds %u, from %s to %s %s.",
                 "The fullest of %u bars holds %u, from %s to %s %s.", bins->n),
       bins->n, bins->most, low, high, find_symbol (plot));
}

char *
tm_chart_plot_describe_histogram (const TmChartPlot *plot)
{
  const guint beyond = plot != NULL ? plot->n_sorted - plot->bins.n_shown : 0;
  GString *out;
  g_autofree char *low = NULL, *high = NULL;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  if (plot->n_sorted == 0)
    {
      add (out, _ ("%s: there are no sizes yet."), plot->title);
      return g_string_free (out, FALSE);
    }
  low = tm_chart_size_text (plot, plot->sorted[0]);
  high = tm_chart_size_text (plot, plot->sorted[plot->n_sorted - 1]);
  add (out,
       ngettext ("%s: histogram of %u piece, from %s to %s %s.",
                 "%s: histogram of %u pieces, from %s to %s %s.", plot->n_sorted),
       plot->title, plot->n_sorted, low, high, find_symbol (plot));
  add_fullest_bar (plot, out);
  if (beyond > 0)
    add (out, ngettext ("%u lies beyond the picture.", "%u lie beyond the picture.", beyond), beyond);
  add_limits (plot, out);
  if (plot->has_curve)
    add (out, _ ("The curve is that of a fitted distribution: %s."),
         g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (plot->shape.shape)));
  return g_string_free (out, FALSE);
}

char *
tm_chart_plot_describe_probability (const TmChartPlot *plot)
{
  const double p = plot != NULL ? plot->batch->capability.normality_p : NAN;
  GString *out;
  g_autofree char *mean = NULL, *deviation = NULL;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  if (plot->n_sorted == 0)
    {
      add (out, _ ("%s: there are no sizes yet."), plot->title);
      return g_string_free (out, FALSE);
    }
  add (out,
       ngettext ("%s: probability plot of %u piece.", "%s: probability plot of %u pieces.", plot->n_sorted),
       plot->title, plot->n_sorted);
  if (plot->deviation > 0)
    {
      mean = tm_chart_size_text (plot, plot->mean);
      deviation = tm_chart_length_text (plot, plot->deviation);
      add (out, _ ("The line has the mean %s %s and the standard deviation %s."), mean, find_symbol (plot),
           deviation);
    }
  if (!isfinite (p) || plot->n_sorted < 8)
    return g_string_free (out, FALSE);
  if (p < 0.001)
    add (out, _ ("The test says that they are not normal: p is under 0.001."));
  else
    add (out,
         p < TM_SHAPE_NORMAL_DOUBT ? _ ("The test says that they are not normal: p = %.3f.")
                                   : _ ("The test does not doubt that they are normal: p = %.3f."),
         p);
  return g_string_free (out, FALSE);
}
