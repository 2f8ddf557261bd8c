/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-trend: drift over the order of pieces, and when it meets a limit.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_TREND_OK,
  TM_TREND_TOO_FEW,  /* fewer than three values, or at fewer than two places */
  TM_TREND_CONSTANT, /* all equal: no drift, no spread */
} TmTrendStatus;

typedef struct {
  TmTrendStatus status;
  gsize n;
  double mean_x, mean_y, sxx;
  double slope, slope_se, slope_lower, slope_upper; /* 95 %, t */
  double intercept;
  double intercept_se;
  double residual, dof; /* standard deviation about the line; n - 2 */
  double r_squared;
  double p; /* of slope = 0, two-sided */
  double theil_sen;
  double theil_sen_lower,
      theil_sen_upper; /* 95 %, by Kendall's normal approximation (P. K. Sen, JASA 63, 1968) */
  double kendall_s, kendall_variance, kendall_z, kendall_p; /* Mann-Kendall with ties, two-sided */
} TmTrend;

/* Least squares, Theil-Sen and Mann-Kendall.  @x rising; NANs of @y are left out.  Kendall's part is exact
 * and O(n log n).  Theil-Sen is exact up to 2800 values; beyond it it is the median over pairs at even
 * distances, 4 million or, of more than a million values, 8 distances; the interval allows for the pairs left
 * out. */
void tm_trend (const double *x, const double *y, gsize n, TmTrend *out);

/* The fitted line alone, about corrected means, its residuals taken one by one: 14 digits of NIST's Norris.
 */
void tm_trend_line (const double *x, const double *y, gsize n, TmTrend *out);

/* Raises the deviation about the line to @least, what reading in steps leaves at the very least (step/√12),
 * and the errors, limits and p of the line with it: rounded readings that lie on a line by chance are not
 * exact. */
void tm_trend_allow (TmTrend *trend, double least);

typedef struct {
  gboolean given;   /* FALSE: no drift shown (p > 0.05), or it leads away from both limits */
  gboolean upper;   /* which limit */
  double at;        /* x at which the fitted mean meets it */
  double low, high; /* 95 %, Fieller; high INFINITY where the interval is open */
  double single;    /* x at which the 95 % one-sided prediction bound of one value meets it, <= at */
} TmForecast;
/* Limits as the guard leaves them; -INFINITY, INFINITY: none. */
void tm_forecast (const TmTrend *trend, double lower, double upper, TmForecast *out);

G_END_DECLS
