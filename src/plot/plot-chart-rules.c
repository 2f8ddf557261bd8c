/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the run rules speak on a chart, and what they say.
 */

#include <glib/gi18n-lib.h>

#include "plot-chart-private.h"

static void
add_hit (GArray *marks, const TmRuleHit *hit)
{
  TmChartMark mark = { .item = hit->point };

  if (marks->len == 0 || g_array_index (marks, TmChartMark, marks->len - 1).item != hit->point)
    g_array_append_val (marks, mark);
  g_array_index (marks, TmChartMark, marks->len - 1).rules |= TM_RULE_BIT (hit->rule);
}

GArray *
tm_chart_collect_marks (const GArray *hits, guint n_items, guint counts[TM_N_RUN_RULES])
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (TmChartMark));

  for (guint i = 0; hits != NULL && i < hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, i);

      if (hit->point >= n_items)
        continue;
      add_hit (marks, hit);
      counts[hit->rule]++;
    }
  for (guint i = 0; i < marks->len; i++)
    {
      TmChartMark *mark = &g_array_index (marks, TmChartMark, i);

      mark->fresh = mark->rules;
      if (i > 0 && mark[-1].item + 1 == mark->item)
        mark->fresh &= ~mark[-1].rules;
    }
  return marks;
}

static void
add_rule (GString *out, guint rule, guint count)
{
  const char *text = _ (tm_run_rule_text (rule));

  if (out->len > 0)
    g_string_append (out, "; ");
  if (count > 1)
    /* Translators: what a run rule says, and at how many points of a chart it speaks. */
    g_string_append_printf (out, ngettext ("%s (%u time)", "%s (%u times)", count), text, count);
  else
    g_string_append (out, text);
}

char *
tm_chart_rules_text (guint rules, const guint counts[TM_N_RUN_RULES])
{
  GString *out = g_string_new (NULL);

  for (guint rule = 0; rule < TM_N_RUN_RULES; rule++)
    if ((rules & TM_RULE_BIT (rule)) != 0)
      add_rule (out, rule, counts[rule]);
  return g_string_free (out, FALSE);
}
