/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-work: the record of one place replayed through the belief, and the plan that follows.
 *
 * A cut that answered too little, unlike the others (|surprise| > 3: tool pushed off, chip under the part),
 * is no measure of the tool: learned from, it would make the next cut larger.  The size moves by an unknown
 * amount instead.  One that answered too much is learned from within its own place, because to leave it out
 * would make the next cut too large if it happens again; it is not handed on to other jobs.
 */

#include "core-cut-work.h"

#include <math.h>
#include <string.h>

#include "core-cut-private.h"
#include "core-cut-work-private.h"
#include "core-suitability.h"
#include "core-verdict.h"

/* A cut that by itself risked more than this times what is accepted for a whole run was nobody's plan, but a
 * roughing cut with a tool of which nothing was known: the run begins after it (our own choice). */
#define BEYOND_PLAN 2.0
/* A finer method has to raise the chance to end in the band by this much to be named (our own choice). */
#define WORTH_FETCHING 0.05

/* -------- The record replayed -------- */

static void
read_part (const TmCutWork *work, TmCutBelief *belief, guint part)
{
  for (guint i = 0; i < work->readings->len; i++)
    {
      const TmCutReading *each = &g_array_index (work->readings, TmCutReading, i);

      if (each->part == part && each->known && each->at < TM_CUT_MOST_STATIONS)
        tm_cut_belief_read (belief, each->at, each->method, each->size, each->own, each->shared);
    }
}

/* What the cut added to the chance of metal gone, as it was made. */
static double
find_risked (const TmCutBelief *belief, const TmCutBand *band, double change)
{
  TmCutTarget target = tm_cut_target (belief, band);

  if (!tm_cut_belief_has_size (belief))
    return 0;
  return MAX (0, tm_cut_share_gone (belief, &target, change) - tm_cut_share_gone (belief, &target, 0));
}

static void
make_cut (const TmCutStep *step, TmCutBelief *belief)
{
  const TmCutOutcome *outcome = &step->outcome;

  if (!(step->change > 0)) /* spring passes alone: they take what the tool's bending had left */
    tm_cut_belief_move (belief, 0, TM_CUT_SCATTER_MEDIAN * TM_CUT_SCATTER_FACTOR);
  else if (!step->same_tool)
    tm_cut_belief_move (belief, step->change, tm_cut_step_sd (step));
  else if (step->untaught)
    tm_cut_belief_move (belief, outcome->answer.achieved,
                        10 * fabs (outcome->answer.achieved - outcome->expected));
  else
    tm_cut_belief_cut (belief, step->change);
}

static TmCutBelief *
start_belief (const TmCutWork *work)
{
  TmCutBelief *belief
      = tm_cut_belief_new (MAX (work->n_stations, 1), tm_feature_cut (work->feature) != TM_CUT_SHRINKS);

  for (gsize i = 0; i < work->n_shop; i++)
    tm_cut_belief_learn (belief, &work->shop[i]);
  return belief;
}

TmCutBelief *
tm_cut_work_replay (TmCutWork *work, gboolean first, const TmCutBand *band, double *risked)
{
  TmCutBelief *belief = start_belief (work);

  for (guint i = 0; i < work->steps->len; i++)
    {
      const TmCutStep *step = &g_array_index (work->steps, TmCutStep, i);

      read_part (work, belief, i);
      if (first)
        tm_cut_outcome_fill (work, i, belief);
      risked[i] = find_risked (belief, band, step->change);
      make_cut (step, belief);
    }
  read_part (work, belief, work->steps->len);
  return belief;
}

static TmCutBand
find_drawing_band (const TmCutWork *work)
{
  TmLimits limits = tm_feature_limits (work->feature);
  TmCutBand band = { -INFINITY, INFINITY, -INFINITY, INFINITY, 0 };

  if (limits.has_lower)
    band.lower = (double)(limits.lower - work->reference);
  if (limits.has_upper)
    band.upper = (double)(limits.upper - work->reference);
  return band;
}

TmCutWork *
tm_cut_work_new (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                 const TmTool *tool, const TmCutAnswer *shop, gsize n_shop)
{
  TmCutWork *work;
  TmCutBand band;

  g_return_val_if_fail (job != NULL && piece != NULL && feature != NULL, NULL);
  work = g_new0 (TmCutWork, 1);
  work->job = job;
  work->piece = piece;
  work->feature = feature;
  work->place = place;
  work->tool = tool;
  work->n_shop = MIN (n_shop, TM_CUT_MOST_ANSWERS);
  work->shop
      = work->n_shop > 0 ? g_memdup2 (shop + (n_shop - work->n_shop), work->n_shop * sizeof *shop) : NULL;
  work->readings = g_array_new (FALSE, TRUE, sizeof (TmCutReading));
  work->methods = g_array_new (FALSE, TRUE, sizeof (TmCutMethod));
  work->steps = g_array_new (FALSE, TRUE, sizeof (TmCutStep));
  if (!tm_feature_is_cut_to_size (feature))
    return work;
  tm_cut_record_collect (work);
  band = find_drawing_band (work);
  work->risked = g_new0 (double, work->steps->len + 1);
  work->belief = tm_cut_work_replay (work, TRUE, &band, work->risked);
  return work;
}

void
tm_cut_work_free (TmCutWork *work)
{
  if (work == NULL)
    return;
  tm_cut_belief_free (work->belief);
  g_free (work->shop);
  g_free (work->risked);
  g_array_unref (work->readings);
  g_array_unref (work->methods);
  g_array_unref (work->steps);
  g_free (work);
}

/* -------- What is asked -------- */

/* The limits that the mate gives for the wanted clearance: bore - shaft.  FALSE: nothing is wanted of it, or
 * how well it is known is not stated. */
static gboolean
add_mate (const TmCutWork *work, const TmMateSize *mate, TmCutBand *band)
{
  const TmMate *wanted = &work->feature->mate;
  double smallest = (double)(mate->smallest.count - work->reference);
  double largest = mate->largest.given ? (double)(mate->largest.count - work->reference) : smallest;
  double least = wanted->wanted_least.given ? (double)wanted->wanted_least.count : -INFINITY;
  double most = wanted->wanted_most.given ? (double)wanted->wanted_most.count : INFINITY;

  /* Taken as exact, a mate of unknown uncertainty would make every chance too good. */
  if (!mate->smallest.given || !mate->uncertainty.given
      || (!wanted->wanted_least.given && !wanted->wanted_most.given))
    return FALSE;
  if (tm_feature_cut (work->feature) == TM_CUT_SHRINKS)
    {
      band->mate_lower = largest - most;
      band->mate_upper = smallest - least;
    }
  else
    {
      band->mate_lower = largest + least;
      band->mate_upper = smallest + most;
    }
  band->mate_u = fabs ((double)mate->uncertainty.count) / 2;
  return TRUE;
}

static double
find_risk (const TmJob *job, const TmCutAsk *ask)
{
  if (ask->risk > 0)
    return MIN (ask->risk, 1);
  if (job->cut_risk.given && job->cut_risk.count > 0)
    return MIN (tm_count_to_double (job->cut_risk.count, job->cut_risk.unit), 1);
  return TM_CUT_RISK;
}

static const char *
find_last_method (const TmCutWork *work)
{
  const char *name = "";

  for (guint i = 0; i < work->readings->len; i++)
    if (g_array_index (work->readings, TmCutReading, i).known)
      name = g_array_index (work->readings, TmCutReading, i).method_name;
  return name;
}

static const char *
find_next_method (const TmCutWork *work, const TmCutAsk *ask)
{
  if (ask->method != NULL && *ask->method != '\0')
    return ask->method;
  return *work->feature->method != '\0' ? work->feature->method : find_last_method (work);
}

static double
find_guard (const TmCutWork *work, const char *method)
{
  TmOutlook outlook;

  return tm_judge_outlook (work->job, work->feature, method, &outlook) ? (double)outlook.guard : 0;
}

/* A next reading by a method of which nothing is known is taken to be as good as the last. */
static void
ask_next (const TmCutWork *work, const char *method, TmCutWish *wish)
{
  if (!tm_cut_record_next (work, method, &wish->next_method, &wish->next_own, &wish->next_shared))
    {
      method = find_last_method (work);
      if (!tm_cut_record_next (work, method, &wish->next_method, &wish->next_own, &wish->next_shared))
        return;
    }
  wish->guard = find_guard (work, method);
}

static void
ask_tool (const TmCutWork *work, TmCutWish *wish, TmCutAdvice *out)
{
  const TmTool *tool = work->tool;
  double factor;

  if (tool == NULL)
    return;
  factor = (double)tm_cut_changes_by (work->feature, tool->reads);
  out->graduation = tool->graduation.given ? tool->graduation.count : 0;
  out->backlash = tool->backlash.given ? tool->backlash.count : 0;
  out->spring_passes = tool->spring_passes.given ? (guint)CLAMP (tool->spring_passes.count, 0, 1000) : 0;
  wish->step = out->step = (double)MAX (out->graduation, 0) * factor;
  wish->least = MAX (wish->step, tool->least_cut.given ? (double)tool->least_cut.count * factor : 0);
}

/* What stands in the way before any number is looked at. */
static TmCutStatus
find_obstacle (const TmCutWork *work)
{
  if (!tm_feature_is_cut_to_size (work->feature))
    return TM_CUT_NOT_A_SIZE;
  if (!work->feature->lower.given && !work->feature->upper.given)
    return TM_CUT_NO_LIMITS;
  if (tm_feature_cut (work->feature) == TM_CUT_UNKNOWN)
    return TM_CUT_NO_SIDE;
  if (!work->any_read)
    return work->any_unknown ? TM_CUT_NO_METHOD : TM_CUT_NOT_READ;
  return TM_CUT_OK;
}

/* What the run has spent so far. */
static double
sum_risked (const TmCutWork *work, const double *risked, double accepted)
{
  double spent = 0;

  for (guint i = 0; i < work->steps->len; i++)
    spent = risked[i] > BEYOND_PLAN * accepted ? 0 : spent + risked[i];
  return spent;
}

static TmCutStatus
ask_mate (const TmCutWork *work, const TmCutAsk *ask, TmCutAdvice *out)
{
  g_autofree double *risked = NULL;

  if (ask->mate == NULL)
    return TM_CUT_OK;
  if (!add_mate (work, ask->mate, &out->band))
    return TM_CUT_NO_MATE;
  risked = g_new0 (double, work->steps->len + 1);
  tm_cut_belief_free (tm_cut_work_replay ((TmCutWork *)work, FALSE, &out->band, risked));
  out->risk_spent = sum_risked (work, risked, out->risk);
  return TM_CUT_OK;
}

/* FALSE: out->plan.status says why nothing can be planned. */
static gboolean
prepare (const TmCutWork *work, const TmCutAsk *ask, TmCutWish *wish, TmCutAdvice *out)
{
  static const TmCutAsk nothing = { NULL };

  ask = ask ? ask : &nothing;
  *out = (TmCutAdvice) { .reference = work->reference, .risk = find_risk (work->job, ask) };
  *wish = (TmCutWish) { .aim = ask->aim, .further = TM_CUT_FURTHER };
  out->plan.chances.proven = out->plan.now.proven = NAN;
  out->band = find_drawing_band (work);
  out->n_cuts = work->steps->len;
  out->n_unread = work->n_unread;
  out->risk_spent = work->risked != NULL ? sum_risked (work, work->risked, out->risk) : 0;
  out->plan.status = find_obstacle (work);
  if (work->belief != NULL)
    tm_cut_belief_response (work->belief, &out->response);
  out->assumed = out->response.n_answers == 0;
  ask_tool (work, wish, out);
  if (out->plan.status == TM_CUT_OK)
    out->plan.status = ask_mate (work, ask, out);
  if (out->plan.status == TM_CUT_OK && !(wish->step > 0))
    out->plan.status = TM_CUT_NO_DIAL;
  wish->band = out->band;
  wish->risk = MAX (0, out->risk - out->risk_spent);
  if (work->belief != NULL)
    {
      ask_next (work, find_next_method (work, ask), wish);
      tm_cut_say_sizes (work->belief, 0, &out->plan);
    }
  return out->plan.status == TM_CUT_OK;
}

static void
finish (const TmCutWork *work, const TmCutWish *wish, TmCutAdvice *out)
{
  gint64 factor = work->tool ? tm_cut_changes_by (work->feature, work->tool->reads) : 1;

  out->dial = llround (out->plan.change / (double)factor);
  out->second_dial = wish->step > 0 ? llround (out->plan.second / wish->step) * out->graduation : 0;
}

/* -------- A finer method -------- */

/* How much of the distances between the stations is not the readings' own scatter: their sum of squares less
 * what the scatter alone would give, as a share of it. */
static double
find_real_share (const TmCutBelief *belief, double mean)
{
  TmCutSpread spread;
  double squares = 0, scatter = 0;

  tm_cut_spread_after (belief, TM_CUT_NODES / 2, 0, NULL, &spread);
  for (guint a = 0; a < spread.n; a++)
    {
      double size, u;

      tm_cut_belief_size (belief, belief->read_stations[a], &size, &u);
      squares += (size - mean) * (size - mean);
      scatter += spread.own[a] * spread.own[a] * (spread.n - 1) / spread.n;
    }
  return squares > scatter ? 1 - scatter / squares : 0;
}

/* The plan if every station were read once more, by @method, and showed what is expected: the mean size, and
 * of the distances from it what is real. */
static double
find_value_with (const TmCutWork *work, const TmCutWish *wish, const char *method)
{
  g_autoptr (TmCutBelief) belief = tm_cut_belief_copy (work->belief);
  TmCutWish with = *wish;
  TmCutPlan plan;
  double real;

  if (!tm_cut_record_next (work, method, &with.next_method, &with.next_own, &with.next_shared))
    return 0;
  with.guard = find_guard (work, method);
  tm_cut_say_sizes (belief, 0, &plan);
  real = find_real_share (belief, plan.size);
  for (guint k = 0; k < work->n_stations; k++)
    {
      double size, u;

      tm_cut_belief_size (work->belief, k, &size, &u);
      if (isfinite (size))
        tm_cut_belief_read (belief, k, with.next_method, plan.size + real * (size - plan.size), with.next_own,
                            with.next_shared);
    }
  tm_cut_plan (belief, &with, &plan);
  return plan.status == TM_CUT_OK || plan.status == TM_CUT_PROVE ? plan.value : 0;
}

static const TmMethod *
find_finer (const TmCutWork *work, const TmCutWish *wish, double value)
{
  g_autoptr (GArray) methods = tm_suitability (work->job, work->feature, "");
  const TmMethod *best = NULL;
  double most = value + WORTH_FETCHING;

  for (guint i = 0; i < methods->len; i++)
    {
      const TmSuitability *each = &g_array_index (methods, TmSuitability, i);
      double with;

      if (each->method == NULL || !each->known || !each->fits || !each->reaches)
        continue;
      with = find_value_with (work, wish, each->name);
      if (with > most)
        {
          most = with;
          best = each->method;
        }
    }
  return best;
}

/* -------- Asked -------- */

void
tm_cut_work_plan (const TmCutWork *work, const TmCutAsk *ask, TmCutAdvice *out)
{
  TmCutWish wish;

  g_return_if_fail (work != NULL && out != NULL);
  if (!prepare (work, ask, &wish, out))
    return;
  tm_cut_plan (work->belief, &wish, &out->plan);
  finish (work, &wish, out);
  if (out->plan.status == TM_CUT_TOO_COARSE || out->plan.status == TM_CUT_PROVE)
    out->finer = find_finer (work, &wish, out->plan.value);
}

void
tm_cut_work_try (const TmCutWork *work, const TmCutAsk *ask, gint64 dial, TmCutAdvice *out)
{
  TmCutWish wish;
  gint64 factor;

  g_return_if_fail (work != NULL && out != NULL && dial >= 0);
  if (!prepare (work, ask, &wish, out))
    return;
  factor = tm_cut_changes_by (work->feature, work->tool->reads);
  tm_cut_try (work->belief, &wish, (double)dial * (double)factor, &out->plan);
  finish (work, &wish, out);
}
