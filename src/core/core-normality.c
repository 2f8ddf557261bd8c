/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-normality.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sort.h>
#include <math.h>

#include "core-statistics.h"

#define LEAST 8

/* ln Φ(x), down to where Φ itself is no longer a number. */
static double
find_log_below (double x)
{
  if (x > -30)
    return log (gsl_cdf_ugaussian_P (x));
  return -x * x / 2 - log (-x) - 0.5 * log (2 * G_PI);
}

static double
find_p (double a)
{
  if (a >= 0.6)
    return a > 13 ? 0 : exp (1.2937 - 5.709 * a + 0.0186 * a * a);
  if (a >= 0.34)
    return exp (0.9177 - 4.279 * a - 1.38 * a * a);
  if (a >= 0.2)
    return 1 - exp (-8.318 + 42.796 * a - 59.938 * a * a);
  return 1 - exp (-13.436 + 101.14 * a - 223.73 * a * a);
}

void
tm_normality (const double *values, gsize n, double *a_squared, double *p)
{
  g_autofree double *z = NULL;
  TmSummary summary;
  double sum = 0;

  *a_squared = *p = NAN;
  if (n < LEAST || tm_summary (values, n, &summary) != TM_SUMMARY_OK)
    return;
  z = g_new (double, n);
  for (gsize i = 0; i < n; i++)
    z[i] = (values[i] - summary.mean) / summary.standard_deviation;
  gsl_sort (z, 1, n);
  for (gsize i = 0; i < n; i++)
    sum += (2 * (double)i + 1) * (find_log_below (z[i]) + find_log_below (-z[n - 1 - i]));
  *a_squared = (-(double)n - sum / (double)n) * (1 + 0.75 / (double)n + 2.25 / ((double)n * (double)n));
  *p = find_p (*a_squared);
}
