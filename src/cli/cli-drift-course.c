/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What drift says of the course of the sizes and of what to do about it, in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-drift-print.h"

/* -------- Drift -------- */

void
tm_drift_print_trend (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  const TmTrend *trend = &batch->trend;
  const char *unit = tm_unit_symbol (tm_unit_small (series->feature->unit));
  g_autofree char *slope = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;
  g_autofree char *robust = NULL;

  if (trend->status != TM_TREND_OK)
    return;
  slope = tm_drift_format_rate (series, trend->slope);
  lower = tm_drift_format_rate (series, trend->slope_lower);
  upper = tm_drift_format_rate (series, trend->slope_upper);
  robust = tm_drift_format_rate (series, trend->theil_sen);
  printf (_ ("slope %s %s a piece (95 %%: %s to %s), p %.2g; robust %s, by ranks p %.2g\n"), slope, unit,
          lower, upper, trend->p, robust, trend->kendall_p);
}

static const char *
get_last_serial (const TmBatch *batch)
{
  for (guint i = batch->series.n_points; i > 0; i--)
    if (!isnan (batch->series.points[i - 1].mean))
      return tm_drift_serial (batch, i - 1);
  return "";
}

static void
print_pieces_left (const TmBatch *batch, const char *limit)
{
  const char *last = get_last_serial (batch);

  if (batch->pieces_left < 1)
    printf (_ ("the mean is at the %s limit, guard taken off: stop and correct\n"), limit);
  else if (isinf (batch->pieces_left_high))
    printf (_ ("about %.0f more pieces after %s (%.0f or more) before the mean meets the %s limit, guard "
               "taken off\n"),
            batch->pieces_left, last, batch->pieces_left_low, limit);
  else
    printf (_ ("about %.0f more pieces after %s (%.0f to %.0f) before the mean meets the %s limit, guard "
               "taken off\n"),
            batch->pieces_left, last, batch->pieces_left_low, batch->pieces_left_high, limit);
  if (batch->pieces_left >= 1 && isfinite (batch->forecast.single))
    printf (_ ("single pieces may meet it from about number %.0f on\n"), fmax (1, batch->forecast.single));
}

void
tm_drift_print_forecast (const TmBatch *batch)
{
  if (batch->forecast.given)
    print_pieces_left (batch, batch->forecast.upper ? _ ("upper") : _ ("lower"));
  else if (tm_batch_state (batch) == TM_BATCH_DRIFTING)
    printf ("%s\n", _ ("the drift leads away from the limits, or there is none on its side"));
}

void
tm_drift_print_change (const TmBatch *batch)
{
  const TmLevelChange *change = &batch->change;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  if (!change->found)
    return;
  before = tm_drift_format_size (&batch->series, change->before);
  after = tm_drift_format_size (&batch->series, change->after);
  if (change->low == change->high)
    printf (_ ("the level changed at piece %s: from %s to %s %s\n"), tm_drift_serial (batch, change->at),
            before, after, tm_drift_unit (&batch->series));
  else
    /* Translators: a serial number, and between which ones it may be. */
    printf (_ ("the level changed at piece %s (%s to %s): from %s to %s %s\n"),
            tm_drift_serial (batch, change->at), tm_drift_serial (batch, change->low),
            tm_drift_serial (batch, change->high), before, after, tm_drift_unit (&batch->series));
}

/* -------- Pieces to hold back -------- */

static void
print_hold_row (const TmBatch *batch, const TmHoldRow *row)
{
  const char *measured = row->measured ? _ ("measured") : _ ("not measured");

  if (row->out < 0.0001)
    printf (_ ("  %s, %s: out with a chance of under 0.01 %%\n"), tm_drift_serial (batch, row->point),
            measured);
  else
    printf (_ ("  %s, %s: out with a chance of %.2f %%\n"), tm_drift_serial (batch, row->point), measured,
            100 * row->out);
}

void
tm_drift_print_hold (const TmDriftCase *drift)
{
  const TmBatch *batch = drift->batch;
  const GArray *hold = batch->hold;

  if (hold->len == 0 && drift->lists_held)
    printf ("%s\n", _ ("nothing to hold back: no shift is found since the last event"));
  if (hold->len == 0)
    return;
  if (hold->len == 1)
    printf (_ ("hold back piece %s\n"), tm_drift_serial (batch, g_array_index (hold, TmHoldRow, 0).point));
  else
    printf (
        ngettext ("hold back %u piece, from %s to %s\n", "hold back %u pieces, from %s to %s\n", hold->len),
        hold->len, tm_drift_serial (batch, g_array_index (hold, TmHoldRow, 0).point),
        tm_drift_serial (batch, g_array_index (hold, TmHoldRow, hold->len - 1).point));
  for (guint i = 0; drift->lists_held && i < hold->len; i++)
    print_hold_row (batch, &g_array_index (hold, TmHoldRow, i));
}

/* -------- Correct or leave alone -------- */

static void
print_correction (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  const TmFeature *feature = series->feature;
  g_autofree char *change = tm_count_format_exact (llround (batch->offset.size_change), feature->unit,
                                                   MAX (feature->lower.decimals, feature->upper.decimals));
  g_autofree char *level = tm_drift_format_size (series, batch->offset.level);
  g_autofree char *target = tm_drift_format_size (series, series->target);

  printf (_ ("correct: the size by %s%s %s; it is about %s, the target %s\n"),
          batch->offset.size_change > 0 ? "+" : "", change, tm_drift_unit (series), level, target);
  if (!batch->offset.drifting)
    printf (
        _ ("asked at every piece, this test corrects a steady process on target for nothing about once in "
           "%.0f pieces\n"),
        tm_offset_needless (TM_BATCH_LAMBDA));
  printf ("%s\n", _ ("Before a gauge goes in: spindle stopped and isolated, chips cleared, edge deburred."));
}

void
tm_drift_print_advice (const TmBatch *batch)
{
  switch (batch->offset.status)
    {
    case TM_OFFSET_ADVISED:
      print_correction (batch);
      break;
    case TM_OFFSET_TOO_FEW:
      printf ("%s\n", _ ("correct or leave alone: nothing to go by yet"));
      break;
    case TM_OFFSET_ON_TARGET:
      printf ("%s\n",
              _ ("leave the offset alone: the level is on target as far as the scatter lets one see"));
      break;
    case TM_OFFSET_UNDER_STEP:
      printf ("%s\n", _ ("leave the offset alone: what it is off is less than a step of the control"));
      break;
    case TM_OFFSET_NO_TARGET:
      printf ("%s\n", _ ("correct or leave alone: the feature has no target"));
      break;
    default:
      g_assert_not_reached ();
    }
}

void
tm_drift_print_over_correction (const TmBatch *batch)
{
  g_autofree char *spread = NULL;
  g_autofree char *corrected = NULL;

  if (batch->offset.status == TM_OFFSET_TOO_FEW || !(batch->offset.spread > 0)
      || isnan (batch->offset.spread_corrected))
    return;
  spread = tm_drift_format_spread (&batch->series, batch->offset.spread);
  corrected = tm_drift_format_spread (&batch->series, batch->offset.spread_corrected);
  printf (_ ("had each piece been corrected by all that it was off, they would scatter by %s instead of %s "
             "%s\n"),
          corrected, spread, tm_drift_unit (&batch->series));
}
