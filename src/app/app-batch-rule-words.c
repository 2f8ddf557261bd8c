/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-rule-words: which rules are looked at, how often they speak by chance, and where they did.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words-private.h"

static char *
list_rules (guint rules)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if ((rules & TM_RULE_BIT (i)) != 0)
      g_ptr_array_add (words, (gpointer)g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)i)));
  g_ptr_array_add (words, NULL);
  return g_strjoinv ("; ", (char **)words->pdata);
}

/* How often the chosen rules speak of nothing at all. */
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

char *
tm_batch_words_say_rules (const TmBatch *batch)
{
  GString *lines = g_string_new (NULL);
  guint rule = 0;
  gint at = tm_batch_words_last_hit (batch, &rule);

  if (batch->chart.status == TM_CHART_TOO_FEW)
    {
      g_string_free (lines, TRUE);
      return g_strdup (_ ("too few pieces for control limits"));
    }
  tm_batch_words_add_line (lines, list_rules (batch->options.rules));
  tm_batch_words_add_line (lines, describe_false_alarms (batch));
  if (at >= 0)
    tm_batch_words_add_line (lines, g_strdup_printf (_ ("spoke last at piece %s"),
                                                     tm_batch_words_serial (&batch->series, (guint)at)));
  return g_string_free (lines, FALSE);
}

char *
tm_batch_words_hits_at (const TmBatch *batch, guint at)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; batch->location_hits != NULL && i < batch->location_hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (batch->location_hits, TmRuleHit, i);

      if (hit->point < batch->chart.n_groups && batch->chart.groups[hit->point].from == at)
        g_string_append_printf (words, "; %s",
                                g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)hit->rule)));
    }
  return g_string_free (words, FALSE);
}
