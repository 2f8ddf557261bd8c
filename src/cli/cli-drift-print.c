/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The answer of drift in words.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "cli-drift-print.h"

/* -------- What it is about -------- */

static void
print_state (const TmBatch *batch)
{
  static const char *const sentences[TM_N_BATCH_STATES] = {
    [TM_BATCH_NOT_MEASURED] = N_ ("nothing is measured yet"),
    [TM_BATCH_TOO_FEW]
    = N_ ("too few pieces are measured since the last event for anything to be said of drift"),
    [TM_BATCH_OUT] = N_ ("a piece since the last event is out"),
    [TM_BATCH_SHIFTED] = N_ ("shifted: the level is not what it was"),
    [TM_BATCH_DRIFTING] = N_ ("drifting"),
    [TM_BATCH_STEADY] = N_ ("no drift shown"),
  };

  printf ("%s\n", _ (sentences[tm_batch_state (batch)]));
}

static void
print_head (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;

  printf (_ ("feature %s"), series->feature->balloon);
  if (*series->feature->name != '\0')
    printf (", %s", series->feature->name);
  if (series->feature->places > 1)
    printf (_ (", place %u"), series->place);
  printf (ngettext (": %u of %u piece measured\n", ": %u of %u pieces measured\n", series->n_points),
          series->n_measured, series->n_points);
  if (*series->feature->check != '\0' && strcmp (series->feature->check, "each") != 0)
    printf (_ ("measured by plan: %s\n"), series->feature->check);
  print_state (batch);
}

/* -------- All of it -------- */

static void
print_case (const TmDriftCase *drift)
{
  const TmBatch *batch = drift->batch;

  print_head (batch);
  if (batch->series.n_measured == 0)
    return;
  tm_drift_print_summary (batch);
  tm_drift_print_limits (batch);
  tm_drift_print_rules (batch);
  tm_drift_print_trend (batch);
  tm_drift_print_forecast (batch);
  tm_drift_print_change (batch);
  tm_drift_print_hold (drift);
  tm_drift_print_advice (batch);
  tm_drift_print_over_correction (batch);
  tm_drift_print_capability (batch, &batch->capability);
  tm_drift_print_interval (drift);
}

/* -------- A tool -------- */

/* The feature that its drift brings to a limit first; NULL: none. */
static const TmBatch *
find_soonest (const TmDriftCase *drifts, guint n)
{
  const TmBatch *soonest = NULL;

  for (guint i = 0; i < n; i++)
    {
      const TmBatch *batch = drifts[i].batch;

      if (batch->forecast.given && (soonest == NULL || batch->pieces_left < soonest->pieces_left))
        soonest = batch;
    }
  return soonest;
}

static void
print_wear (const TmDriftCase *drifts, const TmToolDrift *together)
{
  const TmSeries *series = &drifts->batch->series;
  const char *unit = tm_unit_symbol (tm_unit_small (series->feature->unit));
  g_autofree char *wear = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  if (together->n_used == 0)
    return;
  wear = tm_drift_format_rate (series, together->wear);
  lower = tm_drift_format_rate (series, together->lower);
  upper = tm_drift_format_rate (series, together->upper);
  printf (ngettext ("wear by %u place, metal left counting up: %s %s a piece (95 %%: %s to %s), p %.2g\n",
                    "wear by %u places together, metal left counting up: %s %s a piece (95 %%: %s to %s), p "
                    "%.2g\n",
                    together->n_used),
          together->n_used, wear, unit, lower, upper, together->p);
  if (together->apart >= 0)
    printf (_ ("feature %s goes its own way: look for another cause than wear\n"),
            together->rows[together->apart].feature->balloon);
  else if (together->disagree)
    printf ("%s\n", _ ("the places do not agree: look for another cause than wear"));
}

static void
print_tool (const TmDriftCase *drifts, guint n, const TmToolDrift *together)
{
  const TmBatch *soonest = find_soonest (drifts, n);

  if (soonest != NULL)
    printf (_ ("tool “%s”: feature %s meets its limit first, after about %.0f more pieces\n"),
            together->tool->name, soonest->series.feature->balloon, soonest->pieces_left);
  else
    printf (_ ("tool “%s”: no drift leads any of its features to a limit\n"), together->tool->name);
  print_wear (drifts, together);
  printf ("\n");
}

void
tm_drift_print (const TmDriftCase *drifts, guint n, const TmToolDrift *together)
{
  if (together != NULL)
    print_tool (drifts, n, together);
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        printf ("\n");
      print_case (&drifts[i]);
    }
}
