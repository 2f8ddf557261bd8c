/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-batch-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-statistics.h"
#include "core-tolerance.h"
#include "core-tool-drift.h"

#define MOST_SERIALS 20 /* that a line names */

/* Of the tolerance interval where nothing else is asked for (common practice). */
#define COVERAGE   0.99
#define CONFIDENCE 0.95

static void add_line (GPtrArray *lines, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_line (GPtrArray *lines, const char *format, ...)
{
  va_list list;

  va_start (list, format);
  g_ptr_array_add (lines, g_strdup_vprintf (format, list));
  va_end (list);
}

/* -------- Figures -------- */

const char *
tm_batch_index_name (TmBatchIndex index)
{
  static const char *const names[TM_N_BATCH_INDEXES] = { "Cp", "Cpk", "Pp", "Ppk", "Cpm", "Cm", "Cmk" };

  return names[index];
}

const TmIndex *
tm_batch_index (const TmCapability *c, TmBatchIndex index)
{
  const TmIndex *const indexes[TM_N_BATCH_INDEXES]
      = { &c->cp, &c->cpk, &c->pp, &c->ppk, &c->cpm, &c->cm, &c->cmk };

  return indexes[index];
}

guint
tm_batch_decimals (const TmBatch *batch)
{
  const TmFeature *feature = batch->series.feature;

  return MIN (MAX (MAX (feature->lower.decimals, feature->upper.decimals), 1u) + 2u, (guint)TM_MAX_DECIMALS);
}

double
tm_batch_spread (const TmBatch *batch, double counts)
{
  return counts / (double)MAX (1, tm_unit_counts (batch->series.feature->unit));
}

double
tm_batch_size (const TmBatch *batch, double counts)
{
  return tm_batch_spread (batch, (double)batch->series.reference + counts);
}

static char *
format_size (const TmBatch *batch, double counts)
{
  const TmFeature *feature = batch->series.feature;
  const double most = (double)TM_COUNT_MAX;

  return tm_count_format (llround (CLAMP ((double)batch->series.reference + counts, -most, most)),
                          feature->unit, tm_batch_decimals (batch));
}

static char *
format_spread (const TmBatch *batch, double counts)
{
  return tm_count_format (llround (counts), batch->series.feature->unit, tm_batch_decimals (batch));
}

double
tm_batch_lower_limit (const TmBatch *batch, guint group)
{
  const double lower = batch->chart.groups[group].location_lower;
  const double zero = -(double)batch->series.reference;

  return batch->series.limits.zero_bounded && lower <= zero ? NAN : lower;
}

/* -------- Capability -------- */

static gboolean
is_one_sided (const TmBatch *batch)
{
  return !isfinite (batch->series.lower) || !isfinite (batch->series.upper);
}

static const char *
find_refusal (const TmBatch *batch, TmBatchIndex index)
{
  const TmCapability *c = &batch->capability;

  if (is_one_sided (batch) && index != TM_BATCH_PPK)
    return _ ("does not apply: there is one limit, and Ppk is to its side");
  switch (index)
    {
    case TM_BATCH_CP:
    case TM_BATCH_CPK:
      return c->within_lost ? _ ("refused: measuring scatters as much as the pieces within groups")
                            : _ ("refused: the scatter from piece to piece is not known");
    case TM_BATCH_PP:
    case TM_BATCH_PPK:
      return _ ("refused: the sizes are not normal, and follow no named shape");
    case TM_BATCH_CM:
    case TM_BATCH_CMK:
      return c->n < TM_CAPABLE_MACHINE ? _ ("refused: it takes 50 pieces made one after another")
                                       : _ ("refused: it takes 50 normal pieces without drift");
    case TM_BATCH_CPM:
    case TM_N_BATCH_INDEXES:
    default:
      return _ ("does not apply: there is no target");
    }
}

char *
tm_batch_index_reason (const TmBatch *batch, TmBatchIndex index)
{
  const TmCapability *c = &batch->capability;

  if (!isfinite (tm_batch_index (c, index)->value))
    return g_strdup (find_refusal (batch, index));
  if (c->shape == TM_SHAPE_NORMAL)
    return g_strdup ("");
  if (index == TM_BATCH_PP || index == TM_BATCH_PPK)
    return g_strdup_printf (_ ("by the quantiles of a distribution: %s"),
                            g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (c->shape)));
  return g_strdup (_ ("stands on a normal distribution, which this is not: go by Ppk"));
}

const char *
tm_batch_unsteady_words (const TmBatch *batch)
{
  if (batch->change.found)
    return _ ("The pieces before and after the shift are taken together: it is no steady process, and the "
              "figures promise nothing.");
  if (tm_batch_has_drift (batch) || batch->drifted)
    return _ ("The drift is in Pp and Ppk: it is no steady process, and the figures promise nothing.");
  if (batch->series.n_breaks > 0)
    return _ ("The pieces before and after events are taken together.");
  return "";
}

/* -------- Tolerance interval -------- */

/* A bound in the feature's unit that stays one when it is printed. */
static char *
format_bound (const TmFeature *feature, const TmBatchInterval *interval, double reach)
{
  const double end = interval->mean + reach;
  const gint64 count = interval->reference + (gint64)(reach > 0 ? ceil (end) : floor (end));
  const guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);

  return tm_count_format_bound (count, feature->unit, MIN (decimals + 1, TM_MAX_DECIMALS), reach > 0);
}

char *
tm_batch_interval_words (const TmFeature *feature, const TmBatchInterval *interval)
{
  const double k = tm_tolerance_two_sided (interval->n, interval->coverage, interval->confidence);
  const double reach = k * interval->deviation;
  g_autofree char *sure = g_strdup_printf ("%.4g", 100 * interval->confidence);
  g_autofree char *share = g_strdup_printf ("%.4g", 100 * interval->coverage);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (!isfinite (reach) || fabs (interval->mean) + reach > (double)TM_COUNT_MAX / 4)
    return NULL;
  low = format_bound (feature, interval, -reach);
  high = format_bound (feature, interval, reach);
  return g_strdup_printf (
      interval->tested
          ? _ ("%s %% sure that %s %% lie between %s and %s %s: mean ± %.3f standard deviations, "
               "from %u pieces.")
          : _ ("%s %% sure that %s %% lie between %s and %s %s: mean ± %.3f standard deviations, "
               "from %u pieces, too few to test that they are normal."),
      sure, share, low, high, tm_unit_symbol (feature->unit), k, interval->n);
}

/* Whether the pieces are of one process that stays as it is, and normal.  Trend and change are of the present
 * stretch, which is all of the pieces only where no event begins another, not even after the last piece. */
static gboolean
has_interval (const TmBatch *batch)
{
  const TmCapability *c = &batch->capability;

  return c->status == TM_CAPABLE_OK && c->shape == TM_SHAPE_NORMAL && !c->unshaped && batch->stretch_from == 0
         && !batch->change.found && !tm_batch_has_drift (batch) && batch->location_hits->len == 0
         && batch->series.feature->unit != TM_UNIT_NONE;
}

char *
tm_batch_interval_line (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  g_autofree double *values = g_new (double, series->n_points + 1);
  TmBatchInterval interval = { .coverage = COVERAGE,
                               .confidence = CONFIDENCE,
                               .reference = series->reference,
                               .tested = isfinite (batch->capability.normality_p) };
  TmSummary summary = { 0 };

  if (!has_interval (batch))
    return NULL;
  for (guint i = 0; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      values[interval.n++] = series->points[i].mean;
  tm_summary (values, interval.n, &summary);
  interval.mean = summary.mean;
  interval.deviation = summary.standard_deviation;
  return interval.deviation > 0 ? tm_batch_interval_words (series->feature, &interval) : NULL;
}

/* -------- Charts -------- */

const char *
tm_batch_group_serial (const TmBatch *batch, guint group)
{
  const guint from = batch->chart.groups[group].from;

  return from < batch->series.n_points ? batch->series.points[from].piece->serial : "";
}

/* The pieces of a group, from the first serial number to the last. */
static void
append_group (GString *out, const TmBatch *batch, guint group)
{
  const TmChart *chart = &batch->chart;
  const guint end = group + 1 < chart->n_groups ? chart->groups[group + 1].from : batch->series.n_points;

  if (out->len > 0)
    g_string_append (out, ", ");
  if (batch->options.group_size <= 1 || end <= chart->groups[group].from + 1)
    g_string_append (out, tm_batch_group_serial (batch, group));
  else
    /* Translators: a group of pieces, from the first serial number to the last. */
    g_string_append_printf (out, _ ("%s to %s"), tm_batch_group_serial (batch, group),
                            batch->series.points[end - 1].piece->serial);
}

/* The pieces at which one rule speaks, in one line; of many the first. */
static void
add_rule (GPtrArray *lines, const TmBatch *batch, const GArray *hits, guint rule, gboolean level)
{
  g_autoptr (GString) serials = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, i);

      if (hit->rule != rule)
        continue;
      if (n++ < MOST_SERIALS)
        append_group (serials, batch, hit->point);
    }
  if (n > MOST_SERIALS)
    add_line (lines,
              level ? _ ("Level, %s: at pieces %s, and %u more.")
                    : _ ("Scatter, %s: at pieces %s, and %u more."),
              _ (tm_run_rule_text (rule)), serials->str, n - MOST_SERIALS);
  else if (n > 0)
    add_line (lines,
              level ? ngettext ("Level, %s: at piece %s.", "Level, %s: at pieces %s.", n)
                    : ngettext ("Scatter, %s: at piece %s.", "Scatter, %s: at pieces %s.", n),
              _ (tm_run_rule_text (rule)), serials->str);
}

static void
add_events (GPtrArray *lines, const TmBatch *batch)
{
  const TmSeries *series = &batch->series;

  for (guint i = 0; i < series->n_events; i++)
    {
      const TmSeriesEvent *event = &series->events[i];
      g_autofree char *words = tm_batch_event_words (event->event);

      if (event->before < series->n_points)
        add_line (lines, _ ("Before piece %s: %s."), series->points[event->before].piece->serial, words);
      else
        add_line (lines, _ ("After the last piece: %s."), words);
    }
}

GPtrArray *
tm_batch_chart_lines (const TmBatch *batch)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  add_events (lines, batch);
  if (batch->chart.status == TM_CHART_TOO_FEW)
    add_line (lines, "%s", _ ("No control limits: fewer than two groups show how the pieces scatter."));
  else if (batch->chart.status == TM_CHART_NO_SPREAD)
    add_line (lines, "%s", _ ("No control limits: the pieces of each group are all equal."));
  else if (batch->location_hits->len + batch->dispersion_hits->len == 0)
    add_line (lines, "%s", _ ("No rule speaks on either chart."));
  for (guint rule = 0; rule < TM_N_RUN_RULES; rule++)
    {
      add_rule (lines, batch, batch->location_hits, rule, TRUE);
      add_rule (lines, batch, batch->dispersion_hits, rule, FALSE);
    }
  if (batch->options.baseline > 0)
    add_line (lines,
              ngettext ("The control limits are frozen from the first %u group.",
                        "The control limits are frozen from the first %u groups.", batch->chart.baseline),
              batch->chart.baseline);
  if (batch->chart.status == TM_CHART_OK && isfinite (batch->rules_length))
    add_line (lines, _ ("With nothing wrong the rules chosen speak once in about %.0f groups."),
              batch->rules_length);
  return lines;
}

/* -------- Drift -------- */

static void
add_state (GPtrArray *lines, const TmBatch *batch)
{
  static const char *const sentences[TM_N_BATCH_STATES] = {
    [TM_BATCH_NOT_MEASURED] = N_ ("Nothing is measured yet."),
    [TM_BATCH_TOO_FEW] = N_ ("Too few pieces since the last event for anything to be said of drift."),
    [TM_BATCH_OUT] = N_ ("A piece since the last event is out."),
    [TM_BATCH_SHIFTED] = N_ ("The level is not what it was."),
    [TM_BATCH_DRIFTING] = N_ ("The size drifts."),
    [TM_BATCH_STEADY] = N_ ("No drift is shown."),
  };

  add_line (lines, "%s", _ (sentences[tm_batch_state (batch)]));
}

static void
add_slope (GPtrArray *lines, const TmBatch *batch)
{
  const TmTrend *trend = &batch->trend;
  const TmUnit small = tm_unit_small (batch->series.feature->unit);
  const double one = (double)MAX (1, tm_unit_counts (small));

  if (trend->status != TM_TREND_OK)
    return;
  add_line (lines, _ ("Slope a piece: %+.3f %s (95 %%: %+.3f to %+.3f); robust %+.3f, trend test p %.2g."),
            trend->slope / one, tm_unit_symbol (small), trend->slope_lower / one, trend->slope_upper / one,
            trend->theil_sen / one, trend->kendall_p);
}

static void
add_forecast (GPtrArray *lines, const TmBatch *batch)
{
  const char *limit = batch->forecast.upper ? _ ("upper") : _ ("lower");

  if (!batch->forecast.given || !isfinite (batch->pieces_left))
    return;
  if (isfinite (batch->pieces_left_high))
    add_line (lines, _ ("About %.0f more pieces (%.0f to %.0f) until the mean meets the guarded %s limit."),
              batch->pieces_left, batch->pieces_left_low, batch->pieces_left_high, limit);
  else
    add_line (lines, _ ("About %.0f more pieces (%.0f or more) until the mean meets the guarded %s limit."),
              batch->pieces_left, batch->pieces_left_low, limit);
}

static void
add_change (GPtrArray *lines, const TmBatch *batch)
{
  const TmLevelChange *change = &batch->change;
  const TmSeriesPoint *points = batch->series.points;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  if (!change->found)
    return;
  before = format_size (batch, change->before);
  after = format_size (batch, change->after);
  if (change->low == change->high)
    add_line (lines, _ ("The level changed at piece %s: from %s to %s %s."), points[change->at].piece->serial,
              before, after, tm_unit_symbol (batch->series.feature->unit));
  else
    add_line (lines, _ ("The level changed at piece %s (%s to %s): from %s to %s %s."),
              points[change->at].piece->serial, points[change->low].piece->serial,
              points[change->high].piece->serial, before, after,
              tm_unit_symbol (batch->series.feature->unit));
}

/* What over-correction costs, by the job's own sizes. */
static void
add_over_correction (GPtrArray *lines, const TmBatch *batch)
{
  g_autofree char *spread = NULL;
  g_autofree char *corrected = NULL;

  if (batch->offset.status == TM_OFFSET_TOO_FEW || !(batch->offset.spread > 0)
      || !isfinite (batch->offset.spread_corrected))
    return;
  spread = format_spread (batch, batch->offset.spread);
  corrected = format_spread (batch, batch->offset.spread_corrected);
  add_line (
      lines,
      _ ("Had each piece been corrected by all that it was off, they would scatter by %s instead of %s %s."),
      corrected, spread, tm_unit_symbol (batch->series.feature->unit));
}

static void
add_offset (GPtrArray *lines, const TmBatch *batch)
{
  const TmFeature *feature = batch->series.feature;
  g_autofree char *step = NULL;

  if (batch->offset.status == TM_OFFSET_ON_TARGET)
    add_line (lines, "%s", _ ("Offset: leave it alone; what the level is off is within its own scatter."));
  else if (batch->offset.status == TM_OFFSET_UNDER_STEP)
    add_line (lines, "%s",
              _ ("Offset: leave it alone; what the level is off is less than a step of the control."));
  if (batch->offset.status != TM_OFFSET_ADVISED)
    return;
  step = tm_count_format_exact (llround (batch->offset.size_change), feature->unit,
                                MAX (feature->lower.decimals, feature->upper.decimals));
  add_line (lines, _ ("Offset: a change of size by %s%s %s would recentre it."),
            batch->offset.size_change > 0 ? "+" : "", step, tm_unit_symbol (batch->series.feature->unit));
}

GPtrArray *
tm_batch_drift_lines (const TmBatch *batch)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  add_state (lines, batch);
  add_slope (lines, batch);
  add_forecast (lines, batch);
  add_change (lines, batch);
  add_offset (lines, batch);
  add_over_correction (lines, batch);
  return lines;
}

char *
tm_batch_tool_line (const TmJob *job, const char *tool, TmUnit unit, gboolean (*cancelled) (gpointer data),
                    gpointer data)
{
  g_auto (TmToolDrift) drift = { 0 };
  const TmUnit small = tm_unit_small (unit);
  const double one = (double)MAX (1, tm_unit_counts (small));

  if (*tool == '\0' || !tm_tool_drift_init (&drift, job, tool, cancelled, data) || drift.n_used < 2
      || !isfinite (drift.wear))
    return NULL;
  if (!drift.shown)
    return g_strdup_printf (_ ("Tool “%s”: the %u places that it cuts show no wear together."), tool,
                            drift.n_used);
  return g_strdup_printf (
      drift.disagree ? _ ("Tool “%s”: metal left by its wear in %u places, which do not agree: %+.3f %s a "
                          "piece (95 %%: %+.3f to %+.3f).")
                     : _ ("Tool “%s”: metal left by its wear in %u places together: %+.3f %s a piece (95 "
                          "%%: %+.3f to %+.3f)."),
      tool, drift.n_used, drift.wear / one, tm_unit_symbol (small), drift.lower / one, drift.upper / one);
}

/* -------- Events -------- */

char *
tm_batch_event_words (const TmEvent *event)
{
  const char *kind = g_str_equal (event->kind, "tool")     ? _ ("Tool changed")
                     : g_str_equal (event->kind, "offset") ? _ ("Offset changed")
                     : g_str_equal (event->kind, "lot")    ? _ ("New lot")
                                                           : _ ("Note");
  g_autoptr (GString) text = g_string_new (kind);

  if (*event->amount != '\0')
    g_string_append_printf (text, " %s", event->amount);
  if (*event->tool != '\0')
    g_string_append_printf (text, ", %s", event->tool);
  if (*event->note != '\0')
    g_string_append_printf (text, ": %s", event->note);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
