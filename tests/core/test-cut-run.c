/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A few hundred simulated runs of cuts of the many that the benchmark makes.
 */

#include <math.h>

#include "support-cut-run.h"

#define RUNS 200
#define SEED 20261130

static const SupportCutCase cases[] = {
  { "fine", 25, 0.5, 0.3, 2, 1, 2, 200, 1, 0, 0 },
  { "ordinary", 52, 1.5, 0.8, 1, 0, 5, 200, 1, 0, 0 },
  { "coarse, tool known", 52, 3, 1.5, 3, 5, 2, 200, 1, 0, 10 },
};

static double
get_share (guint count, const SupportCutTally *tally)
{
  return (double)count / tally->runs;
}

/* Three standard deviations: what the number of runs cannot tell. */
static double
get_noise (double share, guint runs)
{
  return 3 * sqrt (share / runs);
}

static void
test_risk (void)
{
  static const double risks[] = { 0.01, 0.001 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (gsize r = 0; r < G_N_ELEMENTS (risks); r++)
      {
        SupportCutTally plan, all;

        support_cut_run (&cases[i], SUPPORT_CUT_PLAN, risks[r], RUNS, SEED, &plan);
        support_cut_run (&cases[i], SUPPORT_CUT_ALL, 0, RUNS, SEED, &all);
        g_test_message ("%s, risk %g: %.2f cuts, in %.3f, gone %.4f", cases[i].name, risks[r],
                        (double)plan.cuts / plan.runs, get_share (plan.in, &plan),
                        get_share (plan.gone, &plan));
        g_assert_cmpuint (plan.runs, ==, RUNS);
        g_assert_cmpuint (plan.in + plan.gone + plan.left, ==, RUNS);
        g_assert_cmpuint (plan.endless, ==, 0);
        g_assert_cmpfloat (get_share (plan.gone, &plan), <=, risks[r] + get_noise (risks[r], RUNS));
        g_assert_cmpfloat (plan.spent / plan.runs, <=, risks[r]);
        g_assert_cmpfloat (get_share (plan.gone, &plan), <, get_share (all.gone, &all));
      }
}

/* At the scrap of the hand that halves what is left: fewer cuts. */
static void
test_fewer_cuts (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SupportCutTally plan, half;
      double risk;

      support_cut_run (&cases[i], SUPPORT_CUT_HALF, 0, 20 * RUNS, SEED, &half);
      risk = MAX (get_share (half.gone, &half), 1.0 / half.runs);
      support_cut_run (&cases[i], SUPPORT_CUT_PLAN, risk, RUNS, SEED, &plan);
      g_test_message ("%s, risk %g: %.2f cuts for %.2f", cases[i].name, risk, (double)plan.cuts / plan.runs,
                      (double)half.cuts / half.runs);
      g_assert_cmpfloat (get_share (plan.gone, &plan), <=, risk + get_noise (risk, RUNS));
      g_assert_cmpfloat ((double)plan.cuts / plan.runs, <, (double)half.cuts / half.runs);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut-run/risk", test_risk);
  g_test_add_func ("/cut-run/fewer-cuts", test_fewer_cuts);
  return g_test_run ();
}
