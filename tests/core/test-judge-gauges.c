/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Judgements on what the gauges have behind them: calibrations and their due dates, checks, their range.
 */

#include <math.h>
#include <string.h>

#include "method-support.h"

static TmReading *
read_at (TmJob *job, TmFeature *feature, const char *value, const char *at)
{
  TmReading *reading = read_size (job, feature, "", value, "");

  reading->row.at = at;
  return reading;
}

static void
test_overdue (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmGauge *gauge = add_gauge (job, "G1", NULL, "0.001");
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
  TmReading *reading = read_at (job, bore, "25.010", "2026-05-02T00:10:00Z");

  gauge->calibrated = "2025-05-01";
  gauge->due = "2026-05-01";
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_OVERDUE);
  reading->overdue_reason = "the only one that reaches";
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
  reading->overdue_reason = "";
  reading->row.at = "2026-05-01T23:59:00Z";
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
}

/* A pin set past its date likewise, where its pins are what counts. */
static void
test_overdue_pins (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, NULL, NULL, "");
  g_auto (TmJudgement) judgement = { 0 };
  TmPinTrial *go, *nogo;

  bore->unit = TM_UNIT_IN;
  bore->lower = quantity ("0.4380", TM_UNIT_IN);
  bore->upper = quantity ("0.4390", TM_UNIT_IN);
  add_gauge (job, "PINS", NULL, NULL)->due = "2026-05-01";
  go = add_trial (job, bore, "0.4382", "X", TM_PIN_PLUS, TRUE);
  nogo = add_trial (job, bore, "0.4384", "X", TM_PIN_MINUS, FALSE);
  go->gauge = nogo->gauge = "PINS";
  go->row.at = "2026-05-01T10:00:00Z";
  nogo->row.at = "2026-05-03T10:00:00Z";
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_OVERDUE);
  nogo->overdue_reason = "the set is at the laboratory from Monday on";
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
}

/* A protractor is registered in the job's millimetres like every gauge; its known error is of an angle, and
 * corrects angles alone. */
static void
test_known_error_of_an_angle (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *angle, *width;

  add_gauge (job, "BP", NULL, NULL)->error_limit = quantity ("0.1", TM_UNIT_DEGREE);
  add_calibration (job, "BP", "2026-02-01", NULL, NULL)->error = quantity ("0.5", TM_UNIT_DEGREE);
  angle = add_feature (job, "1", TM_KIND_ANGLE, NULL, NULL, "BP");
  angle->unit = TM_UNIT_DEGREE;
  angle->lower = quantity ("29", TM_UNIT_DEGREE);
  angle->upper = quantity ("31", TM_UNIT_DEGREE);
  read_size (job, angle, "", "30.2", "")->value = quantity ("30.2", TM_UNIT_DEGREE);
  judge_one (job, angle, &judgement);
  assert_near (judgement.correction, -0.5 * (double)tm_unit_counts (TM_UNIT_DEGREE), 0.5);
  width = add_feature (job, "2", TM_KIND_LENGTH, "25.0", "25.1", "BP");
  read_size (job, width, "", "25.05", "");
  judge_one (job, width, &judgement);
  assert_near (judgement.correction, 0, 1e-12);
}

static void
test_out_of_range (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmGauge *gauge = add_gauge (job, "G1", NULL, "0.001");
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");

  read_size (job, bore, "", "25.010", "");
  gauge->range_to = quantity ("25", TM_UNIT_MM);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_OUT_OF_RANGE);
  gauge->range_to = quantity ("25.010", TM_UNIT_MM);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
}

/* Moved by more than its limit of error, where the shop asks then; not checked within the hours it sets. */
static void
test_check_asked (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;

  add_gauge (job, "G1", NULL, "0.001");
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
  read_at (job, bore, "25.010", "2026-05-02T10:00:00Z");
  add_check (job, "G1", "2026-05-02T08:00:00Z", "25.000", "25.0015");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
  assert_near (judgement.u, sqrt (1e12 / 3 + 2.25e12 / 3), 1);
  job->drift_rule = TM_DRIFT_ASK;
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_CHECK_ASKED);
  assert_near (judgement.u, 1e6 / sqrt (3), 1);
  job->drift_rule = TM_DRIFT_WIDEN;
  job->check_hours = quantity ("2", TM_UNIT_HARDNESS);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
  job->check_hours = quantity ("1.9", TM_UNIT_HARDNESS);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_CHECK_ASKED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/judge-gauges/overdue", test_overdue);
  g_test_add_func ("/core/judge-gauges/overdue-pins", test_overdue_pins);
  g_test_add_func ("/core/judge-gauges/known-error-of-an-angle", test_known_error_of_an_angle);
  g_test_add_func ("/core/judge-gauges/out-of-range", test_out_of_range);
  g_test_add_func ("/core/judge-gauges/check-asked", test_check_asked);
  return g_test_run ();
}
