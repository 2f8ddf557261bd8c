/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-batch.h"

#include <math.h>
#include <string.h>

#include "core-batch-private.h"
#include "core-slope.h"

/* What a control's offset can do where nobody said: a micrometre, half a tenth (common practice). */
#define STEP_MM G_GINT64_CONSTANT (1000000)
#define STEP_IN G_GINT64_CONSTANT (1270000)

/* -------- Options -------- */

static guint
read_rules (const char *words)
{
  g_auto (GStrv) each = g_strsplit_set (words, " \t\n", -1);
  guint rules = 0;

  for (guint i = 0; each[i] != NULL; i++)
    {
      TmRunRule rule;

      if (tm_run_rule_from_word (each[i], &rule))
        rules |= TM_RULE_BIT (rule);
    }
  return rules;
}

static gint64
find_step (const TmJob *job, const TmFeature *feature)
{
  const TmTool *tool = tm_job_find_tool (job, feature->tool);

  if (tool != NULL && tool->offset_step.given && tool->offset_step.count > 0)
    return tool->offset_step.count;
  return feature->unit == TM_UNIT_IN || feature->unit == TM_UNIT_UIN ? STEP_IN : STEP_MM;
}

static void
fill_options (TmBatch *batch, const TmJob *job, const TmBatchOptions *options)
{
  const TmFeature *feature = batch->series.feature;
  TmBatchOptions *used = &batch->options;

  *used = options ? *options : (TmBatchOptions) { 0 };
  if (used->group_size == 0)
    used->group_size = MAX (1, feature->group_size);
  if (used->baseline == 0)
    used->baseline = feature->chart_baseline;
  if (used->rules == 0)
    used->rules = read_rules (feature->chart_rules);
  if (used->rules == 0)
    used->rules = TM_RULES_USUAL;
  if (used->step <= 0)
    used->step = find_step (job, feature);
}

/* -------- Offset -------- */

/* The piece before which the machine was set up as it is, but for corrections. */
static guint
find_set_up (const TmSeries *series)
{
  guint set_up = 0;

  for (guint i = 0; i < series->n_events; i++)
    if (series->events[i].resets && strcmp (series->events[i].event->kind, "offset") != 0)
      set_up = series->events[i].before;
  return set_up;
}

static guint
count_measured (const TmSeries *series, guint from, guint end)
{
  guint n = 0;

  for (guint i = from; i < end; i++)
    n += !isnan (series->points[i].mean);
  return n;
}

/* After a correction the tool wears on as it did: the slope of all pieces since the set-up, through the
 * middle of those since the correction.  FALSE: there is none to be seen. */
static gboolean
find_wear (const TmSeries *series, guint set_up, guint from, TmTrend *trend)
{
  TmSlope slope;
  guint n = 0;

  tm_series_slope (series, set_up, &slope);
  if (!(slope.p <= 0.05))
    return FALSE;
  *trend = (TmTrend) { .status = TM_TREND_OK, .slope = slope.slope, .slope_se = slope.slope_se };
  for (guint i = from; i < series->n_points; i++)
    if (!isnan (series->points[i].mean))
      {
        n++;
        trend->mean_x += (i + 1 - trend->mean_x) / n;
        trend->mean_y += (series->points[i].mean - trend->mean_y) / n;
      }
  trend->n = n;
  trend->sxx = slope.sxx;
  trend->residual = slope.residual;
  trend->dof = slope.dof;
  trend->p = slope.p;
  return n > 0;
}

/* @from: the first piece of the level that is there now. */
static void
fill_offset (TmBatch *batch, guint from)
{
  const TmSeries *series = &batch->series;
  const gboolean is_length = tm_unit_dimension (series->feature->unit) == TM_DIMENSION_LENGTH;
  const guint set_up = batch->change.found ? from : find_set_up (series);
  g_autofree double *values = g_new (double, series->n_points + 1);
  double spread, corrected;
  TmOffsetInput input;
  TmTrend trend;

  for (guint i = 0; i < series->n_points; i++)
    values[i] = series->points[i].mean;
  tm_offset_spreads (values, series->n_points, series->breaks, series->n_breaks, &spread, &corrected);
  if (set_up >= from || !find_wear (series, set_up, from, &trend))
    trend = batch->trend;
  input = (TmOffsetInput) { .values = values + from,
                            .n = series->n_points - from,
                            .target = is_length ? series->target : NAN,
                            .sigma = batch->chart.sigma,
                            .sigma_dof = batch->chart.sigma_dof,
                            .trend = &trend,
                            .lambda = TM_BATCH_LAMBDA,
                            .before = count_measured (series, set_up, from),
                            .chosen = batch->change.found,
                            .step = (double)batch->options.step };
  tm_offset_advise (&input, &batch->offset);
  batch->offset.spread = spread;
  batch->offset.spread_corrected = corrected;
}

/* -------- Capability -------- */

/* Whether a line is shown in the values of a stretch, in the places from @from. */
static gboolean
does_drift (const double *values, guint from, guint end, TmTrend *line)
{
  g_autofree double *x = g_new (double, end - from + 1);

  for (guint i = from; i < end; i++)
    x[i - from] = i;
  tm_trend_line (x, values + from, end - from, line);
  return line->status == TM_TREND_OK && line->p <= 0.05;
}

/* Takes the level, or where a drift is shown the line, of the pieces from @from to @end out of @values.
 * Returns: how many parameters that took. */
static guint
level_stretch (double *values, guint from, guint end)
{
  double sum = 0;
  guint n = 0;
  TmTrend line;
  const gboolean drifts = does_drift (values, from, end, &line);

  for (guint i = from; i < end; i++)
    if (!isnan (values[i]))
      sum += values[i], n++;
  for (guint i = from; i < end && n > 0; i++)
    values[i] -= drifts ? line.mean_y + line.slope * (i - line.mean_x) : sum / n;
  return n == 0 ? 0 : drifts ? 2 : 1;
}

/* What is left of @values about their mean once each stretch, and what came after a change, is level, widened
 * for the levels and lines that were taken out of the same values. */
static void
level_stretches (const TmSeries *series, const TmLevelChange *change, double *values)
{
  double mean = 0, scale;
  guint taken = 0;

  for (guint i = 0; i < series->n_points; i++)
    if (!isnan (values[i]))
      mean += values[i] / series->n_measured;
  for (guint from = 0, end; from < series->n_points; from = end)
    {
      end = tm_series_stretch_end (series, from);
      if (change->found && change->at > from)
        end = MIN (end, change->at);
      taken += level_stretch (values, from, end);
    }
  scale = series->n_measured > taken ? sqrt ((series->n_measured - 1.0) / (series->n_measured - taken)) : NAN;
  for (guint i = 0; i < series->n_points; i++)
    values[i] = mean + scale * values[i];
}

/* Whether a piece between the first and the last measured one was not, or an event came between. */
static gboolean
has_gaps (const TmSeries *series)
{
  guint first = 0, end = series->n_points;

  while (first < end && isnan (series->points[first].mean))
    first++;
  while (end > first && isnan (series->points[end - 1].mean))
    end--;
  return end - first != series->n_measured || tm_series_stretch_end (series, first) < end;
}

/* The same of the last stretch with pieces, where an event after them has begun one without any: trend and
 * change are of that one, and know nothing of what the pieces did. */
static gboolean
has_drifted (const TmBatch *batch, const double *values)
{
  const TmSeries *series = &batch->series;
  guint from = 0, end = series->n_points;
  TmTrend line;

  while (end > 0 && isnan (values[end - 1]))
    end--;
  if (end == 0 || end > batch->stretch_from)
    return FALSE;
  while (tm_series_stretch_end (series, from) < end)
    from = tm_series_stretch_end (series, from);
  return does_drift (values, from, end, &line);
}

static void
fill_capability (TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  g_autofree double *values = g_new (double, series->n_points + 1);
  TmCapabilityInput input = {
    .lower = series->lower,
    .upper = series->upper,
    .target = series->target,
    .zero_bounded = series->limits.zero_bounded,
    .within = batch->chart.sigma,
    .within_dof = batch->chart.sigma_dof,
    .measuring = series->repeatability,
    .drifting = tm_batch_has_drift (batch) || batch->change.found,
    .position = series->feature->kind == TM_KIND_POSITION,
    .gaps = has_gaps (series),
  };

  if (batch->options.brief)
    {
      tm_capability (values, 0, &input, &batch->capability);
      batch->capability_apart = batch->capability;
      return;
    }
  for (guint i = 0; i < series->n_points; i++)
    values[i] = series->points[i].mean;
  batch->drifted = has_drifted (batch, values);
  input.drifting = input.drifting || batch->drifted;
  tm_capability (values, series->n_points, &input, &batch->capability);
  level_stretches (series, &batch->change, values);
  input.drifting = FALSE;
  tm_capability (values, series->n_points, &input, &batch->capability_apart);
}

/* -------- All of it -------- */

static gboolean
is_cancelled (gboolean (*cancelled) (gpointer data), gpointer data)
{
  return cancelled != NULL && cancelled (data);
}

gboolean
tm_batch_init (TmBatch *out, const TmJob *job, const TmFeature *feature, guint place,
               const TmBatchOptions *options, gboolean (*cancelled) (gpointer data), gpointer data)
{
  guint from;

  g_return_val_if_fail (out != NULL && job != NULL && feature != NULL, FALSE);

  *out = (TmBatch) { 0 };
  if (is_cancelled (cancelled, data))
    return FALSE;
  tm_series_init (&out->series, job, feature, place);
  fill_options (out, job, options);
  if (is_cancelled (cancelled, data))
    goto stopped;
  tm_batch_fill_charts (out);
  if (is_cancelled (cancelled, data))
    goto stopped;
  tm_batch_fill_drift (out, &from);
  tm_batch_fill_signal (out);
  out->hold = tm_hold_back (&out->series, &out->change, out->chart.sigma, 0);
  fill_offset (out, from);
  if (is_cancelled (cancelled, data))
    goto stopped;
  fill_capability (out);
  return TRUE;

stopped:
  tm_batch_clear (out);
  return FALSE;
}

void
tm_batch_clear (TmBatch *batch)
{
  tm_series_clear (&batch->series);
  tm_chart_clear (&batch->chart);
  g_clear_pointer (&batch->location_hits, g_array_unref);
  g_clear_pointer (&batch->dispersion_hits, g_array_unref);
  g_clear_pointer (&batch->ewma, g_free);
  g_clear_pointer (&batch->cusum, g_free);
  g_clear_pointer (&batch->hold, g_array_unref);
}

/* -------- State -------- */

TmBatchState
tm_batch_state (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  guint judged = 0, measured = 0, out = 0;

  for (guint i = 0; i < series->n_points; i++)
    {
      const TmSeriesPoint *point = &series->points[i];

      judged += point->verdict != TM_VERDICT_NOT_MEASURED || !isnan (point->mean);
      if (i < batch->stretch_from)
        continue;
      measured += !isnan (point->mean);
      out += point->verdict == TM_VERDICT_OUT;
    }
  if (judged == 0)
    return TM_BATCH_NOT_MEASURED;
  if (out > 0)
    return TM_BATCH_OUT;
  if (measured <= TM_BATCH_FEW)
    return TM_BATCH_TOO_FEW;
  if (batch->change.found || batch->signalled)
    return TM_BATCH_SHIFTED;
  return tm_batch_has_drift (batch) ? TM_BATCH_DRIFTING : TM_BATCH_STEADY;
}
