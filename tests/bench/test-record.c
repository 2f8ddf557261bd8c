/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From Enter to the record: what is kept, what is asked, and that nothing is lost or half done when
 * the recorder fails.
 */

#include "bench-fixture.h"

static void
test_record (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { 0 };
  g_autoptr (TmBench) bench = tm_bench_new (job, make_recorder (&keeper));
  const TmReading *row;

  tm_bench_set_by (bench, "AB");
  tm_bench_set_method (bench, "bench method");
  g_assert_null (tm_bench_last (bench));
  g_assert_cmpint (enter (bench, " 25012\r\n", 0), ==, TM_SUBMIT_RECORDED);
  row = tm_bench_last (bench);
  g_assert_cmpstr (row->row.id, ==, "1");
  g_assert_cmpstr (row->row.by, ==, "AB");
  g_assert_cmpstr (row->row.at, ==, AT);
  g_assert_cmpstr (row->method, ==, "bench method");
  g_assert_cmpstr (row->station, ==, "mouth/12");
  g_assert_cmpstr (row->typed, ==, "25012");
  g_assert_cmpint (row->value.count, ==, G_GINT64_CONSTANT (25012000000));
  g_assert_cmpuint (row->value.decimals, ==, 3);
  g_assert_cmpuint (keeper.n_readings, ==, 1);
  g_assert_cmpstr (keeper.last_id, ==, "1");
  g_assert_cmpstr (tm_bench_text (bench), ==, "");
  assert_spot (bench, "001", "1", 1, "bottom/12");
  clear_keeper (&keeper);
}

/* The method that counted is written down, so that a later change of the feature's is no change of
 * the record. */
static void
test_feature_method_is_written (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmFeature *bore = g_ptr_array_index (job->features, 0);

  bore->method = tm_job_intern (job, "assigned");
  g_assert_cmpint (enter (bench, "25.01", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (bench)->method, ==, "assigned");
}

static void
test_refused (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  g_autoptr (GError) error = NULL;

  tm_bench_set_text (bench, "25,0x\n\xff");
  g_assert_cmpint (tm_bench_submit (bench, AT, 0, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_nonnull (strstr (error->message, "Feature 1"));
  g_assert_cmpstr (tm_bench_text (bench), ==, "25,0x\n\xff");
  g_assert_cmpuint (job->readings->len, ==, 0);
  /* A gauge's second Enter, after the first was taken, finds nothing typed. */
  g_assert_cmpint (enter (bench, "25.01", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (enter (bench, "", 1), ==, TM_SUBMIT_REFUSED);
  g_assert_cmpuint (job->readings->len, ==, 1);
}

/* A thimble turn: asked, not taken within 300 ms, taken after. */
static void
test_slip (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  const gint64 now = 1000000;

  g_assert_cmpint (enter (bench, "25.512", now), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_THIMBLE_TURN);
  g_assert_cmpint (tm_bench_question (bench)->likelier.count, ==, G_GINT64_CONSTANT (25012000000));
  g_assert_cmpint (enter (bench, "25.512", now + 50), ==, TM_SUBMIT_TOO_SOON);
  g_assert_cmpint (enter (bench, "25.512", now + TM_BENCH_CONFIRM_MS - 1), ==, TM_SUBMIT_TOO_SOON);
  g_assert_cmpuint (job->readings->len, ==, 0);
  g_assert_cmpstr (tm_bench_text (bench), ==, "25.512");
  g_assert_cmpint (enter (bench, "25.512", now + TM_BENCH_CONFIRM_MS), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_NONE);
  g_assert_cmpint (tm_bench_last (bench)->value.count, ==, G_GINT64_CONSTANT (25512000000));
}

/* A question belongs to one text at one spot. */
static void
test_question_drops (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpint (enter (bench, "25.512", 0), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (enter (bench, "24.512", 1000), ==, TM_SUBMIT_ASKED);
  g_assert_true (tm_bench_go_next (bench));
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_NONE);
  g_assert_cmpint (tm_bench_submit (bench, AT, 2000, NULL), ==, TM_SUBMIT_ASKED);
  g_assert_cmpuint (job->readings->len, ==, 0);
}

/* 984 for a 25 mm bore fits only as 0.984 in, or it is the end of 24.984: never taken in silence. */
static void
test_other_system_is_asked (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpint (enter (bench, "984.5", 0), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (tm_bench_question (bench)->slip, ==, TM_SLIP_OTHER_SYSTEM);
}

static void
test_recorder_fails (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { .failing = TRUE };
  g_autoptr (TmBench) bench = tm_bench_new (job, make_recorder (&keeper));
  g_autoptr (GError) error = NULL;
  const TmReading *kept;

  tm_bench_set_text (bench, "25.012");
  g_assert_cmpint (tm_bench_submit (bench, AT, 0, &error), ==, TM_SUBMIT_FAILED);
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE);
  g_assert_cmpuint (job->readings->len, ==, 0);
  g_assert_cmpstr (tm_bench_text (bench), ==, "25.012");
  assert_spot (bench, "001", "1", 1, "mouth/12");
  g_assert_null (tm_bench_last (bench));

  keeper.failing = FALSE;
  g_assert_cmpint (tm_bench_submit (bench, AT, 1, NULL), ==, TM_SUBMIT_RECORDED);
  kept = tm_bench_last (bench);
  g_assert_cmpstr (kept->row.id, ==, "1");

  keeper.failing = TRUE;
  g_assert_false (tm_bench_correct (bench, kept, "25.013", "misread", AT, NULL));
  g_assert_false (tm_bench_withdraw (bench, kept, "wrong piece", AT, NULL));
  g_assert_true (tm_row_counts (&kept->row));
  g_assert_cmpuint (job->readings->len, ==, 1);
  clear_keeper (&keeper);
}

static void
test_correct (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { 0 };
  g_autoptr (TmBench) bench = tm_bench_new (job, make_recorder (&keeper));
  g_autoptr (GError) error = NULL;
  const TmReading *old, *corrected;
  guint due, read;

  g_assert_cmpint (enter (bench, "25.012", 0), ==, TM_SUBMIT_RECORDED);
  old = tm_bench_last (bench);
  tm_bench_set_text (bench, "25.0");

  g_assert_false (tm_bench_correct (bench, old, "25.013", " \t", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON);
  g_clear_error (&error);
  g_assert_false (tm_bench_correct (bench, old, "x", "misread", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  g_clear_error (&error);
  g_assert_cmpuint (job->readings->len, ==, 1);

  g_assert_true (tm_bench_correct (bench, old, "25.013", "misread the vernier", AT, &error));
  g_assert_no_error (error);
  corrected = tm_bench_last (bench);
  g_assert_cmpstr (corrected->row.replaces, ==, old->row.id);
  g_assert_cmpstr (corrected->row.reason, ==, "misread the vernier");
  g_assert_cmpstr (corrected->station, ==, "mouth/12");
  g_assert_true (old->row.replaced_by == corrected);
  g_assert_cmpuint (keeper.n_readings, ==, 2);
  assert_spot (bench, "001", "1", 1, "bottom/12");
  g_assert_cmpstr (tm_bench_text (bench), ==, "25.0");
  tm_bench_count (bench, old->row.piece, &due, &read);
  g_assert_cmpuint (read, ==, 1);

  g_assert_false (tm_bench_correct (bench, old, "25.014", "again", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET);
  clear_keeper (&keeper);
}

static void
test_withdraw (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { 0 };
  g_autoptr (TmBench) bench = tm_bench_new (job, make_recorder (&keeper));
  g_autoptr (GError) error = NULL;
  const TmReading *first, *second;

  g_assert_false (tm_bench_withdraw (bench, NULL, "why", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET);
  g_clear_error (&error);
  tm_bench_set_by (bench, "AB");
  g_assert_cmpint (enter (bench, "25.012", 0), ==, TM_SUBMIT_RECORDED);
  first = tm_bench_last (bench);
  g_assert_cmpint (enter (bench, "25.014", 0), ==, TM_SUBMIT_RECORDED);
  second = tm_bench_last (bench);

  g_assert_false (tm_bench_withdraw (bench, second, "", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON);
  g_clear_error (&error);
  g_assert_true (tm_bench_withdraw (bench, second, "chips in the bore", AT, &error));
  g_assert_cmpstr (second->row.withdrawn->reason, ==, "chips in the bore");
  g_assert_cmpstr (second->row.withdrawn->by, ==, "AB");
  g_assert_cmpstr (keeper.last_id, ==, second->row.id);
  g_assert_true (tm_bench_last (bench) == first);
  g_assert_false (tm_bench_withdraw (bench, second, "twice", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET);
  clear_keeper (&keeper);
}

/* Ids go on from what the job holds, whoever made them. */
static void
test_ids (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;
  static const char *const ids[] = { "7", "8a", "x" };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      TmReading *row = tm_reading_new ();

      row->row.id = tm_job_intern (job, ids[i]);
      row->row.piece = g_ptr_array_index (job->pieces, 0);
      row->row.feature = g_ptr_array_index (job->features, 1);
      g_assert_cmpint (tm_job_add_reading (job, row), ==, TM_ADD_OK);
    }
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_cmpint (enter (bench, "25.012", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (tm_bench_last (bench)->row.id, ==, "8");
}

static void
test_offsets (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  g_autoptr (GError) error = NULL;
  TmFeature *position = add_feature (job, "9", TM_KIND_POSITION, TM_UNIT_MM, NULL, NULL, "0.2");
  const TmReading *row;

  g_assert_cmpint (tm_bench_submit_offsets (bench, "0.01", "0.02", AT, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  g_clear_error (&error);
  g_assert_true (tm_bench_go (bench, g_ptr_array_index (job->pieces, 0), position, 1, ""));
  g_assert_cmpint (tm_bench_submit_offsets (bench, "0.012", "x", AT, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  g_clear_error (&error);
  g_assert_cmpuint (job->readings->len, ==, 0);

  g_assert_cmpint (tm_bench_submit_offsets (bench, "0.012", "-5 um", AT, &error), ==, TM_SUBMIT_RECORDED);
  row = tm_bench_last (bench);
  g_assert_false (row->value.given);
  g_assert_cmpint (row->dx.count, ==, 12000000);
  g_assert_cmpint (row->dy.count, ==, -5000000);
  g_assert_cmpstr (row->typed, ==, "0.012; -5 um");

  g_assert_false (tm_bench_correct (bench, row, "0.013", "misread", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  g_clear_error (&error);
  g_assert_true (tm_bench_correct (bench, row, "0.013; -0.005", "misread", AT, &error));
  g_assert_cmpint (tm_bench_last (bench)->dx.count, ==, 13000000);
  /* What was typed at first can be corrected in the same words. */
  g_assert_true (
      tm_bench_correct (bench, tm_bench_last (bench), "0.012 mm; -5 um", "right before", AT, &error));
  g_assert_cmpint (tm_bench_last (bench)->dx.count, ==, 12000000);
  g_assert_cmpint (tm_bench_last (bench)->dy.count, ==, -5000000);
  g_assert_true (tm_bench_correct (bench, tm_bench_last (bench), "0.011 -0.004", "read again", AT, &error));
  g_assert_cmpint (tm_bench_last (bench)->dy.count, ==, -4000000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/record/record", test_record);
  g_test_add_func ("/bench/record/feature-method", test_feature_method_is_written);
  g_test_add_func ("/bench/record/refused", test_refused);
  g_test_add_func ("/bench/record/slip", test_slip);
  g_test_add_func ("/bench/record/question-drops", test_question_drops);
  g_test_add_func ("/bench/record/other-system", test_other_system_is_asked);
  g_test_add_func ("/bench/record/recorder-fails", test_recorder_fails);
  g_test_add_func ("/bench/record/correct", test_correct);
  g_test_add_func ("/bench/record/withdraw", test_withdraw);
  g_test_add_func ("/bench/record/ids", test_ids);
  g_test_add_func ("/bench/record/offsets", test_offsets);
  return g_test_run ();
}
