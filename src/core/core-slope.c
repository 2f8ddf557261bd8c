/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-slope.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

/* Each stretch about its own means. */
typedef struct {
  double sxx, sxy, syy;
} Sums;

static void
add_stretch (const TmSeries *series, guint from, guint end, Sums *sums, TmSlope *out)
{
  double mean_x = 0, mean_y = 0;
  guint n = 0;

  for (guint i = from; i < end; i++)
    if (!isnan (series->points[i].mean))
      {
        n++;
        mean_x += (i - mean_x) / n;
        mean_y += (series->points[i].mean - mean_y) / n;
      }
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

void
tm_series_slope (const TmSeries *series, guint from, TmSlope *out)
{
  Sums sums = { 0 };
  double left;

  g_return_if_fail (series != NULL && out != NULL);

  *out = (TmSlope) { .slope = NAN, .slope_se = NAN, .residual = NAN, .dof = NAN, .p = NAN };
  for (guint end; from < series->n_points; from = end)
    {
      end = tm_series_stretch_end (series, from);
      add_stretch (series, from, end, &sums, out);
    }
  out->sxx = sums.sxx;
  if (out->n < out->levels + 2 || !(sums.sxx > 0))
    return;
  out->dof = out->n - out->levels - 1.0;
  out->slope = sums.sxy / sums.sxx;
  left = sums.syy - sums.sxy * out->slope;
  if (!(left > 1e-20 * sums.syy)) /* what rounding leaves of nothing */
    left = 0;
  out->residual = sqrt (left / out->dof);
  out->slope_se = out->residual / sqrt (sums.sxx);
  out->p = out->slope_se > 0 ? 2 * gsl_cdf_tdist_Q (fabs (out->slope) / out->slope_se, out->dof)
                             : !(fabs (out->slope) > 0);
}
