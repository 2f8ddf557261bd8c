/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-gauge.h"

#include "judge-support.h"

static TmCalibration *
add_calibration (TmJob *job, const char *tag, const char *date, const char *due, const char *outcome)
{
  TmCalibration *calibration = tm_calibration_new ();

  calibration->gauge = tm_job_intern (job, tag);
  calibration->date = tm_job_intern (job, date);
  calibration->due = tm_job_intern (job, due);
  calibration->outcome = tm_job_intern (job, outcome);
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  return calibration;
}

static void
add_check (TmJob *job, const char *tag, const char *standard, const char *reading, const char *at)
{
  TmCheck *check = tm_check_new ();

  check->gauge = tm_job_intern (job, tag);
  check->standard = quantity (standard, TM_UNIT_MM);
  check->reading = quantity (reading, TM_UNIT_MM);
  check->at = tm_job_intern (job, at);
  g_assert_cmpint (tm_job_add_check (job, check), ==, TM_ADD_OK);
}

/* A gauge is good on its due date and overdue the day after (common practice). */
static void
test_due (void)
{
  static const struct {
    const char *calibrated, *due, *at;
    TmDue expected;
  } cases[] = {
    { "2026-03-01", "2027-03-01", "2027-03-01", TM_DUE_SOON },
    { "2026-03-01", "2027-03-01", "2027-03-02", TM_DUE_OVERDUE },
    { "2026-03-01", "2027-03-01", "2027-03-02T00:00:00Z", TM_DUE_OVERDUE },
    { "2026-03-01", "2027-03-01", "2027-03-01T23:59:59Z", TM_DUE_SOON },
    { "2026-03-01", "2027-03-01", "2027-01-30", TM_DUE_SOON },    /* 30 days before */
    { "2026-03-01", "2027-03-01", "2027-01-29", TM_DUE_GOOD },    /* 31 */
    { "2026-03-01", "2027-03-01", "2026-02-28", TM_DUE_UNKNOWN }, /* not calibrated yet */
    { "", "2027-03-01", "2026-02-28", TM_DUE_GOOD },
    { "2026-03-01", "", "2026-05-01", TM_DUE_UNKNOWN },
    { "2026-03-01", "2027-03-01", "", TM_DUE_UNKNOWN },
    { "2026-03-01", "2027-03-01", NULL, TM_DUE_UNKNOWN },
    { "2026-03-01", "soon", "2026-05-01", TM_DUE_UNKNOWN },
    { "2026-03-01", "2027-02-30", "2026-05-01", TM_DUE_UNKNOWN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");

      gauge->calibrated = cases[i].calibrated;
      gauge->due = cases[i].due;
      g_test_message ("%s at %s", cases[i].due, cases[i].at);
      g_assert_cmpint (tm_gauge_due (job, gauge, cases[i].at), ==, cases[i].expected);
      g_assert_cmpstr (tm_due_word (cases[i].expected), !=, "");
    }
}

/* Each moment has the calibration that was in force then, not the newest one. */
static void
test_history (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  const TmCalibration *first, *bad, *third;

  add_gauge (job, "M-2", "0.001", "0.002");
  third = add_calibration (job, "M-1", "2026-04-10", "2027-04-10", "good");
  first = add_calibration (job, "M-1", "2025-03-01", "2026-03-01", "");
  bad = add_calibration (job, "M-1", "2026-04-01", "", "bad");
  add_calibration (job, "M-2", "2026-05-01", "2030-05-01", "good");
  gauge->calibrated = "2026-04-10";
  gauge->due = "2027-04-10";

  g_assert_null (tm_calibration_at (job, "M-1", "2025-02-28"));
  g_assert_true (tm_calibration_at (job, "M-1", "2025-03-01") == first);
  g_assert_true (tm_calibration_at (job, "M-1", "2026-04-05T08:00:00Z") == first);
  g_assert_true (tm_calibration_at (job, "M-1", "2026-04-10T00:00:00Z") == third);
  g_assert_true (tm_calibration_at (job, "M-1", NULL) == third);
  g_assert_true (tm_calibration_at (job, "M-1", "") == third);

  g_assert_cmpint (tm_gauge_due (job, gauge, "2025-02-28"), ==, TM_DUE_UNKNOWN);
  g_assert_cmpint (tm_gauge_due (job, gauge, "2025-06-01"), ==, TM_DUE_GOOD);
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-03-02"), ==, TM_DUE_OVERDUE);
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-04-01T09:00:00Z"), ==, TM_DUE_OVERDUE);
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-04-10"), ==, TM_DUE_GOOD);

  g_assert_null (tm_gauge_found_bad (job, "M-1", "2026-03-31"));
  g_assert_true (tm_gauge_found_bad (job, "M-1", "2026-04-09") == bad);
  g_assert_null (tm_gauge_found_bad (job, "M-1", "2026-04-10"));
  g_assert_null (tm_gauge_found_bad (job, "M-1", NULL));
  g_assert_cmpstr (tm_gauge_due_date (job, gauge, "2025-06-01"), ==, "2026-03-01");
  g_assert_cmpstr (tm_gauge_due_date (job, gauge, NULL), ==, "2027-04-10");
}

/* A gauge found bad within its interval is not good, until a newer date on the gauge says so. */
static void
test_found_bad (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");

  gauge->calibrated = "2026-01-10";
  gauge->due = "2027-01-10";
  add_calibration (job, "M-1", "2026-06-01", "", "bad");
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-05-31"), ==, TM_DUE_GOOD);
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-06-01"), ==, TM_DUE_OVERDUE);
  gauge->calibrated = "2026-06-05";
  gauge->due = "2027-06-05";
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-06-05"), ==, TM_DUE_GOOD);
  g_assert_null (tm_gauge_found_bad (job, "M-1", "2026-06-05"));
}

static void
test_checks (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  TmGauge *bare = add_gauge (job, "M-2", "0.001", NULL);
  TmCheckState state = tm_gauge_check_state (job, gauge, "2026-05-04T10:00:00Z");

  g_assert_null (state.last);
  g_assert_false (state.stale);
  add_check (job, "M-1", "25.000", "25.0021", "2026-05-04T12:00:00Z");
  add_check (job, "M-1", "25.000", "24.998", "2026-05-04T09:00:00Z");
  add_check (job, "M-2", "25.000", "25.1", "2026-05-04T09:00:00Z");

  /* Of two, the one at or before the moment; at the limit is not beyond it. */
  state = tm_gauge_check_state (job, gauge, "2026-05-04T10:00:00Z");
  assert_near (state.drift, -2e6, 0.5);
  g_assert_false (state.beyond);
  state = tm_gauge_check_state (job, gauge, "2026-05-04");
  assert_near (state.drift, 2.1e6, 0.5);
  g_assert_true (state.beyond);
  g_assert_true (tm_gauge_check_state (job, gauge, NULL).beyond);
  g_assert_false (tm_gauge_check_state (job, bare, NULL).beyond);

  /* The shop's own share of the error limit: half of 0.002 is passed by 0.002; 1.05 of it is just
   * met by 0.0021. */
  job->drift_limit = quantity ("0.5", TM_UNIT_HARDNESS);
  g_assert_true (tm_gauge_check_state (job, gauge, "2026-05-04T10:00:00Z").beyond);
  g_assert_cmpint (tm_gauge_drift_limit (job, gauge), ==, 1000000);
  g_assert_cmpint (tm_gauge_drift_limit (job, bare), ==, -1);
  job->drift_limit = quantity ("1.05", TM_UNIT_HARDNESS);
  g_assert_false (tm_gauge_check_state (job, gauge, NULL).beyond);
}

/* An error that the certificate states is taken out of each reading; it is no drift. */
static void
test_drift_beside_known_error (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  TmCalibration *calibration = add_calibration (job, "M-1", "2026-03-01", "2027-03-01", "good");

  calibration->error = quantity ("0.003", TM_UNIT_MM);
  add_check (job, "M-1", "25.000", "25.003", "2026-02-04T12:00:00Z");
  assert_near (tm_gauge_check_state (job, gauge, NULL).drift, 3e6, 0.5);
  add_check (job, "M-1", "25.000", "25.003", "2026-05-04T12:00:00Z");
  assert_near (tm_gauge_check_state (job, gauge, NULL).drift, 0, 0.5);
  g_assert_false (tm_gauge_check_state (job, gauge, NULL).beyond);
  add_check (job, "M-1", "25.000", "25.000", "2026-05-05T12:00:00Z");
  assert_near (tm_gauge_check_state (job, gauge, NULL).drift, -3e6, 0.5);
  g_assert_true (tm_gauge_check_state (job, gauge, NULL).beyond);
}

static void
test_stale (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");

  job->check_hours = quantity ("8", TM_UNIT_HARDNESS);
  g_assert_true (tm_gauge_check_state (job, gauge, "2026-05-04T10:00:00Z").stale);
  add_check (job, "M-1", "25.000", "25.000", "2026-02-28T22:00:00Z");
  g_assert_false (tm_gauge_check_state (job, gauge, "2026-03-01T06:00:00Z").stale);
  g_assert_true (tm_gauge_check_state (job, gauge, "2026-03-01T06:00:01Z").stale);
  g_assert_true (tm_gauge_check_state (job, gauge, "2026-02-28T21:59:59Z").stale);
  g_assert_false (tm_gauge_check_state (job, gauge, "2026-02-28").stale);
}

static void
test_reaches (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  gint64 mm = tm_unit_counts (TM_UNIT_MM);

  g_assert_true (tm_gauge_reaches (gauge, 500 * mm));
  gauge->range_from = quantity ("25", TM_UNIT_MM);
  gauge->range_to = quantity ("2", TM_UNIT_IN);
  g_assert_true (tm_gauge_reaches (gauge, 25 * mm));
  g_assert_false (tm_gauge_reaches (gauge, 25 * mm - 1));
  g_assert_true (tm_gauge_reaches (gauge, 2 * tm_unit_counts (TM_UNIT_IN)));
  g_assert_false (tm_gauge_reaches (gauge, 2 * tm_unit_counts (TM_UNIT_IN) + 1));
}

static void
test_faults (void)
{
  static const struct {
    const char *resolution, *error_limit, *feel, *from, *to, *step, *pin_class, *calibrated, *due;
    const char *kind;
    TmGaugeFault expected;
  } cases[] = {
    { "0.001", "0.002", "0.01", "25", "50", NULL, "", "2026-03-01", "2027-03-01", "micrometer",
      TM_GAUGE_FINE },
    { NULL, NULL, NULL, NULL, NULL, NULL, "", "", "", "", TM_GAUGE_FINE },
    { "0", NULL, NULL, NULL, NULL, NULL, "", "", "", "", TM_GAUGE_ZERO_RESOLUTION },
    { "-0.001", NULL, NULL, NULL, NULL, NULL, "", "", "", "", TM_GAUGE_NEGATIVE },
    { NULL, "-0.001", NULL, NULL, NULL, NULL, "", "", "", "", TM_GAUGE_NEGATIVE },
    { NULL, NULL, "-0.001", NULL, NULL, NULL, "", "", "", "", TM_GAUGE_NEGATIVE },
    { NULL, NULL, NULL, "50", "25", NULL, "", "", "", "", TM_GAUGE_RANGE_BACKWARDS },
    { NULL, NULL, NULL, NULL, NULL, NULL, "", "2026-03-01", "2026-02-28", "", TM_GAUGE_DUE_BEFORE },
    { NULL, NULL, NULL, NULL, NULL, NULL, "", "2026-03-01", "2026-03-01", "", TM_GAUGE_FINE },
    { NULL, NULL, NULL, NULL, NULL, NULL, "", "2026-02-30", "", "", TM_GAUGE_DATE },
    { NULL, NULL, NULL, NULL, NULL, NULL, "", "", "next year", "", TM_GAUGE_DATE },
    { NULL, NULL, NULL, "1", "10", "0.01", "ZZ", "", "", "pin set", TM_GAUGE_FINE },
    { NULL, NULL, NULL, "1", "10", "0.01", "Q", "", "", "pin set", TM_GAUGE_PIN_CLASS },
    { NULL, NULL, NULL, "1", "10", "0.01", "z", "", "", "pin set", TM_GAUGE_PIN_CLASS },
    { NULL, NULL, NULL, "0.25", "10", "0.01", "X", "", "", "pin set", TM_GAUGE_CLASS_SIZE },
    { NULL, NULL, NULL, "0.254", "305.054", "0.01", "X", "", "", "pin set", TM_GAUGE_FINE },
    { NULL, NULL, NULL, "1", "10", "0", "X", "", "", "pin set", TM_GAUGE_PIN_STEP },
    { NULL, NULL, NULL, "1", "10", "10", "X", "", "", "pin set", TM_GAUGE_PIN_STEP },
    { NULL, NULL, NULL, "1", NULL, "1", "X", "", "", "pin set", TM_GAUGE_PIN_RANGE },
    { NULL, NULL, NULL, "0", "100", NULL, "2", "", "", "gauge blocks", TM_GAUGE_FINE },
    { "0.1 deg", "0.002", NULL, NULL, NULL, NULL, "", "", "", "", TM_GAUGE_UNIT },
    { "0.1 deg", "0.1 deg", NULL, NULL, NULL, NULL, "", "", "", "", TM_GAUGE_FINE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmGauge *gauge = add_gauge (job, "G", NULL, NULL);
      struct {
        const char *text;
        TmQuantity *field;
      } fields[] = {
        { cases[i].resolution, &gauge->resolution },
        { cases[i].error_limit, &gauge->error_limit },
        { cases[i].feel, &gauge->feel },
        { cases[i].from, &gauge->range_from },
        { cases[i].to, &gauge->range_to },
        { cases[i].step, &gauge->pin_step },
      };

      for (gsize f = 0; f < G_N_ELEMENTS (fields); f++)
        *fields[f].field = quantity (
            fields[f].text, g_strcmp0 (fields[f].text, "0.1 deg") == 0 ? TM_UNIT_DEGREE : TM_UNIT_MM);
      gauge->pin_class = cases[i].pin_class;
      gauge->calibrated = cases[i].calibrated;
      gauge->due = cases[i].due;
      gauge->kind = cases[i].kind;
      g_test_message ("case %" G_GSIZE_FORMAT, i);
      g_assert_cmpint (tm_gauge_fault (gauge), ==, cases[i].expected);
    }
}

static void
test_calibration_faults (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  TmCalibration *calibration = add_calibration (job, "M-1", "2026-03-01", "2027-03-01", "");

  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_FINE);
  calibration->uncertainty = quantity ("-0.001", TM_UNIT_MM);
  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_NEGATIVE);
  calibration->uncertainty = quantity ("0.1", TM_UNIT_DEGREE);
  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_UNIT);
  calibration->uncertainty = quantity ("0.001", TM_UNIT_MM);
  calibration->error = quantity ("-0.001", TM_UNIT_MM);
  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_FINE);
  calibration->coverage = quantity ("0", TM_UNIT_HARDNESS);
  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_COVERAGE);
  calibration->coverage = quantity ("2", TM_UNIT_HARDNESS);
  calibration->due = "2026-02-28";
  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_DUE_BEFORE);
  calibration->date = "";
  g_assert_cmpint (tm_calibration_fault (gauge, calibration), ==, TM_GAUGE_DATE);
}

static void
test_check_faults (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  TmCheck check = { .gauge = "M-1", .at = "2026-03-01T00:00:00Z" };

  g_assert_cmpint (tm_check_fault (gauge, &check), ==, TM_GAUGE_UNIT);
  check.standard = quantity ("25", TM_UNIT_MM);
  check.reading = quantity ("25.001", TM_UNIT_MM);
  g_assert_cmpint (tm_check_fault (gauge, &check), ==, TM_GAUGE_FINE);
  gauge->range_from = quantity ("50", TM_UNIT_MM);
  g_assert_cmpint (tm_check_fault (gauge, &check), ==, TM_GAUGE_STANDARD);
  check.standard = quantity ("-1", TM_UNIT_MM);
  g_assert_cmpint (tm_check_fault (gauge, &check), ==, TM_GAUGE_NEGATIVE);
}

static void
test_pin_size_faults (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *set = add_gauge (job, "P-1", NULL, NULL);
  static const struct {
    const char *size, *measured;
    TmGaugeFault expected;
  } cases[] = {
    { "5.02", "5.0203", TM_GAUGE_FINE },
    { "1.00", "1.0003", TM_GAUGE_FINE },
    { "10.00", "10.0003", TM_GAUGE_FINE },
    { "10.02", "10.02", TM_GAUGE_PIN_OUT_OF_RANGE },
    { "0.98", "0.98", TM_GAUGE_PIN_OUT_OF_RANGE },
    { "5.01", "5.01", TM_GAUGE_PIN_OUT_OF_RANGE }, /* between two steps */
    { "5.02", NULL, TM_GAUGE_UNIT },
    { "5.02", "-5.02", TM_GAUGE_NEGATIVE },
    { "5.02", "0", TM_GAUGE_NEGATIVE },
  };

  set->range_from = quantity ("1", TM_UNIT_MM);
  set->range_to = quantity ("10", TM_UNIT_MM);
  set->pin_step = quantity ("0.02", TM_UNIT_MM);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmPinSize pin = { .gauge = "P-1",
                        .size = quantity (cases[i].size, TM_UNIT_MM),
                        .measured = quantity (cases[i].measured, TM_UNIT_MM) };

      g_assert_cmpint (tm_pin_size_fault (set, &pin), ==, cases[i].expected);
    }
}

/* Every fault has its line, and each another. */
/* What is known of a gauge must fit it as it is to be. */
static void
test_history_faults (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "M-1", "0.001", "0.002");
  TmGauge wanted = *gauge;

  add_gauge (job, "M-2", "0.001", "0.002");
  add_calibration (job, "M-1", "2026-03-01", "2027-03-01", "good");
  add_check (job, "M-1", "25", "25.001", "2026-03-02T08:00:00Z");
  g_assert_cmpint (tm_gauge_history_fault (job, "M-1", &wanted), ==, TM_GAUGE_FINE);
  wanted.range_from = quantity ("0", TM_UNIT_MM);
  wanted.range_to = quantity ("25", TM_UNIT_MM);
  g_assert_cmpint (tm_gauge_history_fault (job, "M-1", &wanted), ==, TM_GAUGE_FINE);
  wanted.range_to = quantity ("20", TM_UNIT_MM);
  g_assert_cmpint (tm_gauge_history_fault (job, "M-1", &wanted), ==, TM_GAUGE_STANDARD);
  g_assert_cmpint (tm_gauge_history_fault (job, "M-2", &wanted), ==, TM_GAUGE_FINE);
}

static void
test_fault_texts (void)
{
  g_assert_cmpstr (tm_gauge_fault_text (TM_GAUGE_FINE), ==, "");
  for (int a = TM_GAUGE_FINE + 1; a < TM_N_GAUGE_FAULTS; a++)
    for (int b = TM_GAUGE_FINE; b < a; b++)
      g_assert_cmpstr (tm_gauge_fault_text ((TmGaugeFault)a), !=, tm_gauge_fault_text ((TmGaugeFault)b));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/gauge/due", test_due);
  g_test_add_func ("/gauge/history", test_history);
  g_test_add_func ("/gauge/found-bad", test_found_bad);
  g_test_add_func ("/gauge/checks", test_checks);
  g_test_add_func ("/gauge/drift-beside-known-error", test_drift_beside_known_error);
  g_test_add_func ("/gauge/stale", test_stale);
  g_test_add_func ("/gauge/reaches", test_reaches);
  g_test_add_func ("/gauge/faults", test_faults);
  g_test_add_func ("/gauge/calibration-faults", test_calibration_faults);
  g_test_add_func ("/gauge/check-faults", test_check_faults);
  g_test_add_func ("/gauge/pin-size-faults", test_pin_size_faults);
  g_test_add_func ("/gauge/history-faults", test_history_faults);
  g_test_add_func ("/gauge/fault-texts", test_fault_texts);
  return g_test_run ();
}
