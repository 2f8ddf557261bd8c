/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-trend.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>
#include <string.h>

#include "core-uncertainty.h"

/* Of more values than this not all pairs are looked at, but about MOST_SAMPLED of them. */
#define MOST_LISTED     1500
#define MOST_SAMPLED    4000000
#define LEAST_DISTANCES 8

/* -------- The values that are there -------- */

typedef struct {
  double *x, *y;
  gsize n;
} Points;

static void
collect (const double *x, const double *y, gsize n, Points *points)
{
  *points = (Points) { g_new (double, n), g_new (double, n), 0 };
  for (gsize i = 0; i < n; i++)
    if (!isnan (y[i]))
      {
        points->x[points->n] = x[i];
        points->y[points->n++] = y[i];
      }
}

static void
clear (Points *points)
{
  g_free (points->x);
  g_free (points->y);
}

/* -------- The straight line -------- */

/* Mean by differences from the first value, corrected by the mean of what is left. */
static double
find_mean (const double *values, gsize n)
{
  double sum = 0, rest = 0, mean;

  for (gsize i = 0; i < n; i++)
    sum += values[i] - values[0];
  mean = values[0] + sum / (double)n;
  for (gsize i = 0; i < n; i++)
    rest += values[i] - mean;
  return mean + rest / (double)n;
}

typedef struct {
  double sxx, sxy, syy;
} Sums;

static Sums
find_sums (const Points *points, double mean_x, double mean_y)
{
  Sums sums = { 0 };

  for (gsize i = 0; i < points->n; i++)
    {
      double dx = points->x[i] - mean_x, dy = points->y[i] - mean_y;

      sums.sxx += dx * dx;
      sums.sxy += dx * dy;
      sums.syy += dy * dy;
    }
  return sums;
}

/* Σ of squares that the line leaves, from the residuals themselves: the difference of sums would cancel. */
static double
find_left (const Points *points, const TmTrend *line)
{
  double left = 0;

  for (gsize i = 0; i < points->n; i++)
    {
      double residual = points->y[i] - line->mean_y - line->slope * (points->x[i] - line->mean_x);

      left += residual * residual;
    }
  return left;
}

/* From the deviation about the line. */
static void
fill_errors (TmTrend *out)
{
  const double n = (double)out->n;
  double reach;

  out->slope_se = out->residual / sqrt (out->sxx);
  out->intercept_se = out->residual * sqrt (1 / n + out->mean_x * out->mean_x / out->sxx);
  reach = tm_t_quantile (0.975, out->dof) * out->slope_se;
  out->slope_lower = out->slope - reach;
  out->slope_upper = out->slope + reach;
  out->p = out->slope_se > 0   ? 2 * gsl_cdf_tdist_Q (fabs (out->slope) / out->slope_se, out->dof)
           : out->slope != 0.0 ? 0
                               : 1;
}

void
tm_trend_allow (TmTrend *trend, double least)
{
  if (trend->status != TM_TREND_OK || !(trend->residual < least))
    return;
  trend->residual = least;
  fill_errors (trend);
}

static void
fit_line (const Points *points, TmTrend *out)
{
  const double n = (double)points->n;
  Sums sums;
  double left;

  out->mean_x = find_mean (points->x, points->n);
  out->mean_y = find_mean (points->y, points->n);
  sums = find_sums (points, out->mean_x, out->mean_y);
  if (!(sums.sxx > 0))
    return;
  out->status = sums.syy > 0 ? TM_TREND_OK : TM_TREND_CONSTANT;
  out->sxx = sums.sxx;
  out->slope = sums.sxy / sums.sxx;
  out->intercept = out->mean_y - out->slope * out->mean_x;
  left = find_left (points, out);
  out->r_squared = sums.syy > 0 ? 1 - left / sums.syy : NAN;
  out->dof = n - 2;
  out->residual = sqrt (left / out->dof);
  fill_errors (out);
}

static void
init (TmTrend *out, gsize n)
{
  *out = (TmTrend) { .status = TM_TREND_TOO_FEW, .n = n };
  out->mean_x = out->mean_y = out->sxx = out->slope = out->slope_se = out->slope_lower = NAN;
  out->slope_upper = out->intercept = out->intercept_se = out->residual = out->dof = out->r_squared = NAN;
  out->p = out->theil_sen = out->theil_sen_lower = out->theil_sen_upper = NAN;
  out->kendall_s = out->kendall_variance = out->kendall_z = out->kendall_p = NAN;
}

void
tm_trend_line (const double *x, const double *y, gsize n, TmTrend *out)
{
  Points points;

  collect (x, y, n, &points);
  init (out, points.n);
  if (points.n >= 3)
    fit_line (&points, out);
  clear (&points);
}

/* -------- Ranks -------- */

/* Sorts @values by merging and returns the pairs that stood in falling order, equal ones not among them. */
static double
count_falling (double *values, double *room, gsize n)
{
  double count = 0;

  for (gsize width = 1; width < n; width *= 2)
    {
      for (gsize from = 0; from < n; from += 2 * width)
        {
          gsize middle = MIN (from + width, n), end = MIN (from + 2 * width, n);
          gsize a = from, b = middle, to = from;

          while (a < middle && b < end)
            if (values[b] < values[a])
              {
                count += (double)(middle - a);
                room[to++] = values[b++];
              }
            else
              room[to++] = values[a++];
          memcpy (room + to, values + a, (middle - a) * sizeof *values);
          memcpy (room + to + (middle - a), values + b, (end - b) * sizeof *values);
        }
      memcpy (values, room, n * sizeof *values);
    }
  return count;
}

/* S and its variance with ties (M. G. Kendall, Rank Correlation Methods; R. O. Gilbert, Statistical Methods
 * for Environmental Pollution Monitoring, 16.4). */
static void
fill_kendall (const Points *points, TmTrend *out)
{
  const double n = (double)points->n, pairs = n * (n - 1) / 2;
  g_autofree double *values = g_memdup2 (points->y, points->n * sizeof (double));
  g_autofree double *room = g_new (double, points->n);
  double falling = count_falling (values, room, points->n), tied = 0;
  double variance = n * (n - 1) * (2 * n + 5);

  for (gsize i = 0, j; i < points->n; i = j)
    {
      double t;

      for (j = i + 1; j < points->n && !(values[j] > values[i]); j++)
        ;
      t = (double)(j - i);
      tied += t * (t - 1) / 2;
      variance -= t * (t - 1) * (2 * t + 5);
    }
  out->kendall_s = pairs - tied - 2 * falling;
  out->kendall_variance = variance / 18;
  if (out->kendall_variance > 0)
    {
      double s = out->kendall_s;

      out->kendall_z = s == 0.0 ? 0 : (s - copysign (1, s)) / sqrt (out->kendall_variance);
      out->kendall_p = MIN (1, 2 * gsl_cdf_ugaussian_Q (fabs (out->kendall_z)));
    }
}

/* The value of rank @rank (1.., halves lie between two) among @n, which are put in another order: three ranks
 * are wanted, and to sort all pairs for them takes several times as long. */
static double
pick (double *values, gsize n, double rank)
{
  double at = CLAMP (rank - 1, 0, (double)(n - 1));
  gsize low = (gsize)floor (at), high = (gsize)ceil (at);
  double below = gsl_stats_select (values, 1, n, low);
  double above = high > low ? gsl_stats_select (values, 1, n, high) : below;

  return below + (at - (double)low) * (above - below);
}

static void
list_slopes (const Points *points, double reach, TmTrend *out)
{
  GArray *slopes
      = g_array_sized_new (FALSE, FALSE, sizeof (double), (guint)(points->n * (points->n - 1) / 2));
  double *values;
  double middle;

  for (gsize i = 0; i < points->n; i++)
    for (gsize j = i + 1; j < points->n; j++)
      if (points->x[j] > points->x[i])
        {
          double slope = (points->y[j] - points->y[i]) / (points->x[j] - points->x[i]);

          g_array_append_val (slopes, slope);
        }
  values = (double *)(gpointer)slopes->data;
  middle = (slopes->len + 1) / 2.0;
  out->theil_sen = pick (values, slopes->len, middle);
  out->theil_sen_lower = pick (values, slopes->len, middle - reach / 2 - 0.5);
  out->theil_sen_upper = pick (values, slopes->len, middle + reach / 2 + 0.5);
  g_array_unref (slopes);
}

/* The pairs at @distances even distances of rank.  Each value then stands against about as many others,
 * earlier less later, as among all pairs; the median slope has 1.5 / @distances more variance (the part of
 * the statistic that is not a sum over the values). */
static GArray *
list_even_slopes (const Points *points, gsize distances)
{
  GArray *slopes = g_array_sized_new (FALSE, FALSE, sizeof (double),
                                      (guint)(points->n * (distances + 1) / 2 + distances));

  for (gsize k = 1; k <= distances; k++)
    {
      gsize apart = MAX (1, k * points->n / (distances + 1));

      for (gsize i = 0; i + apart < points->n; i++)
        if (points->x[i + apart] > points->x[i])
          {
            double slope = (points->y[i + apart] - points->y[i]) / (points->x[i + apart] - points->x[i]);

            g_array_append_val (slopes, slope);
          }
    }
  return slopes;
}

static void
sample_slopes (const Points *points, double reach, TmTrend *out)
{
  const double n = (double)points->n, pairs = n * (n - 1) / 2;
  const gsize distances = CLAMP (2 * MOST_SAMPLED / points->n, LEAST_DISTANCES, points->n - 1);
  const double share = reach / 2 / pairs * sqrt (1 + 1.5 / (double)distances);
  GArray *slopes = list_even_slopes (points, distances);
  double *values = (double *)(gpointer)slopes->data;
  const double last = slopes->len - 1.0;

  out->theil_sen = gsl_stats_select (values, 1, slopes->len, (gsize)(0.5 * last));
  out->theil_sen_lower
      = gsl_stats_select (values, 1, slopes->len, (gsize)floor (MAX (0, 0.5 - share) * last));
  out->theil_sen_upper = gsl_stats_select (values, 1, slopes->len, (gsize)ceil (MIN (1, 0.5 + share) * last));
  g_array_unref (slopes);
}

static void
fill_theil_sen (const Points *points, TmTrend *out)
{
  double reach = gsl_cdf_ugaussian_Pinv (0.975) * sqrt (MAX (out->kendall_variance, 0));

  if (points->n <= MOST_LISTED)
    list_slopes (points, reach, out);
  else
    sample_slopes (points, reach, out);
}

void
tm_trend (const double *x, const double *y, gsize n, TmTrend *out)
{
  Points points;

  collect (x, y, n, &points);
  init (out, points.n);
  if (points.n >= 3)
    fit_line (&points, out);
  if (out->status == TM_TREND_OK)
    {
      fill_kendall (&points, out);
      fill_theil_sen (&points, out);
    }
  clear (&points);
}

/* -------- Forecast -------- */

/* Fieller: all x for which (mean_y + b (x - mean_x) - limit)² <= t² s² (1/n + (x - mean_x)²/sxx).  Where the
 * slope is shown, b² > t² se², both roots are there. */
static void
find_fieller (const TmTrend *trend, double limit, TmForecast *out)
{
  double t = tm_t_quantile (0.975, trend->dof);
  double spread = t * t * trend->residual * trend->residual;
  double away = limit - trend->mean_y;
  double a = trend->slope * trend->slope - spread / trend->sxx;
  double c = away * away - spread / (double)trend->n;
  double half_b = -trend->slope * away, root;

  out->low = -INFINITY;
  out->high = INFINITY;
  if (!(a > 0))
    return;
  root = sqrt (MAX (0, half_b * half_b - a * c));
  out->low = trend->mean_x + (-half_b - root) / a;
  out->high = trend->mean_x + (-half_b + root) / a;
}

/* Where the line and t s √(1 + 1/n + (x - mean_x)²/sxx) beyond it meet the limit: the earlier root is where
 * they do, the later one where the bound on the other side does. */
static double
find_single (const TmTrend *trend, double limit)
{
  double t = tm_t_quantile (0.95, trend->dof);
  double spread = t * t * trend->residual * trend->residual;
  double away = limit - trend->mean_y;
  double a = trend->slope * trend->slope - spread / trend->sxx;
  double c = away * away - spread * (1 + 1 / (double)trend->n);
  double half_b = -trend->slope * away, root;

  if (!(a > 0))
    return NAN;
  root = sqrt (MAX (0, half_b * half_b - a * c));
  return trend->mean_x + (-half_b - root) / a;
}

void
tm_forecast (const TmTrend *trend, double lower, double upper, TmForecast *out)
{
  double limit;

  *out = (TmForecast) { .at = NAN, .low = NAN, .high = NAN, .single = NAN };
  if (trend->status != TM_TREND_OK || !(trend->p <= 0.05))
    return;
  out->upper = trend->slope > 0;
  limit = out->upper ? upper : lower;
  if (isinf (limit) || isnan (limit))
    return;
  out->given = TRUE;
  out->at = trend->mean_x + (limit - trend->mean_y) / trend->slope;
  find_fieller (trend, limit, out);
  out->single = find_single (trend, limit);
}
