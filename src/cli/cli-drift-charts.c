/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What drift says of the control charts, in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-drift-print.h"

/* Lines about one rule. */
#define MOST_RUNS 10

/* -------- Limits -------- */

void
tm_drift_print_summary (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  double mean, deviation;
  g_autofree char *middle = NULL;
  g_autofree char *overall = NULL;
  g_autofree char *within = NULL;

  tm_drift_summary (batch, &mean, &deviation);
  if (isnan (mean))
    return;
  middle = tm_drift_format_size (series, mean);
  printf (_ ("mean %s %s"), middle, tm_drift_unit (series));
  if (!isnan (deviation))
    {
      overall = tm_drift_format_spread (series, deviation);
      printf (_ (", standard deviation %s overall"), overall);
    }
  if (batch->chart.status == TM_CHART_OK)
    {
      within = tm_drift_format_spread (series, batch->chart.sigma);
      printf (_ (", %s from piece to piece"), within);
    }
  printf ("\n");
}

static void
print_location (const TmBatch *batch, const TmChartGroup *group)
{
  const TmSeries *series = &batch->series;
  g_autofree char *centre
      = tm_drift_format_size (series, (group->location_lower + group->location_upper) / 2);
  g_autofree char *lower = tm_drift_format_size (series, tm_drift_lower_limit (batch, group));
  g_autofree char *upper = tm_drift_format_size (series, group->location_upper);

  if (batch->chart.kind == TM_CHART_INDIVIDUALS)
    printf (_ ("single pieces: centre %s, control limits %s to %s\n"), centre, lower, upper);
  else
    printf (_ ("means of %u: centre %s, control limits %s to %s\n"), group->n, centre, lower, upper);
}

static void
print_dispersion (const TmBatch *batch, const TmChartGroup *group)
{
  const TmSeries *series = &batch->series;
  g_autofree char *centre = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  if (isnan (group->dispersion_centre))
    return;
  centre = tm_drift_format_spread (series, group->dispersion_centre);
  lower = tm_drift_format_spread (series, group->dispersion_lower);
  upper = tm_drift_format_spread (series, group->dispersion_upper);
  if (batch->chart.kind == TM_CHART_INDIVIDUALS)
    printf (_ ("from one piece to the next: centre %s, control limits %s to %s\n"), centre, lower, upper);
  else if (batch->chart.kind == TM_CHART_RANGES)
    printf (_ ("ranges: centre %s, control limits %s to %s\n"), centre, lower, upper);
  else
    printf (_ ("standard deviations: centre %s, control limits %s to %s\n"), centre, lower, upper);
}

void
tm_drift_print_limits (const TmBatch *batch)
{
  const TmChartGroup *group = tm_drift_present_group (batch);

  if (group == NULL && batch->chart.status == TM_CHART_NO_SPREAD)
    printf ("%s\n", _ ("no control limits: the pieces of each group are all equal"));
  else if (group == NULL)
    printf ("%s\n", _ ("no control limits: fewer than two groups show how the pieces scatter"));
  if (group == NULL)
    return;
  print_location (batch, group);
  print_dispersion (batch, group);
  if (batch->options.baseline > 0)
    printf (ngettext ("the limits are frozen by the first %u group\n",
                      "the limits are frozen by the first %u groups\n", batch->chart.baseline),
            batch->chart.baseline);
}

/* -------- Rules -------- */

static const char *
get_group_serial (const TmBatch *batch, guint group)
{
  const TmPiece *piece = tm_drift_group_piece (batch, group);

  return piece != NULL ? piece->serial : _ ("not measured");
}

static void
print_run (const TmBatch *batch, const char *chart, guint rule, guint from, guint to)
{
  const char *text = _ (tm_run_rule_text (rule));

  if (from == to)
    printf (_ ("group %u, piece %s, %s: %s\n"), from + 1, get_group_serial (batch, from), chart, text);
  else
    printf (_ ("groups %u to %u, pieces %s to %s, %s: %s\n"), from + 1, to + 1,
            get_group_serial (batch, from), get_group_serial (batch, to), chart, text);
}

/* The hit after the run of the same rule that begins at @from. */
static guint
find_run_end (const GArray *hits, guint from)
{
  const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, from);
  guint end = from + 1;

  while (end < hits->len && g_array_index (hits, TmRuleHit, end).point == hit->point + (end - from))
    end++;
  return end;
}

static GArray *
pick_rule (const GArray *hits, guint rule)
{
  GArray *picked = g_array_new (FALSE, FALSE, sizeof (TmRuleHit));

  for (guint i = 0; i < hits->len; i++)
    if (g_array_index (hits, TmRuleHit, i).rule == rule)
      g_array_append_val (picked, g_array_index (hits, TmRuleHit, i));
  return picked;
}

/* A rule that goes on speaking is said once, and a long list is cut. */
static void
print_hits (const TmBatch *batch, const GArray *hits, guint rule, const char *chart)
{
  g_autoptr (GArray) picked = pick_rule (hits, rule);
  guint runs = 0;

  for (guint i = 0, end; i < picked->len; i = end, runs++)
    {
      end = find_run_end (picked, i);
      if (runs == MOST_RUNS)
        {
          printf (_ ("… and %u more groups, %s: %s; --json lists all\n"), picked->len - i, chart,
                  _ (tm_run_rule_text (rule)));
          break;
        }
      print_run (batch, chart, rule, g_array_index (picked, TmRuleHit, i).point,
                 g_array_index (picked, TmRuleHit, end - 1).point);
    }
}

void
tm_drift_print_rules (const TmBatch *batch)
{
  const char *gap = "";

  if (batch->chart.status != TM_CHART_OK)
    return;
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    print_hits (batch, batch->location_hits, i, _ ("level"));
  print_hits (batch, batch->dispersion_hits, TM_RULE_BEYOND_3S, _ ("scatter"));
  if (batch->location_hits->len + batch->dispersion_hits->len == 0)
    printf ("%s\n", _ ("no rule speaks on either chart"));
  if (batch->first_ewma >= 0)
    printf (_ ("the weighted moving average leaves its limits at group %d\n"), batch->first_ewma + 1);
  if (batch->first_cusum >= 0)
    printf (_ ("the cumulative sum passes its bound at group %d\n"), batch->first_cusum + 1);
  printf ("%s ", _ ("rules:"));
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if (batch->options.rules & TM_RULE_BIT (i))
      {
        printf ("%s%s", gap, _ (tm_run_rule_text (i)));
        gap = "; ";
      }
  printf (_ (": with nothing wrong they speak once in about %.0f groups\n"), batch->rules_length);
}
