/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-why: the one reason that is said beside a verdict.
 *
 * First what is not known at all; then the rule that settled it; then what contradicts; then what is
 * wrong with a gauge; then what the uncertainty itself rests on; an open band of pins last.  The judgement
 * may still be held for stations or for a size that are missing: core-judge sees to that.
 */

#include <math.h>

#include "core-gauge.h"
#include "core-judge-private.h"
#include "core-temperature.h"

/* Under this many degrees of freedom an uncertainty is itself uncertain by a quarter and more
 * (JCGM 100, table E.1), and the judgement says so. */
#define FEW_DOF 10

/* -------- The gauges of one station -------- */

typedef gboolean (*GaugeTest) (const TmJudge *self, const TmGauge *gauge, const TmLocalSize *size);

static gboolean
is_out_of_range (const TmJudge *self, const TmGauge *gauge, const TmLocalSize *size)
{
  return tm_feature_grows_warm (self->out->feature)
         && !tm_gauge_reaches (gauge, (gint64)(size->raw_sum / size->n));
}

static gboolean
is_overdue (const TmJudge *self, const TmGauge *gauge, const TmLocalSize *size)
{
  return size->last->overdue_reason[0] == '\0'
         && tm_gauge_due (self->job, gauge, size->last->row.at) == TM_DUE_OVERDUE;
}

/* Moved too far where the shop asks for a new check then; or not checked in time. */
static gboolean
asks_check (const TmJudge *self, const TmGauge *gauge, const TmLocalSize *size)
{
  const TmJob *job = self->job;
  TmCheckState state;

  if (job->checks->len == 0 && !job->check_hours.given)
    return FALSE;
  state = tm_gauge_check_state (job, gauge, size->last->row.at);
  return state.stale || (job->drift_rule == TM_DRIFT_ASK && state.beyond);
}

static gboolean
is_any_gauge (const TmJudge *self, guint station, GaugeTest test)
{
  const TmMethodUse *use = &self->cases[station].use;
  const TmLocalSize *size = &self->out->sizes.stations[station];

  if (use->method == NULL)
    return use->gauge != NULL && test (self, use->gauge, size);
  for (guint i = 0; i < MIN (use->method->gauges->len, 2); i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (self->job, g_ptr_array_index (use->method->gauges, i));

      if (gauge != NULL && test (self, gauge, size))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_any_station (const TmJudge *self, GaugeTest test)
{
  for (guint i = 0; i < self->out->sizes.n_stations; i++)
    if (is_any_gauge (self, i, test))
      return TRUE;
  return FALSE;
}

/* -------- What the uncertainty rests on -------- */

static gboolean
has_error_known (const TmMethodUse *use)
{
  for (guint i = 0; i < use->n_components; i++)
    if (use->components[i].kind == TM_COMPONENT_CERTIFICATE && use->components[i].subject == use->gauge->tag)
      return TRUE;
  return use->gauge->error_limit.given;
}

static gboolean
do_methods_disagree (const TmJudge *self)
{
  for (guint i = 0; i < self->out->sizes.n_stations; i++)
    if (self->cases[i].disagree)
      return TRUE;
  return FALSE;
}

static TmWhy
find_gauge_why (const TmJudge *self)
{
  if (is_any_station (self, is_out_of_range))
    return TM_WHY_OUT_OF_RANGE;
  if (is_any_station (self, is_overdue))
    return TM_WHY_OVERDUE;
  return is_any_station (self, asks_check) ? TM_WHY_CHECK_ASKED : TM_WHY_NONE;
}

/* Of two or three readings alone the scatter may come out small by chance, and then the degrees of freedom of
 * the whole come out large: that is when they deceive most, so that the whole is not asked. */
static gboolean
rests_on_few (const TmJudge *self, const TmStationCase *deciding)
{
  const TmLocalSize *size = &self->out->sizes.stations[self->out->deciding];

  if (!deciding->combined && !deciding->use.has_repeatability && size->n > 1 && size->n - 1 < FEW_DOF)
    return TRUE;
  return self->out->dof < FEW_DOF;
}

static TmWhy
find_budget_why (const TmJudge *self)
{
  const TmStationCase *deciding = &self->cases[self->out->deciding];
  gboolean assumed = deciding->combined ? deciding->assumed : tm_method_rests_on_assumed (&deciding->use);

  if (!deciding->combined && deciding->use.gauge != NULL && !has_error_known (&deciding->use))
    return TM_WHY_NO_ERROR_LIMIT;
  if (assumed)
    return TM_WHY_ASSUMED;
  return rests_on_few (self, deciding) ? TM_WHY_FEW_READINGS : TM_WHY_NONE;
}

/* -------- The reason -------- */

static gboolean
is_trial_overdue (const TmJob *job, const TmPinTrial *trial)
{
  const TmGauge *set = trial->gauge[0] != '\0' ? tm_job_find_gauge (job, trial->gauge) : NULL;

  return set != NULL && tm_row_counts (&trial->row) && trial->overdue_reason[0] == '\0'
         && tm_gauge_due (job, set, trial->row.at) == TM_DUE_OVERDUE;
}

static gboolean
is_any_trial_overdue (const TmJudge *self)
{
  const TmJudgement *out = self->out;
  const GPtrArray *trials = tm_job_pin_trials_at (self->job, out->piece, out->feature, out->place);

  for (guint i = 0; trials != NULL && i < trials->len; i++)
    if (is_trial_overdue (self->job, g_ptr_array_index (trials, i)))
      return TRUE;
  return FALSE;
}

static TmWhy
find_pins_why (const TmJudge *self)
{
  if (self->pins_contradict)
    return TM_WHY_PINS_CONTRADICT;
  if (self->out->pins_joined && is_any_trial_overdue (self))
    return TM_WHY_OVERDUE;
  return self->pins_open ? TM_WHY_PINS_OPEN : TM_WHY_NONE;
}

/* Pins and readings together, or the station that decides, fail N:1. */
static gboolean
is_not_good (const TmJudge *self)
{
  const TmJudgement *out = self->out;

  return self->job->decision == TM_DECISION_SIMPLE && out->verdict == TM_VERDICT_TOO_CLOSE
         && (self->not_good || (!out->pins_joined && !self->cases[out->deciding].rule.can_prove_in));
}

TmWhy
tm_judge_find_why (const TmJudge *self)
{
  const TmJudgement *out = self->out;
  TmWhy why;

  if (out->counted == TM_COUNTED_PINS)
    return find_pins_why (self);
  if (isnan (out->u))
    return self->pins_contradict ? TM_WHY_PINS_CONTRADICT : TM_WHY_NO_METHOD;
  if (is_not_good (self))
    return TM_WHY_METHOD_NOT_GOOD;
  if (self->pins_contradict)
    return TM_WHY_PINS_CONTRADICT;
  if (do_methods_disagree (self))
    return TM_WHY_METHODS_DISAGREE;
  why = find_gauge_why (self);
  if (why == TM_WHY_NONE && out->pins_joined && is_any_trial_overdue (self))
    why = TM_WHY_OVERDUE;
  if (why == TM_WHY_NONE)
    why = find_budget_why (self);
  return why != TM_WHY_NONE ? why : find_pins_why (self);
}
