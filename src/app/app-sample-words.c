/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-sample-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-feature-words.h"
#include "core-normality.h"
#include "core-statistics.h"
#include "core-tolerance.h"

/* Below this the values are not taken for normal (common practice). */
#define NORMALITY_LEAST 0.05

static char *
format_percent (double share)
{
  return g_strdup_printf ("%.4g", 100 * share);
}

char *
tm_words_lot_sample (guint lot, double share, double risk)
{
  const guint n = tm_lot_sample (lot, share, risk);
  const guint bad = tm_lot_bad (lot, share);
  g_autofree char *passes = format_percent (tm_lot_chance (lot, bad, n));
  g_autofree char *bad_share = format_percent (share);

  if (lot == 0)
    return g_strdup (_ ("A lot has one piece at least."));
  if (n >= lot)
    return g_strdup_printf (_ ("Measure all %u: no smaller sample protects that well."), lot);
  return g_strdup_printf (
      _ ("Measure %u of the %u, chosen at random, and accept the lot only when none of them "
         "is out. A lot with %u out (%s %%) would still pass with a chance of %s %%."),
      n, lot, bad, bad_share, passes);
}

TmSpread
tm_spread_of (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  g_autofree double *values = g_new (double, series->n_points + 1);
  TmSummary summary = { .mean = NAN, .standard_deviation = NAN };
  TmSpread spread = { .reference = series->reference,
                      .drifting = tm_batch_has_drift (batch),
                      .shifted = batch->change.found || batch->signalled };
  double a_squared;

  for (guint i = 0; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      values[spread.n++] = series->points[i].mean;
  tm_summary (values, spread.n, &summary);
  tm_normality (values, spread.n, &a_squared, &spread.normality_p);
  spread.mean = summary.mean;
  spread.deviation = summary.standard_deviation;
  return spread;
}

/* Why no interval is given; NULL: one can be. */
static char *
refuse_interval (const TmSpread *spread)
{
  if (spread->n < 2)
    return g_strdup (_ ("Not said: fewer than two pieces are measured."));
  if (!(spread->deviation > 0))
    return g_strdup_printf (_ ("Not said: all %u pieces read the same, finer than the gauge can tell."),
                            spread->n);
  if (spread->drifting)
    return g_strdup (_ ("Not said: the process drifts, so that no interval holds for the pieces to come."));
  if (spread->shifted)
    return g_strdup (
        _ ("Not said: the level has changed or a rule speaks; the pieces are not of one process."));
  if (isfinite (spread->normality_p) && spread->normality_p < NORMALITY_LEAST)
    return g_strdup_printf (_ ("Not said: the %u pieces do not look like a normal distribution (p %.3f)."),
                            spread->n, spread->normality_p);
  return NULL;
}

/* A bound in the feature's unit that stays one when it is printed. */
static char *
format_bound (const TmFeature *feature, const TmSpread *spread, double from_reference, gboolean up)
{
  const gint64 count = spread->reference + (gint64)(up ? ceil (from_reference) : floor (from_reference));
  const guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);

  return tm_count_format_bound (count, feature->unit, MIN (decimals + 1, TM_MAX_DECIMALS), up);
}

char *
tm_words_tolerance_interval (const TmFeature *feature, const TmSpread *spread, double coverage,
                             double confidence)
{
  char *refusal = refuse_interval (spread);
  const double k = refusal == NULL ? tm_tolerance_two_sided (spread->n, coverage, confidence) : NAN;
  const double reach = k * spread->deviation;
  g_autofree char *sure = format_percent (confidence);
  g_autofree char *share = format_percent (coverage);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (refusal != NULL)
    return refusal;
  if (!isfinite (reach) || fabs (spread->mean) + reach > (double)TM_COUNT_MAX / 4)
    return g_strdup_printf (_ ("Not said: %u pieces are too few for that."), spread->n);
  low = format_bound (feature, spread, spread->mean - reach, FALSE);
  high = format_bound (feature, spread, spread->mean + reach, TRUE);
  if (isfinite (spread->normality_p))
    return g_strdup_printf (
        _ ("%s %% sure that %s %% lie between %s and %s %s: mean ± %.3f standard deviations, "
           "from %u pieces."),
        sure, share, low, high, tm_unit_symbol (feature->unit), k, spread->n);
  return g_strdup_printf (
      _ ("%s %% sure that %s %% lie between %s and %s %s: mean ± %.3f standard deviations, "
         "from %u pieces, too few to test that they are normal."),
      sure, share, low, high, tm_unit_symbol (feature->unit), k, spread->n);
}

gboolean
tm_read_percent (const char *text, double *share)
{
  g_autofree char *copy = g_strstrip (g_strdelimit (g_strdup (text), ",", '.'));
  char *end = NULL;
  double value;

  if (g_str_has_suffix (copy, "%"))
    copy[strlen (copy) - 1] = '\0';
  g_strchomp (copy);
  if (*copy == '\0' || strspn (copy, "0123456789.") != strlen (copy))
    return FALSE;
  value = g_ascii_strtod (copy, &end);
  if (end == NULL || *end != '\0' || !(value > 0 && value < 100))
    return FALSE;
  *share = value / 100;
  return TRUE;
}
