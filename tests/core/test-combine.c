/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Several methods, and pins, on one bore.
 */

#include "core-combine.h"

#include <math.h>

#include "core-method.h"
#include "judge-support.h"

static TmPinTrial *
try_pin (TmJob *job, TmFeature *feature, const char *size, const char *pin_class, TmPinSign sign,
         gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = feature;
  trial->place = 1;
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = tm_job_intern (job, pin_class);
  trial->sign = sign;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  return trial;
}

static void
combine (TmJob *job, TmFeature *feature, const char *station, TmCombined *out)
{
  tm_combined_clear (out);
  tm_combine (job, first_piece (job), feature, 1, station, out);
}

/* Two methods with nothing in common: weights 1/u², by hand. */
static void
test_two_methods (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "A");
  g_auto (TmCombined) combined = { 0 };

  add_gauge (job, "G1", NULL, NULL);
  add_gauge (job, "G2", NULL, NULL);
  add_method (job, "A", "G1", "0.002", "30");
  add_method (job, "B", "G2", "0.004", "40");
  read_size (job, bore, "mouth/12", "25.010", "");
  read_size (job, bore, "mouth/12", "25.014", "B");
  read_size (job, bore, "mouth/12", "25.016", "B");
  read_size (job, bore, "bottom/12", "25.099", "B");
  combine (job, bore, "mouth/12", &combined);
  g_assert_cmpuint (combined.n_parts, ==, 2);
  g_assert_cmpstr (combined.parts[0].method_name, ==, "A");
  g_assert_cmpuint (combined.parts[1].n, ==, 2);
  assert_near (combined.parts[0].u, 2e6, 1);
  assert_near (combined.parts[1].u, 4e6 / sqrt (2), 1);
  /* w: 1/4 and 1/8. */
  assert_near (combined.parts[0].weight, 2.0 / 3, 1e-9);
  assert_near ((double)combined.reference + combined.size, 25.0116666667e9, 1e3);
  assert_near (combined.u, 1e6 * sqrt (8.0 / 3), 1);
  assert_near (combined.dof, 1 / (4.0 / 9 / 30 + 1.0 / 9 / 40), 1e-6);
  assert_near (combined.chi2, 25.0 / 12, 1e-6);
  g_assert_false (combined.disagree || combined.best_alone);
}

/* One micrometer reads two transfer gauges: its error is one, and does not average out.  By hand: the
 * parts of their own weigh, and the shared a/√3 is added whole. */
static void
test_shared_micrometer (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "Telescoping");
  g_auto (TmCombined) combined = { 0 };

  add_gauge (job, "T1", NULL, NULL);
  add_gauge (job, "S1", NULL, NULL);
  add_gauge (job, "MIC", NULL, "0.005196152");
  add_method (job, "Telescoping", "T1,MIC", "0.004", "20");
  add_method (job, "Small hole", "S1,MIC", "0.002", "20");
  read_size (job, bore, "", "25.010", "Telescoping");
  read_size (job, bore, "", "25.012", "Small hole");
  combine (job, bore, "", &combined);
  g_assert_cmpuint (combined.n_parts, ==, 2);
  assert_near (combined.parts[0].weight, 0.2, 1e-6);
  assert_near (combined.u, 1e6 * sqrt (16.0 / 5 + 9), 10);
  /* u⁴ over the two repeatabilities; the micrometer's error is known. */
  assert_near (combined.dof, pow (16.0 / 5 + 9, 2) / ((pow (0.8, 4) + pow (1.6, 4)) / 20), 1e-2);
}

static void
test_disagreement (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "A");
  g_auto (TmCombined) combined = { 0 };

  for (guint i = 0; i < 3; i++)
    {
      const char *tags[] = { "G1", "G2", "G3" }, *names[] = { "A", "B", "C" };
      const char *sizes[] = { "25.010", "25.011", "25.025" };

      add_gauge (job, tags[i], NULL, NULL);
      add_method (job, names[i], tags[i], "0.002", "30");
      read_size (job, bore, "", sizes[i], names[i]);
    }
  combine (job, bore, "", &combined);
  g_assert_true (combined.disagree);
  g_assert_cmpint (combined.apart, ==, 2);
  assert_near (combined.u, combined.birge * 2e6 / sqrt (3), 1);
  g_assert_cmpfloat (combined.p, <, 0.05);
}

/* A method that nobody knows is shown, and left out. */
static void
test_unknown_method (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  g_auto (TmCombined) combined = { 0 };

  add_gauge (job, "G1", NULL, NULL);
  add_method (job, "A", "G1", "0.002", "30");
  combine (job, bore, "", &combined);
  g_assert_cmpuint (combined.n_parts, ==, 0);
  g_assert_true (isnan (combined.size) && isnan (combined.u));
  read_size (job, bore, "", "25.040", "");
  combine (job, bore, "", &combined);
  g_assert_cmpuint (combined.n_parts, ==, 1);
  g_assert_true (isnan (combined.size));
  read_size (job, bore, "", "25.010", "A");
  combine (job, bore, "", &combined);
  g_assert_cmpuint (combined.n_parts, ==, 2);
  assert_near (combined.parts[0].weight, 0, 1e-15);
  assert_near ((double)combined.reference + combined.size, 25.010e9, 1);
  g_assert_true (isnan (combined.chi2));
}

/* Readings that were withdrawn or corrected do not count. */
static void
test_withdrawn (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "A");
  TmReading *slip;
  g_auto (TmCombined) combined = { 0 };

  add_gauge (job, "G1", NULL, NULL);
  add_method (job, "A", "G1", "0.002", "30");
  slip = read_size (job, bore, "", "26.010", "A");
  read_size (job, bore, "", "25.010", "A");
  g_assert_cmpint (tm_job_withdraw (job, &slip->row, "AB", "2026-05-04T09:00:00Z", "slip"), ==, TM_ADD_OK);
  combine (job, bore, "", &combined);
  g_assert_cmpuint (combined.parts[0].n, ==, 1);
  assert_near ((double)combined.reference + combined.size, 25.010e9, 1);
}

/* -------- Pins -------- */

static void
gather (TmJob *job, TmFeature *feature, gboolean with_readings, TmPinEvidence *out)
{
  tm_pin_evidence_clear (out);
  g_assert_true (tm_pin_evidence (job, first_piece (job), feature, 1, with_readings, out));
}

/* A job from elsewhere may hold a trial on a shaft: a pin of 12.02 that "went" does not make it larger. */
static void
test_no_pins_on_shaft (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *shaft = add_feature (job, "1", TM_KIND_SHAFT, "12.005", "12.015", "");
  g_auto (TmPinEvidence) evidence = { 0 };
  g_auto (TmJudgement) judgement = { 0 };

  try_pin (job, shaft, "12.020", "Z", TM_PIN_PLUS, TRUE);
  g_assert_false (tm_pin_evidence (job, first_piece (job), shaft, 1, TRUE, &evidence));
  tm_judge (job, first_piece (job), shaft, 1, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);
}

static void
test_pins_alone (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "12.005", "12.015", "");
  TmFeature *shaft = add_feature (job, "2", TM_KIND_ATTRIBUTE, NULL, NULL, "");
  TmPinTrial *slip;
  g_auto (TmPinEvidence) evidence = { 0 };

  g_assert_false (tm_pin_evidence (job, first_piece (job), bore, 1, TRUE, &evidence));
  slip = try_pin (job, bore, "12.014", "Z", TM_PIN_PLUS, TRUE);
  try_pin (job, shaft, "12.014", "Z", TM_PIN_PLUS, TRUE);
  tm_job_withdraw (job, &slip->row, "AB", "2026-05-04T09:00:00Z", "wrong pin");
  g_assert_false (tm_pin_evidence (job, first_piece (job), bore, 1, TRUE, &evidence));
  g_assert_false (tm_pin_evidence (job, first_piece (job), shaft, 1, TRUE, &evidence));
  try_pin (job, bore, "12.006", "Z", TM_PIN_PLUS, TRUE);
  try_pin (job, bore, "12.013", "Z", TM_PIN_MINUS, FALSE);
  try_pin (job, bore, "900", "Z", TM_PIN_MINUS, FALSE);
  gather (job, bore, TRUE, &evidence);
  g_assert_cmpuint (evidence.result.n_pins, ==, 2);
  g_assert_cmpint (evidence.result.low, ==, quantity ("12.006", TM_UNIT_MM).count);
  g_assert_cmpint (evidence.result.high, ==, quantity ("12.014", TM_UNIT_MM).count);
  g_assert_true (evidence.result.proves_band && evidence.result.has_estimate);
  g_assert_false (evidence.form_assumed);
  job->entry_clearance = quantity ("0.003", TM_UNIT_MM);
  gather (job, bore, TRUE, &evidence);
  g_assert_cmpint (evidence.result.high, ==, quantity ("12.016", TM_UNIT_MM).count);
  g_assert_cmpint (evidence.result.open_above, ==, quantity ("0.001", TM_UNIT_MM).count);
}

/* The smallest station stands beside the pins, with the form stated, seen, or assumed. */
static void
test_pins_and_readings (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "12.000", "12.018", "A");
  g_auto (TmPinEvidence) evidence = { 0 };
  double alone;

  add_gauge (job, "G1", NULL, NULL);
  add_method (job, "A", "G1", "0.003", "30");
  try_pin (job, bore, "12.006", "X", TM_PIN_PLUS, TRUE);
  gather (job, bore, TRUE, &evidence);
  g_assert_false (evidence.result.has_estimate);
  read_size (job, bore, "mouth/12", "12.009", "");
  gather (job, bore, TRUE, &evidence);
  g_assert_true (evidence.result.has_estimate && evidence.form_assumed);
  assert_near (evidence.form, 3e6, 1);
  alone = evidence.result.u;
  g_assert_cmpfloat (alone, <, 3e6);
  g_assert_cmpfloat (evidence.result.estimate + (double)evidence.result.reference, >, 12.006e9);
  read_size (job, bore, "mouth/3", "12.015", "");
  read_size (job, bore, "bottom/12", "12.020", "");
  gather (job, bore, TRUE, &evidence);
  g_assert_false (evidence.form_assumed);
  assert_near (evidence.form, 6e6, 1);
  bore->form_unseen = quantity ("0.001", TM_UNIT_MM);
  gather (job, bore, TRUE, &evidence);
  g_assert_false (evidence.form_assumed);
  assert_near (evidence.form, 1e6, 1);
  /* The estimate tightens with a no-go pin. */
  try_pin (job, bore, "12.010", "X", TM_PIN_MINUS, FALSE);
  gather (job, bore, TRUE, &evidence);
  g_assert_cmpfloat (evidence.result.u, <, alone);
  g_assert_true (evidence.result.proves_band);
  gather (job, bore, FALSE, &evidence);
  assert_near (evidence.form, 0, 1e-15);
  /* A no-go pin far below the readings cannot be true beside them. */
  bore->form_unseen = quantity ("0", TM_UNIT_MM);
  read_size (job, bore, "mouth/12", "12.099", "");
  read_size (job, bore, "mouth/3", "12.099", "");
  read_size (job, bore, "mouth/3", "12.199", "");
  read_size (job, bore, "bottom/12", "12.199", "");
  gather (job, bore, TRUE, &evidence);
  g_assert_true (evidence.result.contradiction);
  g_assert_nonnull (evidence.result.contradicting[0]);
  g_assert_null (evidence.result.contradicting[1]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/combine/two-methods", test_two_methods);
  g_test_add_func ("/combine/shared-micrometer", test_shared_micrometer);
  g_test_add_func ("/combine/disagreement", test_disagreement);
  g_test_add_func ("/combine/unknown-method", test_unknown_method);
  g_test_add_func ("/combine/withdrawn", test_withdrawn);
  g_test_add_func ("/combine/pins-alone", test_pins_alone);
  g_test_add_func ("/combine/no-pins-on-shaft", test_no_pins_on_shaft);
  g_test_add_func ("/combine/pins-and-readings", test_pins_and_readings);

  return g_test_run ();
}
