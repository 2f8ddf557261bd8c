/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-slope.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

/* Each stretch about its own means. */
typedef struct {
  double sxx, sxy, syy;
} Sums;

static guint
find_means (const TmSeries *series, guint from, guint end, double *mean_x, double *mean_y)
{
  guint n = 0;

  *mean_x = *mean_y = 0;
  for (guint i = from; i < end; i++)
    if (!isnan (series->points[i].mean))
      {
        n++;
        *mean_x += (i - *mean_x) / n;
        *mean_y += (series->points[i].mean - *mean_y) / n;
      }
  return n;
}

static void
add_stretch (const TmSeries *series, guint from, guint end, Sums *sums, TmSlope *out)
{
  double mean_x, mean_y;
  guint n = find_means (series, from, end, &mean_x, &mean_y);

  for (guint i = from; i < end; i++)
    if (!isnan (series->points[i].mean))
      {
        double dx = i - mean_x, dy = series->points[i].mean - mean_y;

        sums->sxx += dx * dx;
        sums->sxy += dx * dy;
        sums->syy += dy * dy;
      }
  out->n += n;
  out->levels += n > 0;
}

/* Σ of squares that the lines leave, from the residuals themselves: the difference of sums would cancel. */
static double
find_left (const TmSeries *series, guint from, double slope)
{
  double left = 0;

  for (guint end; from < series->n_points; from = end)
    {
      double mean_x, mean_y;

      end = tm_series_stretch_end (series, from);
      find_means (series, from, end, &mean_x, &mean_y);
      for (guint i = from; i < end; i++)
        if (!isnan (series->points[i].mean))
          {
            double residual = series->points[i].mean - mean_y - slope * (i - mean_x);

            left += residual * residual;
          }
    }
  return left;
}

void
tm_series_slope (const TmSeries *series, guint from, TmSlope *out)
{
  Sums sums = { 0 };
  double left;

  g_return_if_fail (series != NULL && out != NULL);

  *out = (TmSlope) { .slope = NAN, .slope_se = NAN, .residual = NAN, .dof = NAN, .p = NAN };
  for (guint at = from, end; at < series->n_points; at = end)
    {
      end = tm_series_stretch_end (series, at);
      add_stretch (series, at, end, &sums, out);
    }
  out->sxx = sums.sxx;
  if (out->n < out->levels + 2 || !(sums.sxx > 0))
    return;
  out->dof = out->n - out->levels - 1.0;
  out->slope = sums.sxy / sums.sxx;
  left = find_left (series, from, out->slope);
  if (!(left > 1e-20 * sums.syy)) /* what rounding leaves of nothing */
    left = 0;
  out->residual = sqrt (left / out->dof);
  out->slope_se = out->residual / sqrt (sums.sxx);
  out->p = out->slope_se > 0 ? 2 * gsl_cdf_tdist_Q (fabs (out->slope) / out->slope_se, out->dof)
                             : !(fabs (out->slope) > 0);
}
