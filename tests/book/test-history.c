/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pin trials, the gauges' history and studies in the book.
 */

#include "book-bench.h"

#define ID BENCH_ID

static void
refuse_trial (Bench *bench, const TmPinTrial *trial, const char *says)
{
  GError *error = NULL;

  g_assert_false (tm_book_record_pin_trial (bench->book, ID, trial, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, says));
  g_clear_error (&error);
}

/* A trial keeps its place and set, is corrected and withdrawn as a reading is, and only once. */
static void
test_trials (Bench *bench, gconstpointer data)
{
  static const TmWithdrawal note = { "RW", "", "the wrong pin", "" };
  static const TmWithdrawal no_reason = { "RW", "", "", "" };
  TmPinTrial *first = make_trial (bench->job, "1", "001", "25.01");
  TmPinTrial *second = make_trial (bench->job, "2", "001", "25.02");
  GError *error = NULL;

  first->place = 4;
  first->gauge = "PS-1";
  first->measured = second->size;
  first->overdue_reason = "no other set";
  second->place = 4;
  second->row.replaces = "1";
  second->row.reason = "misread the pin";
  g_assert_true (tm_book_record_pin_trial (bench->book, ID, first, &error));
  g_assert_true (tm_book_record_pin_trial (bench->book, ID, second, &error));
  g_assert_cmpint (tm_job_add_pin_trial (bench->job, first), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_pin_trial (bench->job, second), ==, TM_ADD_OK);
  assert_same_as_book (bench);
  g_assert_false (tm_book_withdraw_pin_trial (bench->book, ID, "1", &note, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (tm_book_withdraw_pin_trial (bench->book, ID, "2", &no_reason, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_true (tm_book_withdraw_pin_trial (bench->book, ID, "2", &note, &error));
  g_assert_cmpint (tm_job_withdraw (bench->job, &second->row, "RW", "", note.reason), ==, TM_ADD_OK);
  assert_same_as_book (bench);
  g_assert_false (tm_book_withdraw_pin_trial (bench->book, ID, "2", &note, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
}

static void
test_trial_refusals (Bench *bench, gconstpointer data)
{
  g_autoptr (TmPinTrial) trial = make_trial (bench->job, "1", "001", "25.01");
  TmFeature *feature = tm_job_find_feature (bench->job, "1");
  GError *error = NULL;

  trial->place = 5;
  refuse_trial (bench, trial, "no place 5");
  trial->place = 4;
  g_assert_true (tm_book_record_pin_trial (bench->book, ID, trial, &error));
  refuse_trial (bench, trial, "number 1 is taken");
  /* and the feature keeps that place */
  feature->places = 3;
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "place 4"));
  g_clear_error (&error);
}

static TmGauge *
add_pin_set (Bench *bench)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = "PS-1";
  g_assert_cmpint (tm_job_add_gauge (bench->job, gauge), ==, TM_ADD_OK);
  return gauge;
}

static TmCalibration *
add_calibration (Bench *bench, const char *date)
{
  TmCalibration *calibration = tm_calibration_new ();

  calibration->gauge = "PS-1";
  calibration->date = date;
  g_assert_cmpint (tm_job_add_calibration (bench->job, calibration), ==, TM_ADD_OK);
  return calibration;
}

/* A gauge's history is saved row by row: what was there writes nothing, an edit one version, a renamed
 * gauge takes its history along, and a removed one too. */
static void
test_save_history (Bench *bench, gconstpointer data)
{
  TmCalibration *calibration;
  TmGauge *renamed = tm_gauge_new ();

  add_pin_set (bench);
  add_calibration (bench, "2025-03-01");
  calibration = add_calibration (bench, "2026-03-01");
  save (bench);
  calibration->note = "spindle reground";
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM calibration"), ==, 3);
  renamed->tag = "PS-2";
  g_assert_cmpint (tm_job_replace_gauge (bench->job, "PS-1", renamed), ==, TM_ADD_OK);
  save (bench);
  g_assert_cmpint (
      ask_file (bench->place.path, "SELECT count (*) FROM current_calibration WHERE gauge = 'PS-2'"), ==, 2);
  g_assert_cmpint (tm_job_remove_gauge (bench->job, "PS-2"), ==, TM_ADD_OK);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM current_calibration"), ==, 0);
}

/* A set that a trial names stays, whatever the caller's job says. */
static void
test_set_stays (Bench *bench, gconstpointer data)
{
  g_autoptr (TmPinTrial) trial = make_trial (bench->job, "1", "001", "25.01");
  GError *error = NULL;

  add_pin_set (bench);
  save (bench);
  trial->gauge = "PS-1";
  g_assert_true (tm_book_record_pin_trial (bench->book, ID, trial, &error));
  g_assert_cmpint (tm_job_remove_gauge (bench->job, "PS-1"), ==, TM_ADD_OK);
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "gauge PS-1"));
  g_clear_error (&error);
}

static void
test_save_study (Bench *bench, gconstpointer data)
{
  TmStudy *study = tm_study_new ();
  TmStudyReading *reading = tm_study_reading_new ();

  add_pin_set (bench);
  study->name = "one";
  study->method = "PS-1";
  g_ptr_array_add (study->pieces, (gpointer) "a");
  g_ptr_array_add (study->pieces, (gpointer) "b");
  g_ptr_array_add (study->people, (gpointer) "RW");
  study->repeats = tm_quantity_new (2, TM_UNIT_COUNT, 0);
  g_assert_cmpint (tm_job_add_study (bench->job, study), ==, TM_ADD_OK);
  save (bench);
  reading->study = "one";
  reading->piece = "b";
  reading->person = "RW";
  reading->trial = tm_quantity_new (1, TM_UNIT_COUNT, 0);
  reading->value = tm_quantity_new (25000000000, TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_study_reading (bench->job, reading), ==, TM_ADD_OK);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM study"), ==, 1);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM study_reading"), ==, 1);
  tm_job_remove_study (bench->job, study);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM current_study_reading"), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) g_test_add ("/book/history/" name_, Bench, NULL, set_up, function_, tear_down)
  ADD ("trials", test_trials);
  ADD ("trial-refusals", test_trial_refusals);
  ADD ("save-history", test_save_history);
  ADD ("set-stays", test_set_stays);
  ADD ("save-study", test_save_study);
  return g_test_run ();
}
