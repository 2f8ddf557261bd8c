/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-capability: how often each 95 % interval of capability holds the true index, of simulated processes
 * with known parameters: 25 groups of 5, 20 of 2, 50 individuals.
 */

#include <gsl/gsl_randist.h>
#include <math.h>
#include <stdio.h>

#include "core-capability.h"
#include "core-chart.h"

#define SEED  20261130
#define RUNS  2000
#define LEAST 93.0
#define MOST  97.0

typedef struct {
  const char *name;
  gsize n;
  guint group_size;
} Plan;

static const Plan plans[] = {
  { "25 x 5", 125, 5 },
  { "20 x 2", 40, 2 },
  { "50 individuals", 50, 1 },
};

typedef struct {
  const char *name;
  double mean; /* of a process with deviation 1 between -4 and 4 */
} Case;

static const Case cases[] = { { "on target", 0 }, { "half a sigma off", 0.5 }, { "one sigma off", 1 } };

typedef enum { CP, CPK, PP, PPK, CPM, CM, CMK, N_INDEXES } Index;

static const char *const names[N_INDEXES] = { "Cp", "Cpk", "Pp", "Ppk", "Cpm", "Cm", "Cmk" };

typedef struct {
  guint held, given;
} Count;

static void
count (Count *c, const TmIndex *index, double truth)
{
  if (isnan (index->value))
    return;
  c->given++;
  c->held += index->low <= truth && truth <= index->high ? 1 : 0;
}

/* Prints a row; FALSE when its share is out of bounds. */
static gboolean
print_row (const char *plan, const char *what, const char *index, const Count *c)
{
  double share = 100.0 * c->held / MAX (c->given, 1);
  gboolean kept = share >= LEAST && share <= MOST;

  if (c->given > 0)
    printf ("  %-16s %-18s %-4s %6.2f %%  of %u  (%g to %g)%s\n", plan, what, index, share, c->given, LEAST,
            MOST, kept ? "" : "  BROKEN");
  return kept || c->given == 0;
}

static void
take_sigma (const double *values, const Plan *plan, TmCapabilityInput *input)
{
  TmChartInput charted = { values, plan->n, NULL, 0, plan->group_size, 0 };
  g_auto (TmChart) chart = { 0 };

  tm_chart (&charted, &chart);
  input->within = chart.sigma;
  input->within_dof = chart.sigma_dof;
}

static gboolean
run_normal (gsl_rng *random, const Plan *plan, const Case *which)
{
  double cpk = (4 - fabs (which->mean)) / 3, cp = 4.0 / 3;
  double cpm = cp / sqrt (1 + which->mean * which->mean);
  const double truth[N_INDEXES] = { cp, cpk, cp, cpk, cpm, cp, cpk };
  Count counts[N_INDEXES] = { 0 };
  gboolean kept = TRUE;

  for (guint run = 0; run < RUNS; run++)
    {
      g_autofree double *values = g_new (double, plan->n);
      TmCapabilityInput input = { -4, 4, NAN, FALSE, NAN, NAN, NAN, FALSE };
      TmCapability out;

      for (gsize i = 0; i < plan->n; i++)
        values[i] = which->mean + gsl_ran_gaussian_ziggurat (random, 1);
      take_sigma (values, plan, &input);
      tm_capability (values, plan->n, &input, &out);
      {
        const TmIndex *indexes[N_INDEXES]
            = { &out.cp, &out.cpk, &out.pp, &out.ppk, &out.cpm, &out.cm, &out.cmk };

        for (guint i = 0; i < N_INDEXES; i++)
          count (&counts[i], indexes[i], truth[i]);
      }
    }
  for (guint i = 0; i < N_INDEXES; i++)
    kept = print_row (plan->name, which->name, names[i], &counts[i]) && kept;
  return kept;
}

/* A tenth of the variance is the measuring's. */
static gboolean
run_measured (gsl_rng *random, const Plan *plan)
{
  Count counts[4] = { 0 };
  gboolean kept = TRUE;

  for (guint run = 0; run < RUNS; run++)
    {
      g_autofree double *values = g_new (double, plan->n);
      TmCapabilityInput input = { -4, 4, NAN, FALSE, NAN, NAN, 1.0 / 3, FALSE };
      TmCapability out;

      for (gsize i = 0; i < plan->n; i++)
        values[i] = 0.5 + gsl_ran_gaussian_ziggurat (random, 1) + gsl_ran_gaussian_ziggurat (random, 1.0 / 3);
      take_sigma (values, plan, &input);
      tm_capability (values, plan->n, &input, &out);
      count (&counts[0], &out.cp, 4.0 / 3);
      count (&counts[1], &out.cpk, 3.5 / 3);
      count (&counts[2], &out.pp, 4.0 / 3);
      count (&counts[3], &out.ppk, 3.5 / 3);
    }
  for (guint i = 0; i < 4; i++)
    kept = print_row (plan->name, "measuring out", names[i], &counts[i]) && kept;
  return kept;
}

static gboolean
run_position (gsl_rng *random, const Plan *plan)
{
  static const TmFittedShape truth = { TM_SHAPE_RAYLEIGH, 0, 1, 0, NAN };
  double middle = tm_shape_quantile (&truth, 0.5), high = tm_shape_quantile (&truth, 0.99865);
  Count all = { 0 };

  for (guint run = 0; run < RUNS; run++)
    {
      g_autofree double *values = g_new (double, plan->n);
      TmCapabilityInput input = { 0, 5, NAN, TRUE, NAN, NAN, NAN, FALSE, TRUE };
      TmCapability out;

      for (gsize i = 0; i < plan->n; i++)
        values[i] = gsl_ran_rayleigh (random, 1);
      tm_capability (values, plan->n, &input, &out);
      count (&all, &out.ppk, (5 - middle) / (high - middle));
    }
  return print_row (plan->name, "position", "Ppu", &all);
}

int
main (void)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  gboolean kept = TRUE;

  gsl_rng_set (random, SEED);
  printf ("How often the 95 %% interval holds the true index, %u runs each\n", RUNS);
  for (guint i = 0; i < G_N_ELEMENTS (plans); i++)
    {
      for (guint j = 0; j < G_N_ELEMENTS (cases); j++)
        kept = run_normal (random, &plans[i], &cases[j]) && kept;
      kept = run_measured (random, &plans[i]) && kept;
      kept = run_position (random, &plans[i]) && kept;
      fflush (stdout);
    }
  gsl_rng_free (random);
  return kept ? 0 : 1;
}
