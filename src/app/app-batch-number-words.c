/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-number-words: numbers and marks of a batch that several of its sentences need.
 */

#include "app-batch-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

char *
tm_batch_words_signed (gint64 count, TmUnit unit, guint decimals, gboolean plus)
{
  g_autofree char *number = tm_count_format (count, unit, decimals);

  if (*number == '-')
    return g_strconcat ("−", number + 1, NULL);
  return plus && strpbrk (number, "123456789") != NULL ? g_strconcat ("+", number, NULL)
                                                       : g_steal_pointer (&number);
}

char *
tm_batch_words_p (double p)
{
  return p < 0.001 ? g_strdup (_ ("under 0.001")) : g_strdup_printf ("%.3f", p);
}

/* That show @digits of @share of a unit; 0: as few as there are. */
static int
find_decimals (double share, int digits)
{
  return share > 0 ? (int)CLAMP (digits - 1 - floor (log10 (share)), 0, 6) : 0;
}

guint
tm_batch_words_decimals (double value, double spread, TmUnit unit)
{
  const double one = (double)MAX (tm_unit_counts (unit), 1);
  const int of_value = find_decimals (fabs (value) / one, 4),
            of_spread = find_decimals (fabs (spread) / one, 2);

  if (!(value != 0))
    return (guint)MIN (MAX (of_spread, 1), 5);
  return (guint)CLAMP (spread > 0 ? MIN (of_spread, MAX (of_value, 1)) : of_value, 0, 5);
}

gint64
tm_batch_words_count (double value)
{
  return isfinite (value) ? (gint64)llround (CLAMP (value, -4e18, 4e18)) : 0;
}

const char *
tm_batch_words_symbol (const TmSeries *series)
{
  return tm_unit_symbol (series->feature->unit);
}

const char *
tm_batch_words_serial (const TmSeries *series, guint at)
{
  return at < series->n_points ? series->points[at].piece->serial : "";
}

guint
tm_batch_words_stretch_count (const TmBatch *batch)
{
  guint n = 0;

  for (guint i = batch->stretch_from; i < batch->series.n_points; i++)
    n += !isnan (batch->series.points[i].mean);
  return n;
}

gint
tm_batch_words_last_measured (const TmSeries *series)
{
  for (guint i = series->n_points; i > 0; i--)
    if (!isnan (series->points[i - 1].mean))
      return (gint)i - 1;
  return -1;
}

gint
tm_batch_words_last_out (const TmBatch *batch)
{
  for (guint i = batch->series.n_points; i > batch->stretch_from; i--)
    if (batch->series.points[i - 1].verdict == TM_VERDICT_OUT)
      return (gint)i - 1;
  return -1;
}

gint
tm_batch_words_last_hit (const TmBatch *batch, guint *rule)
{
  const GArray *hits = batch->location_hits;
  const TmRuleHit *hit;

  if (hits == NULL || hits->len == 0)
    return -1;
  hit = &g_array_index (hits, TmRuleHit, hits->len - 1);
  if (hit->point >= batch->chart.n_groups)
    return -1;
  *rule = hit->rule;
  return (gint)batch->chart.groups[hit->point].from;
}

gboolean
tm_batch_words_is_told (const TmBatch *batch)
{
  TmBatchState state = tm_batch_state (batch);

  return state != TM_BATCH_NOT_MEASURED && state != TM_BATCH_TOO_FEW
         && !tm_kind_is_attribute (batch->series.feature->kind);
}

void
tm_batch_words_add_line (GString *lines, char *line)
{
  if (line != NULL && *line != '\0')
    {
      if (lines->len > 0)
        g_string_append_c (lines, '\n');
      g_string_append (lines, line);
    }
  g_free (line);
}
