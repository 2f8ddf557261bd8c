/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether to correct, and by how much.
 */

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#include "core-offset.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))
#define LAMBDA                       0.2
#define KNOWN                        INFINITY /* degrees of freedom of a scatter that is known */

static void
advise (const double *values, gsize n, double target, double sigma, guint before, double step,
        TmOffsetAdvice *out)
{
  g_autofree double *x = g_new (double, n + 1);
  TmTrend trend;

  for (gsize i = 0; i < n; i++)
    x[i] = (double)i + 1;
  tm_trend (x, values, n, &trend);
  tm_offset_advise (&(TmOffsetInput) { .values = values,
                                       .n = n,
                                       .target = target,
                                       .sigma = sigma,
                                       .sigma_dof = KNOWN,
                                       .trend = &trend,
                                       .lambda = LAMBDA,
                                       .before = before,
                                       .step = step },
                    out);
}

/* Three pieces at 8, 10 and 12 of sigma 1: mean 10, se 1/√3; rounded toward zero. */
static void
test_rounding (void)
{
  static const double values[] = { 9.6, 11.2, 8.9 };
  static const struct {
    double target, step, change;
    gint64 steps;
  } cases[] = {
    { 0, 1, -9, -9 }, { 0, 2.5, -7.5, -3 }, { 20, 1, 10, 10 }, { 20, 4, 8, 2 }, { 0, 9.9, -9.9, -1 },
  };
  TmOffsetAdvice advice;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      advise (values, 3, cases[i].target, 1, 0, cases[i].step, &advice);
      g_assert_cmpint (advice.status, ==, TM_OFFSET_ADVISED);
      assert_near (advice.level, 9.9, 1e-12);
      assert_near (advice.level_se, 1 / sqrt (3), 1e-12);
      g_assert_true (advice.harmonic);
      g_assert_cmpint (advice.steps, ==, cases[i].steps);
      assert_near (advice.size_change, cases[i].change, 1e-12);
    }
}

static void
test_statuses (void)
{
  static const double values[] = { 0.4, -0.6, NAN, 1.1, 0.1 };
  static const double equal[] = { 3, 3, 3 };
  TmOffsetAdvice advice;

  advise (values, 5, 0, 1, 0, 0.1, &advice); /* 0.25 ± 0.5 */
  g_assert_cmpint (advice.status, ==, TM_OFFSET_ON_TARGET);
  g_assert_cmpint (advice.steps, ==, 0);
  advise (values, 5, -2, 1, 0, 5, &advice);
  g_assert_cmpint (advice.status, ==, TM_OFFSET_UNDER_STEP);
  assert_near (advice.size_change, 0, 1e-12);
  advise (values, 5, NAN, 1, 0, 1, &advice);
  g_assert_cmpint (advice.status, ==, TM_OFFSET_NO_TARGET);
  advise (values, 0, 0, 1, 0, 1, &advice);
  g_assert_cmpint (advice.status, ==, TM_OFFSET_TOO_FEW);
  advise (values, 1, 0, NAN, 0, 1, &advice); /* one piece tells no scatter */
  g_assert_cmpint (advice.status, ==, TM_OFFSET_TOO_FEW);
  advise (values + 2, 1, 0, 1, 0, 1, &advice); /* one, and it is missing */
  g_assert_cmpint (advice.status, ==, TM_OFFSET_TOO_FEW);
  advise (equal, 3, 0, NAN, 0, 1, &advice); /* finer than the gauge shows, and off */
  g_assert_cmpint (advice.steps, ==, -3);
}

/* F. E. Grubbs: of pieces that are each corrected, the j-th by 1/j of its deviation, the sum of the
 * corrections is minus the mean of what the pieces had been without. */
static void
test_harmonic (void)
{
  static const double raw[] = { 42.5, 37.25, 40.5, 38.75, 41.5 };
  double sum = 0, mean = 0;

  for (guint j = 0; j < 5; j++)
    {
      const double now = raw[j] + sum;
      TmOffsetAdvice advice;

      advise (&now, 1, 0, 0.01, j, 1e-9, &advice);
      if (j > 0 && fabs (now) > 3 * 0.01 * sqrt (1 + 1.0 / j))
        {
          /* Beyond what corrections taken as meant would leave: one such piece alone is no level. */
          g_assert_cmpint (advice.status, ==, TM_OFFSET_TOO_FEW);
          advise (&now, 1, 0, 10, j, 1e-9, &advice);
          g_assert_cmpint (advice.status, ==, TM_OFFSET_ON_TARGET);
          advice.size_change = -advice.level;
        }
      g_assert_true (advice.harmonic);
      assert_near (advice.size_change, -now / (j + 1), 1e-8);
      sum += advice.size_change;
      mean += (raw[j] - mean) / (j + 1);
      assert_near (sum, -mean, 1e-7);
    }
}

/* From five pieces on the weight is that of the average, and its error comes to σ √(λ/(2-λ)). */
static void
test_average (void)
{
  double values[60], level = 0;
  TmOffsetAdvice advice;

  for (guint i = 0; i < 60; i++)
    values[i] = i % 2 == 0 ? 1 : -1;
  advise (values, 60, 0, 2, 0, 1, &advice);
  g_assert_false (advice.drifting);
  g_assert_false (advice.harmonic);
  assert_near (advice.level_se, 2 * sqrt (LAMBDA / (2 - LAMBDA)), 1e-4);
  for (guint i = 0; i < 60; i++)
    level += MAX (1.0 / (i + 1), LAMBDA) * (values[i] - level);
  assert_near (advice.level, level, 1e-12);
}

/* In a drift the level is the end of the line; a moving average stays behind by slope (1 - λ)/λ. */
static void
test_drift (void)
{
  double values[80], average = 0;
  TmOffsetAdvice advice;

  for (guint i = 0; i < 80; i++)
    values[i] = 0.5 * i + (i % 2 == 0 ? 0.01 : -0.01);
  advise (values, 80, 0, 1, 0, 1, &advice);
  g_assert_true (advice.drifting);
  assert_near (advice.level, 39.5, 0.01);
  for (guint i = 0; i < 80; i++)
    average += LAMBDA * (values[i] - average);
  assert_near (advice.lag, 0.5 * (1 - LAMBDA) / LAMBDA, 1e-3);
  assert_near (advice.level - average, advice.lag, 0.01);
  g_assert_cmpint (advice.steps, ==, -39);
}

/* Two pieces that lie close together by chance tell little of the scatter: Student's t with one degree of
 * freedom, 12.706 (any table), where two standard errors would correct. */
static void
test_few (void)
{
  static const double close[] = { 2.0, 2.4 }, closer[] = { 2.0, 2.1 };
  TmOffsetAdvice advice;

  advise (close, 2, 0, NAN, 0, 0.1, &advice); /* 2.2 ± 0.25, 8.8 of them off */
  assert_near (advice.level / advice.level_se, 8.78, 0.01);
  g_assert_cmpint (advice.status, ==, TM_OFFSET_ON_TARGET);
  advise (closer, 2, 0, NAN, 0, 0.1, &advice); /* 33 of them */
  g_assert_cmpint (advice.status, ==, TM_OFFSET_ADVISED);
}

/* One piece after a change that a test has found may be one wild piece; two of them are a level. */
static void
test_chosen (void)
{
  static const double values[] = { 5, 4.6 };
  TmOffsetInput input = {
    .values = values, .n = 1, .sigma = 1, .sigma_dof = 40, .lambda = LAMBDA, .chosen = TRUE, .step = 0.1
  };
  TmOffsetAdvice advice;

  tm_offset_advise (&input, &advice);
  g_assert_cmpint (advice.status, ==, TM_OFFSET_TOO_FEW);
  input.n = 2;
  tm_offset_advise (&input, &advice);
  g_assert_cmpint (advice.steps, ==, -48);
  input.n = 1;
  input.chosen = FALSE; /* the first piece of another tool is all there is */
  tm_offset_advise (&input, &advice);
  g_assert_cmpint (advice.steps, ==, -50);
}

/* Two standard errors of an average of weight 1 are two of each piece: one in 21.98 (Φ(-2), tables).  With
 * 0.2 simulated: 4000 runs, four standard errors of their mean. */
static void
test_needless (void)
{
  const double limit = 2 * sqrt (LAMBDA / (2 - LAMBDA));
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  double pieces = 0;

  gsl_rng_set (random, 8);
  for (guint run = 0; run < 4000; run++)
    for (double z = 0; fabs (z) <= limit; pieces++)
      z += LAMBDA * (gsl_ran_gaussian_ziggurat (random, 1) - z);
  assert_near (tm_offset_needless (1), 1 / (2 * 0.0227501319), 0.2);
  assert_near (tm_offset_needless (LAMBDA), pieces / 4000, 4 * pieces / 4000 / sqrt (4000));
  gsl_rng_free (random);
}

/* What each piece corrected by the last one's deviation would have cost. */
static void
test_spreads (void)
{
  static const double values[] = { 1, NAN, 3, 2, 6, 4 };
  static const guint breaks[] = { 4 };
  double as_is, corrected;

  tm_offset_spreads (values, 6, NULL, 0, &as_is, &corrected);
  assert_near (as_is, sqrt (14.8 / 4), 1e-12);                           /* 1 3 2 6 4 about 3.2 */
  assert_near (corrected, sqrt ((4 + 1 + 16 + 4 - 9.0 / 4) / 3), 1e-12); /* 2 -1 4 -2 about 0.75 */
  tm_offset_spreads (values, 6, breaks, 1, &as_is, &corrected);
  assert_near (corrected, sqrt ((4 + 1 + 4 - 1.0 / 3) / 2), 1e-12); /* 2 -1 -2: none over the break */
  tm_offset_spreads (values, 3, NULL, 0, &as_is, &corrected);
  g_assert_true (isnan (as_is) && isnan (corrected));
}

/* Of independent values it is √2 as much (four standard errors of the ratio). */
static void
test_cost (void)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  g_autofree double *values = g_new (double, 20000);
  double as_is, corrected;

  gsl_rng_set (random, 5);
  for (guint i = 0; i < 20000; i++)
    values[i] = gsl_ran_gaussian (random, 3);
  tm_offset_spreads (values, 20000, NULL, 0, &as_is, &corrected);
  assert_near (corrected / as_is, M_SQRT2, 0.03);
  gsl_rng_free (random);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/offset/rounding", test_rounding);
  g_test_add_func ("/offset/statuses", test_statuses);
  g_test_add_func ("/offset/harmonic", test_harmonic);
  g_test_add_func ("/offset/average", test_average);
  g_test_add_func ("/offset/drift", test_drift);
  g_test_add_func ("/offset/few", test_few);
  g_test_add_func ("/offset/chosen", test_chosen);
  g_test_add_func ("/offset/needless", test_needless);
  g_test_add_func ("/offset/spreads", test_spreads);
  g_test_add_func ("/offset/cost", test_cost);
  return g_test_run ();
}
