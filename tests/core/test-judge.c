/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <math.h>

#include "judge-support.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

/* A gauge whose standard uncertainty is 1 µm: only an error limit, a/√3 = 1 µm. */
static void
add_one_micron (TmJob *job)
{
  TmGauge *gauge = add_gauge (job, "G1", NULL, "0.001732051");

  g_assert_true (gauge->error_limit.given);
}

/* J8: bore 25.000…25.021 (H7), u 1 µm: acceptance 25.00165…25.01935 under the guarded rule. Inputs and
 * answers recomputed; the 1.65 factor is ISO 14253-1:2017. */
static void
test_j8_guarded (void)
{
  static const struct {
    const char *value;
    TmVerdict verdict;
    TmSide side;
    double probability;
  } cases[] = {
    { "25.0195", TM_VERDICT_TOO_CLOSE, TM_SIDE_NONE, 0.93319 },
    { "25.0230", TM_VERDICT_OUT, TM_SIDE_METAL_GONE, 0.02275 },
    { "25.0193", TM_VERDICT_IN, TM_SIDE_NONE, 0.95543 },
    { "25.0017", TM_VERDICT_IN, TM_SIDE_NONE, 0.95543 },
    { "24.9980", TM_VERDICT_OUT, TM_SIDE_METAL_LEFT, 0.02275 },
    { "24.9990", TM_VERDICT_TOO_CLOSE, TM_SIDE_NONE, 0.15866 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore;

      add_one_micron (job);
      bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
      read_size (job, bore, "", cases[i].value, "");
      tm_judge (job, first_piece (job), bore, 1, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpint (judgement.side, ==, cases[i].side);
      assert_near (judgement.probability_in, cases[i].probability, 1e-5);
      g_assert_cmpint (judgement.settles, ==, TM_SETTLES);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/judge/j8-guarded", test_j8_guarded);
  return g_test_run ();
}
