/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-piece-words: one piece of a batch, with its sizes, in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words-private.h"

/* A size of the series in the feature's unit, with one digit more than its limits. */
static char *
format_size (const TmSeries *series, double value)
{
  const TmFeature *feature = series->feature;
  guint decimals = MAX (feature->upper.decimals, feature->lower.decimals);

  decimals = MAX (decimals, feature->nominal.decimals) + 1;
  return tm_batch_words_signed (series->reference + tm_batch_words_count (value), feature->unit,
                                MIN (decimals, 6), FALSE);
}

static char *
describe_sizes (const TmSeries *series, const TmSeriesPoint *point)
{
  g_autofree char *mean = format_size (series, point->mean);
  g_autofree char *low = NULL, *high = NULL;

  if (!(point->largest > point->smallest))
    return g_strdup_printf ("%s %s", mean, tm_batch_words_symbol (series));
  low = format_size (series, point->smallest);
  high = format_size (series, point->largest);
  /* Translators: mean of a piece's stations, the smallest and the largest, the unit. */
  return g_strdup_printf (_ ("%s (%s to %s) %s"), mean, low, high, tm_batch_words_symbol (series));
}

char *
tm_words_batch_piece (const TmBatch *batch, guint at)
{
  const TmSeries *series = &batch->series;
  const TmSeriesPoint *point;
  g_autofree char *sizes = NULL;
  g_autofree char *hits = NULL;
  const char *verdict;

  g_return_val_if_fail (at < series->n_points, g_strdup (""));

  point = &series->points[at];
  verdict = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (point->verdict));
  if (isnan (point->mean))
    /* Translators: a piece and its verdict. */
    return g_strdup_printf (_ ("Piece %s: %s"), point->piece->serial, verdict);
  sizes = describe_sizes (series, point);
  hits = tm_words_batch_hits (batch, at);
  if (*hits == '\0')
    /* Translators: a piece, its size, its verdict. */
    return g_strdup_printf (_ ("Piece %s: %s, %s"), point->piece->serial, sizes, verdict);
  /* Translators: a piece, its size, its verdict, and rules that speak at it. */
  return g_strdup_printf (_ ("Piece %s: %s, %s; %s"), point->piece->serial, sizes, verdict, hits);
}
