/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Simulated bores whose truth the test alone knows: what is stated about them must be true of them.  A
 * modest number for every run; the benchmark "truth" takes 100,000 a line.
 */

#include "support-truth.h"

#include <math.h>

#define N_BORES 6000
#define SEED    1953
/* Three standard deviations of a share of 5 % among so many. */
#define NOISE (3 * sqrt (0.05 * 0.95 / N_BORES))

static const guint repeats[] = { 1, 2, 3, 5 };

static void
assert_cover (double share, double from, double to)
{
  g_test_message ("%.2f %%", 100 * share);
  g_assert_cmpfloat (share, >, from - NOISE);
  g_assert_cmpfloat (share, <, to + NOISE);
}

/* With a pooled repeatability of ten or more degrees of freedom. */
static void
test_pooled (void)
{
  g_autoptr (TmTruth) truth = tm_truth_new (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (repeats); i++)
    {
      const TmTruthCase given = { repeats[i], 10, 40, FALSE };

      assert_cover (tm_truth_cover_one (truth, &given, N_BORES), 0.94, 0.97);
      assert_cover (tm_truth_cover_combined (truth, &given, N_BORES), 0.94, 0.97);
      assert_cover (tm_truth_cover_pins (truth, &given, N_BORES), 0.94, 0.97);
    }
}

/* With fewer: Student's t is exact where the repeats are all there is; beside other components, and with
 * Meier's correction over several methods, it is close. */
static void
test_few (void)
{
  g_autoptr (TmTruth) truth = tm_truth_new (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (repeats); i++)
    {
      const TmTruthCase few = { repeats[i], 2, 9, FALSE };
      const TmTruthCase exact = { repeats[i], 0, 0, TRUE };

      assert_cover (tm_truth_cover_one (truth, &few, N_BORES), 0.94, 0.97);
      assert_cover (tm_truth_cover_combined (truth, &few, N_BORES), 0.94, 0.97);
      if (repeats[i] > 1)
        assert_cover (tm_truth_cover_one (truth, &exact, N_BORES), 0.95, 0.95);
    }
}

/* The check that the guarded rule passes and the plain one fails. */
static gboolean
is_safe (TmTruth *truth, guint n_repeats, TmTruthRule rule)
{
  const TmTruthCase given = { n_repeats, 10, 40, FALSE };
  double share = tm_truth_wrongly_in (truth, &given, N_BORES, rule, TRUE);

  g_test_message ("n = %u: %.2f %% judged in", n_repeats, 100 * share);
  return share <= 0.05;
}

static void
test_guard (void)
{
  g_autoptr (TmTruth) truth = tm_truth_new (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (repeats); i++)
    {
      const TmTruthCase given = { repeats[i], 10, 40, FALSE };

      g_assert_true (is_safe (truth, repeats[i], TM_RULE_GUARDED));
      g_assert_true (is_safe (truth, repeats[i], TM_RULE_COMBINED));
      g_assert_true (is_safe (truth, repeats[i], TM_RULE_PINS));
      g_assert_cmpfloat (tm_truth_wrongly_in (truth, &given, N_BORES, TM_RULE_GUARDED, FALSE), <,
                         0.05 + NOISE);
    }
}

static void
test_guard_taken_away (void)
{
  g_autoptr (TmTruth) truth = tm_truth_new (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (repeats); i++)
    g_assert_false (is_safe (truth, repeats[i], TM_RULE_PLAIN));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/truth/pooled", test_pooled);
  g_test_add_func ("/truth/few", test_few);
  g_test_add_func ("/truth/guard", test_guard);
  g_test_add_func ("/truth/guard-taken-away", test_guard_taken_away);

  return g_test_run ();
}
