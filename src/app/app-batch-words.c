/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-words.h"

#include <glib/gi18n-lib.h>

#include "app-batch-words-private.h"

static const char *
find_shift_headline (const TmBatch *batch)
{
  if (!batch->change.found)
    return _ ("Not steady");
  return batch->change.after > batch->change.before ? _ ("Shifted larger") : _ ("Shifted smaller");
}

char *
tm_words_batch_headline (const TmBatch *batch)
{
  switch (tm_batch_state (batch))
    {
    case TM_BATCH_NOT_MEASURED:
      return g_strdup (_ ("Not measured"));
    case TM_BATCH_TOO_FEW:
      return g_strdup (_ ("Too few to tell"));
    case TM_BATCH_OUT:
      return g_strdup (_ ("Out"));
    case TM_BATCH_SHIFTED:
      return g_strdup (find_shift_headline (batch));
    case TM_BATCH_DRIFTING:
      return g_strdup (batch->trend.slope > 0 ? _ ("Drifting larger") : _ ("Drifting smaller"));
    case TM_BATCH_STEADY:
      return g_strdup (_ ("Steady"));
    case TM_N_BATCH_STATES:
    default:
      return g_strdup ("");
    }
}

static char *
describe_event (const TmEvent *event)
{
  if (*event->note != '\0')
    return g_strdup (event->note);
  if (g_str_equal (event->kind, "tool"))
    return *event->tool != '\0' ? g_strdup_printf (_ ("tool changed: %s"), event->tool)
                                : g_strdup (_ ("tool changed"));
  if (g_str_equal (event->kind, "offset"))
    return *event->amount != '\0' ? g_strdup_printf (_ ("offset of %s"), event->amount)
                                  : g_strdup (_ ("offset"));
  if (g_str_equal (event->kind, "lot"))
    return g_strdup (_ ("new lot"));
  return g_strdup (_ ("event"));
}

static char *
describe_stretch (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;

  for (guint i = series->n_events; i > 0; i--)
    {
      const TmSeriesEvent *event = &series->events[i - 1];
      g_autofree char *words = NULL;

      if (!event->resets || event->before != batch->stretch_from)
        continue;
      words = describe_event (event->event);
      if (batch->stretch_from >= series->n_points)
        /* Translators: an event after the last piece. */
        return g_strdup_printf (_ ("since the last piece: %s"), words);
      /* Translators: a piece, and the event before it: "since piece 013: new insert". */
      return g_strdup_printf (_ ("since piece %s: %s"), tm_batch_words_serial (series, batch->stretch_from),
                              words);
    }
  if (batch->stretch_from == 0)
    return g_strdup (_ ("since the first piece"));
  return g_strdup_printf (_ ("since piece %s"), tm_batch_words_serial (series, batch->stretch_from));
}

static char *
describe_outs (const TmBatch *batch)
{
  gint last = tm_batch_words_last_out (batch);
  const TmSeriesPoint *point = &batch->series.points[last];
  guint n = 0;

  for (guint i = batch->stretch_from; i < batch->series.n_points; i++)
    n += batch->series.points[i].verdict == TM_VERDICT_OUT;
  if (n > 1)
    /* Translators: %u is at least 2; the serial is that of the newest. */
    return g_strdup_printf (ngettext ("%u piece, the newest %s", "%u pieces, the newest %s", n), n,
                            point->piece->serial);
  if (point->side == TM_SIDE_NONE)
    return g_strdup_printf (_ ("piece %s"), point->piece->serial);
  return g_strdup_printf (_ ("piece %s, %s"), point->piece->serial,
                          g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (point->side)));
}

static char *
describe_change (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  const TmLevelChange *change = &batch->change;
  const char *at = tm_batch_words_serial (series, change->at);

  if (change->low == change->high)
    return g_strdup_printf (_ ("from piece %s on"), at);
  return g_strdup_printf (_ ("most likely from piece %s on (%s to %s)"), at,
                          tm_batch_words_serial (series, change->low),
                          tm_batch_words_serial (series, change->high));
}

/* A shift behind it is said with it: it is what the other pieces are held back for. */
static char *
describe_out (const TmBatch *batch)
{
  g_autofree char *outs = describe_outs (batch);
  g_autofree char *change = NULL;

  if (!batch->change.found)
    return g_steal_pointer (&outs);
  change = describe_change (batch);
  /* Translators: the pieces that are out; under them since when: "most likely from piece 021 on". */
  return batch->change.after > batch->change.before
             ? g_strdup_printf (_ ("%s\nshifted larger, %s"), outs, change)
             : g_strdup_printf (_ ("%s\nshifted smaller, %s"), outs, change);
}

static char *
describe_hit (const TmBatch *batch)
{
  guint rule = 0;
  gint at = tm_batch_words_last_hit (batch, &rule);

  if (at < 0)
    return describe_stretch (batch);
  /* Translators: a run rule in words, and the piece at which it spoke. */
  return g_strdup_printf (_ ("%s, at piece %s"),
                          g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)rule)),
                          tm_batch_words_serial (&batch->series, (guint)at));
}

static char *
describe_few (const TmBatch *batch)
{
  guint n = tm_batch_words_stretch_count (batch);

  if (tm_kind_is_attribute (batch->series.feature->kind))
    return g_strdup (_ ("judged by pass or fail: there are no sizes to follow"));
  if (n == 0 && batch->stretch_from > 0)
    return describe_stretch (batch);
  if (batch->stretch_from > 0)
    {
      g_autofree char *since = describe_stretch (batch);
      g_autofree char *count = g_strdup_printf (ngettext ("%u piece measured", "%u pieces measured", n), n);
      return g_strdup_printf ("%s\n%s", since, count);
    }
  return g_strdup_printf (ngettext ("%u piece measured; four are the least that a drift is looked for in",
                                    "%u pieces measured; four are the least that a drift is looked for in",
                                    n),
                          n);
}

char *
tm_words_batch_since (const TmBatch *batch)
{
  switch (tm_batch_state (batch))
    {
    case TM_BATCH_NOT_MEASURED:
      return g_strdup (_ ("Measure a piece at the Bench: it shows here as it is recorded."));
    case TM_BATCH_TOO_FEW:
      return describe_few (batch);
    case TM_BATCH_OUT:
      return describe_out (batch);
    case TM_BATCH_SHIFTED:
      return batch->change.found ? describe_change (batch) : describe_hit (batch);
    case TM_BATCH_DRIFTING:
    case TM_BATCH_STEADY:
      return describe_stretch (batch);
    case TM_N_BATCH_STATES:
    default:
      return g_strdup ("");
    }
}

const char *
tm_words_batch_heading (TmBatchSays says)
{
  static const char *const headings[TM_N_BATCH_SAYS] = {
    [TM_BATCH_SAYS_SLOPE] = N_ ("Slope"),           [TM_BATCH_SAYS_OFFSET] = N_ ("Correct or leave alone"),
    [TM_BATCH_SAYS_HOLD] = N_ ("Hold back"),        [TM_BATCH_SAYS_CAPABILITY] = N_ ("Capability"),
    [TM_BATCH_SAYS_RULES] = N_ ("Rules looked at"),
  };

  g_return_val_if_fail (says < TM_N_BATCH_SAYS, "");

  return g_dgettext (GETTEXT_PACKAGE, headings[says]);
}

char *
tm_words_batch_says (const TmBatch *batch, TmBatchSays says)
{
  TmBatchState state = tm_batch_state (batch);

  if (state == TM_BATCH_NOT_MEASURED)
    return g_strdup ("");
  if (tm_kind_is_attribute (batch->series.feature->kind) && says != TM_BATCH_SAYS_HOLD)
    return g_strdup ("");
  switch (says)
    {
    case TM_BATCH_SAYS_SLOPE:
      return tm_batch_words_is_told (batch) ? tm_batch_words_say_slope (batch) : g_strdup ("");
    case TM_BATCH_SAYS_OFFSET:
      return tm_batch_words_say_offset (batch);
    case TM_BATCH_SAYS_HOLD:
      return tm_batch_words_say_hold (batch);
    case TM_BATCH_SAYS_CAPABILITY:
      return tm_batch_words_say_capability (batch);
    case TM_BATCH_SAYS_RULES:
      return tm_batch_words_say_rules (batch);
    case TM_N_BATCH_SAYS:
    default:
      return g_strdup ("");
    }
}
