/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Capability against published figures, and what it refuses.
 */

#include <gsl/gsl_randist.h>
#include <math.h>

#include "core-capability.h"
#include "core-chart.h"
#include "core-statistics.h"
#include "support-csv.h"

static const TmCapabilityInput plain = { -INFINITY, INFINITY, NAN, FALSE, NAN, NAN, NAN, FALSE };

static gsize
load_rings (double *values)
{
  static const char *const columns[] = { "x1", "x2", "x3", "x4", "x5" };
  g_autoptr (SupportCsv) csv = support_csv_load ("piston_rings.csv");

  for (guint i = 0; i < csv->rows->len; i++)
    for (guint j = 0; j < 5; j++)
      values[5 * i + j] = g_ascii_strtod (support_csv_get (csv, i, columns[j]), NULL);
  return 5 * csv->rows->len;
}

static void
assert_within (const TmIndex *index)
{
  g_assert_true (isfinite (index->value) && isfinite (index->low) && isfinite (index->high));
  g_assert_cmpfloat (index->low, <, index->value);
  g_assert_cmpfloat (index->value, <, index->high);
}

static void
assert_none (const TmIndex *index)
{
  g_assert_true (isnan (index->value) && isnan (index->low) && isnan (index->high));
}

/* D. C. Montgomery, Introduction to Statistical Quality Control, table 6.3, with 73.95 to 74.05: Cp 1.66805,
 * Cpk 1.62882, Pp 1.63417, Ppk 1.59573, recomputed from the 125 values; half a unit of the fifth decimal. */
static void
test_rings (void)
{
  double values[125];
  gsize n = load_rings (values);
  TmChartInput charted = { values, n, NULL, 0, 5, 0 };
  g_auto (TmChart) chart = { 0 };
  TmCapabilityInput input = plain;
  TmCapability out;

  tm_chart (&charted, &chart);
  input.lower = 73.95;
  input.upper = 74.05;
  input.within = chart.sigma;
  input.within_dof = chart.sigma_dof;
  tm_capability (values, n, &input, &out);
  g_assert_cmpint (out.status, ==, TM_CAPABLE_OK);
  g_assert_cmpuint (out.n, ==, 125);
  g_assert_cmpfloat_with_epsilon (out.mean, 74.001176, 5e-7);
  g_assert_cmpfloat_with_epsilon (out.cp.value, 1.66805, 5e-6);
  g_assert_cmpfloat_with_epsilon (out.cpk.value, 1.62882, 5e-6);
  g_assert_cmpfloat_with_epsilon (out.pp.value, 1.63417, 5e-6);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, 1.59573, 5e-6);
  g_assert_cmpint (out.shape, ==, TM_SHAPE_NORMAL);
  g_assert_cmpfloat (out.normality_p, >, 0.05);
  g_assert_cmpfloat (out.fit.a, ==, out.mean);
  g_assert_cmpfloat (out.fit.b, ==, out.overall);
  g_assert_cmpfloat (out.cm.value, ==, out.pp.value);
  g_assert_cmpfloat (out.cmk.value, ==, out.ppk.value);
  assert_within (&out.cp);
  assert_within (&out.cpk);
  assert_within (&out.cpm);
  /* Ranges carry less than pooled deviations would: 100 degrees of freedom. */
  g_assert_cmpfloat (chart.sigma_dof, <, 100);
  g_assert_cmpfloat (out.cpk.high - out.cpk.low, >, out.ppk.high - out.ppk.low);
  g_assert_cmpuint (out.n_wanted, ==, 0);
}

/* @n values, odd, with exactly this mean and standard deviation. */
static void
make_exact (double *values, gsize n, double mean, double deviation)
{
  TmSummary summary;

  for (gsize i = 0; i < n; i++)
    values[i] = tm_shape_quantile (&(TmFittedShape) { TM_SHAPE_NORMAL, 0, 0, 1, NAN },
                                   ((double)i + 0.5) / (double)n);
  g_assert_cmpint (tm_summary (values, n, &summary), ==, TM_SUMMARY_OK);
  for (gsize i = 0; i < n; i++)
    values[i] = mean + values[i] * deviation / summary.standard_deviation;
}

/* NIST/SEMATECH e-Handbook, 6.1.6 (from memory, recomputed): limits 8 and 20, mean 16, s 2: Cp 1, Cpk 0.6667;
 * with target 14 Cpm 0.7071067812; shares beyond 0.0227501319 and 0.0000316712. */
static void
test_handbook (void)
{
  double values[51];
  TmCapabilityInput input = { 8, 20, 14, FALSE, 2, 50, NAN, FALSE };
  TmCapability out;

  make_exact (values, 51, 16, 2);
  tm_capability (values, 51, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.cp.value, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.cpk.value, 2.0 / 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.pp.value, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, 2.0 / 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.cpm.value, 0.7071067812, 1e-10);
  g_assert_cmpfloat_with_epsilon (out.expected_out, 0.0227501319 + 0.0000316712, 1e-9);
  input.target = NAN; /* the middle is 14 as well */
  tm_capability (values, 51, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.cpm.value, 0.7071067812, 1e-10);
  /* χ² with 50 degrees of freedom: 32.357 and 71.420 (tables; from memory). */
  g_assert_cmpfloat_with_epsilon (out.pp.low, sqrt (32.357 / 50), 1e-5);
  g_assert_cmpfloat_with_epsilon (out.pp.high, sqrt (71.420 / 50), 1e-5);
}

/* Quality Digest, May 2000: Cpk 1.15 of 45 values: 0.89 to 1.41; recomputed 0.8907393239 to 1.4092606761. */
static void
test_interval (void)
{
  double values[45];
  TmCapabilityInput input = { -10, 3.45, NAN, FALSE, 1, 44, NAN, FALSE };
  TmCapability out;

  make_exact (values, 45, 0, 1);
  tm_capability (values, 45, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.cpk.value, 1.15, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.cpk.low, 0.8907393239, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.cpk.high, 1.4092606761, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.ppk.low, 0.8907393239, 1e-9);
  assert_none (&out.cm); /* needs 50 */
  /* Half width 0.25926 is 22.5 % of 1.15: (22.5/20)² times 45. */
  g_assert_cmpuint (out.n_wanted, ==, 58);
}

static double *
load_gears (gsize *n)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("gears.csv");
  double *values = g_new (double, csv->rows->len);

  *n = csv->rows->len;
  for (guint i = 0; i < csv->rows->len; i++)
    values[i] = g_ascii_strtod (support_csv_get (csv, i, "diameter"), NULL);
  return values;
}

/* The gears (NIST e-Handbook 1.3.5.7): A² adjusted 1.4692146196, p 0.000864, recomputed: not normal. */
static void
test_gears (void)
{
  gsize n;
  g_autofree double *values = load_gears (&n);
  TmCapabilityInput input = plain;
  TmCapability out;

  input.lower = 0.97;
  input.upper = 1.03;
  input.within = 0.006;
  input.within_dof = 90;
  tm_capability (values, n, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.a_squared, 1.4692146196, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.normality_p, 0.000864, 5e-7);
  g_assert_cmpfloat_with_epsilon (out.mean, 0.99764, 5e-9);
  /* Long lower tail, steps of a thousandth: no shape fits, and 100 values are too few for their own
   * quantiles.
   */
  g_assert_true (out.unshaped);
  g_assert_cmpfloat (out.shape_p, <, 0.05);
  assert_none (&out.ppk);
  assert_none (&out.pp);
  assert_none (&out.cm);
  g_assert_true (isnan (out.expected_out));
  assert_within (&out.cpk);
}

/* 400 even values of a lognormal with an origin: the index by its quantiles (ISO 22514-2), to 5 %. */
static void
test_skewed (void)
{
  static const TmFittedShape truth = { TM_SHAPE_LOGNORMAL, 5, -3, 0.6, NAN };
  double values[400], middle = tm_shape_quantile (&truth, 0.5);
  TmCapabilityInput input = plain;
  TmCapability out;

  for (guint i = 0; i < 400; i++)
    values[i] = tm_shape_quantile (&truth, (i + 0.5) / 400);
  input.lower = 5;
  input.upper = middle + 1.2 * (tm_shape_quantile (&truth, 0.99865) - middle);
  tm_capability (values, 400, &input, &out);
  g_assert_cmpint (out.shape, ==, TM_SHAPE_LOGNORMAL);
  g_assert_false (out.unshaped);
  g_assert_cmpfloat (out.normality_p, <, 0.05);
  g_assert_cmpfloat_with_epsilon (
      out.ppk.value, fmin (1.2, (middle - 5) / (middle - tm_shape_quantile (&truth, 0.00135))), 0.06);
  assert_within (&out.ppk);
  assert_within (&out.pp);
  g_assert_cmpfloat_with_epsilon (out.expected_out, 1 - tm_shape_below (&truth, input.upper), 2e-4);
}

/* A position: only the upper index, (U - median) / (99.865 % - median); of a Rayleigh distribution these are
 * σ √(2 ln 2) and σ √(-2 ln 0.00135). */
static void
test_position (void)
{
  static const TmFittedShape truth = { TM_SHAPE_RAYLEIGH, 0, 0.01, 0, NAN };
  double values[200], middle = 0.01 * sqrt (2 * log (2)), high = 0.01 * sqrt (-2 * log (0.00135));
  TmCapabilityInput input = plain;
  TmCapability out;

  for (guint i = 0; i < 200; i++)
    values[i] = tm_shape_quantile (&truth, (i + 0.5) / 200);
  input.lower = 0;
  input.upper = 0.05;
  input.zero_bounded = input.position = TRUE;
  input.within = 0.005;
  input.within_dof = 100;
  tm_capability (values, 200, &input, &out);
  g_assert_cmpint (out.shape, ==, TM_SHAPE_RAYLEIGH);
  g_assert_cmpfloat_with_epsilon (out.fit.a, 0.01, 1e-4);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, (0.05 - middle) / (high - middle), 0.01);
  assert_within (&out.ppk);
  assert_none (&out.cp);
  assert_none (&out.cpk);
  assert_none (&out.pp);
  assert_none (&out.cpm);
  assert_none (&out.cm);
}

static void
test_one_sided (void)
{
  double values[60];
  TmCapabilityInput input = { -3.9, INFINITY, NAN, FALSE, 1, 59, NAN, FALSE };
  TmCapability out;

  make_exact (values, 60, 0, 1);
  tm_capability (values, 60, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, 1.3, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.expected_out, 4.8096e-5, 1e-9); /* Φ(-3.9), tables */
  assert_none (&out.pp);
  assert_none (&out.cp);
  assert_none (&out.cpk);
  assert_none (&out.cpm);
  assert_none (&out.cmk);
}

/* 5² - 3² = 4². */
static void
test_measuring (void)
{
  double values[81];
  TmCapabilityInput input = { -30, 30, NAN, FALSE, 5, 60, 3, FALSE };
  TmCapability out;

  make_exact (values, 81, 0, 5);
  tm_capability (values, 81, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.overall, 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.cp.value, 2.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (out.pp.value, 2.5, 1e-12);
  input.within = 3;
  tm_capability (values, 81, &input, &out);
  g_assert_true (out.within_lost);
  assert_none (&out.cpk);
  g_assert_cmpfloat_with_epsilon (out.pp.value, 2.5, 1e-12);
  input.measuring = 5.1;
  tm_capability (values, 81, &input, &out);
  g_assert_cmpint (out.status, ==, TM_CAPABLE_MEASURING);
  assert_none (&out.pp);
}

/* What measuring leaves carries less than one degree of freedom: 60 (1 - 4.9²/5²)² is 0.09. */
static void
test_nearly_lost (void)
{
  double values[81];
  TmCapabilityInput input = { -30, 30, NAN, FALSE, 5, 60, 4.9, FALSE };
  TmCapability out;

  make_exact (values, 81, 0, 6);
  tm_capability (values, 81, &input, &out);
  g_assert_true (out.within_lost);
  assert_none (&out.cp);
  assert_none (&out.cpk);
  assert_within (&out.pp);
  make_exact (values, 81, 0, 5);
  tm_capability (values, 81, &input, &out);
  g_assert_cmpint (out.status, ==, TM_CAPABLE_MEASURING);
  assert_none (&out.pp);
}

/* χ² with 48764 degrees of freedom, 2.5 % on each side: 48153.81 and 49377.98 (SciPy 1.10.1): an inverse that
 * goes wrong with many would give 10 % for the upper 0.6 %. */
static void
test_many (void)
{
  static double values[48765];
  TmCapabilityInput input = { -4, 4, NAN, FALSE, NAN, NAN, NAN, FALSE };
  TmCapability out;

  make_exact (values, G_N_ELEMENTS (values), 0, 1);
  tm_capability (values, G_N_ELEMENTS (values), &input, &out);
  g_assert_cmpfloat_with_epsilon (out.pp.low, 4.0 / 3 * sqrt (48153.810074407695 / 48764), 1e-8);
  g_assert_cmpfloat_with_epsilon (out.pp.high, 4.0 / 3 * sqrt (49377.97852618097 / 48764), 1e-8);
}

/* A band over a spread is never below zero, nor is what it may be. */
static void
test_pp_above_zero (void)
{
  static const double values[] = { 0.1, 0.2, 0.2, 0.3, 0.3, 0.4, 0.5, 0.6, 0.8, 1.2, 2.5, 9 };
  TmCapabilityInput input = { -5, 10, NAN, FALSE, NAN, NAN, NAN, FALSE };
  TmCapability out;

  tm_capability (values, G_N_ELEMENTS (values), &input, &out);
  g_assert_cmpint (out.shape, !=, TM_SHAPE_NORMAL);
  g_test_message ("Pp %g, %g to %g", out.pp.value, out.pp.low, out.pp.high);
  g_assert_cmpfloat (out.pp.low, ==, 0);
  g_assert_cmpfloat (out.pp.high, >, out.pp.value);
}

static void
test_machine (void)
{
  double values[50];
  TmCapabilityInput input = { -4, 4, NAN, FALSE, 1, 49, 0, TRUE };
  TmCapability out;

  make_exact (values, 50, 0, 1);
  tm_capability (values, 50, &input, &out);
  assert_none (&out.cm);
  assert_within (&out.pp);
  input.drifting = FALSE;
  tm_capability (values, 50, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.cm.value, 4.0 / 3, 1e-12);
  tm_capability (values, 49, &input, &out);
  assert_none (&out.cm);
  input.gaps = TRUE;
  tm_capability (values, 50, &input, &out);
  assert_none (&out.cmk);
  assert_within (&out.ppk);
}

/* 2,000 even values of two shapes mixed, which no shape has: their own quantiles. */
static void
test_empiric (void)
{
  static double values[2000];
  TmCapabilityInput input = { -8, 10, NAN, FALSE, 1, 100, NAN, FALSE };
  TmCapability out;

  make_exact (values, 1000, -3, 1);
  make_exact (values + 1000, 1000, 3, 1);
  tm_capability (values, 2000, &input, &out);
  g_assert_cmpint (out.shape, ==, TM_SHAPE_EMPIRIC);
  g_assert_true (isnan (out.fit.a));
  /* 0.135 % of all is 0.27 % of each half: 2.78215 sigma beyond its middle; the median is 0 between both.
   * Ranks that differ by a half, and even values scaled to s 1, move the ends by up to 2 %. */
  g_assert_cmpfloat_with_epsilon (out.pp.value, 18 / (2 * (3 + 2.78215)), 0.03);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, 8 / (3 + 2.78215), 0.03);
  assert_within (&out.pp);
  assert_within (&out.ppk);
  tm_capability (values + 501, 998, &input, &out);
  g_assert_true (out.unshaped);
  assert_none (&out.ppk);
}

/* Words, never NaN where a number is promised. */
static void
test_poor (void)
{
  static const double values[] = { 2, 2, 2, 2, 2, 3, 4 },
                      gaps[] = { NAN, INFINITY, 1, 2, 3, 4, 5, -INFINITY };
  static const double huge[] = { 1e308, -1e308, 1.5e308, 0, 1e307, 2e307 };
  static const double large[] = { 1e200, 2e200, 3e200, 4e200, 5e200 };
  TmCapabilityInput input = { 0, 10, NAN, FALSE, 1, 4, NAN, FALSE };
  TmCapability out;

  for (gsize n = 0; n < TM_CAPABLE_LEAST; n++)
    {
      tm_capability (values, n, &input, &out);
      g_assert_cmpint (out.status, ==, TM_CAPABLE_TOO_FEW);
      assert_none (&out.pp);
      g_assert_cmpuint (out.n_wanted, >, 50);
    }
  tm_capability (values, 5, &input, &out);
  g_assert_cmpint (out.status, ==, TM_CAPABLE_NO_SPREAD);
  assert_none (&out.cp);
  tm_capability (values, 7, &input, &out);
  g_assert_cmpint (out.status, ==, TM_CAPABLE_OK);
  tm_capability (gaps, 8, &input, &out);
  g_assert_cmpuint (out.n, ==, 5);
  g_assert_cmpfloat_with_epsilon (out.mean, 3, 1e-12);
  tm_capability (huge, 6, &input, &out);
  g_assert_true (isfinite (out.mean) && isfinite (out.overall));
  input.upper = 1e201;
  input.within = 1e200;
  tm_capability (large, 5, &input, &out);
  assert_within (&out.pp);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, 3 / (3 * sqrt (2.5)), 1e-12);
  tm_capability (values, 7, &plain, &out);
  g_assert_cmpint (out.status, ==, TM_CAPABLE_NO_LIMITS);
  input = plain;
  input.upper = 10;
  input.zero_bounded = TRUE;
  tm_capability (values, 7, &input, &out);
  assert_within (&out.ppk);
}

/* A process outside its limits has a negative index, with its interval. */
static void
test_outside (void)
{
  double values[50];
  TmCapabilityInput input = { 1, 7, NAN, FALSE, 1, 49, 0, FALSE };
  TmCapability out;

  make_exact (values, 50, 0, 1);
  tm_capability (values, 50, &input, &out);
  g_assert_cmpfloat_with_epsilon (out.ppk.value, -1.0 / 3, 1e-12);
  assert_within (&out.ppk);
  g_assert_cmpuint (out.n_wanted, >, 50);
}

/* 300 samples of 50: each 95 % interval holds the true index; binomial 99.9 % band 90.3 to 98.7 %.  The
 * benchmark does the same at length. */
static void
test_coverage (void)
{
  TmCapabilityInput input = { -5, 4, NAN, FALSE, NAN, NAN, NAN, FALSE };
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  guint pp = 0, ppk = 0, cpm = 0;

  gsl_rng_set (random, 5);
  for (guint run = 0; run < 300; run++)
    {
      double values[50];
      TmCapability out;

      for (guint i = 0; i < 50; i++)
        values[i] = gsl_ran_gaussian (random, 1);
      tm_capability (values, 50, &input, &out);
      pp += isnan (out.pp.value) || (out.pp.low <= 1.5 && out.pp.high >= 1.5) ? 1 : 0;
      ppk += isnan (out.ppk.value) || (out.ppk.low <= 4.0 / 3 && out.ppk.high >= 4.0 / 3) ? 1 : 0;
      cpm += out.cpm.low <= 1.5 / sqrt (1.25) && out.cpm.high >= 1.5 / sqrt (1.25) ? 1 : 0;
    }
  gsl_rng_free (random);
  g_assert_cmpuint (pp, >=, 271);
  g_assert_cmpuint (pp, <=, 296);
  g_assert_cmpuint (ppk, >=, 271);
  g_assert_cmpuint (ppk, <=, 296);
  g_assert_cmpuint (cpm, >=, 271);
  g_assert_cmpuint (cpm, <=, 296);
}

static void
test_words (void)
{
  for (guint i = 0; i < TM_N_CAPABLE_STATUSES; i++)
    for (guint j = 0; j < i; j++)
      g_assert_cmpstr (tm_capable_status_word (i), !=, tm_capable_status_word (j));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/capability/rings", test_rings);
  g_test_add_func ("/core/capability/handbook", test_handbook);
  g_test_add_func ("/core/capability/interval", test_interval);
  g_test_add_func ("/core/capability/gears", test_gears);
  g_test_add_func ("/core/capability/skewed", test_skewed);
  g_test_add_func ("/core/capability/position", test_position);
  g_test_add_func ("/core/capability/one-sided", test_one_sided);
  g_test_add_func ("/core/capability/measuring", test_measuring);
  g_test_add_func ("/core/capability/nearly-lost", test_nearly_lost);
  g_test_add_func ("/core/capability/many", test_many);
  g_test_add_func ("/core/capability/pp-above-zero", test_pp_above_zero);
  g_test_add_func ("/core/capability/machine", test_machine);
  g_test_add_func ("/core/capability/empiric", test_empiric);
  g_test_add_func ("/core/capability/outside", test_outside);
  g_test_add_func ("/core/capability/poor", test_poor);
  g_test_add_func ("/core/capability/coverage", test_coverage);
  g_test_add_func ("/core/capability/words", test_words);
  return g_test_run ();
}
