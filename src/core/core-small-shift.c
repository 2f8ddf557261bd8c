/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-small-shift.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_randist.h>
#include <math.h>

/* Nodes of the integral equations: with 100 they agree with 200 to all printed digits. */
#define NODES 100

/* -------- Charts that remember -------- */

/* What is left of the start, below which it changes no double: left to fade further it would become a number
 * that processors are slow with. */
#define FADED 1e-18

void
tm_ewma (const double *values, gsize n, double centre, double sigma, double lambda, double reach,
         TmEwmaPoint *out)
{
  const double keep = 1 - lambda, widest = reach * sigma * sqrt (lambda / (2 - lambda));
  double z = centre, faded = 1, half = 0;

  g_return_if_fail (lambda > 0 && lambda <= 1);

  for (gsize i = 0; i < n; i++)
    {
      if (!isnan (values[i]))
        {
          z = lambda * values[i] + keep * z;
          if (faded > 0)
            {
              faded *= keep * keep;
              if (faded < FADED)
                faded = 0;
              half = widest * sqrt (1 - faded);
            }
        }
      out[i] = (TmEwmaPoint) { z, centre - half, centre + half };
    }
}

void
tm_cusum (const double *values, gsize n, double centre, double sigma, double k, TmCusumPoint *out)
{
  const double above = centre + k * sigma, below = centre - k * sigma;
  double high = 0, low = 0;
  guint n_high = 0, n_low = 0;

  for (gsize i = 0; i < n; i++)
    {
      if (!isnan (values[i]))
        {
          high += values[i] - above;
          low += below - values[i];
          high = MAX (0, high);
          low = MAX (0, low);
          /* Without a branch that nobody could foretell. */
          n_high = (n_high + 1) & (0u - (high > 0));
          n_low = (n_low + 1) & (0u - (low > 0));
        }
      out[i] = (TmCusumPoint) { high, low, n_high, n_low };
    }
}

/* -------- Run lengths -------- */

/* An integral equation L(u) = 1 + ∫ L(y) K(u, y) dy, and perhaps a mass of probability at one place. */
typedef struct {
  double from, to;
  double lambda, k, shift;
  gboolean sums; /* CUSUM, whose sum rests at 0; else EWMA */
} Equation;

static double
find_kernel (const Equation *equation, double u, double y)
{
  if (equation->sums)
    return gsl_ran_ugaussian_pdf (y + equation->k - u - equation->shift);
  return gsl_ran_ugaussian_pdf ((y - (1 - equation->lambda) * u) / equation->lambda - equation->shift)
         / equation->lambda;
}

static double
find_rest (const Equation *equation, double u)
{
  return equation->sums ? gsl_cdf_ugaussian_P (equation->k - u - equation->shift) : 0;
}

/* Row @row of (I - K) L = 1, whose first unknown is L where the chart starts, at 0. */
static void
fill_row (const Equation *equation, gsl_matrix *matrix, guint row, double u, const double *nodes,
          const double *weights)
{
  gsl_matrix_set (matrix, row, 0, -find_rest (equation, u));
  for (guint j = 0; j < NODES; j++)
    gsl_matrix_set (matrix, row, j + 1, -weights[j] * find_kernel (equation, u, nodes[j]));
  gsl_matrix_set (matrix, row, row, gsl_matrix_get (matrix, row, row) + 1);
}

/* A chart that never speaks, as far as doubles tell, has no finite length. */
static gboolean
is_singular (const gsl_matrix *decomposed)
{
  for (gsize i = 0; i < decomposed->size1; i++)
    if (!(fabs (gsl_matrix_get (decomposed, i, i)) > 0))
      return TRUE;
  return FALSE;
}

static double
solve_start (const Equation *equation)
{
  gsl_integration_glfixed_table *table = gsl_integration_glfixed_table_alloc (NODES);
  gsl_matrix *matrix = gsl_matrix_alloc (NODES + 1, NODES + 1);
  gsl_vector *ones = gsl_vector_alloc (NODES + 1);
  gsl_vector *lengths = gsl_vector_alloc (NODES + 1);
  gsl_permutation *order = gsl_permutation_alloc (NODES + 1);
  double nodes[NODES], weights[NODES], start;
  int sign;

  for (gsize i = 0; i < NODES; i++)
    gsl_integration_glfixed_point (equation->from, equation->to, i, &nodes[i], &weights[i], table);
  fill_row (equation, matrix, 0, 0, nodes, weights);
  for (guint i = 0; i < NODES; i++)
    fill_row (equation, matrix, i + 1, nodes[i], nodes, weights);
  gsl_vector_set_all (ones, 1);
  gsl_linalg_LU_decomp (matrix, order, &sign);
  start = INFINITY;
  if (!is_singular (matrix))
    {
      gsl_linalg_LU_solve (matrix, order, ones, lengths);
      start = gsl_vector_get (lengths, 0);
    }
  gsl_permutation_free (order);
  gsl_vector_free (lengths);
  gsl_vector_free (ones);
  gsl_matrix_free (matrix);
  gsl_integration_glfixed_table_free (table);
  return start;
}

double
tm_ewma_length (double lambda, double reach, double shift)
{
  double half;

  g_return_val_if_fail (lambda > 0 && lambda <= 1 && reach > 0, NAN);

  half = reach * sqrt (lambda / (2 - lambda));
  return solve_start (&(Equation) { -half, half, lambda, 0, shift, FALSE });
}

double
tm_cusum_length (double k, double h, double shift)
{
  double up, down;

  g_return_val_if_fail (k >= 0 && h > 0, NAN);

  up = solve_start (&(Equation) { 0, h, 1, k, shift, TRUE });
  down = solve_start (&(Equation) { 0, h, 1, k, -shift, TRUE });
  return 1 / (1 / up + 1 / down);
}

/* -------- The change of a level -------- */

typedef struct {
  double *values; /* those that are there, relative to the first */
  guint *at;      /* where they stood */
  guint n;
  double total, squares; /* Σ x, Σ (x - mean)² */
} Present;

static void
collect (const double *values, gsize n, Present *present)
{
  double first = NAN;

  *present = (Present) { g_new (double, n), g_new (guint, n), 0, 0, 0 };
  for (gsize i = 0; i < n; i++)
    if (!isnan (values[i]))
      {
        if (present->n == 0)
          first = values[i];
        present->values[present->n] = values[i] - first;
        present->at[present->n++] = (guint)i;
        present->total += values[i] - first;
      }
  for (guint i = 0; i < present->n; i++)
    {
      double away = present->values[i] - present->total / present->n;

      present->squares += away * away;
    }
}

/* What a change before value @k takes off the sum of squares, as a share of it. */
static double
find_share (const Present *present, guint k, double sum)
{
  double before = k, after = present->n - k;
  double difference = sum / before - (present->total - sum) / after;

  return MIN (1, difference * difference * before * after / present->n / present->squares);
}

/* P(the largest of all two-sample t statistics is as large) where nothing changes: the smaller of
 * Bonferroni's bound and the tail of the largest standardised Brownian bridge (B. James, K. L. James, D.
 * Siegmund, Biometrika 74, 1987), of the normal deviate that is as unlikely as t. */
static double
find_change_p (double share, guint n)
{
  double dof = n - 2, t = sqrt (share * dof / MAX (1 - share, 1e-300));
  double tail = gsl_cdf_tdist_Q (t, dof);
  double x = gsl_cdf_ugaussian_Qinv (MAX (tail, 1e-300));
  double bridge
      = x > 1.5 ? x * gsl_ran_ugaussian_pdf (x) * (2 * log (n - 1.0) * (1 - 1 / (x * x)) + 4 / (x * x)) : 1;

  return MIN (1, MIN (bridge, 2 * tail * (n - 1)));
}

/* All places whose log-likelihood, -n/2 ln(1 - share), is within 1.92 of the best. */
static void
find_interval (const Present *present, double best, TmLevelChange *out)
{
  double sum = 0;
  gboolean first = TRUE;

  for (guint k = 1; k < present->n; k++)
    {
      double worse;

      sum += present->values[k - 1];
      worse = present->n / 2.0 * (log1p (-find_share (present, k, sum)) - log1p (-MIN (best, 1 - 1e-15)));
      if (worse > 1.92)
        continue;
      if (first)
        out->low = present->at[k];
      first = FALSE;
      out->high = present->at[k];
    }
}

static double
find_best (const Present *present, guint *at, double *sum_before)
{
  double best = -1, sum = 0;

  for (guint k = 1; k < present->n; k++)
    {
      double share;

      sum += present->values[k - 1];
      share = find_share (present, k, sum);
      if (share > best)
        {
          best = share;
          *at = k;
          *sum_before = sum;
        }
    }
  return best;
}

void
tm_level_change (const double *values, gsize n, TmLevelChange *out)
{
  Present present;
  double best, sum = 0;
  guint k = 0;

  *out = (TmLevelChange) { .before = NAN, .after = NAN, .p = NAN };
  collect (values, n, &present);
  if (present.n >= 4 && present.squares > 0)
    {
      double first = values[present.at[0]];

      best = find_best (&present, &k, &sum);
      out->p = find_change_p (best, present.n);
      out->found = out->p < 0.05;
      out->at = present.at[k];
      out->before = first + sum / k;
      out->after = first + (present.total - sum) / (present.n - k);
      find_interval (&present, best, out);
    }
  g_free (present.values);
  g_free (present.at);
}
