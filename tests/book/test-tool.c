/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cuts in the book: recorded, corrected, withdrawn; and where else a tool cut.
 */

#include "book-bench.h"
#include "core-cut-work.h"

#define BAR "boring bar 16"

static void
add_tool (TmJob *job, const char *name)
{
  TmTool *tool = tm_tool_new ();

  tool->name = name;
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
}

static void
record_reading (Bench *bench, const char *id, const char *serial, const char *value)
{
  g_autoptr (TmReading) reading = make_reading (bench->job, id, serial, value);
  GError *error = NULL;

  g_assert_true (tm_book_record_reading (bench->book, BENCH_ID, reading, &error));
  g_assert_no_error (error);
}

static gboolean
counts (const TmJob *job, const char *id)
{
  return tm_row_counts (&tm_job_find_reading (job, id)->row);
}

/* What was read before a cut counts no more when the job is loaded, until the cut is withdrawn. */
static void
test_cut_and_back (Bench *bench, gconstpointer data)
{
  static const TmWithdrawal note = { "RW", "2026-05-04T10:00:00Z", "not made after all", "" };
  g_autoptr (TmCutRow) cut = NULL;
  g_autoptr (TmJob) cut_job = NULL;
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;

  record_reading (bench, "1", "001", "24.950");
  cut = make_cut (bench->job, "", "001", BAR);
  cut->after = "1";
  g_assert_true (tm_book_record_cut (bench->book, BENCH_ID, cut, &error));
  record_reading (bench, "2", "001", "24.991");
  cut_job = take_job (bench->place.path, BENCH_ID);
  g_assert_false (counts (cut_job, "1"));
  g_assert_true (counts (cut_job, "2"));
  g_assert_true (tm_book_withdraw_cut (bench->book, BENCH_ID, "1", &note, &error));
  g_assert_no_error (error);
  back = take_job (bench->place.path, BENCH_ID);
  g_assert_true (counts (back, "1"));
  g_assert_cmpstr (tm_job_find_cut (back, "1")->row.withdrawn->reason, ==, "not made after all");
  /* once is enough */
  g_assert_false (tm_book_withdraw_cut (bench->book, BENCH_ID, "1", &note, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  assert_clean (bench->place.path);
}

static void
test_correction (Bench *bench, gconstpointer data)
{
  g_autoptr (TmCutRow) cut = make_cut (bench->job, "", "001", BAR);
  g_autoptr (TmCutRow) better = make_cut (bench->job, "", "001", BAR);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;

  record_reading (bench, "1", "001", "24.950");
  g_assert_true (tm_book_record_cut (bench->book, BENCH_ID, cut, &error));
  better->row.replaces = "1";
  g_assert_false (tm_book_record_cut (bench->book, BENCH_ID, better, &error));
  g_assert_nonnull (strstr (error->message, "reason"));
  g_clear_error (&error);
  better->row.reason = "two marks less";
  better->dialled.count -= 20000000;
  better->place = 4;
  better->note = "read from the photograph";
  g_assert_true (tm_book_record_cut (bench->book, BENCH_ID, better, &error));
  g_assert_no_error (error);
  back = take_job (bench->place.path, BENCH_ID);
  g_assert_false (tm_row_stands (&tm_job_find_cut (back, "1")->row));
  g_assert_cmpuint (tm_job_find_cut (back, "2")->place, ==, 4);
  g_assert_cmpstr (tm_job_find_cut (back, "2")->note, ==, "read from the photograph");
  /* the reading is of place 1, and nothing was cut there */
  g_assert_true (counts (back, "1"));
}

/* The place is one of the feature's, and the feature keeps it; the tool that a cut names stays. */
static void
test_refusals (Bench *bench, gconstpointer data)
{
  g_autoptr (TmCutRow) cut = make_cut (bench->job, "", "001", BAR);
  GError *error = NULL;

  cut->place = 5;
  g_assert_false (tm_book_record_cut (bench->book, BENCH_ID, cut, &error));
  g_assert_nonnull (strstr (error->message, "no place 5"));
  g_clear_error (&error);
  add_tool (bench->job, BAR);
  g_assert_true (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  cut->place = 3;
  g_assert_true (tm_book_record_cut (bench->book, BENCH_ID, cut, &error));
  g_assert_no_error (error);
  tm_job_find_feature (bench->job, "1")->places = 2;
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_nonnull (strstr (error->message, "place 3"));
  g_clear_error (&error);
  tm_job_find_feature (bench->job, "1")->places = 3;
  g_assert_cmpint (tm_job_remove_tool (bench->job, BAR), ==, TM_ADD_OK); /* this job has no cut */
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "tool boring bar 16"));
  g_clear_error (&error);
}

/* A mate that was measured again is one new row; one that is gone is removed. */
static void
test_mates (Bench *bench, gconstpointer data)
{
  static const char rows[] = "SELECT count (*) FROM mate";
  TmMateSize *mate = tm_mate_size_new ();
  GError *error = NULL;

  mate->feature = "1";
  mate->serial = "B1";
  mate->smallest = tm_quantity_new (25024000000, TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_mate_size (bench->job, mate), ==, TM_ADD_OK);
  g_assert_true (tm_book_save_definitions (bench->book, bench->job, "RW", "", &error));
  g_assert_true (tm_book_save_definitions (bench->book, bench->job, "RW", "", &error));
  g_assert_cmpint (ask_file (bench->place.path, rows), ==, 1);
  mate->smallest.count += 1000000;
  g_assert_true (tm_book_save_definitions (bench->book, bench->job, "RW", "", &error));
  g_assert_cmpint (ask_file (bench->place.path, rows), ==, 2);
  tm_job_remove_mate_size (bench->job, mate);
  g_assert_true (tm_book_save_definitions (bench->book, bench->job, "RW", "", &error));
  g_assert_no_error (error);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM current_mate"), ==, 0);
  assert_clean (bench->place.path);
}

/* --- other jobs of a tool */

static void
add_micrometer (TmJob *job)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = "M-1";
  gauge->resolution = tm_quantity_new (1000000, TM_UNIT_MM, 3);
  gauge->error_limit = tm_quantity_new (2000000, TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  tm_job_find_feature (job, "1")->method = "M-1";
}

/* A job in which @tool cut piece 001 once, between two readings; piece 002 was read and not cut. */
static TmJob *
make_cut_job (const char *id, const char *tool)
{
  TmJob *job = make_bench_job (id, 2);
  TmCutRow *cut = make_cut (job, "", "001", tool);

  cut->after = "1";
  add_micrometer (job);
  g_assert_cmpint (tm_job_add_reading (job, make_reading (job, "1", "001", "24.950")), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_reading (job, make_reading (job, "2", "002", "24.960")), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_reading (job, make_reading (job, "3", "001", "24.990")), ==, TM_ADD_OK);
  return job;
}

static void
put_cut_jobs (const char *path)
{
  static const char *const ids[] = { "oldest", "middle", "newest", "other" };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_autoptr (TmJob) job = make_cut_job (ids[i], i == 3 ? "end mill" : BAR);

      put_job (path, job);
    }
}

static GPtrArray *
ask_jobs (Bench *bench, const char *tool, const char *except, guint most)
{
  GError *error = NULL;
  GPtrArray *jobs = tm_book_tool_jobs (bench->book, tool, except, most, &error);

  g_assert_no_error (error);
  g_assert_nonnull (jobs);
  return jobs;
}

static const char *
id_at (const GPtrArray *jobs, guint i)
{
  return ((TmJob *)g_ptr_array_index (jobs, i))->id;
}

static void
test_tool_jobs (Bench *bench, gconstpointer data)
{
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) newest = NULL;
  g_autoptr (GPtrArray) none = NULL;
  g_autoptr (GPtrArray) unnamed = NULL;
  g_autoptr (GArray) answers = NULL;
  const TmJob *job;

  put_cut_jobs (bench->place.path);
  all = ask_jobs (bench, BAR, "middle", 10);
  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpstr (id_at (all, 0), ==, "oldest");
  g_assert_cmpstr (id_at (all, 1), ==, "newest");
  newest = ask_jobs (bench, BAR, NULL, 2);
  g_assert_cmpuint (newest->len, ==, 2);
  g_assert_cmpstr (id_at (newest, 0), ==, "middle");
  g_assert_cmpstr (id_at (newest, 1), ==, "newest");
  /* what was cut, with the readings round it, and nothing else */
  job = g_ptr_array_index (all, 0);
  g_assert_cmpuint (job->cuts->len, ==, 1);
  g_assert_cmpuint (job->readings->len, ==, 2);
  g_assert_cmpuint (job->pieces->len, ==, 2);
  g_assert_false (counts (job, "1"));
  g_assert_true (counts (job, "3"));
  /* which is enough to know how it answered: 0.020 was dialled, 0.040 found */
  answers = tm_cut_answers (job, BAR, NULL, NULL, 0);
  g_assert_cmpuint (answers->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (answers, TmCutAnswer, 0).dialled, 20e6, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (answers, TmCutAnswer, 0).achieved, 40e6, 1);
  none = ask_jobs (bench, "hand file", NULL, 10);
  g_assert_cmpuint (none->len, ==, 0);
  unnamed = ask_jobs (bench, "", NULL, 10);
  g_assert_cmpuint (unnamed->len, ==, 0);
}

/* The newest is where it cut last, not the job that was made last; a withdrawn cut comes as withdrawn. */
static void
test_tool_jobs_by_cut (Bench *bench, gconstpointer data)
{
  static const TmWithdrawal note = { "RW", "", "not made", "" };
  g_autoptr (TmJob) job = make_cut_job ("oldest", BAR);
  g_autoptr (TmCutRow) cut = make_cut (job, "", "002", BAR);
  g_autoptr (GPtrArray) newest = NULL;
  const TmJob *found;
  GError *error = NULL;

  put_cut_jobs (bench->place.path);
  g_assert_true (tm_book_record_cut (bench->book, "oldest", cut, &error));
  g_assert_true (tm_book_withdraw_cut (bench->book, "oldest", "1", &note, &error));
  g_assert_no_error (error);
  newest = ask_jobs (bench, BAR, NULL, 1);
  g_assert_cmpuint (newest->len, ==, 1);
  found = g_ptr_array_index (newest, 0);
  g_assert_cmpstr (found->id, ==, "oldest");
  g_assert_cmpuint (found->readings->len, ==, 3);
  g_assert_nonnull (tm_job_find_cut (found, "1")->row.withdrawn);
  g_assert_true (counts (found, "1"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) g_test_add ("/book/tool/" name_, Bench, NULL, set_up, function_, tear_down)
  ADD ("cut-and-back", test_cut_and_back);
  ADD ("correction", test_correction);
  ADD ("refusals", test_refusals);
  ADD ("mates", test_mates);
  ADD ("jobs", test_tool_jobs);
  ADD ("jobs-by-cut", test_tool_jobs_by_cut);
  return g_test_run ();
}
