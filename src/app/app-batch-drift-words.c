/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-drift-words: how long a batch can go on, and how fast it drifts.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words-private.h"
#include "app-feature-words.h"

char *
tm_words_batch_forecast (const TmBatch *batch)
{
  guint n;

  if (!tm_batch_words_is_told (batch))
    return g_strdup ("");
  if (!isfinite (batch->pieces_left))
    return g_strdup (tm_batch_has_drift (batch) ? _ ("No limit ahead") : _ ("No drift shown"));
  if (batch->pieces_left < 1)
    return g_strdup (_ ("No more pieces"));
  n = (guint)MIN (batch->pieces_left, 999999);
  return g_strdup_printf (ngettext ("About %u more piece", "About %u more pieces", n), n);
}

/* "until the mean meets the guard": the wear of a single piece meets it earlier. */
static char *
describe_reach (const TmBatch *batch)
{
  gboolean guarded = batch->series.guard > 0;
  guint low = (guint)CLAMP (batch->pieces_left_low, 0, 999999);
  guint high;

  if (!isfinite (batch->pieces_left_high))
    return guarded ? g_strdup_printf (_ ("(%u or more) until the mean meets the guard"), low)
                   : g_strdup_printf (_ ("(%u or more) until the mean meets the limit"), low);
  high = (guint)CLAMP (ceil (batch->pieces_left_high), 0, 999999);
  return guarded ? g_strdup_printf (_ ("(%u to %u) until the mean meets the guard"), low, high)
                 : g_strdup_printf (_ ("(%u to %u) until the mean meets the limit"), low, high);
}

static char *
describe_single (const TmBatch *batch)
{
  gint last = tm_batch_words_last_measured (&batch->series);
  double left = batch->forecast.single - (last + 1);
  guint n;

  if (!isfinite (left))
    return g_strdup ("");
  if (left < 1)
    return g_strdup (_ ("A single piece may meet it already."));
  n = (guint)MIN (left, 999999);
  return g_strdup_printf (
      ngettext ("A single piece may meet it in about %u.", "A single piece may meet it in about %u.", n), n);
}

char *
tm_words_batch_forecast_range (const TmBatch *batch)
{
  g_autofree char *reach = NULL;
  g_autofree char *single = NULL;

  if (!tm_batch_words_is_told (batch))
    return g_strdup ("");
  if (!isfinite (batch->pieces_left))
    return g_strdup (tm_batch_has_drift (batch) ? _ ("the drift leads away from the limits") : "");
  if (batch->pieces_left < 1)
    return g_strdup (batch->series.guard > 0 ? _ ("the mean has met the guard")
                                             : _ ("the mean has met the limit"));
  reach = describe_reach (batch);
  single = describe_single (batch);
  return *single != '\0' ? g_strdup_printf ("%s\n%s", reach, single) : g_steal_pointer (&reach);
}

char *
tm_batch_words_say_slope (const TmBatch *batch)
{
  const TmTrend *trend = &batch->trend;
  TmUnit unit = tm_unit_small (batch->series.feature->unit);
  guint decimals
      = tm_batch_words_decimals (trend->slope, (trend->slope_upper - trend->slope_lower) / 2, unit);
  g_autofree char *slope = NULL, *low = NULL, *high = NULL, *robust = NULL, *p = NULL;
  const char *symbol = tm_unit_symbol (unit);

  if (trend->status == TM_TREND_CONSTANT)
    return g_strdup (_ ("none: all sizes are equal"));
  if (trend->status != TM_TREND_OK || !isfinite (trend->slope_lower) || !isfinite (trend->slope_upper))
    return g_strdup (_ ("too few pieces for a slope"));
  slope = tm_batch_words_signed (tm_batch_words_count (trend->slope), unit, decimals, TRUE);
  low = tm_batch_words_signed (tm_batch_words_count (trend->slope_lower), unit, decimals, FALSE);
  high = tm_batch_words_signed (tm_batch_words_count (trend->slope_upper), unit, decimals, FALSE);
  if (!isfinite (trend->theil_sen) || !isfinite (trend->kendall_p))
    return g_strdup_printf (_ ("%s %s a piece (%s to %s)"), slope, symbol, low, high);
  robust = tm_batch_words_signed (tm_batch_words_count (trend->theil_sen), unit, decimals, TRUE);
  p = tm_batch_words_p (trend->kendall_p);
  /* Translators: slope, unit, its interval; the slope of Theil and Sen; chance of the test of Mann and
   * Kendall. */
  return g_strdup_printf (_ ("%s %s a piece (%s to %s)\nrobust %s; by chance alone: %s"), slope, symbol, low,
                          high, robust, p);
}

/* -------- By the tool -------- */

char *
tm_words_batch_same_tool (const TmBatch *other)
{
  g_autofree char *name = tm_words_feature (other->series.feature);
  g_autofree char *headline = tm_words_batch_headline (other);
  g_autofree char *slope = NULL;
  const TmTrend *trend = &other->trend;
  TmUnit unit = tm_unit_small (other->series.feature->unit);

  if (!tm_batch_has_drift (other) || tm_batch_state (other) == TM_BATCH_TOO_FEW)
    /* Translators: a feature and its state: "3 · Ø40 N7: Steady". */
    return g_strdup_printf (_ ("%s: %s"), name, headline);
  slope = tm_batch_words_signed (
      tm_batch_words_count (trend->slope), unit,
      tm_batch_words_decimals (trend->slope, (trend->slope_upper - trend->slope_lower) / 2, unit), TRUE);
  /* Translators: a feature, its state, its slope and unit. */
  return g_strdup_printf (_ ("%s: %s, %s %s a piece"), name, headline, slope, tm_unit_symbol (unit));
}

/* The wear with its interval: metal that it leaves, a piece. */
static char *
describe_wear (const TmToolDrift *drift)
{
  const TmUnit unit = tm_unit_small (drift->tool->unit);
  const guint decimals = tm_batch_words_decimals (drift->wear, (drift->upper - drift->lower) / 2, unit);
  g_autofree char *wear = tm_batch_words_signed (tm_batch_words_count (drift->wear), unit, decimals, TRUE);
  g_autofree char *low = tm_batch_words_signed (tm_batch_words_count (drift->lower), unit, decimals, FALSE);
  g_autofree char *high = tm_batch_words_signed (tm_batch_words_count (drift->upper), unit, decimals, FALSE);

  /* Translators: size, unit and its interval. */
  return g_strdup_printf (_ ("%s %s a piece (%s to %s)"), wear, tm_unit_symbol (unit), low, high);
}

char *
tm_words_tool_drift (const TmToolDrift *drift)
{
  g_autofree char *wear = NULL;
  const guint n = drift->n_used;

  if (drift->tool == NULL || n < 2 || !isfinite (drift->wear) || !isfinite (drift->lower)
      || !isfinite (drift->upper))
    return g_strdup ("");
  if (!drift->shown)
    /* Translators: %u is at least 2: of places that a tool cuts. */
    return g_strdup_printf (
        ngettext ("%u place together: no wear shown", "%u places together: no wear shown", n), n);
  wear = describe_wear (drift);
  if (drift->apart >= 0)
    return g_strdup_printf (_ ("the places do not wear alike, feature %s least so: metal left %s"),
                            drift->rows[drift->apart].feature->balloon, wear);
  if (drift->disagree)
    return g_strdup_printf (_ ("the places do not wear alike: metal left %s"), wear);
  return g_strdup_printf (
      ngettext ("%u place together: metal left %s", "%u places together: metal left %s", n), n, wear);
}
