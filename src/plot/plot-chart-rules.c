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
tm_chart_collect_marks (const GArray *hits, guint n_items)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (TmChartMark));

  for (guint i = 0; hits != NULL && i < hits->len; i++)
    if (g_array_index (hits, TmRuleHit, i).point < n_items)
      add_hit (marks, &g_array_index (hits, TmRuleHit, i));
  for (guint i = 0; i < marks->len; i++)
    {
      TmChartMark *mark = &g_array_index (marks, TmChartMark, i);

      mark->fresh = mark->rules;
      if (i > 0 && mark[-1].item + 1 == mark->item)
        mark->fresh &= ~mark[-1].rules;
    }
  return marks;
}

char *
tm_chart_rules_text (guint rules)
{
  GString *out = g_string_new (NULL);

  for (guint rule = 0; rule < TM_N_RUN_RULES; rule++)
    {
      if ((rules & TM_RULE_BIT (rule)) == 0)
        continue;
      if (out->len > 0)
        g_string_append (out, "; ");
      g_string_append (out, _ (tm_run_rule_text (rule)));
    }
  return g_string_free (out, FALSE);
}
