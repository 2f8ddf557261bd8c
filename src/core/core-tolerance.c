/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-tolerance.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#define NODES 200
#define SPACE 200
#define REACH 9.0 /* standard deviations; what lies beyond is under 1e-18 */

typedef struct {
  double dof;
  double share; /* of the process that has to lie within */
  double root_n;
  double nodes[NODES], weights[NODES]; /* of the mean's deviate, with its density */
  double half[NODES];                  /* half-width that holds the share, at each node */
  double factor, quantile;
  gsl_integration_workspace *space;
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
  gsl_integration_glfixed_table *table = gsl_integration_glfixed_table_alloc (NODES);

  for (gsize i = 0; i < NODES; i++)
    {
      gsl_integration_glfixed_point (-REACH, REACH, i, &problem->nodes[i], &problem->weights[i], table);
      problem->weights[i] *= gsl_ran_ugaussian_pdf (problem->nodes[i]);
    }
  gsl_integration_glfixed_table_free (table);
}

/* P(the interval of factor @k holds the share): of each mean, that s is large enough. */
static double
find_two_sided (Problem *problem, double k)
{
  double sum = 0;

  for (guint i = 0; i < NODES; i++)
    {
      double s = problem->half[i] / k;

      sum += problem->weights[i] * gsl_cdf_chisq_Q (problem->dof * s * s, problem->dof);
    }
  return sum;
}

/* Φ(√n (k s - z)) over the density of s, the root of a chi square over its degrees of freedom. */
static double
find_density_cb (double s, void *data)
{
  const Problem *problem = data;
  double dof = problem->dof, below = problem->root_n * (problem->factor * s - problem->quantile);

  return gsl_cdf_ugaussian_P (below) * gsl_ran_chisq_pdf (dof * s * s, dof) * 2 * dof * s;
}

/* P(mean + k s lies above the quantile): the noncentral t distribution. */
static double
find_one_sided (Problem *problem, double k)
{
  const double reach = REACH / sqrt (2 * problem->dof);
  gsl_function density = { find_density_cb, problem };
  double sum = 0, error;

  problem->factor = k;
  problem->quantile = gsl_cdf_ugaussian_Pinv (problem->share);
  gsl_integration_qag (&density, MAX (1e-12, 1 - reach), 1 + reach, 1e-12, 1e-10, SPACE, GSL_INTEG_GAUSS31,
                       problem->space, &sum, &error);
  return sum;
}

/* The factor at which the chance, which rises with it, is @confidence. */
static double
solve (Problem *problem, double (*find) (Problem *, double), double confidence)
{
  double low = 1e-6, high = 1;

  while (find (problem, high) < confidence && high < 1e9)
    high *= 2;
  for (guint i = 0; i < 100 && high - low > 1e-12 * high; i++)
    {
      double middle = (low + high) / 2;

      if (find (problem, middle) < confidence)
        low = middle;
      else
        high = middle;
    }
  return (low + high) / 2;
}

double
tm_tolerance_one_sided (gsize n, double coverage, double confidence)
{
  Problem problem = { .dof = (double)n - 1, .share = coverage, .root_n = sqrt ((double)n) };
  double factor;

  if (n < 2 || !is_share (coverage) || !is_share (confidence))
    return NAN;
  problem.space = gsl_integration_workspace_alloc (SPACE);
  factor = solve (&problem, find_one_sided, confidence);
  gsl_integration_workspace_free (problem.space);
  return factor;
}

double
tm_tolerance_two_sided (gsize n, double coverage, double confidence)
{
  Problem problem = { .dof = (double)n - 1, .share = coverage, .root_n = sqrt ((double)n) };

  if (n < 2 || !is_share (coverage) || !is_share (confidence))
    return NAN;
  fill_nodes (&problem);
  for (guint i = 0; i < NODES; i++)
    problem.half[i] = find_half (problem.nodes[i] / problem.root_n, coverage);
  return solve (&problem, find_two_sided, confidence);
}

double
tm_lot_chance (guint lot, guint bad, guint n)
{
  double log_chance = 0;

  if (n > lot - MIN (bad, lot))
    return 0;
  for (guint i = 0; i < bad; i++)
    log_chance += log ((double)(lot - n - i) / (double)(lot - i));
  return exp (log_chance);
}

guint
tm_lot_sample (guint lot, double share, double risk)
{
  guint bad, low = 0, high = lot;

  g_return_val_if_fail (is_share (share) && is_share (risk), lot);

  bad = (guint)MIN (lot, ceil (share * lot - 1e-9));
  while (high - low > 1)
    {
      guint middle = low + (high - low) / 2;

      if (tm_lot_chance (lot, bad, middle) <= risk)
        high = middle;
      else
        low = middle;
    }
  return high;
}
