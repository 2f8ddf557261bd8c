/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-tolerance.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core-chi-square.h"

#define NODES 200
#define REACH 9.0 /* standard deviations; what lies beyond is under 1e-18 */
#define MOST  1e15

typedef struct {
  double dof;
  double share; /* of the process that has to lie within */
  double root_n;
  double nodes[NODES], weights[NODES]; /* of the mean's deviate, with its density */
  double half[NODES];                  /* half-width that holds the share, at each node */
  double quantile;                     /* of the share, one-sided */
  gsl_integration_glfixed_table *table;
} Problem;

static gboolean
is_share (double value)
{
  return value > 0 && value < 1;
}

/* The half-width r for which Φ(m + r) - Φ(m - r) is @share: Newton, which converges from above as the
 * function is concave there. */
static double
find_half (double mean, double share)
{
  double r = fabs (mean) + gsl_cdf_ugaussian_Pinv ((1 + share) / 2);

  for (guint i = 0; i < 100; i++)
    {
      double held = gsl_cdf_ugaussian_P (mean + r) - gsl_cdf_ugaussian_P (mean - r);
      double density = gsl_ran_ugaussian_pdf (mean + r) + gsl_ran_ugaussian_pdf (mean - r);
      double step = (held - share) / density;

      r -= step;
      if (fabs (step) < 1e-14 * r)
        break;
    }
  return r;
}

static void
fill_nodes (Problem *problem)
{
  for (gsize i = 0; i < NODES; i++)
    {
      gsl_integration_glfixed_point (-REACH, REACH, i, &problem->nodes[i], &problem->weights[i],
                                     problem->table);
      problem->weights[i] *= gsl_ran_ugaussian_pdf (problem->nodes[i]);
      problem->half[i] = find_half (problem->nodes[i] / problem->root_n, problem->share);
    }
}

/* P(the interval of factor @k holds the share): of each mean, that s is large enough. */
static double
find_two_sided (const Problem *problem, double k)
{
  double sum = 0;

  for (guint i = 0; i < NODES; i++)
    {
      double s = problem->half[i] / k;

      sum += problem->weights[i] * tm_chi_square_above (problem->dof * s * s, problem->dof);
    }
  return sum;
}

/* ∫ Φ(√n (k s - z)) f(s) ds over s from @from to @to, f the density of the root of a chi square over its
 * degrees of freedom. */
static double
integrate_density (const Problem *problem, double k, double from, double to)
{
  const double dof = problem->dof;
  double sum = 0;

  for (gsize i = 0; i < NODES && to > from; i++)
    {
      double s, weight;

      gsl_integration_glfixed_point (from, to, i, &s, &weight, problem->table);
      sum += weight * gsl_cdf_ugaussian_P (problem->root_n * (k * s - problem->quantile))
             * gsl_ran_chisq_pdf (dof * s * s, dof) * 2 * dof * s;
    }
  return sum;
}

/* P(mean + k s lies above the quantile): the noncentral t distribution.  Quadrature only where Φ is neither
 * nothing nor one: of a large factor that is a step near zero, which holds all that is left to doubt. */
static double
find_one_sided (const Problem *problem, double k)
{
  const double dof = problem->dof, wide = REACH / problem->root_n;
  const double low = MAX (1e-12, 1 - REACH / sqrt (2 * dof)), high = 1 + REACH / sqrt (2 * dof);
  const double nothing = (problem->quantile - wide) / k, one = (problem->quantile + wide) / k;

  if (k > 0)
    return tm_chi_square_above (dof * MAX (one, 0) * MAX (one, 0), dof)
           + integrate_density (problem, k, MAX (low, nothing), MIN (high, one));
  if (k < 0)
    return 1 - tm_chi_square_above (dof * MAX (one, 0) * MAX (one, 0), dof)
           + integrate_density (problem, k, MAX (low, one), MIN (high, nothing));
  return gsl_cdf_ugaussian_P (-problem->root_n * problem->quantile);
}

/* The factor at which the chance, which rises with it, is @confidence; NAN where it is out of all reason. */
static double
solve (const Problem *problem, double (*find) (const Problem *, double), double confidence, double low)
{
  double high = 1;

  while (low < 0 && find (problem, low) > confidence && low > -MOST)
    low *= 2;
  while (find (problem, high) < confidence && high < MOST)
    high *= 2;
  if (high >= MOST || low <= -MOST)
    return NAN;
  for (guint i = 0; i < 200 && high - low > 1e-12 * MAX (fabs (high), 1e-3); i++)
    {
      double middle = (low + high) / 2;

      if (find (problem, middle) < confidence)
        low = middle;
      else
        high = middle;
    }
  return (low + high) / 2;
}

static gboolean
problem_init (Problem *problem, gsize n, double coverage, double confidence)
{
  if (n < 2 || !is_share (coverage) || !is_share (confidence))
    return FALSE;
  *problem = (Problem) { .dof = (double)n - 1, .share = coverage, .root_n = sqrt ((double)n) };
  problem->table = gsl_integration_glfixed_table_alloc (NODES);
  return TRUE;
}

double
tm_tolerance_one_sided (gsize n, double coverage, double confidence)
{
  Problem problem;
  double factor;

  if (!problem_init (&problem, n, coverage, confidence))
    return NAN;
  problem.quantile = gsl_cdf_ugaussian_Pinv (coverage);
  factor = solve (&problem, find_one_sided, confidence, -1);
  gsl_integration_glfixed_table_free (problem.table);
  return factor;
}

double
tm_tolerance_two_sided (gsize n, double coverage, double confidence)
{
  Problem problem;
  double factor;

  if (!problem_init (&problem, n, coverage, confidence))
    return NAN;
  fill_nodes (&problem);
  factor = solve (&problem, find_two_sided, confidence, 0);
  gsl_integration_glfixed_table_free (problem.table);
  return factor;
}

/* A share typed as 0.1 is a hair more than a tenth in a double. */
#define HAIR 1e-12

guint
tm_lot_bad (guint lot, double share)
{
  g_return_val_if_fail (is_share (share), lot);
  return (guint)MIN (lot, ceil (share * lot * (1 - HAIR)));
}

/* Π (lot - n - i) / (lot - i) over the bad ones, or as well Π (lot - bad - i) / (lot - i) over the sample:
 * whichever is less work. */
double
tm_lot_chance (guint lot, guint bad, guint n)
{
  const guint more = MAX (bad, n), fewer = MIN (bad, n);
  double chance = 1;

  if (fewer == 0)
    return 1;
  if (more >= lot || fewer > lot - more)
    return 0;
  for (guint i = 0; i < fewer && chance > 0; i++)
    chance *= (double)(lot - more - i) / (double)(lot - i);
  return chance;
}

guint
tm_lot_sample (guint lot, double share, double risk)
{
  guint bad, low = 0, high = lot;

  g_return_val_if_fail (is_share (share) && is_share (risk), lot);

  bad = tm_lot_bad (lot, share);
  while (high - low > 1)
    {
      guint middle = low + (high - low) / 2;

      /* 9 of 10 with one bad leave a chance of a tenth, which is not more than 0.1. */
      if (tm_lot_chance (lot, bad, middle) <= risk * (1 + HAIR))
        high = middle;
      else
        low = middle;
    }
  return high;
}
