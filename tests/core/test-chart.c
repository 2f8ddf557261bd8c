/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Control charts against published factors, data and examples.
 */

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#include "core-chart.h"
#include "support-csv.h"

static double
get_number (const SupportCsv *csv, guint row, const char *name)
{
  return g_ascii_strtod (support_csv_get (csv, row, name), NULL);
}

/* To 1e-10, the digits of the table (metrology asks for no less). */
static void
test_factors (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("chart_factors.csv");

  for (guint i = 0; i < csv->rows->len; i++)
    {
      TmChartFactors f;

      tm_chart_factors ((guint)get_number (csv, i, "n"), &f);
      g_assert_cmpfloat_with_epsilon (f.d2, get_number (csv, i, "rc_d2"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.d3, get_number (csv, i, "rc_d3"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.c4, get_number (csv, i, "rc_c4"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.a2, get_number (csv, i, "rc_A2"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.a3, get_number (csv, i, "rc_A3"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.b3, get_number (csv, i, "rc_B3"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.b4, get_number (csv, i, "rc_B4"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.d_3, get_number (csv, i, "rc_D3"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.d_4, get_number (csv, i, "rc_D4"), 1e-10);
      g_assert_cmpfloat_with_epsilon (f.e2, get_number (csv, i, "rc_E2"), 1e-10);
      /* As printed, to three decimals; some printed ones are off by one in the last. */
      g_assert_cmpfloat_with_epsilon (f.a2, get_number (csv, i, "pub_A2"), 0.001);
      g_assert_cmpfloat_with_epsilon (f.d_4, get_number (csv, i, "pub_D4"), 0.00101);
    }
  g_assert_cmpuint (csv->rows->len, ==, 24);
}

static GArray *
load_rings (void)
{
  static const char *const names[] = { "x1", "x2", "x3", "x4", "x5" };
  g_autoptr (SupportCsv) csv = support_csv_load ("piston_rings.csv");
  GArray *values = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < csv->rows->len; i++)
    for (guint j = 0; j < G_N_ELEMENTS (names); j++)
      {
        double value = get_number (csv, i, names[j]);

        g_array_append_val (values, value);
      }
  return values;
}

/* Montgomery's piston rings: limits recomputed with exact factors; half a unit of the last digit. */
static void
test_rings (void)
{
  g_autoptr (GArray) values = load_rings ();
  TmChartInput input = { &g_array_index (values, double, 0), values->len, NULL, 0, 5, 0 };
  g_auto (TmChart) chart = { 0 };
  guint out = 0;

  tm_chart (&input, &chart);
  g_assert_cmpint (chart.status, ==, TM_CHART_OK);
  g_assert_cmpint (chart.kind, ==, TM_CHART_RANGES);
  g_assert_cmpuint (chart.n_groups, ==, 25);
  g_assert_cmpfloat_with_epsilon (chart.centre, 74.001176, 5e-10);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].dispersion_centre, 0.02324, 5e-10);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_lower, 73.987770719, 5e-10);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_upper, 74.014581281, 5e-10);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].dispersion_upper, 0.049140960, 5e-10);
  g_assert_cmpfloat (chart.groups[0].dispersion_lower, ==, 0);
  g_assert_cmpfloat_with_epsilon (chart.sigma, 0.009991707, 5e-10);
  for (guint i = 0; i < chart.n_groups; i++)
    out += chart.groups[i].location > chart.groups[i].location_upper
           || chart.groups[i].location < chart.groups[i].location_lower
           || chart.groups[i].dispersion > chart.groups[i].dispersion_upper;
  g_assert_cmpuint (out, ==, 0);
}

/* The same by standard deviations: what is unequal goes by them.  One value is taken away and given back by
 * its group's own mean, so only the kind of chart changes much. */
static void
test_rings_by_deviation (void)
{
  g_autoptr (GArray) values = load_rings ();
  TmChartInput input = { &g_array_index (values, double, 0), values->len, NULL, 0, 5, 0 };
  g_auto (TmChart) chart = { 0 };
  double c4 = tm_chart_c4 (5), weighted = 0, weights = 0;

  g_array_index (values, double, 7) = NAN;
  tm_chart (&input, &chart);
  g_assert_cmpint (chart.kind, ==, TM_CHART_DEVIATIONS);
  g_assert_cmpuint (chart.groups[1].n, ==, 4);
  for (guint i = 0; i < 25; i++)
    {
      double c = tm_chart_c4 (chart.groups[i].n), h = c * c / (1 - c * c);

      weighted += h * chart.groups[i].dispersion / c;
      weights += h;
    }
  g_assert_cmpfloat_with_epsilon (chart.sigma, weighted / weights, 1e-15);
  /* A smaller group has wider limits of its own. */
  g_assert_cmpfloat_with_epsilon (chart.groups[1].location_upper - chart.centre, 3 * chart.sigma / 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].dispersion_centre, c4 * chart.sigma, 1e-15);
}

/* As pieces come in the last group is not full yet: it does not turn the others' ranges into deviations. */
static void
test_growing (void)
{
  g_autoptr (GArray) values = load_rings ();
  TmChartInput input = { &g_array_index (values, double, 0), 123, NULL, 0, 5, 0 };
  g_auto (TmChart) chart = { 0 };
  double weights = 0, sum = 0;

  tm_chart (&input, &chart);
  g_assert_cmpint (chart.kind, ==, TM_CHART_RANGES);
  g_assert_cmpuint (chart.groups[24].n, ==, 3);
  /* d2(3) 1.692569, d2(5) 2.325929 (any table); the whole groups' limits are as wide as ever. */
  g_assert_cmpfloat_with_epsilon (chart.groups[24].dispersion_centre / chart.groups[0].dispersion_centre,
                                  1.692569 / 2.325929, 1e-6);
  /* Each range over its d2, weighed by d2²/d3² (factors as in chart_factors.csv). */
  for (guint i = 0; i < chart.n_groups; i++)
    {
      double d2 = i == 24 ? 1.6925687506 : 2.3259289473, d3 = i == 24 ? 0.8883680040 : 0.8640819411;

      weights += d2 * d2 / (d3 * d3);
      sum += d2 * chart.groups[i].dispersion / (d3 * d3);
    }
  g_assert_cmpfloat_with_epsilon (chart.sigma, sum / weights, 1e-11);
  g_assert_cmpfloat_with_epsilon (chart.groups[24].location_upper - chart.centre, 3 * chart.sigma / sqrt (3),
                                  1e-12);
}

/* By c4(n) c4(n + 1) = √((n - 1)/n) from c4(2) = √(2/π) in 40 digits, on both sides of where a series takes
 * over; and the series' first terms, 1 - 1/(4ν) + 1/(32ν²). */
static void
test_large_factors (void)
{
  g_assert_cmpfloat_with_epsilon (tm_chart_c4 (100), 0.997477976071263511, 2e-15);
  g_assert_cmpfloat_with_epsilon (tm_chart_c4 (500), 0.999499123811711564, 2e-15);
  g_assert_cmpfloat_with_epsilon (tm_chart_c4 (1000), 0.999749781101513203, 2e-15);
  g_assert_cmpfloat_with_epsilon (tm_chart_c4 (1000001), 1 - 2.5e-7 + 3.125e-14, 1e-15);
}

/* The flow rates of the NIST/SEMATECH e-Handbook, 6.3.2.2 (data and results from memory, recomputed): with
 * the exact d2. */
static void
test_flow_rates (void)
{
  static const double rates[] = { 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1 };
  TmChartInput input = { rates, G_N_ELEMENTS (rates), NULL, 0, 1, 0 };
  g_auto (TmChart) chart = { 0 };

  tm_chart (&input, &chart);
  g_assert_cmpint (chart.kind, ==, TM_CHART_INDIVIDUALS);
  g_assert_cmpfloat_with_epsilon (chart.centre, 50.81, 1e-12);
  g_assert_cmpfloat_with_epsilon (chart.groups[1].dispersion_centre, 1.877777778, 1e-9);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_upper, 55.802411680, 1e-8);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_lower, 45.817588320, 1e-8);
  /* The page prints 55.8041 and 45.8159, with d2 = 1.128. */
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_upper, 55.8041, 0.002);
  g_assert_true (isnan (chart.groups[0].dispersion));
}

/* D. C. Montgomery, G. C. Runger, Applied Statistics and Probability for Engineers, table 16-3: mean 99.1,
 * mean moving range 2.59, limits 105.99 and 92.21 (from memory; with 1.128). */
static void
test_concentration (void)
{
  static const double values[] = { 102.0, 94.8, 98.3,  98.4, 102.0, 98.5, 99.0,  97.7,  100.0, 98.1,
                                   101.3, 98.7, 101.1, 98.4, 97.0,  96.7, 100.3, 101.4, 97.2,  101.0 };
  TmChartInput input = { values, G_N_ELEMENTS (values), NULL, 0, 1, 0 };
  g_auto (TmChart) chart = { 0 };

  tm_chart (&input, &chart);
  g_assert_cmpfloat_with_epsilon (chart.centre, 99.095, 1e-10);
  g_assert_cmpfloat_with_epsilon (chart.groups[1].dispersion_centre, 2.589473684, 1e-9);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_upper, 105.99, 0.015);
  g_assert_cmpfloat_with_epsilon (chart.groups[0].location_lower, 92.21, 0.015);
}

/* No moving range goes over a break, and a baseline freezes the limits. */
static void
test_breaks_and_baseline (void)
{
  static const double values[] = { 1, 2, 1, 2, 101, 102, 101, 102 };
  static const guint breaks[] = { 4 };
  TmChartInput input = { values, G_N_ELEMENTS (values), breaks, 1, 1, 0 };
  g_auto (TmChart) chart = { 0 };
  g_auto (TmChart) frozen = { 0 };

  tm_chart (&input, &chart);
  g_assert_true (isnan (chart.groups[4].dispersion));
  g_assert_cmpfloat_with_epsilon (chart.groups[1].dispersion_centre, 1, 1e-12);
  input.baseline = 4;
  tm_chart (&input, &frozen);
  g_assert_cmpuint (frozen.baseline, ==, 4);
  g_assert_cmpfloat_with_epsilon (frozen.centre, 1.5, 1e-12);
  g_assert_cmpfloat (frozen.groups[7].location, >, frozen.groups[7].location_upper);
}

static void
test_little (void)
{
  static const double one[] = { 5 }, equal[] = { 5, 5, 5, 5 }, none[] = { NAN, NAN };
  TmChartInput input = { one, 1, NULL, 0, 1, 0 };
  g_auto (TmChart) single = { 0 };
  g_auto (TmChart) flat = { 0 };
  g_auto (TmChart) empty = { 0 };

  tm_chart (&input, &single);
  g_assert_cmpint (single.status, ==, TM_CHART_TOO_FEW);
  g_assert_cmpfloat (single.centre, ==, 5);
  input = (TmChartInput) { equal, 4, NULL, 0, 1, 0 };
  tm_chart (&input, &flat);
  g_assert_cmpint (flat.status, ==, TM_CHART_NO_SPREAD);
  input = (TmChartInput) { none, 2, NULL, 0, 1, 0 };
  tm_chart (&input, &empty);
  g_assert_cmpint (empty.status, ==, TM_CHART_TOO_FEW);
  g_assert_true (isnan (empty.centre));
}

/* The degrees of freedom that an estimate is said to have, against the spread it really has: Var(σ̂)/σ² is
 * 1/c4(ν+1)² - 1, within 8 % of it with 4000 runs (standard error 2.2 %). */
static void
check_dof (guint group_size, guint n, gsl_rng *random)
{
  const guint runs = 4000;
  g_autofree double *values = g_new (double, n);
  double sum = 0, squares = 0, variance, c4, dof = 0;

  for (guint run = 0; run < runs; run++)
    {
      TmChartInput input = { values, n, NULL, 0, group_size, 0 };
      g_auto (TmChart) chart = { 0 };

      for (guint i = 0; i < n; i++)
        values[i] = gsl_ran_gaussian_ziggurat (random, 1);
      tm_chart (&input, &chart);
      sum += chart.sigma;
      squares += chart.sigma * chart.sigma;
      dof = chart.sigma_dof;
    }
  g_assert_cmpfloat_with_epsilon (sum / runs, 1, 4 / sqrt (2 * dof * runs));
  variance = squares / runs - sum / runs * (sum / runs);
  c4 = sqrt (2 / dof) * exp (lgamma ((dof + 1) / 2) - lgamma (dof / 2));
  g_test_message ("groups of %u: %.1f degrees of freedom", group_size, dof);
  g_assert_cmpfloat_with_epsilon (variance / (1 / (c4 * c4) - 1), 1, 0.08);
}

static void
test_dof (void)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);

  gsl_rng_set (random, 5);
  check_dof (1, 50, random);
  check_dof (2, 40, random);
  check_dof (5, 50, random);
  check_dof (12, 60, random);
  gsl_rng_free (random);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart/factors", test_factors);
  g_test_add_func ("/chart/rings", test_rings);
  g_test_add_func ("/chart/rings-by-deviation", test_rings_by_deviation);
  g_test_add_func ("/chart/growing", test_growing);
  g_test_add_func ("/chart/large-factors", test_large_factors);
  g_test_add_func ("/chart/flow-rates", test_flow_rates);
  g_test_add_func ("/chart/concentration", test_concentration);
  g_test_add_func ("/chart/breaks-and-baseline", test_breaks_and_baseline);
  g_test_add_func ("/chart/little", test_little);
  g_test_add_func ("/chart/dof", test_dof);
  return g_test_run ();
}
