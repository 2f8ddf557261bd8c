/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-tool-drift.h"

#include <math.h>
#include <string.h>

#include "core-form.h"
#include "core-slope.h"
#include "core-uncertainty.h"
#include "core-weighted.h"

/* -------- One feature -------- */

/* The first piece that the tool cut since it was last changed; n_points: none yet. */
static guint
find_change (const TmSeries *series)
{
  guint from = 0;

  for (guint i = 0; i < series->n_events; i++)
    if (series->events[i].resets && strcmp (series->events[i].event->kind, "tool") == 0)
      from = series->events[i].before;
  return from;
}

static double
turn_to_metal_left (const TmFeature *feature, double slope)
{
  switch (tm_feature_cut (feature))
    {
    case TM_CUT_GROWS:
      return -slope;
    case TM_CUT_SHRINKS:
      return slope;
    case TM_CUT_UNKNOWN:
    default:
      return NAN;
    }
}

static void
fit_row (const TmSeries *series, TmToolDriftRow *row)
{
  TmSlope slope;

  row->from = find_change (series);
  tm_series_slope (series, row->from, &slope);
  row->n = slope.n;
  if (isnan (slope.slope))
    return;
  row->slope = slope.slope;
  row->slope_se = slope.slope_se;
  row->dof = slope.dof;
  row->wear = turn_to_metal_left (row->feature, slope.slope);
  if (!(slope.slope_se > 0))
    row->status = TM_TOOL_ROW_NO_SPREAD;
  else
    row->status = isnan (row->wear) ? TM_TOOL_ROW_NO_SIDE : TM_TOOL_ROW_USED;
}

static TmToolDriftRow
make_row (const TmJob *job, const TmFeature *feature, guint place)
{
  TmToolDriftRow row = { .feature = feature, .place = place, .status = TM_TOOL_ROW_TOO_FEW };
  g_auto (TmSeries) series = { 0 };

  row.slope = row.slope_se = row.dof = row.wear = NAN;
  tm_series_init (&series, job, feature, place);
  fit_row (&series, &row);
  return row;
}

/* -------- All of them -------- */

/* A diameter changes by twice the wear, a length by once: where both are there diameters speak. */
static void
leave_lengths_out (TmToolDrift *drift)
{
  gboolean diameters = FALSE;

  for (guint i = 0; i < drift->n_rows; i++)
    diameters |= drift->rows[i].status == TM_TOOL_ROW_USED && tm_feature_is_diameter (drift->rows[i].feature);
  for (guint i = 0; i < drift->n_rows; i++)
    {
      TmToolDriftRow *row = &drift->rows[i];

      if (diameters && row->status == TM_TOOL_ROW_USED && !tm_feature_is_diameter (row->feature))
        row->status = TM_TOOL_ROW_NO_DIAMETER;
      drift->n_used += row->status == TM_TOOL_ROW_USED;
    }
}

static void
combine (TmToolDrift *drift)
{
  g_autofree TmWeightedValue *values = g_new (TmWeightedValue, drift->n_used);
  g_autofree double *weights = g_new (double, drift->n_used);
  g_autofree guint *rows = g_new (guint, drift->n_used);
  TmWeighted weighted;
  guint n = 0;

  for (guint i = 0; i < drift->n_rows; i++)
    if (drift->rows[i].status == TM_TOOL_ROW_USED)
      {
        values[n] = (TmWeightedValue) { drift->rows[i].wear, drift->rows[i].slope_se, drift->rows[i].dof };
        rows[n++] = i;
      }
  tm_weighted_mean (values, n, NULL, weights, NULL, &weighted);
  drift->wear = weighted.mean;
  drift->wear_se = weighted.u;
  drift->lower = weighted.mean - weighted.expanded;
  drift->upper = weighted.mean + weighted.expanded;
  drift->p = MIN (1, 2 * tm_t_above (fabs (weighted.mean) / weighted.u, weighted.dof));
  drift->shown = drift->p <= 0.05;
  drift->chi_square = weighted.chi2;
  drift->agreement_p = weighted.p;
  drift->disagree = weighted.disagree;
  drift->apart = weighted.apart >= 0 ? (int)rows[weighted.apart] : -1;
}

gboolean
tm_tool_drift_init (TmToolDrift *out, const TmJob *job, const char *tool,
                    gboolean (*cancelled) (gpointer data), gpointer data)
{
  g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (TmToolDriftRow));

  g_return_val_if_fail (out != NULL && job != NULL && tool != NULL, FALSE);

  *out = (TmToolDrift) { .tool = tm_job_find_tool (job, tool), .apart = -1 };
  out->wear = out->wear_se = out->lower = out->upper = out->p = out->chi_square = out->agreement_p = NAN;
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (*tool == '\0' || strcmp (feature->tool, tool) != 0 || tm_kind_is_attribute (feature->kind)
          || tm_kind_is_zero_bounded (feature->kind))
        continue;
      for (guint place = 1; place <= feature->places; place++)
        {
          TmToolDriftRow row;

          if (cancelled != NULL && cancelled (data))
            return FALSE;
          row = make_row (job, feature, place);
          g_array_append_val (rows, row);
        }
    }
  out->n_rows = rows->len;
  out->rows = (TmToolDriftRow *)(gpointer)g_array_free (g_steal_pointer (&rows), FALSE);
  leave_lengths_out (out);
  if (out->n_used > 0)
    combine (out);
  return TRUE;
}

void
tm_tool_drift_clear (TmToolDrift *drift)
{
  g_clear_pointer (&drift->rows, g_free);
  drift->n_rows = drift->n_used = 0;
}
