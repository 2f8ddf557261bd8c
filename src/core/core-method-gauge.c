/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-method-gauge: the lines that a gauge gives to a budget.
 */

#include <math.h>
#include <string.h>

#include "core-gauge-kind.h"
#include "core-gauge.h"
#include "core-method-private.h"

/* 95 % of a normal distribution, as limits of feel are given. */
#define FEEL_DIVISOR 1.96

static TmComponent
make_gauge_line (const TmGauge *gauge, TmComponentKind kind, TmDistribution distribution, double value,
                 gboolean shared)
{
  TmComponent line = tm_component (kind, distribution, value, INFINITY, shared);

  line.subject = gauge->tag;
  line.source = gauge->source[0] != '\0' ? gauge->source : NULL;
  line.assumed = tm_gauge_source_is_assumed (gauge->source);
  return line;
}

/* Half a step either way, of each reading by itself. */
static gboolean
add_resolution (const TmBudget *self, const TmGauge *gauge)
{
  TmComponent line = make_gauge_line (gauge, TM_COMPONENT_RESOLUTION, TM_DISTRIBUTION_RECTANGULAR,
                                      (double)gauge->resolution.count / 2, FALSE);

  return tm_budget_add (self, &gauge->resolution, &line);
}

/* The limit of error, which repeats share. */
static gboolean
add_error_limit (const TmBudget *self, const TmGauge *gauge)
{
  TmComponent line = make_gauge_line (gauge, TM_COMPONENT_ERROR_LIMIT, TM_DISTRIBUTION_RECTANGULAR,
                                      (double)gauge->error_limit.count, TRUE);

  return tm_budget_add (self, &gauge->error_limit, &line);
}

/* Starting figures of kinds that transfer a size, by the word last asked for: a job's few gauges ask
 * again and again, and to look a word up takes longer than to judge.  A pure cache, one per thread. */
#define STARTS 16

typedef struct {
  char kind[40];
  gboolean transfer;
  TmGaugeDefaults figures;
} Start;

static const TmGaugeDefaults *
find_start (const TmGauge *gauge)
{
  static _Thread_local Start starts[STARTS];
  Start *start = &starts[g_str_hash (gauge->kind) % STARTS];

  if (gauge->kind[0] == '\0' || strlen (gauge->kind) >= sizeof start->kind)
    return NULL;
  if (strcmp (start->kind, gauge->kind) != 0)
    {
      const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);

      g_strlcpy (start->kind, gauge->kind, sizeof start->kind);
      start->transfer = kind != NULL && kind->transfer;
      if (start->transfer)
        start->figures = tm_gauge_kind_defaults (kind, TM_UNIT_IN, NULL);
    }
  return start->transfer ? &start->figures : NULL;
}

/* The certificate of the calibration in force, U at its k (2 where it states none). */
static gboolean
add_certificate (const TmBudget *self, const TmGauge *gauge, const TmCalibration *calibration)
{
  double coverage = tm_plain_number (&calibration->coverage, 2);
  TmComponent line = make_gauge_line (gauge, TM_COMPONENT_CERTIFICATE, TM_DISTRIBUTION_NORMAL,
                                      fabs ((double)calibration->uncertainty.count), TRUE);

  line.divisor = coverage > 0 ? coverage : 2;
  line.source = calibration->certificate[0] != '\0' ? calibration->certificate : calibration->date;
  line.assumed = FALSE;
  return tm_budget_add (self, &calibration->uncertainty, &line);
}

static gboolean
add_calibration (const TmBudget *self, const TmGauge *gauge)
{
  const TmCalibration *calibration = NULL;

  if (self->job->calibrations->len > 0)
    calibration = tm_calibration_at (self->job, gauge->tag, self->when->at);
  if (calibration != NULL && calibration->uncertainty.given)
    return add_certificate (self, gauge, calibration);
  return add_error_limit (self, gauge);
}

/* The whole of the drift that the last check found may be in the reading, either way: nobody knows when
 * it came. */
static gboolean
add_drift (const TmBudget *self, const TmGauge *gauge)
{
  TmCheckState state;
  TmComponent line;

  if (self->job->checks->len == 0 || self->job->drift_rule != TM_DRIFT_WIDEN)
    return TRUE;
  state = tm_gauge_check_state (self->job, gauge, self->when->at);
  if (state.last == NULL || !(fabs (state.drift) > 0))
    return TRUE;
  line = make_gauge_line (gauge, TM_COMPONENT_DRIFT, TM_DISTRIBUTION_RECTANGULAR, fabs (state.drift), TRUE);
  line.source = state.last->at;
  line.assumed = FALSE;
  return tm_budget_add (self, &state.last->reading, &line);
}

/* A hand leans the same way each time, so repeats are not taken to average its feel. */
static gboolean
add_feel (const TmBudget *self, const TmGauge *gauge)
{
  TmComponent line = make_gauge_line (gauge, TM_COMPONENT_FEEL, TM_DISTRIBUTION_NORMAL,
                                      fabs ((double)gauge->feel.count), TRUE);
  const TmGaugeDefaults *start;

  line.divisor = FEEL_DIVISOR;
  if (self->own_feel || (self->use->has_repeatability && (line.assumed || !gauge->feel.given)))
    return TRUE;
  if (gauge->feel.given)
    return tm_budget_add (self, &gauge->feel, &line);
  start = find_start (gauge);
  if (start == NULL || !start->feel.given)
    return TRUE;
  line.value = (double)start->feel.count;
  line.source = start->source;
  line.assumed = start->assumed;
  return tm_budget_add (self, &start->feel, &line);
}

gboolean
tm_budget_add_gauge (const TmBudget *self, const TmGauge *gauge)
{
  self->use->gauge = gauge;
  self->use->resolution = gauge->resolution.given ? (double)gauge->resolution.count : NAN;
  return add_resolution (self, gauge) && add_calibration (self, gauge) && add_drift (self, gauge)
         && add_feel (self, gauge);
}
