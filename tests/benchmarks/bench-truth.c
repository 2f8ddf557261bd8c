/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-truth: whether what the program states about 100,000 simulated bores is true of them.
 */

#include <stdio.h>

#include "support-truth.h"

#define N_BORES 100000
#define SEED    20260914

/* Three standard deviations of a share of 5 % among N_BORES: what the simulation itself cannot tell. */
#define NOISE 0.0021

static const guint repeats[] = { 1, 2, 3, 5 };
static gboolean failed;

static char *
describe (const TmTruthCase *given)
{
  if (given->only_repeats)
    return g_strdup ("repeats, gauge exact");
  if (given->dof_from == 0)
    return g_strdup ("repeats alone");
  return g_strdup_printf ("pooled, %u to %u dof", given->dof_from, given->dof_to);
}

static void
print_share (const char *what, const TmTruthCase *given, double share, double from, double to)
{
  gboolean good = share >= from && share <= to;
  g_autofree char *kind = describe (given);

  printf ("  %-32s n = %u  %-21s %6.2f %%   wanted %5.2f to %6.2f %%%s\n", what, given->repeats, kind,
          100 * share, 100 * from, 100 * to, good ? "" : "   MISSED");
  fflush (stdout);
  failed = failed || !good;
}

typedef double (*CoverFunc) (TmTruth *truth, const TmTruthCase *given, guint n);

/* One line for each number of repeats; one reading alone has no repeatability of its own. */
static void
print_cover (TmTruth *truth, TmTruthCase given, const char *what, CoverFunc cover, double from, double to)
{
  for (gsize i = given.dof_from == 0; i < G_N_ELEMENTS (repeats); i++)
    {
      given.repeats = repeats[i];
      print_share (what, &given, cover (truth, &given, N_BORES), from, to);
    }
}

static void
print_wrong (TmTruth *truth, TmTruthCase given, const char *what, TmTruthRule rule, gboolean beyond,
             double from, double to)
{
  for (gsize i = given.dof_from == 0; i < G_N_ELEMENTS (repeats); i++)
    {
      given.repeats = repeats[i];
      print_share (what, &given, tm_truth_wrongly_in (truth, &given, N_BORES, rule, beyond), from, to);
    }
}

static const TmTruthCase pooled = { 0, 10, 40, FALSE };
static const TmTruthCase few = { 0, 2, 9, FALSE };
static const TmTruthCase alone = { 0, 0, 0, FALSE };
static const TmTruthCase exact = { 0, 0, 0, TRUE };

static void
print_intervals (TmTruth *truth)
{
  printf ("\nTruth inside the stated 95 %% interval\n");
  print_cover (truth, pooled, "one method", tm_truth_cover_one, 0.94, 0.97);
  print_cover (truth, pooled, "three methods", tm_truth_cover_combined, 0.94, 0.97);
  print_cover (truth, pooled, "three methods and pins", tm_truth_cover_pins, 0.94, 0.97);
  printf ("\nThe same with few degrees of freedom: Student's t and Meier's correction promise 95 %%\n");
  print_cover (truth, exact, "one method, by t", tm_truth_cover_one, 0.95 - NOISE, 0.95 + NOISE);
  print_cover (truth, few, "one method, by t", tm_truth_cover_one, 0.94, 0.97);
  print_cover (truth, few, "three methods, by t and Meier", tm_truth_cover_combined, 0.94, 0.97);
  print_cover (truth, alone, "three methods, by t and Meier", tm_truth_cover_combined, 0.93, 0.97);
  /* Welch-Satterthwaite itself falls short where one of two parts of a size has one degree of freedom. */
  print_cover (truth, alone, "one method, by t", tm_truth_cover_one, 0.90, 0.97);
}

static void
print_verdicts (TmTruth *truth)
{
  printf ("\nTruly at a limit or up to 4 µm beyond, judged in\n");
  print_wrong (truth, pooled, "guarded", TM_RULE_GUARDED, TRUE, 0, 0.05);
  print_wrong (truth, few, "guarded", TM_RULE_GUARDED, TRUE, 0, 0.05);
  print_wrong (truth, alone, "guarded", TM_RULE_GUARDED, TRUE, 0, 0.05);
  print_wrong (truth, pooled, "guarded, three methods", TM_RULE_COMBINED, TRUE, 0, 0.05);
  print_wrong (truth, pooled, "guarded, three methods and pins", TM_RULE_PINS, TRUE, 0, 0.05);
  printf ("\nTruly at a limit, the worst that can be: 5 %% by design, and what the simulation cannot tell\n");
  print_wrong (truth, pooled, "guarded", TM_RULE_GUARDED, FALSE, 0, 0.05 + NOISE);
  printf ("\nThe same with the guard taken away: the check must fail\n");
  print_wrong (truth, pooled, "plain, at or beyond a limit", TM_RULE_PLAIN, TRUE, 0.05, 1);
  print_wrong (truth, pooled, "plain, at a limit", TM_RULE_PLAIN, FALSE, 0.05, 1);
}

int
main (void)
{
  g_autoptr (TmTruth) truth = tm_truth_new (SEED);

  printf ("%d simulated bores a line\n", N_BORES);
  print_intervals (truth);
  print_verdicts (truth);
  return failed;
}
