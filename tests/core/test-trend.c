/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines, robust slopes, trend tests and forecasts against certified and published figures.
 */

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#include "core-trend.h"
#include "support-csv.h"

static double
get_number (const SupportCsv *csv, guint row, const char *name)
{
  return g_ascii_strtod (support_csv_get (csv, row, name), NULL);
}

static double
find_digits (double found, double certified)
{
  double error = fabs (found - certified) / fabs (certified);

  return error > 0 ? MIN (15, -log10 (error)) : 15;
}

/* NIST StRD, Norris.  A value such as 338.8 is off by 3e-14 in a double, which is 3e-14 of the residuals:
 * what rests on them has 13 to 14 digits whatever is computed, the slope and R squared have 14. */
static void
test_norris (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("strd_norris.csv");
  const guint n = csv->rows->len;
  g_autofree double *x = g_new (double, n);
  g_autofree double *y = g_new (double, n);
  TmTrend line;

  for (guint i = 0; i < n; i++)
    {
      x[i] = get_number (csv, i, "x");
      y[i] = get_number (csv, i, "y");
    }
  tm_trend_line (x, y, n, &line);
  g_assert_cmpuint (line.n, ==, 36);
  g_test_message (
      "digits: slope %.1f, its deviation %.1f, intercept %.1f, its deviation %.1f, residual %.1f",
      find_digits (line.slope, 1.00211681802045), find_digits (line.slope_se, 0.429796848199937E-03),
      find_digits (line.intercept, -0.262323073774029), find_digits (line.intercept_se, 0.232818234301152),
      find_digits (line.residual, 0.884796396144373));
  g_assert_cmpfloat (find_digits (line.slope, 1.00211681802045), >=, 14);
  g_assert_cmpfloat (find_digits (line.slope_se, 0.429796848199937E-03), >=, 13.5);
  g_assert_cmpfloat (find_digits (line.intercept, -0.262323073774029), >=, 13);
  g_assert_cmpfloat (find_digits (line.intercept_se, 0.232818234301152), >=, 13.5);
  g_assert_cmpfloat (find_digits (line.residual, 0.884796396144373), >=, 13.5);
  g_assert_cmpfloat (find_digits (line.r_squared, 0.999993745883712), >=, 14);
}

/* EPA QA/G-9S, Data Quality Assessment, page 109: S = 22, variance 155.33, Z = 1.685, with ties of 4 and 2;
 * the slope and the chance recomputed. */
static void
test_kendall (void)
{
  static const double y[] = { 10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15 };
  double x[G_N_ELEMENTS (y)];
  TmTrend trend;

  for (guint i = 0; i < G_N_ELEMENTS (y); i++)
    x[i] = i + 1;
  tm_trend (x, y, G_N_ELEMENTS (y), &trend);
  g_assert_cmpfloat (trend.kendall_s, ==, 22);
  g_assert_cmpfloat_with_epsilon (trend.kendall_variance, 155.333333333, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.kendall_z, 1.684949790, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.kendall_p, 2 * 0.045999130, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.theil_sen, 1, 1e-12);
}

/* Wisconsin administrative code, NR 140 table A: S = -5. */
static void
test_kendall_falling (void)
{
  static const double x[] = { 1, 2, 3, 4, 5 }, y[] = { 100, 50, 85, 75, 50 };
  TmTrend trend;

  tm_trend (x, y, 5, &trend);
  g_assert_cmpfloat (trend.kendall_s, ==, -5);
}

/* The slope that is counted is the slope that is listed. */
static void
test_counted (void)
{
  const guint n = 1600; /* just enough to be counted */
  g_autofree double *x = g_new (double, n);
  g_autofree double *y = g_new (double, n);
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  g_autoptr (GArray) slopes = g_array_new (FALSE, FALSE, sizeof (double));
  TmTrend trend;
  guint below = 0;

  for (guint i = 0; i < n; i++)
    {
      x[i] = i;
      y[i] = 0.003 * i + gsl_ran_gaussian (random, 2);
    }
  tm_trend (x, y, n, &trend);
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      below += (y[j] - y[i]) / (x[j] - x[i]) < trend.theil_sen;
  g_assert_cmpfloat_with_epsilon (below / (n * (n - 1) / 2.0), 0.5, 2e-6);
  g_assert_cmpfloat (trend.theil_sen_lower, <, trend.theil_sen);
  g_assert_cmpfloat (trend.theil_sen_upper, >, trend.theil_sen);
  gsl_rng_free (random);
}

static void
test_little (void)
{
  static const double x[] = { 1, 2, 3, 4 }, equal[] = { 7, 7, 7, 7 }, gaps[] = { 1, NAN, NAN, 2 },
                      straight[] = { 1, 2, 3, 4 };
  TmTrend trend;
  TmForecast forecast;

  tm_trend (x, equal, 4, &trend);
  g_assert_cmpint (trend.status, ==, TM_TREND_CONSTANT);
  g_assert_cmpfloat (trend.slope, ==, 0);
  tm_forecast (&trend, 0, 10, &forecast);
  g_assert_false (forecast.given);
  tm_trend (x, gaps, 4, &trend);
  g_assert_cmpint (trend.status, ==, TM_TREND_TOO_FEW);
  tm_trend (x, x, 0, &trend);
  g_assert_cmpint (trend.status, ==, TM_TREND_TOO_FEW);
  tm_trend (x, straight, 4, &trend);
  tm_forecast (&trend, 0, 10, &forecast);
  g_assert_true (forecast.given);
  g_assert_cmpfloat_with_epsilon (forecast.at, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (forecast.single, 10, 1e-9);
}

/* 1 2 3 4 5 read to a whole: the line is exact, its deviation √(1/12) at the least; the slope's error
 * √(1/120), 3.182 of them by Student's t with 3 degrees of freedom (any table). */
static void
test_allow (void)
{
  static const double x[] = { 1, 2, 3, 4, 5 };
  TmTrend trend;

  tm_trend_line (x, x, 5, &trend);
  g_assert_cmpfloat_with_epsilon (trend.slope_upper, 1, 1e-9);
  tm_trend_allow (&trend, sqrt (1 / 12.0));
  g_assert_cmpfloat_with_epsilon (trend.slope_se, sqrt (1 / 120.0), 1e-12);
  g_assert_cmpfloat_with_epsilon (trend.slope_upper, 1 + 3.182446 * sqrt (1 / 120.0), 1e-6);
  g_assert_cmpfloat (trend.p, >, 0.001); /* t 10.95 */
  g_assert_cmpfloat (trend.p, <, 0.002);
  tm_trend_allow (&trend, 0.1); /* it is more already */
  g_assert_cmpfloat_with_epsilon (trend.residual, sqrt (1 / 12.0), 1e-12);
}

/* The ends of Fieller's interval are where the band of the fitted mean crosses the limit: put back into the
 * band. */
static void
test_fieller (void)
{
  static const double x[] = { 1, 2, 3, 4, 5, 6, 7, 8 }, y[] = { 1.1, 1.9, 3.2, 3.8, 5.1, 6.2, 6.8, 8.1 };
  const double t = 2.446911851; /* Student's t, 6 degrees of freedom, 0.975: any table */
  TmTrend trend;
  TmForecast forecast;

  tm_trend (x, y, 8, &trend);
  tm_forecast (&trend, -INFINITY, 12, &forecast);
  g_assert_true (forecast.given && forecast.upper);
  for (guint i = 0; i < 2; i++)
    {
      double at = i == 0 ? forecast.low : forecast.high, d = at - trend.mean_x;
      double half = t * trend.residual * sqrt (1.0 / 8 + d * d / trend.sxx);

      g_assert_cmpfloat_with_epsilon (trend.mean_y + trend.slope * d + (i == 0 ? half : -half), 12, 1e-7);
    }
  g_assert_cmpfloat (forecast.low, <, forecast.at);
  g_assert_cmpfloat (forecast.high, >, forecast.at);
  g_assert_cmpfloat (forecast.single, <, forecast.at);
  tm_forecast (&trend, 0, INFINITY, &forecast);
  g_assert_false (forecast.given);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trend/norris", test_norris);
  g_test_add_func ("/trend/kendall", test_kendall);
  g_test_add_func ("/trend/kendall-falling", test_kendall_falling);
  g_test_add_func ("/trend/counted", test_counted);
  g_test_add_func ("/trend/little", test_little);
  g_test_add_func ("/trend/allow", test_allow);
  g_test_add_func ("/trend/fieller", test_fieller);
  return g_test_run ();
}
