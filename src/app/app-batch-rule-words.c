/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-rule-words: which rules are looked at, how often they speak by chance, and where they did.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words-private.h"

/* Pieces named of those at which a rule speaks: the newest. */
#define MOST_SERIALS 4

static const char *
get_text (guint rule)
{
  return g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)rule));
}

/* -------- Where they spoke -------- */

static const char *
find_group_serial (const TmBatch *batch, guint group)
{
  return group < batch->chart.n_groups
             ? tm_batch_words_serial (&batch->series, batch->chart.groups[group].from)
             : "";
}

/* The serials of the newest groups that @rule speaks of, in order, and of how many it speaks. */
static char *
list_serials (const TmBatch *batch, const GArray *hits, guint rule, guint *n)
{
  const char *serials[MOST_SERIALS + 1] = { NULL };
  guint at = MOST_SERIALS;

  *n = 0;
  for (guint i = hits != NULL ? hits->len : 0; i > 0; i--)
    {
      const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, i - 1);

      if (hit->rule != rule)
        continue;
      (*n)++;
      if (at > 0)
        serials[--at] = find_group_serial (batch, hit->point);
    }
  return g_strjoinv (", ", (char **)serials + at);
}

/* "one point beyond 3 sigma: at 057, 058, 060", with how many were before those; the rule alone where it does
 * not speak. */
static char *
describe_rule (const TmBatch *batch, guint rule)
{
  guint n;
  g_autofree char *serials = list_serials (batch, batch->location_hits, rule, &n);

  if (n == 0)
    return g_strdup (get_text (rule));
  if (n <= MOST_SERIALS)
    /* Translators: a rule, and the pieces at which it speaks. */
    return g_strdup_printf (_ ("%s: at %s"), get_text (rule), serials);
  return g_strdup_printf (ngettext ("%s: at %s, and %u before", "%s: at %s, and %u before", n - MOST_SERIALS),
                          get_text (rule), serials, n - MOST_SERIALS);
}

/* Of the chart of scatter the limits alone speak. */
static char *
describe_scatter (const TmBatch *batch)
{
  guint n;
  g_autofree char *serials = list_serials (batch, batch->dispersion_hits, TM_RULE_BEYOND_3S, &n);

  if (n == 0)
    return NULL;
  if (n <= MOST_SERIALS)
    /* Translators: the pieces at which the chart of ranges is beyond its limits. */
    return g_strdup_printf (_ ("scatter beyond its limits: at %s"), serials);
  return g_strdup_printf (ngettext ("scatter beyond its limits: at %s, and %u before",
                                    "scatter beyond its limits: at %s, and %u before", n - MOST_SERIALS),
                          serials, n - MOST_SERIALS);
}

/* -------- How often they speak of nothing at all -------- */

static char *
describe_false_alarms (const TmBatch *batch)
{
  guint n;

  if (!isfinite (batch->rules_length) || batch->rules_length < 1)
    return NULL;
  n = (guint)MIN (batch->rules_length + 0.5, 999999);
  return batch->options.group_size > 1 ? g_strdup_printf (
             ngettext ("a false alarm about every %u group", "a false alarm about every %u groups", n), n)
                                       : g_strdup_printf (ngettext ("a false alarm about every %u piece",
                                                                    "a false alarm about every %u pieces", n),
                                                          n);
}

/* What the limits come from, where that is not all groups. */
static char *
describe_baseline (const TmBatch *batch)
{
  const guint n = batch->chart.baseline;

  if (batch->options.baseline == 0)
    return NULL;
  return batch->options.group_size > 1
             ? g_strdup_printf (ngettext ("limits frozen from the first %u group",
                                          "limits frozen from the first %u groups", n),
                                n)
             : g_strdup_printf (ngettext ("limits frozen from the first %u piece",
                                          "limits frozen from the first %u pieces", n),
                                n);
}

char *
tm_batch_words_say_rules (const TmBatch *batch)
{
  GString *lines;

  if (batch->chart.status == TM_CHART_TOO_FEW)
    return g_strdup (_ ("too few pieces for control limits"));
  if (batch->chart.status == TM_CHART_NO_SPREAD)
    return g_strdup (_ ("all sizes are equal: there are no control limits"));
  lines = g_string_new (NULL);
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if ((batch->options.rules & TM_RULE_BIT (i)) != 0)
      tm_batch_words_add_line (lines, describe_rule (batch, i));
  tm_batch_words_add_line (lines, describe_scatter (batch));
  tm_batch_words_add_line (lines, describe_baseline (batch));
  tm_batch_words_add_line (lines, describe_false_alarms (batch));
  return g_string_free (lines, FALSE);
}

/* -------- At one piece -------- */

/* The group of the chart that piece @at is in; -1: none. */
static gint
find_group (const TmBatch *batch, guint at)
{
  for (guint i = batch->chart.n_groups; i > 0; i--)
    if (batch->chart.groups[i - 1].from <= at)
      return (gint)i - 1;
  return -1;
}

static void
add_hits (GPtrArray *words, const GArray *hits, guint group, gboolean scatter)
{
  for (guint i = 0; hits != NULL && i < hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, i);

      if (hit->point == group)
        /* Translators: a rule that speaks on the chart of ranges or deviations. */
        g_ptr_array_add (words, scatter ? g_strdup_printf (_ ("scatter: %s"), get_text (hit->rule))
                                        : g_strdup (get_text (hit->rule)));
    }
}

char *
tm_words_batch_hits (const TmBatch *batch, guint at)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  const gint group = find_group (batch, at);

  if (group >= 0)
    {
      add_hits (words, batch->location_hits, (guint)group, FALSE);
      add_hits (words, batch->dispersion_hits, (guint)group, TRUE);
    }
  g_ptr_array_add (words, NULL);
  return g_strjoinv ("; ", (char **)words->pdata);
}
