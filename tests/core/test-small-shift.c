/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Moving averages, cumulative sums and changes of level against published run lengths and examples.
 */

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#include "core-small-shift.h"
#include "support-csv.h"

static double
get_number (const SupportCsv *csv, guint row, const char *name)
{
  return g_ascii_strtod (support_csv_get (csv, row, name), NULL);
}

/* Lucas and Saccucci print three digits; recomputed to its own eight. */
static void
test_ewma_lengths (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("ewma_lengths.csv");

  g_assert_cmpuint (csv->rows->len, >, 8);
  for (guint i = 0; i < csv->rows->len; i++)
    {
      double length = tm_ewma_length (0.5, 3.071, get_number (csv, i, "shift_sigma"));
      double published = get_number (csv, i, "pub_l0.50_L3.071");

      g_assert_cmpfloat_with_epsilon (length / get_number (csv, i, "rc_l0.50_L3.071"), 1, 1e-6);
      g_assert_cmpfloat_with_epsilon (length / published, 1, 0.005);
    }
}

static void
test_cusum_lengths (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("cusum_lengths.csv");

  g_assert_cmpuint (csv->rows->len, >, 6);
  for (guint i = 0; i < csv->rows->len; i++)
    {
      double shift = get_number (csv, i, "shift_sigma");

      g_assert_cmpfloat_with_epsilon (
          tm_cusum_length (0.5, 4, shift) / get_number (csv, i, "rc_two_sided_h4"), 1, 1e-6);
      g_assert_cmpfloat_with_epsilon (
          tm_cusum_length (0.5, 5, shift) / get_number (csv, i, "rc_two_sided_h5"), 1, 1e-6);
      /* As printed, to three digits. */
      g_assert_cmpfloat_with_epsilon (tm_cusum_length (0.5, 4, shift) / get_number (csv, i, "pub_h4"), 1,
                                      0.005);
    }
}

/* Other designs, in control: recomputed with the R package spc 0.6.7 to the digits given.  Of a cumulative
 * sum with k 0 and h 10 one side has 124.6616 (L. C. Vance, J. Quality Technology 18, 1986: 124.66).  Far off
 * a chart speaks at once, and its other side never does. */
static void
test_other_lengths (void)
{
  static const struct {
    double lambda, reach, length;
  } cases[] = {
    { 0.05, 2.615, 499.93301 }, { 0.10, 2.700, 368.99373 }, { 0.10, 2.814, 499.57955 },
    { 0.20, 2.860, 371.1033 },  { 0.20, 2.962, 499.73512 }, { 0.20, 3.000, 559.87408 },
    { 0.25, 2.998, 499.836 },   { 0.30, 3.000, 465.55343 }, { 0.40, 3.054, 499.95134 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (tm_ewma_length (cases[i].lambda, cases[i].reach, 0), cases[i].length,
                                    6e-5);
  g_assert_cmpfloat_with_epsilon (tm_cusum_length (0, 10, 0), 124.6616 / 2, 6e-5);
  for (double shift = 8; shift < 1e3; shift *= 2)
    {
      g_assert_cmpfloat_with_epsilon (tm_ewma_length (0.5, 3.071, shift), 1, 0.01);
      g_assert_cmpfloat_with_epsilon (tm_cusum_length (0.5, 4, shift), 1, 0.001);
    }
}

/* Montgomery's 30 observations: every row; the first signal of each chart is at observation 29. */
static void
test_thirty (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("small_shift_30.csv");
  const guint n = csv->rows->len;
  g_autofree double *values = g_new (double, n);
  g_autofree TmEwmaPoint *ewma = g_new (TmEwmaPoint, n);
  g_autofree TmCusumPoint *cusum = g_new (TmCusumPoint, n);
  guint first_ewma = 0, first_cusum = 0;

  g_assert_cmpuint (n, ==, 30);
  for (guint i = 0; i < n; i++)
    values[i] = get_number (csv, i, "x");
  tm_ewma (values, n, 10, 1, 0.1, 2.7, ewma);
  tm_cusum (values, n, 10, 1, 0.5, cusum);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat_with_epsilon (ewma[i].value, get_number (csv, i, "ewma"), 5.1e-7);
      g_assert_cmpfloat_with_epsilon (ewma[i].lower, get_number (csv, i, "ewma_LCL"), 5.1e-7);
      g_assert_cmpfloat_with_epsilon (ewma[i].upper, get_number (csv, i, "ewma_UCL"), 5.1e-7);
      g_assert_cmpfloat_with_epsilon (cusum[i].high, get_number (csv, i, "Cplus"), 1e-9);
      g_assert_cmpfloat_with_epsilon (cusum[i].low, get_number (csv, i, "Cminus"), 1e-9);
      g_assert_cmpuint (cusum[i].n_high, ==, (guint)get_number (csv, i, "Nplus"));
      g_assert_cmpuint (cusum[i].n_low, ==, (guint)get_number (csv, i, "Nminus"));
      if (first_ewma == 0 && ewma[i].value > ewma[i].upper)
        first_ewma = i + 1;
      if (first_cusum == 0 && cusum[i].high > 5)
        first_cusum = i + 1;
    }
  g_assert_cmpuint (first_ewma, ==, 29);
  g_assert_cmpuint (first_cusum, ==, 29);
  g_assert_cmpfloat_with_epsilon (cusum[28].high, 5.28, 1e-9);
}

/* NIST/SEMATECH e-Handbook, 6.3.2.4 (from memory, recomputed): fixed limits 52.5884 and 47.4115 are where the
 * exact ones go; values as printed to two decimals; none lies outside. */
static void
test_handbook (void)
{
  static const double y[] = { 52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5,
                              49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1 };
  static const double z[] = { 50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33,
                              50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99 };
  TmEwmaPoint out[G_N_ELEMENTS (y)];

  tm_ewma (y, G_N_ELEMENTS (y), 50, 2.0539, 0.3, 3, out);
  for (guint i = 0; i < G_N_ELEMENTS (z); i++)
    {
      g_assert_cmpfloat_with_epsilon (out[i].value, z[i], 0.0051);
      g_assert_true (out[i].value > out[i].lower && out[i].value < out[i].upper);
    }
  g_assert_cmpfloat_with_epsilon (out[19].upper, 52.588431738, 5e-6);
  g_assert_cmpfloat_with_epsilon (out[19].lower, 47.411568262, 5e-6);
}

/* A change that is plain, with a piece that was not measured. */
static void
test_change (void)
{
  double values[40];
  TmLevelChange change;

  for (guint i = 0; i < 40; i++)
    values[i] = (i < 25 ? 0 : 3) + (i % 2 == 0 ? 0.5 : -0.5);
  values[10] = NAN;
  tm_level_change (values, 40, &change);
  g_assert_true (change.found);
  g_assert_cmpuint (change.at, ==, 25);
  g_assert_cmpuint (change.low, <=, 25);
  g_assert_cmpuint (change.high, >=, 25);
  g_assert_cmpuint (change.high, <=, 27);
  g_assert_cmpfloat_with_epsilon (change.after - change.before, 3, 0.1);
}

static void
test_no_change (void)
{
  static const double equal[] = { 1, 1, 1, 1, 1, 1 }, few[] = { 1, 2, 3 };
  TmLevelChange change;

  tm_level_change (equal, 6, &change);
  g_assert_false (change.found);
  g_assert_true (isnan (change.p));
  tm_level_change (few, 3, &change);
  g_assert_false (change.found);
}

/* Where nothing changes it is said in 5 % of runs at most (1 % and more shows that it is no idle bound).  The
 * interval of a change of 1.5 sigma holds its place in 89 %: 1.92 is for a smooth likelihood, and a place is
 * not smooth.  2000 runs: standard errors 0.5 and 0.7 %. */
static void
test_change_rates (void)
{
  const guint runs = 2000, n = 50;
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  guint false_alarms = 0, held = 0;
  double values[50];
  TmLevelChange change;

  gsl_rng_set (random, 11);
  for (guint run = 0; run < runs; run++)
    {
      for (guint i = 0; i < n; i++)
        values[i] = gsl_ran_gaussian_ziggurat (random, 1);
      tm_level_change (values, n, &change);
      false_alarms += change.found;
      for (guint i = 30; i < n; i++)
        values[i] += 1.5;
      tm_level_change (values, n, &change);
      held += change.low <= 30 && change.high >= 30;
    }
  g_test_message ("said without a change %.2f %%, held %.1f %%", 100.0 * false_alarms / runs,
                  100.0 * held / runs);
  g_assert_cmpfloat (false_alarms / (double)runs, <=, 0.05 + 3 * 0.005);
  g_assert_cmpfloat (false_alarms / (double)runs, >=, 0.01);
  g_assert_cmpfloat (held / (double)runs, >=, 0.86);
  gsl_rng_free (random);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/small-shift/ewma-lengths", test_ewma_lengths);
  g_test_add_func ("/small-shift/cusum-lengths", test_cusum_lengths);
  g_test_add_func ("/small-shift/other-lengths", test_other_lengths);
  g_test_add_func ("/small-shift/thirty", test_thirty);
  g_test_add_func ("/small-shift/handbook", test_handbook);
  g_test_add_func ("/small-shift/change", test_change);
  g_test_add_func ("/small-shift/no-change", test_no_change);
  g_test_add_func ("/small-shift/change-rates", test_change_rates);
  return g_test_run ();
}
