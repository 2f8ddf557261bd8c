/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * True position, bonus at MMC and LMC (ASME Y14.5, ISO 2692), and the Rice distribution.
 */

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-position.h"
#include "judge-support.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

static gint64
count_in (const char *text)
{
  return quantity (text, TM_UNIT_IN).count;
}

/* M1: dx 0.003, dy 0.002 in: radial 0.0036, diametral 0.007211 (recomputed). The trap is the radial figure
 * held against a diametral tolerance. */
static void
test_deviation (void)
{
  TmReading reading = { .dx = quantity ("0.003", TM_UNIT_IN), .dy = quantity ("-0.002", TM_UNIT_IN) };
  gint64 deviation = tm_position_deviation (&reading);

  assert_near (tm_count_to_double (deviation, TM_UNIT_IN), 0.007211, 5e-7);
  g_assert_cmpint (tm_position_compare (reading.dx.count, reading.dy.count, 1, count_in ("0.0073")), ==, -1);
  g_assert_cmpint (tm_position_compare (reading.dx.count, reading.dy.count, 1, count_in ("0.0072")), ==, 1);
  reading.dx = reading.dy = TM_QUANTITY_NONE;
  reading.value = quantity ("0.1", TM_UNIT_MM);
  g_assert_cmpint (tm_position_deviation (&reading), ==, 100000000);
}

/* 3-4-5: the deviation is exactly ten; squares of whole counts decide, to the last count. */
static void
test_compare_is_exact (void)
{
  for (gint64 scale = 1; scale < 700000000000000000; scale *= 7)
    {
      g_assert_cmpint (tm_position_compare (3 * scale, -4 * scale, 1, 10 * scale), ==, 0);
      g_assert_cmpint (tm_position_compare (3 * scale, 4 * scale, 1, 10 * scale - 1), ==, 1);
      g_assert_cmpint (tm_position_compare (3 * scale, 4 * scale, 1, 10 * scale + 1), ==, -1);
      g_assert_cmpint (tm_position_compare (-3 * scale + 1, 4 * scale, 1, 10 * scale), ==, -1);
      g_assert_cmpint (tm_position_compare (3 * scale + 1, 4 * scale, 1, 10 * scale), ==, 1);
    }
}

static void
test_compare_of_means (void)
{
  g_assert_cmpint (tm_position_compare (9, 12, 3, 10), ==, 0);
  g_assert_cmpint (tm_position_compare (10, 12, 3, 10), ==, 1);
  g_assert_cmpint (tm_position_compare (8, 12, 3, 10), ==, -1);
  g_assert_cmpint (tm_position_compare (0, 0, 5, 0), ==, 0);
  g_assert_cmpint (tm_position_compare (0, 0, 5, -1), ==, 1);
  g_assert_cmpint (tm_position_compare ((TmWide)TM_COUNT_MAX * 1000, (TmWide)TM_COUNT_MAX * 1000, 1000, 1),
                   ==, 1);
  g_assert_cmpint (
      tm_position_compare ((TmWide)TM_COUNT_MAX * 100, (TmWide)TM_COUNT_MAX * 100, 1000, TM_COUNT_MAX), ==,
      -1);
}

/* M1: hole MMC 0.290, actual 0.297, tolerance 0.010: bonus 0.007, total 0.017.
 * M3: hole 1.960-2.040, tolerance 0.012, actual 2.018: bonus 0.058, total 0.070 (published table). The rest
 * are the same rule at its ends, for a shaft, and at LMC. */
static void
test_bonus (void)
{
  static const struct {
    const char *lower, *upper;
    gboolean internal;
    TmModifier modifier;
    const char *actual, *bonus;
  } cases[] = {
    { "0.290", "0.310", TRUE, TM_MODIFIER_MMC, "0.297", "0.007" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_MMC, "2.018", "0.058" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_MMC, "1.960", "0" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_MMC, "1.950", "0" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_MMC, "2.040", "0.080" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_MMC, "2.050", "0.080" },
    { "1.960", "2.040", FALSE, TM_MODIFIER_MMC, "2.018", "0.022" },
    { "1.960", "2.040", FALSE, TM_MODIFIER_MMC, "1.900", "0.080" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_LMC, "2.018", "0.022" },
    { "1.960", "2.040", FALSE, TM_MODIFIER_LMC, "2.018", "0.058" },
    { "1.960", "2.040", TRUE, TM_MODIFIER_NONE, "2.018", "0" },
    { "1.960", NULL, TRUE, TM_MODIFIER_MMC, "2.018", "0.058" },
    { NULL, "2.040", TRUE, TM_MODIFIER_MMC, "2.018", "0" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmQuantity lower = quantity (cases[i].lower, TM_UNIT_IN), upper = quantity (cases[i].upper, TM_UNIT_IN);
      TmLimits limits = { lower.count, upper.count, lower.given, upper.given, FALSE };

      g_assert_cmpint (
          tm_position_bonus (&limits, cases[i].internal, cases[i].modifier, count_in (cases[i].actual), 1),
          ==, count_in (cases[i].bonus));
    }
}

/* The bonus of a mean is rounded down, never up. */
static void
test_bonus_rounds_down (void)
{
  const TmLimits limits = { 100, 200, TRUE, TRUE, FALSE };

  g_assert_cmpint (tm_position_bonus (&limits, TRUE, TM_MODIFIER_MMC, 320, 3), ==, 6);
  g_assert_cmpint (tm_position_bonus (&limits, TRUE, TM_MODIFIER_MMC, 299, 3), ==, 0);
  g_assert_cmpint (tm_position_bonus (&limits, FALSE, TM_MODIFIER_MMC, 320, 3), ==, 93);
}

/* Virtual condition: MMC less the tolerance for a bore, MMC and the tolerance for a shaft. */
static void
test_virtual_condition (void)
{
  const TmLimits limits = { 1960, 2040, TRUE, TRUE, FALSE };

  g_assert_cmpint (tm_position_virtual_condition (&limits, TRUE, 12), ==, 1948);
  g_assert_cmpint (tm_position_virtual_condition (&limits, FALSE, 12), ==, 2052);
}

/* The squared distance of a normal point from zero is noncentral χ² with two degrees of freedom: a sum
 * of χ² with 2 + 2j weighted by Poisson chances of mean v²/2 (closed form, other than the integral). */
static double
sum_rice (double v, double rho)
{
  double mean = v * v / 2, weight = exp (-mean), sum = 0;

  for (int j = 0; j < 400; j++)
    {
      sum += weight * gsl_cdf_chisq_P (rho * rho, 2 + 2 * j);
      weight *= mean / (j + 1);
    }
  return sum;
}

static void
test_rice (void)
{
  static const double distances[] = { 0, 0.3, 1, 2.5, 6, 12 };

  for (guint i = 0; i < G_N_ELEMENTS (distances); i++)
    for (double rho = 0.1; rho < 25; rho *= 1.3)
      assert_near (tm_position_probability (distances[i], rho, 1), sum_rice (distances[i], rho), 1e-8);
  /* At zero, Rayleigh: 1 - exp(-ρ²/2); the scale drops out. */
  assert_near (tm_position_probability (0, 5, 2), 1 - exp (-2.5 * 2.5 / 2), 1e-9);
  g_assert_cmpfloat (tm_position_probability (50, 1, 1), ==, 0);
  g_assert_cmpfloat (tm_position_probability (1, 50, 1), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/position/deviation", test_deviation);
  g_test_add_func ("/core/position/compare-is-exact", test_compare_is_exact);
  g_test_add_func ("/core/position/compare-of-means", test_compare_of_means);
  g_test_add_func ("/core/position/bonus", test_bonus);
  g_test_add_func ("/core/position/bonus-rounds-down", test_bonus_rounds_down);
  g_test_add_func ("/core/position/virtual-condition", test_virtual_condition);
  g_test_add_func ("/core/position/rice", test_rice);
  return g_test_run ();
}
