/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the answer of drift is made of in either form.
 */

#include <math.h>

#include "cli-drift.h"
#include "core-statistics.h"
#include "core-tolerance.h"

const char *
tm_drift_state_word (TmBatchState state)
{
  static const char *const words[TM_N_BATCH_STATES] = {
    [TM_BATCH_NOT_MEASURED] = "not measured", [TM_BATCH_TOO_FEW] = "too few",   [TM_BATCH_OUT] = "out",
    [TM_BATCH_SHIFTED] = "shifted",           [TM_BATCH_DRIFTING] = "drifting", [TM_BATCH_STEADY] = "steady",
  };

  g_return_val_if_fail (state < TM_N_BATCH_STATES, NULL);
  return words[state];
}

const TmChartGroup *
tm_drift_present_group (const TmBatch *batch)
{
  const TmChart *chart = &batch->chart;
  const TmChartGroup *last = NULL;

  for (guint i = chart->n_groups; i > 0 && chart->status == TM_CHART_OK; i--)
    {
      const TmChartGroup *group = &chart->groups[i - 1];

      if (group->n > 0 && last == NULL)
        last = group;
      if (group->n == batch->options.group_size && !isnan (group->dispersion_centre))
        return group;
    }
  return last;
}

const TmPiece *
tm_drift_group_piece (const TmBatch *batch, guint index)
{
  const TmSeries *series = &batch->series;
  guint from = batch->chart.groups[index].from;
  guint end = index + 1 < batch->chart.n_groups ? batch->chart.groups[index + 1].from : series->n_points;

  for (guint i = end; i > from; i--)
    if (!isnan (series->points[i - 1].mean))
      return series->points[i - 1].piece;
  return NULL;
}

void
tm_drift_summary (const TmBatch *batch, double *mean, double *deviation)
{
  const TmSeries *series = &batch->series;
  g_autofree double *values = g_new (double, series->n_points + 1);
  TmSummary summary;
  gsize n = 0;

  *mean = *deviation = NAN;
  for (guint i = 0; i < series->n_points; i++)
    if (!isnan (series->points[i].mean))
      values[n++] = series->points[i].mean;
  if (tm_summary (values, n, &summary) == TM_SUMMARY_EMPTY)
    return;
  *mean = summary.mean;
  *deviation = summary.standard_deviation;
}

gboolean
tm_drift_is_steady (const TmBatch *batch)
{
  return !batch->change.found && !batch->signalled && !tm_batch_has_drift (batch) && !batch->drifted;
}

gboolean
tm_drift_interval (const TmDriftCase *drift, TmDriftInterval *out)
{
  const TmBatch *batch = drift->batch;
  const TmCapability *capability = &batch->capability;
  double mean, deviation;

  tm_drift_summary (batch, &mean, &deviation);
  if (!tm_drift_is_steady (batch) || batch->series.feature->unit == TM_UNIT_NONE
      || capability->shape != TM_SHAPE_NORMAL || capability->unshaped || batch->series.n_measured < 2
      || batch->series.n_breaks > 0 || !(deviation > 0))
    return FALSE;
  out->k = tm_tolerance_two_sided (batch->series.n_measured, drift->sure->coverage, drift->sure->confidence);
  out->lower = mean - out->k * deviation;
  out->upper = mean + out->k * deviation;
  return !isnan (out->k);
}

double
tm_drift_lower_limit (const TmBatch *batch, const TmChartGroup *group)
{
  const double zero = -(double)batch->series.reference;

  return batch->series.limits.zero_bounded ? fmax (zero, group->location_lower) : group->location_lower;
}

gboolean
tm_drift_is_bad (const TmBatch *batch)
{
  TmBatchState state = tm_batch_state (batch);

  return state == TM_BATCH_OUT || state == TM_BATCH_SHIFTED
         || (state == TM_BATCH_DRIFTING && batch->pieces_left < 1);
}
