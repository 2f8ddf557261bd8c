/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The gauges of the whole shop, and one of them made so in every job.
 */

#include "book-fixture.h"

static TmGauge *
add_gauge (TmJob *job, const char *tag, const char *certificate)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tag;
  gauge->certificate = certificate;
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  return gauge;
}

static TmCalibration *
add_calibration (TmJob *job, const char *tag, const char *date, const char *note)
{
  TmCalibration *calibration = tm_calibration_new ();

  calibration->gauge = tag;
  calibration->date = date;
  calibration->note = note;
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  return calibration;
}

static void
add_check (TmJob *job, const char *tag, const char *at)
{
  TmCheck *check = tm_check_new ();

  check->gauge = tag;
  check->at = at;
  check->standard = check->reading = tm_quantity_new (25000000000, TM_UNIT_MM, 0);
  g_assert_cmpint (tm_job_add_check (job, check), ==, TM_ADD_OK);
}

static void
add_method (TmJob *job, const char *name, const char *tag, const char *line_name)
{
  TmMethod *method = tm_method_new ();
  TmBudgetLine *line = tm_budget_line_new ();

  method->name = name;
  g_ptr_array_add (method->gauges, (gpointer)tag);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  line->method = name;
  line->name = line_name;
  line->value = tm_quantity_new (1000000, TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_budget_line (job, line), ==, TM_ADD_OK);
}

static void
add_tool (TmJob *job, const char *name, const char *note)
{
  TmTool *tool = tm_tool_new ();
  TmShopMaterial *material = tm_shop_material_new ();

  tool->name = name;
  tool->note = note;
  material->name = name;
  material->source = note;
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_material (job, material), ==, TM_ADD_OK);
}

/* An older job and a newer one that share a gauge and a method. */
static void
fill (const char *path)
{
  g_autoptr (TmJob) older = make_bench_job ("older", 1);
  g_autoptr (TmJob) newer = make_bench_job ("newer", 1);

  add_gauge (older, "M-1", "C-old");
  add_gauge (older, "M-9", "");
  add_calibration (older, "M-1", "2025-03-01", "the first");
  add_calibration (older, "M-1", "2026-03-01", "as it was thought");
  add_check (older, "M-1", "2026-04-01T08:00:00Z");
  add_method (older, "transfer", "M-1", "old line");
  add_method (older, "lonely", "M-9", "line");
  add_tool (older, "bar", "as it was bought");
  add_tool (older, "cutter", "");
  put_job (path, older);
  add_tool (newer, "bar", "reground");
  add_gauge (newer, "A-2", "");
  add_gauge (newer, "M-1", "C-new");
  add_calibration (newer, "M-1", "2026-03-01", "as it was");
  add_check (newer, "M-1", "2026-04-01T08:00:00Z");
  add_check (newer, "M-1", "2026-05-01T08:00:00Z");
  add_method (newer, "transfer", "M-1", "new line");
  put_job (path, newer);
}

static TmBook *
open_book (const char *path)
{
  GError *error = NULL;
  TmBook *book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);

  g_assert_no_error (error);
  return book;
}

static TmJob *
take_register (const char *path)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = open_book (path);
  TmJob *job = tm_book_gauge_register (book, &error);

  g_assert_no_error (error);
  return job;
}

static void
test_newest_of_all (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = NULL;
  const TmCalibration *calibration;

  fill (place->path);
  job = take_register (place->path);
  g_assert_cmpuint (job->gauges->len, ==, 3);
  g_assert_cmpstr (tm_job_find_gauge (job, "M-1")->certificate, ==, "C-new");
  /* the history is what the jobs know together, each part as it was last written */
  g_assert_cmpuint (job->calibrations->len, ==, 2);
  calibration = g_ptr_array_index (job->calibrations, 0);
  g_assert_cmpstr (calibration->note, ==, "the first");
  calibration = g_ptr_array_index (job->calibrations, 1);
  g_assert_cmpstr (calibration->note, ==, "as it was");
  g_assert_cmpuint (job->checks->len, ==, 2);
  g_assert_cmpuint (job->methods->len, ==, 2);
  g_assert_cmpuint (job->budget_lines->len, ==, 2);
  for (guint i = 0; i < job->budget_lines->len; i++)
    {
      const TmBudgetLine *line = g_ptr_array_index (job->budget_lines, i);

      g_assert_cmpstr (line->name, ==, g_str_equal (line->method, "transfer") ? "new line" : "line");
    }
  g_assert_cmpuint (job->features->len + job->pieces->len + job->readings->len, ==, 0);
}

/* What the shop cuts with and what it presses, as the newest job has it. */
static void
test_tools (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = NULL;

  fill (place->path);
  job = take_register (place->path);
  g_assert_cmpuint (job->tools->len, ==, 2);
  g_assert_cmpuint (job->materials->len, ==, 2);
  g_assert_cmpstr (tm_job_find_tool (job, "bar")->note, ==, "reground");
  g_assert_nonnull (tm_job_find_tool (job, "cutter"));
  g_assert_cmpstr (tm_job_find_material (job, "bar")->source, ==, "reground");
}

static void
save (const char *path, const TmJob *job)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = open_book (path);

  g_assert_true (tm_book_save_definitions (book, job, "RW", "2026-06-01T08:00:00Z", &error));
  g_assert_no_error (error);
}

/* A gauge that one job no longer has is still the shop's while another has it; a method goes with its
 * last gauge. */
static void
test_removed (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) newer = NULL;
  g_autoptr (TmJob) older = NULL;
  g_autoptr (TmJob) job = NULL;

  fill (place->path);
  newer = take_job (place->path, "newer");
  g_assert_cmpint (tm_job_remove_method (newer, "transfer"), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_gauge (newer, "M-1"), ==, TM_ADD_OK);
  save (place->path, newer);
  job = take_register (place->path);
  g_assert_cmpstr (tm_job_find_gauge (job, "M-1")->certificate, ==, "C-old");
  g_assert_nonnull (tm_job_find_method (job, "transfer"));
  g_clear_pointer (&job, tm_job_free);
  older = take_job (place->path, "older");
  g_assert_cmpint (tm_job_remove_method (older, "lonely"), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_gauge (older, "M-9"), ==, TM_ADD_OK);
  save (place->path, older);
  job = take_register (place->path);
  g_assert_null (tm_job_find_gauge (job, "M-9"));
  g_assert_null (tm_job_find_method (job, "lonely"));
}

static void
test_empty (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = take_register (place->path);

  g_assert_cmpuint (job->gauges->len, ==, 0);
}

static guint
spread (const char *path, const TmJob *from, const char *tag)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = open_book (path);
  guint n = 99;

  g_assert_true (tm_book_spread_gauge (book, from, tag, "RW", "2026-06-01T08:00:00Z", &n, &error));
  g_assert_no_error (error);
  return n;
}

static void
test_spread (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) newer = NULL;
  g_autoptr (TmJob) older = NULL;
  gint64 facts;

  fill (place->path);
  newer = take_job (place->path, "newer");
  tm_job_find_gauge (newer, "M-1")->due = "2027-06-01";
  add_calibration (newer, "M-1", "2026-06-01", "after the repair")->outcome = "good";
  save (place->path, newer);
  g_assert_cmpuint (spread (place->path, newer, "M-1"), ==, 1);
  older = take_job (place->path, "older");
  g_assert_cmpstr (tm_job_find_gauge (older, "M-1")->certificate, ==, "C-new");
  g_assert_cmpstr (tm_job_find_gauge (older, "M-1")->due, ==, "2027-06-01");
  g_assert_cmpuint (older->calibrations->len, ==, 2);
  g_assert_cmpstr (((TmCalibration *)g_ptr_array_index (older->calibrations, 1))->note, ==,
                   "after the repair");
  g_assert_cmpuint (older->checks->len, ==, 2);
  /* what is not of the gauge stays */
  g_assert_cmpuint (older->gauges->len, ==, 2);
  g_assert_cmpuint (older->methods->len, ==, 2);
  g_assert_cmpstr (((TmBudgetLine *)g_ptr_array_index (older->budget_lines, 0))->name, ==, "old line");
  /* and a second time there is nothing to do */
  facts = ask_file (place->path, "SELECT count (*) FROM journal");
  g_assert_cmpuint (spread (place->path, newer, "M-1"), ==, 0);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal"), ==, facts);
  assert_clean (place->path);
}

/* A later calibration does not supersede what was signed before; what goes on after that gets it. */
static void
test_spread_past_signed (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) newer = NULL, older = NULL, after = NULL;
  TmSignature *signature = tm_signature_new ();

  fill (place->path);
  older = take_job (place->path, "older");
  signature->by = "RW";
  signature->digest = "00";
  tm_job_add_signature (older, signature);
  save (place->path, older);
  newer = take_job (place->path, "newer");
  tm_job_find_gauge (newer, "M-1")->due = "2027-06-01";
  save (place->path, newer);
  g_assert_cmpuint (spread (place->path, newer, "M-1"), ==, 0);
  older->customer = "somebody else";
  save (place->path, older);
  g_assert_cmpuint (spread (place->path, newer, "M-1"), ==, 1);
  after = take_job (place->path, "older");
  g_assert_cmpstr (tm_job_find_gauge (after, "M-1")->due, ==, "2027-06-01");
  assert_clean (place->path);
}

/* No other job is given a gauge that it does not have. */
static void
test_spread_to_nobody (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) newer = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  guint n = 99;

  fill (place->path);
  newer = take_job (place->path, "newer");
  g_assert_cmpuint (spread (place->path, newer, "A-2"), ==, 0);
  book = open_book (place->path);
  g_assert_false (tm_book_spread_gauge (book, newer, "none", "RW", "", &n, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "none"));
  g_clear_error (&error);
  g_assert_cmpuint (n, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) \
  g_test_add ("/book/register/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("newest-of-all", test_newest_of_all);
  ADD ("tools", test_tools);
  ADD ("removed", test_removed);
  ADD ("empty", test_empty);
  ADD ("spread", test_spread);
  ADD ("spread-past-signed", test_spread_past_signed);
  ADD ("spread-to-nobody", test_spread_to_nobody);
  return g_test_run ();
}
