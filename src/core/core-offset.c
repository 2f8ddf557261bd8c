/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the process is now, from the pieces of the present stretch.  The first pieces weigh alike, so that
 * piece j moves the estimate by 1/j of how far it lies off; once 1/j falls to the weight λ of the moving
 * average it stays there.  The harmonic rule and the moving average are then one recursion,
 * e += g (x - e), g = max (1/j, λ), whose variance is v = (1 - g)² v + g² σ².
 */

#include "core-offset.h"

#include <math.h>

/* Mean of the range of two normal values over σ: 2/√π. */
#define D2_OF_TWO 1.1283791670955126

/* What corrections taken as meant would hardly ever leave: beyond it they did not do what was meant. */
#define MISTAKEN 3.0

/* -------- Spread -------- */

/* Of the differences of values that follow each other; NAN: fewer than two. */
static double
find_range_sigma (const double *values, gsize n)
{
  double last = NAN, sum = 0;
  guint count = 0;

  for (gsize i = 0; i < n; i++)
    if (!isnan (values[i]))
      {
        if (!isnan (last))
          sum += fabs (values[i] - last), count++;
        last = values[i];
      }
  return count >= 2 ? sum / count / D2_OF_TWO : NAN;
}

/* Welford's recursion. */
typedef struct {
  guint n;
  double mean, squares;
} Spread;

static void
add_value (Spread *spread, double value)
{
  double away = value - spread->mean;

  spread->mean += away / ++spread->n;
  spread->squares += away * (value - spread->mean);
}

static double
get_deviation (const Spread *spread)
{
  return spread->n >= 2 ? sqrt (spread->squares / (spread->n - 1)) : NAN;
}

/* Correcting each piece by all of its deviation takes the last piece's error out of the next: what is left is
 * the difference of both. */
void
tm_offset_spreads (const double *values, gsize n, const guint *breaks, guint n_breaks, double *as_is,
                   double *corrected)
{
  Spread plain = { 0 }, differences = { 0 };
  double last = NAN;
  guint next = 0;

  for (gsize i = 0; i < n; i++)
    {
      if (next < n_breaks && breaks[next] == i)
        next++, last = NAN;
      if (isnan (values[i]))
        continue;
      add_value (&plain, values[i]);
      if (!isnan (last))
        add_value (&differences, values[i] - last);
      last = values[i];
    }
  *as_is = plain.n >= 3 ? get_deviation (&plain) : NAN;
  *corrected = plain.n >= 3 ? get_deviation (&differences) : NAN;
}

/* -------- Level -------- */

static double
get_start_variance (double sigma, guint before, double lambda)
{
  return before > 0 ? sigma * sigma * MAX (1.0 / before, lambda / (2 - lambda)) : 0;
}

static void
find_average (const double *values, gsize n, double start, guint before, double sigma, double lambda,
              TmOffsetAdvice *out)
{
  double level = start, variance = get_start_variance (sigma, before, lambda);
  guint j = before;

  for (gsize i = 0; i < n; i++)
    if (!isnan (values[i]))
      {
        double gain = MAX (1.0 / (j + 1), lambda);

        j++;
        level += gain * (values[i] - level);
        variance = (1 - gain) * (1 - gain) * variance + gain * gain * sigma * sigma;
      }
  out->level = level;
  out->level_se = sqrt (variance);
  out->harmonic = j * lambda <= 1;
}

static double
find_mean (const double *values, gsize n, guint *count, gsize *last, double *mean_at)
{
  double sum = 0, at = 0;

  *count = 0;
  for (gsize i = 0; i < n; i++)
    if (!isnan (values[i]))
      {
        sum += values[i];
        at += (double)i;
        *last = i;
        ++*count;
      }
  *mean_at = *count > 0 ? at / *count : NAN;
  return *count > 0 ? sum / *count : NAN;
}

/* The line at its last value. */
static void
find_end (const TmTrend *trend, double from_middle, double lambda, TmOffsetAdvice *out)
{
  out->drifting = TRUE;
  out->level = trend->mean_y + trend->slope * from_middle;
  out->level_se = trend->residual * sqrt (1 / (double)trend->n + from_middle * from_middle / trend->sxx);
  out->lag = trend->slope * (1 - lambda) / lambda;
}

/* -------- Advice -------- */

static void
find_steps (double wanted, double step, TmOffsetAdvice *out)
{
  /* A whole number of steps may come out a hair short of it. */
  double steps = trunc (wanted / step + copysign (1e-9, wanted));

  if (fabs (steps) < 1 || fabs (steps) > 1e15)
    {
      out->status = TM_OFFSET_UNDER_STEP;
      return;
    }
  out->status = TM_OFFSET_ADVISED;
  out->steps = (gint64)steps;
  out->size_change = steps * step;
}

static gboolean
has_drift (const TmTrend *trend)
{
  return trend != NULL && trend->status == TM_TREND_OK && trend->p <= 0.05;
}

void
tm_offset_advise (const double *values, gsize n, double target, double sigma, const TmTrend *trend,
                  double lambda, guint before, double step, TmOffsetAdvice *out)
{
  double mean, mean_at;
  guint count;
  gsize last = 0;

  g_return_if_fail (out != NULL && lambda > 0 && lambda <= 1 && step > 0);

  *out = (TmOffsetAdvice) { .status = TM_OFFSET_TOO_FEW, .level = NAN, .level_se = NAN };
  tm_offset_spreads (values, n, NULL, 0, &out->spread, &out->spread_corrected);
  mean = find_mean (values, n, &count, &last, &mean_at);
  if (isnan (sigma))
    sigma = find_range_sigma (values, n);
  if (count == 0 || isnan (sigma))
    return;
  if (has_drift (trend))
    find_end (trend, (double)last - mean_at, lambda, out);
  else
    {
      double due = sqrt (sigma * sigma / count + get_start_variance (sigma, before, lambda));

      if (isnan (target) || fabs (mean - target) > MISTAKEN * due)
        before = 0;
      find_average (values, n, isnan (target) ? 0 : target, before, sigma, lambda, out);
    }
  if (isnan (target))
    out->status = TM_OFFSET_NO_TARGET;
  else if (fabs (out->level - target) <= 2 * out->level_se)
    out->status = TM_OFFSET_ON_TARGET;
  else
    find_steps (target - out->level, step, out);
}
