/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shapes of distributions: quantiles against GSL's, fits against the shape that the values were made from.
 */

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core-shape.h"

static const TmFittedShape shapes[] = {
  { TM_SHAPE_NORMAL, 0, 24.99, 0.004, NAN }, { TM_SHAPE_LOGNORMAL, 0, -4, 0.5, NAN },
  { TM_SHAPE_LOGNORMAL, 7, -4, 0.5, NAN },   { TM_SHAPE_LOGNORMAL, 7, -4, -0.5, NAN },
  { TM_SHAPE_WEIBULL, 0, 0.02, 1.7, NAN },   { TM_SHAPE_WEIBULL, 3, 0.02, 1.7, NAN },
  { TM_SHAPE_RAYLEIGH, 0, 0.01, 0, NAN },
};
static const double shares[] = { 0.00135, 0.025, 0.5, 0.9, 0.99865 };

/* GSL's own inverses are other code; relative 1e-12 leaves room for their rounding. */
static double
get_gsl_quantile (const TmFittedShape *s, double p)
{
  switch (s->shape)
    {
    case TM_SHAPE_NORMAL:
      return s->a + gsl_cdf_gaussian_Pinv (p, s->b);
    case TM_SHAPE_LOGNORMAL:
      return s->b > 0 ? s->origin + gsl_cdf_lognormal_Pinv (p, s->a, s->b)
                      : s->origin - gsl_cdf_lognormal_Qinv (p, s->a, -s->b);
    case TM_SHAPE_WEIBULL:
      return s->origin + gsl_cdf_weibull_Pinv (p, s->a, s->b);
    case TM_SHAPE_RAYLEIGH:
      return gsl_cdf_rayleigh_Pinv (p, s->a);
    case TM_SHAPE_EMPIRIC:
    case TM_N_SHAPES:
    default:
      g_assert_not_reached ();
    }
}

static void
test_quantiles (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
      {
        double q = tm_shape_quantile (&shapes[i], shares[j]);
        double step = 1e-4 * (tm_shape_quantile (&shapes[i], 0.9) - tm_shape_quantile (&shapes[i], 0.1));

        g_assert_cmpfloat_with_epsilon (q, get_gsl_quantile (&shapes[i], shares[j]), 1e-12 * fabs (q));
        g_assert_cmpfloat_with_epsilon (tm_shape_below (&shapes[i], q), shares[j], 1e-9);
        /* The density is the slope of what lies below: central difference, error by the square of the step.
         */
        g_assert_cmpfloat_with_epsilon (
            (tm_shape_below (&shapes[i], q + step) - tm_shape_below (&shapes[i], q - step)) / (2 * step)
                / tm_shape_density (&shapes[i], q),
            1, 0.02);
      }
  g_assert_true (isnan (tm_shape_quantile (&shapes[0], 0)));
  g_assert_true (isnan (tm_shape_quantile (&shapes[0], 1)));
}

/* Weibull 1.7: mean and median by Γ: a Γ(1 + 1/b), a (ln 2)^(1/b) (the usual formulas). */
static void
test_ends (void)
{
  g_assert_cmpfloat_with_epsilon (tm_shape_quantile (&shapes[4], 0.5), 0.02 * pow (log (2), 1 / 1.7), 1e-16);
  g_assert_cmpfloat_with_epsilon (tm_shape_quantile (&shapes[6], 0.5), 0.01 * sqrt (2 * log (2)), 1e-16);
  g_assert_cmpfloat (tm_shape_below (&shapes[4], -1), ==, 0);
  g_assert_cmpfloat (tm_shape_density (&shapes[6], -1), ==, 0);
  g_assert_cmpfloat (tm_shape_below (&shapes[2], 6), ==, 0);
  g_assert_cmpfloat (tm_shape_below (&shapes[3], 8), ==, 1);
  g_assert_cmpfloat (tm_shape_density (&shapes[3], 8), ==, 0);
}

/* @n values that lie as evenly as they can. */
static double *
make_even (const TmFittedShape *shape, gsize n)
{
  double *values = g_new (double, n);

  for (gsize i = 0; i < n; i++)
    values[i] = tm_shape_quantile (shape, ((double)i + 0.5) / (double)n);
  return values;
}

/* 900 even values give the shape back: its far quantiles to 5 % of their distance from the median, since no
 * value lies beyond one in 1800. */
static void
test_recovery (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    {
      gboolean is_free = shapes[i].shape == TM_SHAPE_NORMAL || shapes[i].origin > 1;
      TmBound bound = is_free                                ? TM_BOUND_NONE
                      : shapes[i].shape == TM_SHAPE_RAYLEIGH ? TM_BOUND_POSITION
                                                             : TM_BOUND_ZERO;
      g_autofree double *values = make_even (&shapes[i], 900);
      TmFittedShape fit = tm_shape_fit (values, 900, bound);
      double middle = tm_shape_quantile (&shapes[i], 0.5);

      g_assert_cmpint (fit.shape, ==, shapes[i].shape);
      g_assert_cmpfloat (fit.p, >, 0.5);
      for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
        {
          double q = tm_shape_quantile (&shapes[i], shares[j]);

          g_assert_cmpfloat_with_epsilon (tm_shape_quantile (&fit, shares[j]), q,
                                          fmax (0.05 * fabs (q - middle), 0.001 * fabs (middle)));
        }
    }
}

/* Values of the shape itself are doubted when none of 199 drawn samples lies farther off, once in 200: 600
 * samples of 20, of which the binomial 99.9 % band is 0 to 10. */
static void
test_p (void)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  guint doubted = 0;

  gsl_rng_set (random, 3);
  for (guint run = 0; run < 600; run++)
    {
      double values[20];

      for (guint i = 0; i < G_N_ELEMENTS (values); i++)
        values[i] = gsl_ran_rayleigh (random, 0.01);
      /* A Rayleigh fit that is doubted gives way to another shape. */
      doubted += tm_shape_fit (values, G_N_ELEMENTS (values), TM_BOUND_POSITION).shape != TM_SHAPE_RAYLEIGH
                     ? 1
                     : 0;
    }
  gsl_rng_free (random);
  g_assert_cmpuint (doubted, <=, 10);
}

static void
test_poor (void)
{
  static const double few[] = { 1, NAN, 2, INFINITY, 3, 5 }, equal[] = { 2, 2, 2, 2 };
  static const double zeros[] = { 0, 0, 0.01, 0.02, 0.012, 0.03, 0.011, 0.015, 0.021 };
  static const double none[] = { 0, -1, -2, -3 };
  TmFittedShape fit = tm_shape_fit (few, G_N_ELEMENTS (few), TM_BOUND_NONE);

  g_assert_cmpint (fit.shape, ==, TM_SHAPE_NORMAL);
  g_assert_cmpfloat (fit.a, ==, 2.75);
  g_assert_true (isnan (fit.p));
  g_assert_true (isnan (tm_shape_fit (equal, 4, TM_BOUND_NONE).a));
  g_assert_true (isnan (tm_shape_fit (equal, 4, TM_BOUND_ZERO).a));
  g_assert_true (isnan (tm_shape_fit (NULL, 0, TM_BOUND_NONE).a));
  g_assert_true (isnan (tm_shape_fit (none, 4, TM_BOUND_ZERO).a));
  fit = tm_shape_fit (equal, 4, TM_BOUND_NONE);
  g_assert_true (isnan (tm_shape_quantile (&fit, 0.5)));
  g_assert_true (isnan (tm_shape_below (&fit, 2)));
  g_assert_true (isnan (tm_shape_density (&fit, 2)));
  fit = tm_shape_fit (zeros, G_N_ELEMENTS (zeros), TM_BOUND_ZERO);
  g_assert_cmpfloat (tm_shape_quantile (&fit, 0.99865), >, 0.03);
  g_assert_true (isfinite (tm_shape_quantile (&fit, 0.99865)));
}

/* A few roughness values far from zero are no distances in a plane: their spread is their own, not half of
 * their size. */
static void
test_few_from_zero (void)
{
  static const double values[] = { 0.79, 0.82, 0.80, 0.78, 0.81, 0.80 };
  TmFittedShape fit = tm_shape_fit (values, G_N_ELEMENTS (values), TM_BOUND_ZERO);

  g_assert_cmpint (fit.shape, ==, TM_SHAPE_WEIBULL);
  g_assert_cmpfloat (tm_shape_quantile (&fit, 0.99865), <, 0.9);
  g_assert_cmpfloat (tm_shape_quantile (&fit, 0.99865), >, 0.82);
  fit = tm_shape_fit (values, G_N_ELEMENTS (values), TM_BOUND_POSITION);
  g_assert_cmpint (fit.shape, ==, TM_SHAPE_RAYLEIGH);
}

/* Twelve values from a Weibull distribution may as well be lognormal; 900 may not. */
static void
test_rival (void)
{
  g_autofree double *few = make_even (&shapes[4], 12);
  g_autofree double *many = make_even (&shapes[4], 900);
  TmFittedShape fit = tm_shape_fit (few, 12, TM_BOUND_ZERO), rival;

  g_assert_true (tm_shape_rival (few, 12, TM_BOUND_ZERO, &fit, &rival));
  g_assert_cmpint (rival.shape, !=, fit.shape);
  fit = tm_shape_fit (many, 900, TM_BOUND_ZERO);
  g_assert_false (tm_shape_rival (many, 900, TM_BOUND_ZERO, &fit, &rival));
  g_assert_false (tm_shape_rival (many, 900, TM_BOUND_ZERO, &shapes[0], &rival));
}

static void
test_words (void)
{
  for (guint i = 0; i < TM_N_SHAPES; i++)
    for (guint j = 0; j < i; j++)
      g_assert_cmpstr (tm_shape_word (i), !=, tm_shape_word (j));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/shape/quantiles", test_quantiles);
  g_test_add_func ("/core/shape/ends", test_ends);
  g_test_add_func ("/core/shape/recovery", test_recovery);
  g_test_add_func ("/core/shape/p", test_p);
  g_test_add_func ("/core/shape/poor", test_poor);
  g_test_add_func ("/core/shape/few-from-zero", test_few_from_zero);
  g_test_add_func ("/core/shape/rival", test_rival);
  g_test_add_func ("/core/shape/words", test_words);
  return g_test_run ();
}
