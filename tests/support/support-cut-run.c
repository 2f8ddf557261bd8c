/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-cut-run.h"

#include <gsl/gsl_randist.h>
#include <math.h>

#include "core-cut.h"

#define UM            1e6
#define KNOWN_CUT     100.0
#define MOST_CUTS     40
#define MOST_STATIONS 8

/* A run in the making: what is true, and what was read. */
typedef struct {
  const SupportCutCase *given;
  gsl_rng *rng;
  double size[MOST_STATIONS]; /* true, less the lower limit */
  double response, scatter, bias;
  double read[MOST_STATIONS];
} Run;

/* -------- Truth -------- */

static void
start_run (const SupportCutCase *given, gsl_rng *rng, Run *run)
{
  double mean = given->band / 2 - given->metal * (0.5 + gsl_rng_uniform (rng));
  double taper = gsl_ran_gaussian (rng, given->taper);

  run->given = given;
  run->rng = rng;
  run->response = 1 + TM_CUT_RESPONSE_SD * (given->response_by + gsl_ran_gaussian (rng, 1));
  run->scatter = given->scatter_by * TM_CUT_SCATTER_MEDIAN / UM
                 * pow (TM_CUT_SCATTER_FACTOR, gsl_ran_gaussian (rng, 1));
  run->bias = gsl_ran_gaussian (rng, given->shared);
  for (guint k = 0; k < given->n_stations; k++)
    run->size[k] = mean + (given->n_stations > 1 ? taper * (k / (given->n_stations - 1.0) - 0.5) : 0);
}

static void
read_run (Run *run)
{
  for (guint k = 0; k < run->given->n_stations; k++)
    run->read[k] = run->size[k] + run->bias + gsl_ran_gaussian (run->rng, run->given->own);
}

static void
cut_run (Run *run, double change)
{
  double moved = run->response * change + gsl_ran_gaussian (run->rng, run->scatter);

  for (guint k = 0; k < run->given->n_stations; k++)
    run->size[k] += moved;
}

static double
get_least (const double *sizes, guint n)
{
  double least = sizes[0];

  for (guint k = 1; k < n; k++)
    least = MIN (least, sizes[k]);
  return least;
}

static double
get_most (const double *sizes, guint n)
{
  double most = sizes[0];

  for (guint k = 1; k < n; k++)
    most = MAX (most, sizes[k]);
  return most;
}

/* -------- The plain rules -------- */

/* Whole marks, down; 0: nothing more is dialled. */
static double
follow_rule (const Run *run, SupportCutPolicy policy)
{
  const SupportCutCase *given = run->given;
  double sum = 0, metal;

  for (guint k = 0; k < given->n_stations; k++)
    sum += run->read[k];
  metal = given->band / 2 - sum / given->n_stations;
  if (policy == SUPPORT_CUT_ALL && get_least (run->read, given->n_stations) >= 0)
    return 0;
  if (policy == SUPPORT_CUT_HALF && metal <= given->band / 10)
    return 0;
  metal = floor ((policy == SUPPORT_CUT_HALF ? metal / 2 : metal) / given->graduation) * given->graduation;
  return MAX (metal, 0);
}

/* -------- The plan -------- */

typedef struct {
  TmCutBelief *belief;
  TmCutWish wish;
  double spent;
} Plan;

static void
start_plan (const SupportCutCase *given, double risk, Plan *plan)
{
  plan->belief = tm_cut_belief_new (given->n_stations, TRUE);
  plan->spent = 0;
  plan->wish = (TmCutWish) {
    .band = { 0, given->band * UM, -INFINITY, INFINITY, 0 },
    .step = given->graduation * UM,
    .least = given->graduation * UM,
    .risk = risk,
    .next_own = given->own * UM,
    .next_shared = given->shared * UM,
    .further = TM_CUT_FURTHER,
  };
}

/* What the shop recorded of the tool: the differences of two readings. */
static void
learn_known (Run *run, Plan *plan)
{
  for (guint i = 0; i < run->given->known; i++)
    {
      double u = M_SQRT2 * run->given->own;
      double achieved = run->response * KNOWN_CUT + gsl_ran_gaussian (run->rng, hypot (run->scatter, u));
      TmCutAnswer answer = { KNOWN_CUT * UM, achieved * UM, u * UM };

      tm_cut_belief_learn (plan->belief, &answer);
    }
}

static double
follow_plan (const Run *run, double risk, Plan *plan)
{
  TmCutPlan said;

  for (guint k = 0; k < run->given->n_stations; k++)
    tm_cut_belief_read (plan->belief, k, 0, run->read[k] * UM, run->given->own * UM, run->given->shared * UM);
  plan->wish.risk = MAX (0, risk - plan->spent);
  tm_cut_plan (plan->belief, &plan->wish, &said);
  if (said.change > 0)
    {
      plan->spent += MAX (0, said.chances.gone - said.now.gone);
      tm_cut_belief_cut (plan->belief, said.change);
    }
  return said.change / UM;
}

/* -------- Runs -------- */

static void
count_run (const Run *run, guint cuts, SupportCutTally *out)
{
  gboolean gone = get_most (run->size, run->given->n_stations) > run->given->band;
  gboolean left = get_least (run->size, run->given->n_stations) < 0;

  out->runs++;
  out->cuts += cuts;
  out->gone += gone;
  out->left += !gone && left;
  out->in += !gone && !left;
  out->endless += cuts == MOST_CUTS;
}

static void
make_run (const SupportCutCase *given, SupportCutPolicy policy, double risk, gsl_rng *rng,
          SupportCutTally *out)
{
  Run run;
  Plan plan = { NULL };
  guint cuts;

  start_run (given, rng, &run);
  if (policy == SUPPORT_CUT_PLAN)
    {
      start_plan (given, risk, &plan);
      learn_known (&run, &plan);
    }
  for (cuts = 0; cuts < MOST_CUTS; cuts++)
    {
      double change;

      read_run (&run);
      change = policy == SUPPORT_CUT_PLAN ? follow_plan (&run, risk, &plan) : follow_rule (&run, policy);
      if (!(change > 0))
        break;
      cut_run (&run, change);
    }
  count_run (&run, cuts, out);
  out->spent += plan.spent;
  tm_cut_belief_free (plan.belief);
}

void
support_cut_run (const SupportCutCase *given, SupportCutPolicy policy, double risk, guint runs, guint32 seed,
                 SupportCutTally *out)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);

  *out = (SupportCutTally) { 0 };
  gsl_rng_set (rng, seed);
  for (guint i = 0; i < runs; i++)
    make_run (given, policy, risk, rng, out);
  gsl_rng_free (rng);
}
