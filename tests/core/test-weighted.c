/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Weighted means: published data, shared errors worked out by hand, and Meier's correction against
 * simulated samples.
 */

#include "core-weighted.h"

#include <math.h>

#include "core-uncertainty.h"
#include "judge-support.h"
#include "support-csv.h"

/* 10 ± 4 and 30 ± 5 give 17.80 ± 3.12, as published in an explanation of the particle data group's
 * recipe, which scales by S = √(χ²/(N-1)): 9.756 (recomputed). */
static void
test_two_values (void)
{
  const TmWeightedValue values[] = { { 10, 4, INFINITY }, { 30, 5, INFINITY } };
  double weights[2], apart[2];
  TmWeighted result;

  tm_weighted_mean (values, 2, NULL, weights, apart, &result);
  assert_near (result.mean, 17.804878049, 1e-9);
  assert_near (result.u_known, 3.123475238, 1e-9);
  assert_near (result.chi2, 9.756097561, 1e-9);
  assert_near (result.birge, 3.123475238, 1e-9);
  g_assert_true (result.disagree);
  assert_near (result.u, 9.756097561, 1e-9);
  assert_near (result.expanded, 1.959964 * 9.756097561, 1e-5);
  assert_near (weights[0], 25.0 / 41, 1e-12);
  /* Of two either may be the wrong one; both stand √χ² from the mean. */
  g_assert_cmpint (result.apart, ==, -1);
  assert_near (apart[0], sqrt (9.756097561), 1e-9);
  assert_near (apart[1], sqrt (9.756097561), 1e-9);
}

/* Laboratories' means, the standard deviations taken as standard uncertainties: recomputed from the
 * data by the formulas; the consensus values of the paper itself were not at hand. */
static void
test_laboratories (void)
{
  SupportCsv *csv = support_csv_load ("weighted_mean_duewer.csv");
  TmWeightedValue values[9];
  double weights[9], apart[9], total = 0;
  TmWeighted result;

  g_assert_cmpuint (csv->rows->len, ==, 9);
  for (guint i = 0; i < 9; i++)
    {
      char **row = g_ptr_array_index (csv->rows, i);

      values[i]
          = (TmWeightedValue) { g_ascii_strtod (row[0], NULL), g_ascii_strtod (row[1], NULL), INFINITY };
    }
  tm_weighted_mean (values, 9, NULL, weights, apart, &result);
  assert_near (result.mean, 103.187909322, 1e-9);
  assert_near (result.u_known, 0.123215654, 1e-9);
  assert_near (result.chi2, 175.288435491, 1e-8);
  assert_near (result.birge, 4.680924528, 1e-9);
  assert_near (result.u, 0.576763176, 1e-9);
  for (guint i = 0; i < 9; i++)
    total += weights[i];
  assert_near (total, 1, 1e-12);
  /* The first has the largest weight, and still stands furthest from the mean that it makes. */
  g_assert_cmpint (result.apart, ==, 0);
  assert_near (apart[0], (103.187909322 - 102.02) / sqrt (0.16 * 0.16 - 0.123215654 * 0.123215654), 1e-6);
  support_csv_free (csv);
}

static void
test_one_value (void)
{
  const TmWeightedValue value = { 5, 2, 4 };
  double weight;
  TmWeighted result;

  tm_weighted_mean (&value, 1, NULL, &weight, NULL, &result);
  assert_near (result.mean, 5, 1e-12);
  assert_near (result.u, 2, 1e-12);
  assert_near (result.dof, 4, 1e-12);
  assert_near (result.coverage, 2.7764, 1e-4);
  g_assert_true (isnan (result.chi2) && isnan (result.p) && isnan (result.birge));
  g_assert_false (result.disagree || result.best_alone);
}

/* An error s in common adds s² to the variance and leaves the weights as they were: a², b² alone weigh.
 * χ² is that of the difference, (y1 - y2)² / (a² + b²). */
static void
test_shared_error (void)
{
  const double a = 2, b = 3, s = 1.5;
  const TmWeightedValue values[]
      = { { 10, sqrt (a * a + s * s), INFINITY }, { 13, sqrt (b * b + s * s), INFINITY } };
  const double covariance[] = { a * a + s * s, s * s, s * s, b * b + s * s };
  double weights[2];
  TmWeighted result;

  tm_weighted_mean (values, 2, covariance, weights, NULL, &result);
  assert_near (weights[0], 9.0 / 13, 1e-12);
  assert_near (result.mean, (10 * 9.0 + 13 * 4.0) / 13, 1e-12);
  assert_near (result.u, sqrt (36.0 / 13 + s * s), 1e-12);
  assert_near (result.chi2, 9.0 / 13, 1e-12);
  g_assert_false (result.best_alone);
}

/* Correlated beyond the ratio of their uncertainties: weights 7/6 and -1/6, so the better one counts
 * alone.  The same two values twice have no inverse at all. */
static void
test_best_alone (void)
{
  const TmWeightedValue values[] = { { 13, 3, 20 }, { 10, 1, 12 } };
  const double covariance[] = { 9, 2, 2, 1 };
  const TmWeightedValue twins[] = { { 10, 1, INFINITY }, { 10.5, 1, INFINITY } };
  const double same[] = { 1, 1, 1, 1 };
  double weights[2];
  TmWeighted result;

  tm_weighted_mean (values, 2, covariance, weights, NULL, &result);
  g_assert_true (result.best_alone);
  g_assert_cmpuint (result.best, ==, 1);
  assert_near (result.mean, 10, 1e-12);
  assert_near (result.u, 1, 1e-12);
  assert_near (result.dof, 12, 1e-9);
  assert_near (weights[0], 0, 1e-15);
  tm_weighted_mean (twins, 2, same, weights, NULL, &result);
  g_assert_true (result.best_alone);
  assert_near (result.u, 1, 1e-12);
}

/* The weighted mean of k values whose u_i are known with ν_i degrees of freedom: u² (1 + 4 Σ p(1-p)/ν),
 * dof 1 / Σ p²/ν, written out for p = 1/2, ν = 5 and 8. */
static void
test_meier_by_hand (void)
{
  const TmWeightedValue few[] = { { 0, 1, 5 }, { 0, 1, 8 } };
  const TmWeightedValue many[] = { { 0, 1, 10 }, { 0, 1, 30 } };
  double weights[2];
  TmWeighted result;

  tm_weighted_mean (few, 2, NULL, weights, NULL, &result);
  assert_near (result.u, sqrt (0.5 * (1 + 4 * (0.25 / 5 + 0.25 / 8))), 1e-12);
  assert_near (result.dof, 1 / (0.25 / 5 + 0.25 / 8), 1e-9);
  tm_weighted_mean (many, 2, NULL, weights, NULL, &result);
  assert_near (result.u, sqrt (0.5), 1e-12);
}

/* χ² of values of which the best counts alone is still about the mean of least squares: of two, that of
 * their difference, 3² / (9 + 1 - 2·2). */
static void
test_best_alone_chi2 (void)
{
  const TmWeightedValue values[] = { { 13, 3, INFINITY }, { 10, 1, INFINITY } };
  const double covariance[] = { 9, 2, 2, 1 };
  double weights[2];
  TmWeighted result;

  tm_weighted_mean (values, 2, covariance, weights, NULL, &result);
  g_assert_true (result.best_alone);
  assert_near (result.chi2, 9.0 / 6, 1e-12);
}

/* -------- Meier against simulated samples -------- */

static double
draw_normal (GRand *rand)
{
  double radius = sqrt (-2 * log (1 - g_rand_double (rand)));

  return radius * cos (2 * G_PI * g_rand_double (rand));
}

/* s of ν degrees of freedom of a standard deviation of 1. */
static double
draw_spread (GRand *rand, guint dof)
{
  double sum = 0;

  for (guint i = 0; i < dof; i++)
    {
      double z = draw_normal (rand);

      sum += z * z;
    }
  return sqrt (sum / dof);
}

#define N_SAMPLES 60000

typedef struct {
  double variance;          /* of the weighted mean, about the truth */
  double claimed, as_known; /* mean of u² with and without the correction */
  double covered, covered_as_known;
} Outcome;

static Outcome
simulate (const double *sigma, const guint *dof, guint n, guint32 seed)
{
  GRand *rand = g_rand_new_with_seed (seed);
  Outcome outcome = { 0 };

  for (guint i = 0; i < N_SAMPLES; i++)
    {
      TmWeightedValue values[3];
      double weights[3], k;
      TmWeighted result;

      for (guint j = 0; j < n; j++)
        values[j] = (TmWeightedValue) { sigma[j] * draw_normal (rand), sigma[j] * draw_spread (rand, dof[j]),
                                        dof[j] };
      tm_weighted_mean (values, n, NULL, weights, NULL, &result);
      k = tm_t_quantile (0.975, result.dof);
      outcome.variance += result.mean * result.mean / N_SAMPLES;
      outcome.as_known += result.u_known * result.u_known / N_SAMPLES;
      outcome.claimed
          += result.u * result.u / (result.disagree ? result.birge * result.birge : 1) / N_SAMPLES;
      outcome.covered += (fabs (result.mean) <= result.expanded) / (double)N_SAMPLES;
      outcome.covered_as_known += (fabs (result.mean) <= k * result.u_known) / (double)N_SAMPLES;
    }
  g_rand_free (rand);
  return outcome;
}

/* The claimed variance is the true one to second order in 1/ν; left as if the weights were known it falls
 * short by 4 Σ p(1-p)/ν and more, and the 95 % interval with it. */
static void
test_meier_simulated (void)
{
  static const struct {
    double sigma[3];
    guint dof[3];
    guint n;
    double tolerance; /* of the claimed variance, second order left out */
  } rows[] = {
    { { 1, 1 }, { 8, 8 }, 2, 0.06 },
    { { 1, 2 }, { 6, 9 }, 2, 0.08 },
    { { 1, 1, 1.5 }, { 7, 8, 9 }, 3, 0.10 },
    { { 1, 1, 1 }, { 5, 40, 40 }, 3, 0.06 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Outcome outcome = simulate (rows[i].sigma, rows[i].dof, rows[i].n, 1953 + (guint32)i);

      g_test_message (
          "variance %.4f, claimed %.4f, as if known %.4f; inside 95 %%: %.2f %%, as if known %.2f %%",
          outcome.variance, outcome.claimed, outcome.as_known, 100 * outcome.covered,
          100 * outcome.covered_as_known);
      assert_near (outcome.claimed / outcome.variance, 1, rows[i].tolerance);
      g_assert_cmpfloat (outcome.as_known, <, outcome.claimed);
      g_assert_cmpfloat (fabs (outcome.claimed / outcome.variance - 1), <,
                         fabs (outcome.as_known / outcome.variance - 1));
      g_assert_cmpfloat (outcome.covered, >, 0.94);
      g_assert_cmpfloat (outcome.covered, <, 0.97);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/weighted/two-values", test_two_values);
  g_test_add_func ("/weighted/laboratories", test_laboratories);
  g_test_add_func ("/weighted/one-value", test_one_value);
  g_test_add_func ("/weighted/shared-error", test_shared_error);
  g_test_add_func ("/weighted/best-alone", test_best_alone);
  g_test_add_func ("/weighted/best-alone-chi2", test_best_alone_chi2);
  g_test_add_func ("/weighted/meier-by-hand", test_meier_by_hand);
  g_test_add_func ("/weighted/meier-simulated", test_meier_simulated);

  return g_test_run ();
}
