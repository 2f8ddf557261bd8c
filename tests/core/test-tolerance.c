/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tolerance intervals, samples of a lot and the test of normality against published figures.
 */

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-normality.h"
#include "core-tolerance.h"
#include "support-csv.h"

static double
get_number (const SupportCsv *csv, guint row, const char *name)
{
  return g_ascii_strtod (support_csv_get (csv, row, name), NULL);
}

/* Each row to half a unit of the fifth decimal, which is 4e-6 of the smallest, and as printed to two
 * decimals. */
static void
test_factors (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("tolerance_factors.csv");

  g_assert_cmpuint (csv->rows->len, >, 100);
  for (guint i = 0; i < csv->rows->len; i++)
    {
      gsize n = (gsize)get_number (csv, i, "n");
      double coverage = get_number (csv, i, "coverage"), confidence = get_number (csv, i, "confidence");
      double one = tm_tolerance_one_sided (n, coverage, confidence);
      double two = tm_tolerance_two_sided (n, coverage, confidence);
      const char *published = support_csv_get (csv, i, "pub_two_sided");

      g_assert_cmpfloat_with_epsilon (one / get_number (csv, i, "rc_k1_one_sided"), 1, 5e-6);
      g_assert_cmpfloat_with_epsilon (two / get_number (csv, i, "rc_k2_two_sided_exact"), 1, 5e-6);
      if (*published != '\0')
        g_assert_cmpfloat_with_epsilon (two, g_ascii_strtod (published, NULL), 0.00501);
    }
}

/* NIST/SEMATECH e-Handbook, 7.2.6.3: 43 values, 90 %, confidence 99 %: exact one-sided 1.8740 (from memory),
 * both recomputed: 1.87395 and 2.22283. */
static void
test_handbook (void)
{
  g_assert_cmpfloat_with_epsilon (tm_tolerance_one_sided (43, 0.90, 0.99), 1.87395, 5e-6);
  g_assert_cmpfloat_with_epsilon (tm_tolerance_two_sided (43, 0.90, 0.99), 2.22283, 5e-6);
  g_assert_true (isnan (tm_tolerance_two_sided (1, 0.9, 0.9)));
  g_assert_true (isnan (tm_tolerance_one_sided (10, 1, 0.9)));
}

/* By the definition: the sample is good enough and one fewer is not, by GSL's hypergeometric distribution. */
static void
test_lots (void)
{
  static const guint lots[] = { 1, 2, 5, 13, 50, 120, 500, 3000 };
  static const double shares[] = { 0.001, 0.01, 0.04, 0.1, 0.65 }, risks[] = { 0.05, 0.1, 0.001 };

  for (guint i = 0; i < G_N_ELEMENTS (lots); i++)
    for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
      for (guint k = 0; k < G_N_ELEMENTS (risks); k++)
        {
          guint n = tm_lot_sample (lots[i], shares[j], risks[k]);
          guint bad = (guint)ceil (shares[j] * lots[i] - 1e-9);

          g_assert_cmpuint (n, >=, 1);
          g_assert_cmpuint (n, <=, lots[i]);
          g_assert_cmpfloat (gsl_cdf_hypergeometric_P (0, bad, lots[i] - bad, n), <=, risks[k] * (1 + 1e-9));
          if (n > 1)
            g_assert_cmpfloat (gsl_cdf_hypergeometric_P (0, bad, lots[i] - bad, n - 1), >,
                               risks[k] * (1 - 1e-9));
        }
  g_assert_cmpuint (tm_lot_sample (0, 0.1, 0.1), ==, 0);
}

/* The gears: A² adjusted 1.4692146196, p 0.000864, recomputed. */
static void
test_gears (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("gears.csv");
  double values[100], a_squared, p;

  g_assert_cmpuint (csv->rows->len, ==, 100);
  for (guint i = 0; i < 100; i++)
    values[i] = get_number (csv, i, "diameter");
  tm_normality (values, 100, &a_squared, &p);
  g_assert_cmpfloat_with_epsilon (a_squared, 1.4692146196, 1e-9);
  g_assert_cmpfloat_with_epsilon (p, 0.000864, 5e-7);
}

static void
test_little (void)
{
  static const double few[] = { 1, 2, 3, 4, 5, 6, 7 }, equal[] = { 1, 1, 1, 1, 1, 1, 1, 1, 1 };
  double wild[50], a_squared, p;

  tm_normality (few, 7, &a_squared, &p);
  g_assert_true (isnan (p));
  tm_normality (equal, 9, &a_squared, &p);
  g_assert_true (isnan (p));
  for (guint i = 0; i < 50; i++)
    wild[i] = i == 0 ? 1e9 : i;
  tm_normality (wild, 50, &a_squared, &p);
  g_assert_true (isfinite (a_squared));
  g_assert_cmpfloat (p, <, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tolerance/factors", test_factors);
  g_test_add_func ("/tolerance/handbook", test_handbook);
  g_test_add_func ("/tolerance/lots", test_lots);
  g_test_add_func ("/normality/gears", test_gears);
  g_test_add_func ("/normality/little", test_little);
  return g_test_run ();
}
