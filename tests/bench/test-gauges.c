/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The gauge in the hand: past its due date, out of its range, and the temperatures that go with a
 * reading.  The job is invented.
 */

#include <string.h>

#include "bench-fixture.h"

static TmGauge *
find_gauge (TmJob *job, const char *tag)
{
  return tm_job_find_gauge (job, tag);
}

/* Bore 1 by a micrometer that was due on the day named. */
static TmJob *
make_job_due (const char *due)
{
  TmJob *job = make_job ();
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmGauge *gauge;

  add_method (job, "BM-2", "0.001", "0.001", "0.0005");
  gauge = find_gauge (job, "BM-2");
  gauge->due = tm_job_intern (job, due);
  gauge->range_from = tm_quantity_new (G_GINT64_CONSTANT (25000000000), TM_UNIT_MM, 0);
  gauge->range_to = tm_quantity_new (G_GINT64_CONSTANT (50000000000), TM_UNIT_MM, 0);
  bore->method = tm_job_intern (job, "BM-2");
  return job;
}

static void
assert_overdue (TmBench *bench, const char *text, const char *tag)
{
  g_autoptr (GError) error = NULL;

  tm_bench_set_text (bench, text);
  g_assert_cmpint (tm_bench_submit (bench, AT, 0, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE);
  g_assert_nonnull (strstr (error->message, tag));
  g_assert_nonnull (strstr (error->message, "2026-05-03"));
  g_assert_cmpstr (tm_bench_text (bench), ==, text);
}

static void
test_overdue (void)
{
  g_autoptr (TmJob) job = make_job_due ("2026-05-03"); /* AT is the day after */
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  const TmReading *row;

  assert_overdue (bench, "25.010", "BM-2");
  g_assert_cmpuint (job->readings->len, ==, 0);
  tm_bench_set_overdue_reason (bench, "  ");
  assert_overdue (bench, "25.010", "BM-2");
  tm_bench_set_overdue_reason (bench, " booked for Friday ");
  g_assert_cmpstr (tm_bench_overdue_reason (bench), ==, "booked for Friday");
  g_assert_cmpint (tm_bench_submit (bench, AT, 0, NULL), ==, TM_SUBMIT_RECORDED);
  row = tm_bench_last (bench);
  g_assert_cmpstr (row->overdue_reason, ==, "booked for Friday");
  /* It holds for this gauge from now on. */
  g_assert_cmpint (enter (bench, "25.011", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (bench)->overdue_reason, ==, "booked for Friday");
  g_assert_true (tm_bench_correct (bench, row, "25.012", "misread", AT, NULL));
  g_assert_cmpstr (tm_bench_last (bench)->overdue_reason, ==, "booked for Friday");
  /* A feature whose gauge is in its time carries none. */
  g_assert_cmpint (enter (bench, "40", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (bench)->overdue_reason, ==, "");
}

static void
test_good_on_its_day (void)
{
  g_autoptr (TmJob) job = make_job_due ("2026-05-04");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpint (enter (bench, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (bench)->overdue_reason, ==, "");
}

/* What excuses one gauge does not excuse the next; another choice of method drops it. */
static void
test_reason_is_of_one_gauge (void)
{
  g_autoptr (TmJob) job = make_job_due ("2026-05-03");
  g_autoptr (TmBench) bench = NULL;
  g_autoptr (GError) error = NULL;

  add_method (job, "OTHER", "0.001", "0.001", "0.0005");
  find_gauge (job, "OTHER")->due = tm_job_intern (job, "2026-05-03");
  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus")->due = tm_job_intern (job, "2026-05-03");
  bench = tm_bench_new (job, tm_recorder_memory ());
  tm_bench_set_overdue_reason (bench, "booked for Friday");
  g_assert_cmpint (enter (bench, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (tm_bench_submit_pin (bench, "25.002+", AT, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE);
  g_assert_nonnull (strstr (error->message, "P-XP"));
  tm_bench_set_overdue_reason (bench, "checked against a ring");
  g_assert_cmpint (tm_bench_submit_pin (bench, "25.002+", AT, NULL), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_newest (bench).trial->overdue_reason, ==, "checked against a ring");
  g_assert_cmpint (enter (bench, "25.011", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (bench)->overdue_reason, ==, "booked for Friday");
  tm_bench_set_method (bench, "OTHER");
  g_assert_cmpstr (tm_bench_overdue_reason (bench), ==, "");
  assert_overdue (bench, "40.0", "OTHER");
}

/* The calibration in force says, not only the date on the gauge. */
static void
test_calibration_in_force (void)
{
  g_autoptr (TmJob) job = make_job_due ("2027-05-03");
  g_autoptr (TmBench) bench = NULL;
  TmCalibration *calibration = tm_calibration_new ();

  calibration->gauge = tm_job_intern (job, "BM-2");
  calibration->date = tm_job_intern (job, "2025-05-03");
  calibration->due = tm_job_intern (job, "2026-05-03");
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_cmpstr (tm_gauge_due_date (job, find_gauge (job, "BM-2"), AT), ==, "2026-05-03");
  assert_overdue (bench, "25.010", "BM-2");
}

/* It is not overdue by its date, which is still to come: the words say what is wrong. */
static void
test_found_bad (void)
{
  g_autoptr (TmJob) job = make_job_due ("2027-05-03");
  g_autoptr (TmBench) bench = NULL;
  g_autoptr (GError) error = NULL;
  TmCalibration *calibration = tm_calibration_new ();

  calibration->gauge = tm_job_intern (job, "BM-2");
  calibration->date = tm_job_intern (job, "2026-05-03");
  calibration->outcome = tm_job_intern (job, "bad");
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  bench = tm_bench_new (job, tm_recorder_memory ());
  tm_bench_set_text (bench, "25.010");
  g_assert_cmpint (tm_bench_submit (bench, AT, 0, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE);
  g_assert_nonnull (strstr (error->message, "BM-2 was found bad at its calibration on 2026-05-03"));
}

/* A roundness of 0.012 by a micrometer that reaches 25 to 50 is no size that it cannot read. */
static void
test_form_has_no_reach (void)
{
  g_autoptr (TmJob) job = make_job_due ("2027-05-03");
  TmFeature *form = g_ptr_array_index (job->features, 0);
  g_autoptr (TmBench) bench = NULL;

  form->kind = TM_KIND_FORM;
  form->nominal = form->lower = TM_QUANTITY_NONE;
  form->upper = tm_quantity_new (20000000, TM_UNIT_MM, 3);
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_cmpint (enter (bench, "0.012", 0), ==, TM_SUBMIT_RECORDED);
}

/* 60.01 by a gauge that reaches 25 to 50: asked like a slip, recorded when it is confirmed. */
static void
test_out_of_reach (void)
{
  g_autoptr (TmJob) job = make_job_due ("2027-05-03");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  tm_bench_set_method (bench, "BM-2");
  g_assert_true (
      tm_bench_go (bench, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 1), 1, ""));
  g_assert_cmpint (enter (bench, "60.01", 0), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_OUT_OF_REACH);
  g_assert_cmpstr (tm_bench_question_gauge (bench)->tag, ==, "BM-2");
  g_assert_cmpint (enter (bench, "60.01", 100), ==, TM_SUBMIT_TOO_SOON);
  g_assert_cmpuint (job->readings->len, ==, 0);
  g_assert_cmpint (enter (bench, "60.01", 400), ==, TM_SUBMIT_RECORDED);
  g_assert_null (tm_bench_question_gauge (bench));
  /* A slip that says what was meant is the likelier story. */
  tm_bench_go (bench, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 0), 1, "");
  g_assert_cmpint (enter (bench, "24.512", 0), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_THIMBLE_TURN);
  g_assert_null (tm_bench_question_gauge (bench));
}

static void
replace_reach (TmJob *job, const char *to)
{
  TmGauge *with = g_memdup2 (tm_job_find_gauge (job, "BM-2"), sizeof (TmGauge));

  g_assert_cmpint (tm_quantity_read (to, TM_UNIT_MM, &with->range_to), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_replace_gauge (job, "BM-2", with), ==, TM_ADD_OK);
}

/* A gauge that is changed while it is asked about: the question is about what it is now, or is none. */
static void
test_changed_while_asked (void)
{
  g_autoptr (TmJob) job = make_job_due ("2027-05-03");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  tm_bench_set_method (bench, "BM-2");
  tm_bench_go (bench, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 1), 1, "");
  g_assert_cmpint (enter (bench, "60.01", 0), ==, TM_SUBMIT_ASKED);
  replace_reach (job, "50");
  g_assert_true (tm_bench_question_gauge (bench) == tm_job_find_gauge (job, "BM-2"));
  replace_reach (job, "75");
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_NONE);
  g_assert_null (tm_bench_question_gauge (bench));
  g_assert_cmpstr (tm_bench_text (bench), ==, "60.01");
}

static TmQuantity
celsius (const char *text)
{
  TmQuantity quantity = TM_QUANTITY_NONE;

  g_assert_cmpint (tm_quantity_read (text, TM_UNIT_CELSIUS, &quantity), ==, TM_READ_OK);
  return quantity;
}

static void
test_temperatures (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmQuantity part = celsius ("24.5"), gauge = celsius ("21"), got_part, got_gauge;

  tm_bench_temperatures (bench, &got_part, &got_gauge);
  g_assert_false (got_part.given || got_gauge.given);
  tm_bench_set_temperatures (bench, &part, &gauge);
  g_assert_cmpint (enter (bench, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (enter (bench, "25.011", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (tm_bench_last (bench)->part_temp.count, ==, part.count);
  g_assert_cmpint (tm_bench_last (bench)->gauge_temp.count, ==, gauge.count);
  tm_bench_set_temperatures (bench, &part, NULL);
  tm_bench_temperatures (bench, &got_part, &got_gauge);
  g_assert_true (got_part.given && !got_gauge.given);
  tm_bench_set_temperatures (bench, NULL, NULL);
  g_assert_cmpint (enter (bench, "40", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_false (tm_bench_last (bench)->part_temp.given);
}

/* A session made afresh goes on with what was set, but not with what was typed. */
static void
test_new_like (void)
{
  g_autoptr (TmJob) job = make_job_due ("2026-05-03");
  g_autoptr (TmBench) old = tm_bench_new (job, tm_recorder_memory ());
  g_autoptr (TmBench) fresh = NULL;
  TmQuantity part = celsius ("24.5"), got_part, got_gauge;

  tm_bench_set_by (old, "AB");
  tm_bench_set_pin_set (old, "P-XP");
  tm_bench_set_temperatures (old, &part, &part);
  tm_bench_set_overdue_reason (old, "booked for Friday");
  g_assert_cmpint (enter (old, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  tm_bench_set_text (old, "25.0");
  fresh = tm_bench_new_like (old);
  g_assert_cmpstr (tm_bench_text (fresh), ==, "");
  g_assert_cmpstr (tm_bench_by (fresh), ==, "AB");
  g_assert_cmpstr (tm_bench_pin_set (fresh), ==, "P-XP");
  tm_bench_temperatures (fresh, &got_part, &got_gauge);
  g_assert_true (got_part.given && got_gauge.given);
  g_assert_null (tm_bench_last (fresh));
  g_assert_cmpint (enter (fresh, "25.011", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (fresh)->overdue_reason, ==, "booked for Friday");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/gauges/overdue", test_overdue);
  g_test_add_func ("/bench/gauges/good-on-its-day", test_good_on_its_day);
  g_test_add_func ("/bench/gauges/reason-is-of-one-gauge", test_reason_is_of_one_gauge);
  g_test_add_func ("/bench/gauges/calibration-in-force", test_calibration_in_force);
  g_test_add_func ("/bench/gauges/found-bad", test_found_bad);
  g_test_add_func ("/bench/gauges/out-of-reach", test_out_of_reach);
  g_test_add_func ("/bench/gauges/form-has-no-reach", test_form_has_no_reach);
  g_test_add_func ("/bench/gauges/changed-while-asked", test_changed_while_asked);
  g_test_add_func ("/bench/gauges/temperatures", test_temperatures);
  g_test_add_func ("/bench/gauges/new-like", test_new_like);
  return g_test_run ();
}
