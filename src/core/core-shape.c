/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-shape.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_sort.h>
#include <math.h>
#include <string.h>

#include "core-normality.h"

#define LEAST 8
/* The distribution of A² hardly changes beyond this many values. */
#define MOST_DRAWN 1000
#define SEED       22514

static const char *const words[TM_N_SHAPES] = {
  [TM_SHAPE_NORMAL] = NC_ ("shape", "normal"),       [TM_SHAPE_LOGNORMAL] = NC_ ("shape", "lognormal"),
  [TM_SHAPE_WEIBULL] = NC_ ("shape", "Weibull"),     [TM_SHAPE_RAYLEIGH] = NC_ ("shape", "Rayleigh"),
  [TM_SHAPE_EMPIRIC] = NC_ ("shape", "as measured"),
};

const char *
tm_shape_word (TmShape shape)
{
  g_return_val_if_fail (shape < TM_N_SHAPES, NULL);
  return words[shape];
}

double
tm_shape_quantile (const TmFittedShape *shape, double probability)
{
  if (!(probability > 0 && probability < 1))
    return NAN;
  switch (shape->shape)
    {
    case TM_SHAPE_NORMAL:
      return shape->a + shape->b * gsl_cdf_ugaussian_Pinv (probability);
    case TM_SHAPE_LOGNORMAL:
      return shape->origin
             + copysign (exp (shape->a + shape->b * gsl_cdf_ugaussian_Pinv (probability)), shape->b);
    case TM_SHAPE_WEIBULL:
      return shape->origin + shape->a * pow (-log1p (-probability), 1 / shape->b);
    case TM_SHAPE_RAYLEIGH:
      return shape->a * sqrt (-2 * log1p (-probability));
    case TM_SHAPE_EMPIRIC:
    case TM_N_SHAPES:
    default:
      return NAN;
    }
}

/* P(x <= value), or of more than it where @above: each without the loss of 1 - P. */
static double
find_share (const TmFittedShape *shape, double value, gboolean above)
{
  double from = value - shape->origin, exponent;

  switch (shape->shape)
    {
    case TM_SHAPE_NORMAL:
      return above ? gsl_cdf_ugaussian_Q ((value - shape->a) / shape->b)
                   : gsl_cdf_ugaussian_P ((value - shape->a) / shape->b);
    case TM_SHAPE_LOGNORMAL:
      if (from * shape->b <= 0) /* beyond the origin */
        return above == (shape->b > 0) ? 1 : 0;
      return above ? gsl_cdf_ugaussian_Q ((log (fabs (from)) - shape->a) / shape->b)
                   : gsl_cdf_ugaussian_P ((log (fabs (from)) - shape->a) / shape->b);
    case TM_SHAPE_WEIBULL:
    case TM_SHAPE_RAYLEIGH:
      if (from <= 0)
        return above ? 1 : 0;
      exponent = shape->shape == TM_SHAPE_WEIBULL ? pow (from / shape->a, shape->b)
                                                  : from * from / (2 * shape->a * shape->a);
      return above ? exp (-exponent) : -expm1 (-exponent);
    case TM_SHAPE_EMPIRIC:
    case TM_N_SHAPES:
    default:
      return NAN;
    }
}

double
tm_shape_below (const TmFittedShape *shape, double value)
{
  if (isnan (value) || isnan (shape->a) || isnan (shape->b))
    return NAN;
  return find_share (shape, value, FALSE);
}

double
tm_shape_density (const TmFittedShape *shape, double value)
{
  double from = value - shape->origin;

  if (isnan (value) || isnan (shape->a) || isnan (shape->b))
    return NAN;
  switch (shape->shape)
    {
    case TM_SHAPE_NORMAL:
      return gsl_ran_gaussian_pdf (value - shape->a, shape->b);
    case TM_SHAPE_LOGNORMAL:
      return from * shape->b <= 0 ? 0 : gsl_ran_lognormal_pdf (fabs (from), shape->a, fabs (shape->b));
    case TM_SHAPE_WEIBULL:
      return from <= 0 ? 0 : gsl_ran_weibull_pdf (from, shape->a, shape->b);
    case TM_SHAPE_RAYLEIGH:
      return from <= 0 ? 0 : gsl_ran_rayleigh_pdf (from, shape->a);
    case TM_SHAPE_EMPIRIC:
    case TM_N_SHAPES:
    default:
      return NAN;
    }
}

/* A² = -n - 1/n Σ (2i - 1) [ln F(x_i) + ln(1 - F(x_(n+1-i)))]; a share that is no number any more counts as
 * the least that is. */
static double
find_a_squared (const TmFittedShape *shape, const double *sorted, gsize n)
{
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    {
      double below = find_share (shape, sorted[i], FALSE),
             above = find_share (shape, sorted[n - 1 - i], TRUE);

      sum += (2 * (double)i + 1) * (log (fmax (below, G_MINDOUBLE)) + log (fmax (above, G_MINDOUBLE)));
    }
  return -(double)n - sum / (double)n;
}

/* First three L-moments of sorted values: l1, l2, and l3 / l2. */
static void
find_l_moments (const double *sorted, gsize n, double *l1, double *l2, double *t3)
{
  double b0 = 0, b1 = 0, b2 = 0;
  double m = (double)n;

  for (gsize i = 0; i < n; i++)
    {
      double j = (double)i;

      b0 += sorted[i];
      b1 += sorted[i] * j / (m - 1);
      b2 += sorted[i] * j * (j - 1) / ((m - 1) * (m - 2));
    }
  *l1 = b0 / m;
  *l2 = (2 * b1 - b0) / m;
  *t3 = (6 * b2 - 6 * b1 + b0) / m / *l2;
}

/* The generalised normal distribution by L-moments; its k is -b here (Hosking and Wallis, Regional Frequency
 * Analysis, 1997, appendix A.8, coefficients from memory, held by a test). */
static void
fit_lognormal_origin (const double *sorted, gsize n, TmFittedShape *out)
{
  double l1, l2, t, tt, k, scale;

  find_l_moments (sorted, n, &l1, &l2, &t);
  tt = t * t;
  k = -t * (2.0466534 + tt * (-3.6544371 + tt * (1.8396733 - tt * 0.20360244)))
      / (1 + tt * (-2.0182173 + tt * (1.2420401 - tt * 0.21741801)));
  if (!(fabs (k) > 1e-6) || fabs (t) > 0.94)
    return;
  scale = l2 * k * exp (-k * k / 2) / (1 - 2 * gsl_cdf_ugaussian_P (-k * G_SQRT2 / 2));
  out->origin = l1 - scale / k * (1 - exp (k * k / 2)) + scale / k;
  out->a = log (fabs (scale / k));
  out->b = -k;
}

/* Weibull with an origin is the extreme value distribution of -x (Hosking 1990, table 2). */
static void
fit_weibull_origin (const double *sorted, gsize n, TmFittedShape *out)
{
  double l1, l2, t, c, k, scale;

  find_l_moments (sorted, n, &l1, &l2, &t);
  c = 2 / (3 - t) - log (2) / log (3);
  k = 7.8590 * c + 2.9554 * c * c;
  if (!(k > 1e-3 && k < 3))
    return;
  scale = l2 * k / (1 - pow (2, -k)) / tgamma (1 + k);
  out->a = scale / k;
  out->b = 1 / k;
  out->origin = l1 - out->a * tgamma (1 + k);
}

static void
fit_lognormal_zero (const double *sorted, gsize n, TmFittedShape *out)
{
  double mean = 0, squares = 0;

  for (gsize i = 0; i < n; i++)
    mean += log (sorted[i]) / (double)n;
  for (gsize i = 0; i < n; i++)
    squares += (log (sorted[i]) - mean) * (log (sorted[i]) - mean);
  out->a = mean;
  out->b = sqrt (squares / (double)(n - 1));
}

/* Sums of the likelihood equation, x over the greatest so that no power overflows. */
static void
sum_powers (const double *logs, gsize n, double b, double *s0, double *s1, double *s2)
{
  *s0 = *s1 = *s2 = 0;
  for (gsize i = 0; i < n; i++)
    {
      double power = exp (b * logs[i]);

      *s0 += power;
      *s1 += power * logs[i];
      *s2 += power * logs[i] * logs[i];
    }
}

/* 1/b = Σ x^b ln x / Σ x^b - mean ln x, by Newton's method; a = (Σ x^b / n)^(1/b). */
static void
fit_weibull_zero (const double *sorted, gsize n, TmFittedShape *out)
{
  g_autofree double *logs = g_new (double, n);
  double greatest = log (sorted[n - 1]), mean = 0, squares = 0, b, s0, s1, s2;

  for (gsize i = 0; i < n; i++)
    {
      logs[i] = log (sorted[i]) - greatest;
      mean += logs[i] / (double)n;
    }
  for (gsize i = 0; i < n; i++)
    squares += (logs[i] - mean) * (logs[i] - mean);
  b = G_PI / sqrt (6 * squares / (double)n);
  for (guint i = 0; i < 50; i++)
    {
      double step;

      sum_powers (logs, n, b, &s0, &s1, &s2);
      step = (s1 / s0 - mean - 1 / b) / (s2 / s0 - s1 * s1 / (s0 * s0) + 1 / (b * b));
      b = fmax (b - step, b / 4);
      if (fabs (step) < 1e-10 * b)
        break;
    }
  sum_powers (logs, n, b, &s0, &s1, &s2);
  out->b = b;
  out->a = exp (greatest + log (s0 / (double)n) / b);
}

static void
fit_rayleigh (const double *sorted, gsize n, TmFittedShape *out)
{
  double squares = 0;

  for (gsize i = 0; i < n; i++)
    squares += sorted[i] * sorted[i];
  out->a = sqrt (squares / (2 * (double)n));
  out->b = 0;
}

static void
fit_normal (const double *sorted, gsize n, TmFittedShape *out)
{
  double mean = 0, squares = 0;

  for (gsize i = 0; i < n; i++)
    mean += sorted[i] / (double)n;
  for (gsize i = 0; i < n; i++)
    squares += (sorted[i] - mean) * (sorted[i] - mean);
  out->a = mean;
  out->b = sqrt (squares / (double)(n - 1));
}

static TmFittedShape
fit_one (TmShape shape, const double *sorted, gsize n, TmBound bound)
{
  TmFittedShape fit = { shape, 0, NAN, NAN, NAN };

  if (n < 3 || !(sorted[n - 1] > sorted[0]))
    return fit;
  if (shape == TM_SHAPE_NORMAL)
    fit_normal (sorted, n, &fit);
  else if (shape == TM_SHAPE_RAYLEIGH)
    fit_rayleigh (sorted, n, &fit);
  else if (shape == TM_SHAPE_LOGNORMAL && bound != TM_BOUND_NONE)
    fit_lognormal_zero (sorted, n, &fit);
  else if (shape == TM_SHAPE_LOGNORMAL)
    fit_lognormal_origin (sorted, n, &fit);
  else if (bound != TM_BOUND_NONE)
    fit_weibull_zero (sorted, n, &fit);
  else
    fit_weibull_origin (sorted, n, &fit);
  if (!isfinite (fit.a) || !isfinite (fit.b) || !isfinite (fit.origin))
    fit.a = fit.b = NAN;
  return fit;
}

void
tm_shape_try (const TmFittedShape *shape, gsize n, TmBound bound, TmShapeTrial *trials)
{
  gsize drawn = MIN (n, MOST_DRAWN);
  g_autofree double *values = g_new (double, drawn);
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);

  gsl_rng_set (random, SEED);
  for (guint t = 0; t < TM_SHAPE_TRIALS; t++)
    {
      for (gsize i = 0; i < drawn; i++)
        values[i] = tm_shape_quantile (shape, gsl_rng_uniform_pos (random));
      gsl_sort (values, 1, drawn);
      trials[t].fit = fit_one (shape->shape, values, drawn, bound);
      trials[t].a_squared = isnan (trials[t].fit.a) ? 0 : find_a_squared (&trials[t].fit, values, drawn);
    }
  gsl_rng_free (random);
}

/* The share of drawn samples that lie as far from their own fit as these values from theirs. */
static double
find_p (const TmFittedShape *shape, const double *sorted, gsize n, TmBound bound)
{
  TmShapeTrial trials[TM_SHAPE_TRIALS];
  double a_squared = find_a_squared (shape, sorted, n);
  guint farther = 0;

  tm_shape_try (shape, n, bound, trials);
  for (guint t = 0; t < TM_SHAPE_TRIALS; t++)
    farther += trials[t].a_squared >= a_squared ? 1 : 0;
  return (farther + 1.0) / (TM_SHAPE_TRIALS + 1.0);
}

static TmFittedShape
fit_tested (TmShape shape, const double *sorted, gsize n, TmBound bound)
{
  TmFittedShape fit = fit_one (shape, sorted, n, bound);

  if (n >= LEAST && !isnan (fit.a))
    fit.p = find_p (&fit, sorted, n, bound);
  return fit;
}

/* A shape that cannot be fitted has no p, and is not the better one. */
static TmFittedShape
choose (const TmFittedShape *first, const TmFittedShape *second)
{
  return isnan (first->a) || second->p > first->p ? *second : *first;
}

gboolean
tm_shape_is_doubted (const TmFittedShape *shape)
{
  return shape->p < (shape->shape == TM_SHAPE_RAYLEIGH ? 0.01 : TM_SHAPE_NORMAL_DOUBT);
}

static gboolean
is_believed (const TmFittedShape *fit)
{
  return !isnan (fit->a) && !tm_shape_is_doubted (fit);
}

static TmFittedShape
fit_skewed (const double *sorted, gsize n, TmBound bound)
{
  TmFittedShape weibull = fit_tested (TM_SHAPE_WEIBULL, sorted, n, bound);
  TmFittedShape lognormal = fit_tested (TM_SHAPE_LOGNORMAL, sorted, n, bound);

  return choose (&weibull, &lognormal);
}

/* A value that is not above zero counts as half the least that is; FALSE where none is. */
static gboolean
lift_zeros (double *sorted, gsize n)
{
  gsize first = 0;

  while (first < n && sorted[first] <= 0)
    first++;
  for (gsize i = 0; i < first && first < n; i++)
    sorted[i] = sorted[first] / 2;
  return first < n;
}

static TmFittedShape
fit_bounded (const double *sorted, gsize n, TmBound bound)
{
  TmFittedShape rayleigh, other;

  if (bound == TM_BOUND_ZERO)
    return fit_skewed (sorted, n, bound);
  rayleigh = fit_tested (TM_SHAPE_RAYLEIGH, sorted, n, bound);
  if (is_believed (&rayleigh) || n < LEAST)
    return rayleigh;
  other = fit_skewed (sorted, n, bound);
  return choose (&rayleigh, &other);
}

static TmFittedShape
fit_free (const double *sorted, gsize n)
{
  TmFittedShape normal = fit_one (TM_SHAPE_NORMAL, sorted, n, TM_BOUND_NONE), other;
  double a_squared;

  tm_normality (sorted, n, &a_squared, &normal.p);
  if (is_believed (&normal) || n < LEAST)
    return normal;
  other = fit_skewed (sorted, n, TM_BOUND_NONE);
  return choose (&normal, &other);
}

/* Those that are there, in order. */
static double *
sort_values (const double *values, gsize n, gsize *there)
{
  double *sorted = g_new (double, MAX (n, 1));

  *there = 0;
  for (gsize i = 0; i < n; i++)
    if (isfinite (values[i]))
      sorted[(*there)++] = values[i];
  gsl_sort (sorted, 1, *there);
  return sorted;
}

TmFittedShape
tm_shape_fit (const double *values, gsize n, TmBound bound)
{
  gsize there;
  g_autofree double *sorted = sort_values (values, n, &there);

  if (bound == TM_BOUND_NONE)
    return fit_free (sorted, there);
  if (!lift_zeros (sorted, there))
    return (TmFittedShape) { TM_SHAPE_WEIBULL, 0, NAN, NAN, NAN };
  return fit_bounded (sorted, there, bound);
}

gboolean
tm_shape_rival (const double *values, gsize n, TmBound bound, const TmFittedShape *fit, TmFittedShape *rival)
{
  gsize there;
  g_autofree double *sorted = NULL;

  if (fit->shape != TM_SHAPE_WEIBULL && fit->shape != TM_SHAPE_LOGNORMAL)
    return FALSE;
  sorted = sort_values (values, n, &there);
  if (there < LEAST || (bound != TM_BOUND_NONE && !lift_zeros (sorted, there)))
    return FALSE;
  *rival = fit_tested (fit->shape == TM_SHAPE_WEIBULL ? TM_SHAPE_LOGNORMAL : TM_SHAPE_WEIBULL, sorted, there,
                       bound);
  return is_believed (rival);
}
