/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A small part of the benchmark of batches, with a fixed seed: simulated processes whose truth is known.
 */

#include <math.h>

#include "core-run-rules.h"
#include "support-batch.h"

#define BIT(rule) TM_RULE_BIT (TM_RULE_##rule)

/* Published run lengths: run rules C. W. Champ, W. H. Woodall, Technometrics 29 (1987), table 1; moving
 * average J. M. Lucas, M. S. Saccucci, Technometrics 32 (1990), table 3; cumulative sum J. M. Lucas, R. B.
 * Crosier, Technometrics 24 (1982), table 1.  Four standard errors of the simulation. */
static void
test_run_lengths (void)
{
  static const struct {
    SupportChartCase given;
    double shift, length;
  } cases[] = {
    { { .rules = BIT (BEYOND_3S) }, 0, 370.40 },
    { { .rules = BIT (BEYOND_3S) }, 1, 43.89 },
    { { .rules = BIT (BEYOND_3S) | BIT (8_ONE_SIDE) }, 0, 152.73 },
    { { .rules = BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) }, 1, 20.01 },
    { { .chart = SUPPORT_CHART_EWMA, .lambda = 0.5, .l = 3.071 }, 0, 500 },
    { { .chart = SUPPORT_CHART_EWMA, .lambda = 0.5, .l = 3.071 }, 1, 17.5 },
    { { .chart = SUPPORT_CHART_CUSUM, .k = 0.5, .h = 4 }, 0, 168 },
    { { .chart = SUPPORT_CHART_CUSUM, .k = 0.5, .h = 4 }, 1, 8.38 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double se, found = support_run_length (&cases[i].given, cases[i].shift, 400, 100 + i, &se);

      g_test_message ("%u: %.1f ± %.1f, published %.2f", i, found, se, cases[i].length);
      g_assert_cmpfloat (fabs (found - cases[i].length), <, 4 * se);
    }
}

/* 95 % promised; four standard errors of 400 tools are 4.4 %. */
static void
test_wear (void)
{
  SupportWear lines = support_wear_lines (400, 3), batches = support_wear_batches (400, 4);

  g_test_message ("lines %u of %u; batches %u of %u, %u shifted", lines.held, lines.given, batches.held,
                  batches.given, batches.changed);
  g_assert_cmpuint (lines.given, >=, 395);
  g_assert_cmpuint (lines.held, >=, 363);
  g_assert_cmpuint (lines.held, <=, 396);
  g_assert_cmpuint (batches.given, >=, 376);
  g_assert_cmpfloat (batches.held / (double)batches.given, >=, 0.906);
  g_assert_cmpuint (batches.changed, <=, 24);
}

/* A tool that wears is best followed by the rule; a machine that is on target is best left alone, and the
 * rule nearly does. */
static void
test_corrections (void)
{
  static const SupportMachine wearing = { "wears", 0, 0.1, 0 }, steady = { "steady", 0, 0, 0 };
  double never, every, rule, n;

  never = support_correct (&wearing, SUPPORT_NEVER, 20, 9, NULL);
  every = support_correct (&wearing, SUPPORT_EVERY, 20, 9, NULL);
  rule = support_correct (&wearing, SUPPORT_RULE, 20, 9, &n);
  g_test_message ("wearing: never %.2f, every piece %.2f, by the rule %.2f with %.1f corrections", never,
                  every, rule, n);
  g_assert_cmpfloat (rule, <, every);
  g_assert_cmpfloat (every, <, never);
  never = support_correct (&steady, SUPPORT_NEVER, 20, 9, NULL);
  every = support_correct (&steady, SUPPORT_EVERY, 20, 9, NULL);
  rule = support_correct (&steady, SUPPORT_RULE, 20, 9, &n);
  g_test_message ("steady: never %.2f, every piece %.2f, by the rule %.2f with %.1f corrections", never,
                  every, rule, n);
  g_assert_cmpfloat (rule, <, 1.08 * never);
  g_assert_cmpfloat (n, <, 1.6);             /* one, but for the simulation */
  g_assert_cmpfloat (every, >, 1.3 * never); /* √2 but for the simulation */
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch-run/run-lengths", test_run_lengths);
  g_test_add_func ("/batch-run/wear", test_wear);
  g_test_add_func ("/batch-run/corrections", test_corrections);
  return g_test_run ();
}
