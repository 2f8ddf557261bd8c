/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the session is and what it understands.  The job is invented.
 */

#include "bench-fixture.h"

static void
test_empty_job (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  g_autoptr (GError) error = NULL;
  g_auto (TmJudgement) judgement = { 0 };

  g_assert_null (tm_bench_spot (bench)->feature);
  g_assert_null (tm_bench_spot (bench)->piece);
  g_assert_false (tm_bench_go_next_unread (bench));
  g_assert_false (tm_bench_go_next (bench));
  tm_bench_set_text (bench, "25.01");
  g_assert_cmpint (tm_bench_submit (bench, AT, 0, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NOWHERE);
  g_assert_cmpstr (tm_bench_text (bench), ==, "25.01");
  tm_bench_judge (bench, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);

  add_feature (job, "1", TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");
  g_assert_cmpstr (tm_bench_spot (bench)->feature->balloon, ==, "1");
  g_assert_null (tm_bench_spot (bench)->piece);
  add_piece (job, "001");
  assert_spot (bench, "001", "1", 1, "");
  g_assert_cmpint (tm_bench_entry (bench)->status, ==, TM_ENTRY_OK);
}

static void
test_text_and_meaning (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpint (tm_bench_entry (bench)->status, ==, TM_ENTRY_EMPTY);
  tm_bench_set_text (bench, "25012");
  g_assert_cmpint (tm_bench_entry (bench)->value.count, ==, G_GINT64_CONSTANT (25012000000));
  g_assert_true (
      tm_bench_go (bench, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 1), 1, ""));
  g_assert_cmpstr (tm_bench_text (bench), ==, "25012");
  g_assert_cmpint (tm_bench_entry (bench)->status, ==, TM_ENTRY_SHORTHAND_NONE);
  tm_bench_set_text (bench, NULL);
  g_assert_cmpstr (tm_bench_text (bench), ==, "");
}

static void
test_go (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmJob) other = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmPiece *piece = g_ptr_array_index (job->pieces, 1);
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmFeature *length = g_ptr_array_index (job->features, 1);

  assert_spot (bench, "001", "1", 1, "mouth/12");
  g_assert_true (tm_bench_go (bench, piece, bore, 1, "bottom/12"));
  assert_spot (bench, "002", "1", 1, "bottom/12");
  g_assert_true (tm_bench_go (bench, piece, length, 1, "middle"));
  assert_spot (bench, "002", "2", 1, "middle");
  g_assert_true (tm_bench_go (bench, piece, bore, 1, NULL));
  assert_spot (bench, "002", "1", 1, "mouth/12");

  g_assert_false (tm_bench_go (bench, piece, bore, 2, ""));
  g_assert_false (tm_bench_go (bench, piece, bore, 0, ""));
  g_assert_false (tm_bench_go (bench, piece, bore, 1, "nowhere"));
  g_assert_false (tm_bench_go (bench, NULL, bore, 1, ""));
  g_assert_false (tm_bench_go (bench, piece, NULL, 1, ""));
  g_assert_false (tm_bench_go (bench, piece, g_ptr_array_index (other->features, 0), 1, ""));
  assert_spot (bench, "002", "1", 1, "mouth/12");
}

/* Features and pieces come and go while the bench stands on them. */
static void
test_job_changes (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmFeature *longer = tm_feature_new ();
  guint due, read;

  tm_bench_set_text (bench, "25.01");
  g_assert_cmpint (tm_job_remove_feature (job, "1"), ==, TM_ADD_OK);
  assert_spot (bench, "001", "2", 1, "");
  /* What was typed for the feature that is gone is no reading of the next one. */
  g_assert_cmpstr (tm_bench_text (bench), ==, "");

  longer->balloon = tm_job_intern (job, "2");
  longer->kind = TM_KIND_LENGTH;
  longer->unit = TM_UNIT_MM;
  longer->places = 3;
  g_ptr_array_add (longer->stations, (gpointer)tm_job_intern (job, "middle"));
  g_assert_cmpint (tm_job_replace_feature (job, "2", longer), ==, TM_ADD_OK);
  assert_spot (bench, "001", "2", 1, "middle");
  tm_bench_count (bench, g_ptr_array_index (job->pieces, 0), &due, &read);
  g_assert_cmpuint (due, ==, 4);

  g_assert_cmpint (tm_job_remove_piece (job, "001"), ==, TM_ADD_OK);
  assert_spot (bench, "002", "2", 1, "middle");
}

/* A nominal that is edited counts at once for what is typed. */
static void
test_edited_nominal (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmFeature *bore = g_ptr_array_index (job->features, 0);

  tm_bench_set_text (bench, "+3");
  g_assert_cmpint (tm_bench_entry (bench)->value.count, ==, G_GINT64_CONSTANT (25003000000));
  g_assert_cmpint (tm_quantity_read ("26", TM_UNIT_MM, &bore->nominal), ==, TM_READ_OK);
  g_assert_cmpint (tm_bench_entry (bench)->value.count, ==, G_GINT64_CONSTANT (26003000000));
}

static void
test_people_and_method (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpstr (tm_bench_by (bench), ==, "");
  g_assert_cmpstr (tm_bench_method (bench), ==, "");
  tm_bench_set_by (bench, "AB");
  tm_bench_set_by (bench, tm_bench_by (bench));
  g_assert_cmpstr (tm_bench_by (bench), ==, "AB");
  tm_bench_set_method (bench, "fine");
  tm_bench_set_method (bench, NULL);
  g_assert_cmpstr (tm_bench_method (bench), ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/session/empty-job", test_empty_job);
  g_test_add_func ("/bench/session/text-and-meaning", test_text_and_meaning);
  g_test_add_func ("/bench/session/go", test_go);
  g_test_add_func ("/bench/session/job-changes", test_job_changes);
  g_test_add_func ("/bench/session/edited-nominal", test_edited_nominal);
  g_test_add_func ("/bench/session/people-and-method", test_people_and_method);
  return g_test_run ();
}
