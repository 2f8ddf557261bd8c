/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-rank: places in a list as numbers with room between them, so that a row put in the middle
 * changes no other row.
 */

#include "book-private.h"

/* Keeps the longest run of ranks that rise (patience sorting, common method) and sets the others
 * to 0. */
static void
keep_rising (gint64 *ranks, guint n)
{
  g_autofree guint *tails = g_new (guint, n + 1); /* tails[k]: last row of the best run of k + 1 */
  g_autofree guint *before = g_new (guint, n + 1);
  g_autofree gboolean *kept = g_new0 (gboolean, n + 1);
  guint length = 0;

  for (guint i = 0; i < n; i++)
    {
      guint low = 0;
      guint high = length;

      if (ranks[i] <= 0)
        continue;
      while (low < high)
        {
          guint middle = (low + high) / 2;

          if (ranks[tails[middle]] < ranks[i])
            low = middle + 1;
          else
            high = middle;
        }
      before[i] = low > 0 ? tails[low - 1] : i;
      tails[low] = i;
      length = MAX (length, low + 1);
    }
  for (guint i = length > 0 ? tails[length - 1] : 0, k = length; k > 0; k--, i = before[i])
    kept[i] = TRUE;
  for (guint i = 0; i < n; i++)
    ranks[i] = kept[i] ? ranks[i] : 0;
}

/* Gives @count rows from @ranks on places between @below and @above (0: no end). */
static gboolean
fill_gap (gint64 *ranks, guint count, gint64 below, gint64 above)
{
  gint64 step = above > 0 ? (above - below) / ((gint64)count + 1) : TM_RANK_STEP;

  if (step == 0)
    return FALSE;
  for (guint i = 0; i < count; i++)
    ranks[i] = below + step * ((gint64)i + 1);
  return TRUE;
}

static gboolean
fill_gaps (gint64 *ranks, guint n)
{
  gint64 below = 0;

  for (guint i = 0; i < n; i++)
    {
      guint end = i;

      while (end < n && ranks[end] == 0)
        end++;
      if (end > i && !fill_gap (ranks + i, end - i, below, end < n ? ranks[end] : 0))
        return FALSE;
      i = MIN (end, n - 1);
      below = ranks[i];
    }
  return TRUE;
}

void
tm_rank_assign (gint64 *ranks, guint n)
{
  keep_rising (ranks, n);
  if (fill_gaps (ranks, n))
    return;
  for (guint i = 0; i < n; i++)
    ranks[i] = ((gint64)i + 1) * TM_RANK_STEP;
}
