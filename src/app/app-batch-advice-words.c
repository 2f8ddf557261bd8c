/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-advice-words: whether to correct, and which pieces to hold back.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words-private.h"
#include "app-feature-words.h"
#include "app-reading-words.h"

static char *
say_step (const TmBatch *batch)
{
  return tm_words_count (batch->series.feature, batch->options.step, 0);
}

/* What chasing every piece would have cost, from the job's own data. */
static char *
describe_cost (const TmBatch *batch)
{
  const TmOffsetAdvice *offset = &batch->offset;
  double ratio = offset->spread_corrected / offset->spread;

  if (offset->status == TM_OFFSET_NO_TARGET || !isfinite (ratio) || ratio < 1.05
      || tm_batch_words_stretch_count (batch) <= 3)
    return g_strdup ("");
  return g_strdup_printf (_ ("Correcting after every piece would have spread them %.1f times as far."),
                          ratio);
}

static char *
describe_offset (const TmBatch *batch)
{
  const TmOffsetAdvice *offset = &batch->offset;
  const TmFeature *feature = batch->series.feature;
  g_autofree char *amount = NULL;
  g_autofree char *step = NULL;

  switch (offset->status)
    {
    case TM_OFFSET_ADVISED:
      amount = tm_batch_words_signed (
          tm_batch_words_count (offset->size_change), feature->unit,
          MAX (tm_batch_words_decimals (0, (double)batch->options.step, feature->unit), 1) - 1, TRUE);
      /* Translators: a change of size and its unit. */
      return g_strdup_printf (_ ("An offset of %s %s on the size would recentre it."), amount,
                              tm_unit_symbol (feature->unit));
    case TM_OFFSET_ON_TARGET:
      return g_strdup (_ ("Leave it: no further off than chance explains."));
    case TM_OFFSET_UNDER_STEP:
      step = say_step (batch);
      return g_strdup_printf (_ ("Leave it: off by less than the control’s step of %s."), step);
    case TM_OFFSET_NO_TARGET:
      return g_strdup (_ ("There is no size to aim at."));
    case TM_OFFSET_TOO_FEW:
    default:
      return g_strdup (_ ("Too few pieces to go by: leave it."));
    }
}

/* The number is the same for every batch. */
static guint
find_needless (void)
{
  static gsize needless;

  if (g_once_init_enter (&needless))
    g_once_init_leave (&needless, (gsize)CLAMP (tm_offset_needless (TM_BATCH_LAMBDA) + 0.5, 1, 999999));
  return (guint)needless;
}

/* How often the advice itself is a false alarm, so that nobody follows it piece by piece. */
static char *
describe_needless (const TmBatch *batch)
{
  const guint n = find_needless ();

  if (batch->offset.status != TM_OFFSET_ADVISED || batch->offset.drifting)
    return NULL;
  return g_strdup_printf (
      ngettext ("Asked at every piece, it moves a steady process for nothing about once in %u piece.",
                "Asked at every piece, it moves a steady process for nothing about once in %u pieces.", n),
      n);
}

char *
tm_batch_words_say_offset (const TmBatch *batch)
{
  GString *lines = g_string_new (NULL);

  tm_batch_words_add_line (lines, describe_offset (batch));
  tm_batch_words_add_line (lines, describe_needless (batch));
  tm_batch_words_add_line (lines, describe_cost (batch));
  return g_string_free (lines, FALSE);
}

char *
tm_batch_words_say_hold (const TmBatch *batch)
{
  guint n = batch->hold != NULL ? batch->hold->len : 0;
  guint unmeasured = 0;
  const TmHoldRow *first, *last;

  if (n == 0)
    return g_strdup (tm_batch_words_last_out (batch) >= 0 ? _ ("the piece that is out; no shift is shown")
                                                          : _ ("none"));
  for (guint i = 0; i < n; i++)
    unmeasured += !g_array_index (batch->hold, TmHoldRow, i).measured;
  first = &g_array_index (batch->hold, TmHoldRow, 0);
  last = &g_array_index (batch->hold, TmHoldRow, n - 1);
  if (n == 1)
    return g_strdup_printf (_ ("piece %s"), tm_batch_words_serial (&batch->series, first->point));
  /* Translators: how many, from which serial to which, how many of them. */
  return g_strdup_printf (ngettext ("%u piece, %s to %s, %u of them not measured",
                                    "%u pieces, %s to %s, %u of them not measured", n),
                          n, tm_batch_words_serial (&batch->series, first->point),
                          tm_batch_words_serial (&batch->series, last->point), unmeasured);
}
