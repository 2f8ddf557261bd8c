/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Judging true position: the bonus of a size, and guards on a distance.
 */

#include <math.h>
#include <string.h>

#include "core-judge-budget.h"
#include "core-position.h"
#include "judge-support.h"

static void
make_hole (TmJob *job, const char *size, TmFeature **position)
{
  TmFeature *hole = add_feature (job, "1", TM_KIND_BORE, "6.4", "6.6", "G1");

  *position = add_feature (job, "2", TM_KIND_POSITION, NULL, "0.2", "G1");
  (*position)->modifier = TM_MODIFIER_MMC;
  (*position)->size_feature = hole->balloon;
  if (size)
    {
      read_size (job, hole, "mouth", size, "");
      read_size (job, hole, "bottom", "6.6", "");
    }
}

/* dx 0.12, dy 0.09: 0.300 exactly; 0.2 at MMC with the smallest bore 6.5 allows 0.3 (plain comparison:
 * the gauge is unknown in the first job). */
static void
test_position_bonus (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
  g_auto (TmJudgement) judgement = { 0 };
  g_autofree char *text = NULL;
  TmFeature *position;

  make_hole (job, "6.5", &position);
  read_offsets (job, position, "0.12", "-0.09");
  judge_one (job, position, &judgement);
  text = tm_judgement_size_text (&judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.limits.upper, ==, 300000000);
  g_assert_cmpstr (text, ==, "0.300");
  g_assert_cmpint (judgement.side, ==, TM_SIDE_NONE);
}

static void
try_pin (TmJob *job, const char *size, TmPinSign sign, gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = tm_job_find_feature (job, "1");
  trial->place = 1;
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = "X";
  trial->sign = sign;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
}

/* The mating size counts where pins tell it: between 6.500 and 6.511 whatever the hole reads across; at LMC
 * the readings do. */
static void
test_bonus_of_mating_size (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmComponent lines[TM_METHOD_MAX_LINES];
  TmFeature *position;
  TmBonus bonus;
  guint n;

  add_gauge (job, "G1", NULL, "0.100");
  make_hole (job, "6.56", &position);
  bonus = tm_position_bonus_of (job, first_piece (job), position, 1);
  g_assert_cmpint (bonus.bonus, ==, 160000000);
  g_assert_false (bonus.mating);
  try_pin (job, "6.5", TM_PIN_PLUS, TRUE);
  try_pin (job, "6.51", TM_PIN_MINUS, FALSE);
  bonus = tm_position_bonus_of (job, first_piece (job), position, 1);
  g_assert_true (bonus.measured && bonus.mating);
  g_assert_cmpint (bonus.bonus, >, 100000000);
  g_assert_cmpint (bonus.bonus, <, 111000000);
  g_assert_cmpfloat (bonus.u, >, 2e6);
  g_assert_cmpfloat (bonus.u, <, 4e6);
  read_offsets (job, position, "0.01", "0");
  judge_one (job, position, &judgement);
  n = tm_judgement_lines (job, &judgement, lines);
  g_assert_cmpstr (lines[n - 1].source, ==, "the mating size, by pins");
  position->modifier = TM_MODIFIER_LMC;
  bonus = tm_position_bonus_of (job, first_piece (job), position, 1);
  g_assert_false (bonus.mating);
}

static void
test_position_one_count_beyond (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
  g_auto (TmJudgement) judgement = { 0 };
  g_autofree char *text = NULL;
  TmFeature *position;

  make_hole (job, "6.5", &position);
  read_offsets (job, position, "0.120000001", "-0.09");
  judge_one (job, position, &judgement);
  text = tm_judgement_size_text (&judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpstr (text, ==, "0.3000000020");
}

/* The uncertainty of the allowance includes the size's: 2² u_xy² + u_size², u 1 µm each. */
static void
test_position_uncertainty (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *position;

  add_one_micron (job);
  make_hole (job, "6.5", &position);
  read_offsets (job, position, "0.1", "0.05");
  judge_one (job, position, &judgement);
  assert_near (judgement.u, sqrt (5) * 1e6, 2);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpfloat (judgement.probability_in, >, 0.999);
}

/* Without the size: in stands, what the largest bonus could still bring in is not called out, what it
 * cannot is. */
static void
test_position_without_size (void)
{
  static const struct {
    const char *dx;
    TmVerdict verdict;
  } cases[] = {
    { "0.1", TM_VERDICT_IN },
    { "0.15", TM_VERDICT_NOT_MEASURED },
    { "0.2", TM_VERDICT_NOT_MEASURED },
    { "0.21", TM_VERDICT_OUT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *position;

      make_hole (job, NULL, &position);
      read_offsets (job, position, cases[i].dx, "0");
      judge_one (job, position, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpint (judgement.why, ==, TM_WHY_NO_SIZE);
      position->size_feature = "";
      judge_one (job, position, &judgement);
      g_assert_cmpint (judgement.verdict, ==, i == 0 ? TM_VERDICT_IN : TM_VERDICT_OUT);
      g_assert_cmpint (judgement.why, ==, TM_WHY_NO_SIZE);
    }
}

/* Near zero the guard is that of the Rice distribution: at U - g, P(in) is 0.95. */
static void
test_position_guard (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *position;
  g_autofree char *edge = NULL;

  add_one_micron (job);
  position = add_feature (job, "2", TM_KIND_POSITION, NULL, "0.010", "G1");
  read_offsets (job, position, "0", "0");
  judge_one (job, position, &judgement);
  /* u 2 µm: 1 - exp(-(10/2)²/2). */
  assert_near (judgement.probability_in, 1 - exp (-12.5), 1e-6);
  g_assert_cmpint (judgement.guard, >, judgement.guard_out);
  edge = tm_count_format ((10000000 - judgement.guard) / 2, TM_UNIT_MM, 9);
  tm_job_withdraw (job, &((TmReading *)judgement.sizes.stations[0].last)->row, "", "", "again");
  read_offsets (job, position, edge, "0");
  judge_one (job, position, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  assert_near (judgement.probability_in, 0.95, 1e-5);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/judge/position-bonus", test_position_bonus);
  g_test_add_func ("/core/judge/bonus-of-mating-size", test_bonus_of_mating_size);
  g_test_add_func ("/core/judge/position-one-count-beyond", test_position_one_count_beyond);
  g_test_add_func ("/core/judge/position-uncertainty", test_position_uncertainty);
  g_test_add_func ("/core/judge/position-without-size", test_position_without_size);
  g_test_add_func ("/core/judge/position-guard", test_position_guard);
  return g_test_run ();
}
