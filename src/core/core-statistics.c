/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-statistics.h"

#include <math.h>

/* A sum carried with its rounding error (Neumaier 1974): as if in twice the digits. */
typedef struct {
  double sum;
  double error;
} Sum;

static void
add (Sum *self, double value)
{
  double total = self->sum + value;

  if (fabs (self->sum) >= fabs (value))
    self->error += (self->sum - total) + value;
  else
    self->error += (value - total) + self->sum;
  self->sum = total;
}

/* Adds @a @b exactly: the product and what its rounding lost. */
static void
add_product (Sum *self, double a, double b)
{
  double product = a * b;

  add (self, product);
  self->error += fma (a, b, -product);
}

static double
get_sum (const Sum *self)
{
  return self->sum + self->error;
}

/* The mean as an unevaluated pair: what one double cannot hold of it is in error. */
static Sum
find_mean (const double *values, gsize n)
{
  Sum sum = { 0 };
  double mean, left;

  for (gsize i = 0; i < n; i++)
    add (&sum, values[i]);
  mean = get_sum (&sum) / (double)n;
  left = fma (-mean, (double)n, sum.sum) + sum.error;
  return (Sum) { mean, left / (double)n };
}

static double
get_deviation (double value, const Sum *mean)
{
  return (value - mean->sum) - mean->error;
}

static void
find_range (const double *values, gsize n, TmSummary *out)
{
  out->minimum = out->maximum = values[0];
  for (gsize i = 1; i < n; i++)
    {
      out->minimum = MIN (out->minimum, values[i]);
      out->maximum = MAX (out->maximum, values[i]);
    }
}

/* s² = Σ d_i² / (n - 1), r1 = Σ d_i d_{i+1} / Σ d_i², d_i = x_i - x̄ (definitions as certified by the
 * NIST Statistical Reference Datasets). */
TmSummaryStatus
tm_summary (const double *values, gsize n, TmSummary *out)
{
  Sum squares = { 0 }, neighbours = { 0 }, mean;

  g_return_val_if_fail (out != NULL && (values != NULL || n == 0), TM_SUMMARY_EMPTY);
  *out = (TmSummary) { n, NAN, NAN, NAN, NAN, NAN };
  if (n == 0)
    return TM_SUMMARY_EMPTY;
  mean = find_mean (values, n);
  out->mean = get_sum (&mean);
  find_range (values, n, out);
  if (n == 1)
    return TM_SUMMARY_ONE;
  for (gsize i = 0; i < n; i++)
    {
      double deviation = get_deviation (values[i], &mean);

      add_product (&squares, deviation, deviation);
      if (i + 1 < n)
        add_product (&neighbours, deviation, get_deviation (values[i + 1], &mean));
    }
  out->standard_deviation = sqrt (get_sum (&squares) / (double)(n - 1));
  if (!(out->maximum > out->minimum))
    {
      out->standard_deviation = 0;
      return TM_SUMMARY_CONSTANT;
    }
  out->lag1 = get_sum (&neighbours) / get_sum (&squares);
  return TM_SUMMARY_OK;
}
