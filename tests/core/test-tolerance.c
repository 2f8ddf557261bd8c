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

/* One-sided beyond the table: quantiles of the noncentral t distribution over the root of n, recomputed with
 * SciPy 1.10.1 (Boost); 1e-8 of them.  Of two values the factor rests on how rarely they lie close together.
 */
static void
test_one_sided_far (void)
{
  static const struct {
    gsize n;
    double coverage, confidence, k;
  } cases[] = {
    { 2, 0.9, 0.999, 1030.3361156953838 },      { 2, 0.99, 0.999, 1856.2310250962828 },
    { 2, 0.9, 0.99999, 103033.6620539272 },     { 2, 0.99999, 0.99999, 340289.0517973454 },
    { 3, 0.99999, 0.99999, 1360.974929877313 }, { 10, 0.5, 0.5, 0 },
    { 10, 0.3, 0.5, -0.5398787233803067 },      { 5, 0.1, 0.05, -3.406633262800811 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (
        tm_tolerance_one_sided (cases[i].n, cases[i].coverage, cases[i].confidence), cases[i].k,
        1e-8 * MAX (fabs (cases[i].k), 1));
}

/* Whatever is asked: a number that rises with what is wanted, or none. */
static void
test_extremes (void)
{
  static const double shares[] = { 1e-6, 1e-3, 0.5, 0.999, 0.999999, 1 - 1e-9 };
  static const gsize sizes[] = { 2, 10, 1000, 10000000 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
      {
        double last_one = -INFINITY, last_two = 0;

        for (guint k = 0; k < G_N_ELEMENTS (shares); k++)
          {
            double one = tm_tolerance_one_sided (sizes[i], shares[j], shares[k]);
            double two = tm_tolerance_two_sided (sizes[i], shares[j], shares[k]);

            g_assert_cmpfloat (one, >, last_one);
            g_assert_cmpfloat (two, >, last_two);
            last_one = one;
            last_two = two;
          }
      }
}

/* C(lot - n, bad) / C(lot, bad) in whole numbers: the smallest n whose chance is at most 1 in @odds. */
static guint
count_exactly (guint lot, guint bad, guint odds)
{
  for (guint n = 0; n < lot; n++)
    {
      guint64 above = 1, below = 1;

      for (guint i = 0; i < bad; i++)
        {
          above *= n + i < lot ? lot - n - i : 0;
          below *= lot - i;
        }
      if (above * odds <= below)
        return MAX (n, 1);
    }
  return lot;
}

/* By the definition, in whole numbers: a chance of exactly the risk is good enough (9 of 10 with one bad and
 * 0.1), and one piece fewer is not. */
static void
test_lots (void)
{
  static const guint odds[] = { 2, 5, 10, 20, 100 };

  for (guint lot = 1; lot <= 130; lot++)
    for (guint bad = 1; bad <= MIN (lot, 5); bad++)
      for (guint i = 0; i < G_N_ELEMENTS (odds); i++)
        {
          double share = MIN ((double)bad / lot, 0.9999);

          g_assert_cmpuint (tm_lot_bad (lot, share), ==, bad);
          g_assert_cmpuint (tm_lot_sample (lot, share, 1.0 / odds[i]), ==, count_exactly (lot, bad, odds[i]));
        }
  g_assert_cmpuint (tm_lot_sample (0, 0.1, 0.1), ==, 0);
  g_assert_cmpuint (tm_lot_bad (1000, 0.001), ==, 1);
}

/* GSL's hypergeometric distribution; and what no lot holds. */
static void
test_lot_chance (void)
{
  static const guint lots[] = { 1, 2, 13, 120, 3000 };

  for (guint i = 0; i < G_N_ELEMENTS (lots); i++)
    for (guint bad = 0; bad <= lots[i]; bad += 1 + lots[i] / 7)
      for (guint n = 0; n <= lots[i]; n += 1 + lots[i] / 5)
        g_assert_cmpfloat_with_epsilon (tm_lot_chance (lots[i], bad, n),
                                        gsl_cdf_hypergeometric_P (0, bad, lots[i] - bad, n), 1e-12);
  g_assert_cmpfloat (tm_lot_chance (10, 20, 0), ==, 1);
  g_assert_cmpfloat (tm_lot_chance (10, 20, 1), ==, 0);
  /* Two thousand million pieces, answered at once: 1 % and 5 %, ln 0.05 / ln 0.99 = 298.07. */
  g_assert_cmpuint (tm_lot_sample (G_MAXINT, 0.01, 0.05), ==, 299);
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
  g_test_add_func ("/tolerance/one-sided-far", test_one_sided_far);
  g_test_add_func ("/tolerance/extremes", test_extremes);
  g_test_add_func ("/tolerance/lots", test_lots);
  g_test_add_func ("/tolerance/lot-chance", test_lot_chance);
  g_test_add_func ("/normality/gears", test_gears);
  g_test_add_func ("/normality/little", test_little);
  return g_test_run ();
}
