/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Summary statistics against the NIST Statistical Reference Datasets (public domain; tests/data).
 */

#include <math.h>
#include <string.h>

#include "core-statistics.h"

static GArray *
load_column (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("TM_TEST_DATA"), "strd_univariate", name, NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  GArray *values = g_array_new (FALSE, FALSE, sizeof (double));

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      double value;

      if (lines[i][0] == '#' || lines[i][0] == '\0')
        continue;
      value = g_ascii_strtod (lines[i], NULL);
      g_array_append_val (values, value);
    }
  return values;
}

/* Log relative error: the number of agreeing digits, at most 15. */
static double
find_digits (double found, double certified)
{
  double error = fabs (found - certified) / fabs (certified);

  return error > 0 ? MIN (15, -log10 (error)) : 15;
}

/* Certified values as published.  The digits demanded are 14 wherever the data and the certified
 * value can be held in a double; the constructed sets cannot: 1.1, 1.2 and 1.3 are each off by up to
 * 1e-16, which leaves 14 to 15 digits of a spread of 0.1, and 10000000.2 is off by up to 1e-9, which
 * leaves 8 digits of the spread and the correlation whatever is computed from it. */
static void
test_certified (void)
{
  static const struct {
    const char *file;
    gsize count;
    double mean, sd, lag1;
    double digits_mean, digits_spread;
  } cases[] = {
    { "Lew.txt", 200, -177.435000000000, 277.332168044316, -0.307304800605679, 14, 14 },
    { "Mavro.txt", 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248, 14, 13 },
    { "NumAcc1.txt", 3, 10000002, 1, -0.5, 15, 15 },
    { "NumAcc2.txt", 1001, 1.2, 0.1, -0.999, 14, 14 },
    { "NumAcc4.txt", 1001, 10000000.2, 0.1, -0.999, 14, 8 },
    { "PiDigits.txt", 5000, 4.53480000000000, 2.86733906028871, -0.00355099287237972, 14, 14 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GArray) values = load_column (cases[i].file);
      TmSummary summary;
      double mean, sd, lag1;

      g_assert_cmpuint (values->len, ==, cases[i].count);
      g_assert_cmpint (tm_summary (&g_array_index (values, double, 0), values->len, &summary), ==,
                       TM_SUMMARY_OK);
      mean = find_digits (summary.mean, cases[i].mean);
      sd = find_digits (summary.standard_deviation, cases[i].sd);
      lag1 = find_digits (summary.lag1, cases[i].lag1);
      g_test_message ("%s: log relative error mean %.1f, standard deviation %.1f, lag 1 %.1f", cases[i].file,
                      mean, sd, lag1);
      g_assert_cmpuint (summary.count, ==, cases[i].count);
      g_assert_cmpfloat (mean, >=, cases[i].digits_mean);
      g_assert_cmpfloat (sd, >=, cases[i].digits_spread);
      g_assert_cmpfloat (lag1, >=, cases[i].digits_spread);
    }
}

static void
test_degenerate (void)
{
  const double one[] = { 25.012 }, same[] = { 0.1, 0.1, 0.1 };
  TmSummary summary;

  g_assert_cmpint (tm_summary (NULL, 0, &summary), ==, TM_SUMMARY_EMPTY);
  g_assert_cmpuint (summary.count, ==, 0);
  g_assert_true (isnan (summary.mean));
  g_assert_cmpint (tm_summary (one, 1, &summary), ==, TM_SUMMARY_ONE);
  g_assert_true (summary.mean == 25.012 && isnan (summary.standard_deviation) && isnan (summary.lag1));
  g_assert_cmpint (tm_summary (same, 3, &summary), ==, TM_SUMMARY_CONSTANT);
  g_assert_true (summary.mean == 0.1 && summary.standard_deviation == 0 && isnan (summary.lag1));
}

/* A large offset takes nothing from the spread: whole numbers below 2^53, so the answer is exact
 * (by hand: s² of 1, 2, 4 is 7/3; lag 1 is -1/42 from d = -4/3, -1/3, 5/3; Σdd' = 4/9 - 5/9; Σd² = 42/9). */
static void
test_offset (void)
{
  const double offsets[] = { 0, 1e6, 1e12, -4e15 };

  for (guint i = 0; i < G_N_ELEMENTS (offsets); i++)
    {
      const double values[] = { offsets[i] + 1, offsets[i] + 2, offsets[i] + 4 };
      TmSummary summary;

      tm_summary (values, 3, &summary);
      g_assert_cmpfloat_with_epsilon (summary.standard_deviation, sqrt (7.0 / 3), 1e-15);
      g_assert_cmpfloat_with_epsilon (summary.lag1, -1.0 / 42, 1e-16);
      g_assert_true (summary.minimum == values[0] && summary.maximum == values[2]);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/statistics/certified", test_certified);
  g_test_add_func ("/core/statistics/degenerate", test_degenerate);
  g_test_add_func ("/core/statistics/offset", test_offset);
  return g_test_run ();
}
