/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-chart.h"

#include "core-run-rules.h"

char *
tm_chart_rules_to_words (guint rules)
{
  GString *words = g_string_new (NULL);

  if (rules == TM_RULES_USUAL)
    return g_string_free (words, FALSE);
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if (rules & TM_RULE_BIT (i))
      g_string_append_printf (words, "%s%s", words->len > 0 ? " " : "", tm_run_rule_word ((TmRunRule)i));
  return g_string_free (words, FALSE);
}

guint
tm_chart_rules_from_words (const char *words)
{
  g_auto (GStrv) all = g_strsplit (words, " ", -1);
  guint rules = 0;

  for (guint i = 0; all[i] != NULL; i++)
    {
      TmRunRule rule;

      if (tm_run_rule_from_word (all[i], &rule))
        rules |= TM_RULE_BIT (rule);
    }
  return rules;
}

TmChartChoice
tm_chart_choice_of (const TmFeature *feature)
{
  TmChartChoice choice = { .rules = tm_chart_rules_from_words (feature->chart_rules),
                           .group_size = MAX (feature->group_size, 1),
                           .baseline = feature->chart_baseline };

  if (choice.rules == 0)
    choice.rules = TM_RULES_USUAL;
  return choice;
}

gboolean
tm_edit_chart_choice (TmDocument *document, TmFeature *feature, const TmChartChoice *choice, GError **error)
{
  TmJob *job = tm_document_job (document);
  g_autofree char *words = tm_chart_rules_to_words (choice->rules);
  const char *rules = feature->chart_rules;
  const guint group_size = feature->group_size;
  const guint baseline = feature->chart_baseline;

  feature->chart_rules = tm_job_intern (job, words);
  /* A size that was never stated and is one stays unstated. */
  if (choice->group_size != MAX (group_size, 1))
    feature->group_size = choice->group_size;
  feature->chart_baseline = choice->baseline;
  if (tm_document_save_definitions (document, error))
    return TRUE;
  feature->chart_rules = rules;
  feature->group_size = group_size;
  feature->chart_baseline = baseline;
  return FALSE;
}

gboolean
tm_edit_check_plan (TmDocument *document, TmFeature *feature, const char *check, GError **error)
{
  const char *before = feature->check;

  feature->check = tm_job_intern (tm_document_job (document), check);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  feature->check = before;
  return FALSE;
}
