/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the process is now, from the pieces of the present stretch.  The first pieces weigh alike, so that
 * piece j moves the estimate by 1/j of how far it lies off; once 1/j falls to the weight λ of the moving
 * average it stays there.  The harmonic rule and the moving average are then one recursion,
 * e += g (x - e), g = max (1/j, λ), whose variance is v = (1 - g)² v + g² σ².
 */

#include "core-offset.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-chart.h"
#include "core-small-shift.h"

/* Standard errors that a level has to be off before it is corrected, at the least. */
#define LEAST_ERRORS 2.0

/* A drift that is acted on: of few degrees of freedom it has to be plainer. */
#define DRIFT_P 0.05
#define FEW_DOF 8
#define FEW_P   0.01

/* What corrections taken as meant would hardly ever leave: beyond it they did not do what was meant. */
#define MISTAKEN 3.0

/* -------- Spread -------- */

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

/* Few pieces looked at again and again show a drift too easily. */
static gboolean
has_drift (const TmTrend *trend)
{
  return trend != NULL && trend->status == TM_TREND_OK
         && trend->p <= (trend->dof < FEW_DOF ? FEW_P : DRIFT_P);
}

/* Standard errors that a level has to be off: two, or as many as Student's t wants for 95 % where they rest
 * on few pieces; of two pieces alone that is 12.7, where two would correct one steady process in four. */
static double
find_reach (double dof)
{
  return dof < 1e6 ? MAX (LEAST_ERRORS, gsl_cdf_tdist_Pinv (0.975, dof)) : LEAST_ERRORS;
}

/* By the moving ranges of the values themselves. */
static void
find_own_sigma (const TmOffsetInput *input, double *sigma, double *dof)
{
  const TmChartInput chart_input = { .values = input->values, .n = input->n, .group_size = 1 };
  TmChart chart;

  tm_chart_level (&chart_input, &chart);
  *sigma = chart.sigma;
  *dof = chart.sigma_dof;
}

/* Where the process is by the average.  FALSE: a single piece that lies where nothing before it did. */
static gboolean
find_steady (const TmOffsetInput *input, double mean, guint count, double sigma, TmOffsetAdvice *out)
{
  const double target = isnan (input->target) ? 0 : input->target;
  const double start = get_start_variance (sigma, input->before, input->lambda);
  const gboolean mistaken
      = input->before > 0 && fabs (mean - target) > MISTAKEN * sqrt (sigma * sigma / count + start);
  const guint before = mistaken || isnan (input->target) ? 0 : input->before;

  find_average (input->values, input->n, target, before, sigma, input->lambda, out);
  return count > 1 || !(input->chosen || mistaken);
}

void
tm_offset_advise (const TmOffsetInput *input, TmOffsetAdvice *out)
{
  double mean, mean_at, sigma, dof;
  guint count;
  gsize last = 0;

  g_return_if_fail (input != NULL && out != NULL && input->step > 0);
  g_return_if_fail (input->lambda > 0 && input->lambda <= 1);

  *out = (TmOffsetAdvice) { .status = TM_OFFSET_TOO_FEW, .level = NAN, .level_se = NAN };
  tm_offset_spreads (input->values, input->n, NULL, 0, &out->spread, &out->spread_corrected);
  mean = find_mean (input->values, input->n, &count, &last, &mean_at);
  sigma = input->sigma;
  dof = input->sigma_dof;
  if (isnan (sigma))
    find_own_sigma (input, &sigma, &dof);
  if (count == 0 || isnan (sigma))
    return;
  if (has_drift (input->trend))
    {
      dof = input->trend->dof;
      find_end (input->trend, (double)last - mean_at, input->lambda, out);
    }
  else if (!find_steady (input, mean, count, sigma, out))
    return;
  if (isnan (input->target))
    out->status = TM_OFFSET_NO_TARGET;
  else if (fabs (out->level - input->target) <= find_reach (dof) * out->level_se)
    out->status = TM_OFFSET_ON_TARGET;
  else
    find_steps (input->target - out->level, input->step, out);
}

double
tm_offset_needless (double lambda)
{
  return tm_ewma_length (lambda, LEAST_ERRORS, 0);
}
