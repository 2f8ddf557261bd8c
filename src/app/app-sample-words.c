/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-sample-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-feature-words.h"
#include "core-normality.h"
#include "core-statistics.h"
#include "core-tolerance.h"
#include "report-batch-words.h"

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
                      .drifting = tm_batch_has_drift (batch) || batch->drifted,
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

char *
tm_words_tolerance_interval (const TmFeature *feature, const TmSpread *spread, double coverage,
                             double confidence)
{
  char *words = refuse_interval (spread);
  const TmBatchInterval interval = { .n = spread->n,
                                     .coverage = coverage,
                                     .confidence = confidence,
                                     .reference = spread->reference,
                                     .mean = spread->mean,
                                     .deviation = spread->deviation,
                                     .tested = isfinite (spread->normality_p) };

  if (words == NULL)
    words = tm_batch_interval_words (feature, &interval);
  if (words == NULL)
    words = g_strdup_printf (_ ("Not said: %u pieces are too few for that."), spread->n);
  return words;
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
