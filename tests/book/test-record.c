/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Recording: one durable transaction each, under the rules of the record; definitions as versions.
 */

#include "book-bench.h"
#include "book-private.h"

#define ID BENCH_ID

static void
refuse_reading (Bench *bench, const TmReading *reading, const char *says)
{
  GError *error = NULL;
  gint64 facts = ask_file (bench->place.path, "SELECT count (*) FROM journal");

  g_assert_false (tm_book_record_reading (bench->book, ID, reading, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  if (strstr (error->message, says) == NULL)
    g_error ("“%s” does not say “%s”", error->message, says);
  g_assert_null (strchr (error->message, '\n'));
  g_clear_error (&error);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM journal"), ==, facts);
}

static void
test_reading (Bench *bench, gconstpointer data)
{
  TmReading *reading = make_reading (bench->job, "1", "002", "25.012");

  reading->place = 4;
  reading->row.extra = "\"k\": 1";
  record (bench, reading);
  /* seen through another connection at once: it is committed, not only written */
  g_assert_cmpint (ask_file (bench->place.path, "SELECT value_pm FROM reading"), ==, 25012000000);
  assert_same_as_book (bench);
}

static void
test_correction_and_withdrawal (Bench *bench, gconstpointer data)
{
  TmReading *correction = make_reading (bench->job, "2", "001", "25.013");
  TmWithdrawal note = { "RW", "2026-05-04T10:00:00Z", "burr", "" };
  GError *error = NULL;

  record (bench, make_reading (bench->job, "1", "001", "25.012"));
  correction->row.replaces = "1";
  correction->row.reason = "misread";
  record (bench, correction);
  g_assert_true (tm_book_withdraw_reading (bench->book, ID, "2", &note, &error));
  g_assert_no_error (error);
  g_assert_cmpint (tm_job_withdraw (bench->job, &correction->row, note.by, note.at, note.reason), ==,
                   TM_ADD_OK);
  assert_same_as_book (bench);
}

static void
test_refusals (Bench *bench, gconstpointer data)
{
  g_autoptr (TmReading) reading = NULL;

  record (bench, make_reading (bench->job, "1", "001", "25.012"));
  record (bench, make_reading (bench->job, "2", "002", "25.012"));
  reading = make_reading (bench->job, "1", "001", "25.013");
  refuse_reading (bench, reading, "number 1 is taken");
  reading->row.id = "3";
  reading->place = 5;
  refuse_reading (bench, reading, "no place 5");
  reading->place = 0;
  refuse_reading (bench, reading, "no place 0");
  reading->place = 1;
  reading->row.replaces = "1";
  refuse_reading (bench, reading, "reason");
  reading->row.reason = "misread";
  reading->row.replaces = "99";
  refuse_reading (bench, reading, "no reading 99");
  reading->row.replaces = "2";
  refuse_reading (bench, reading, "another piece");
  reading->row.piece = NULL;
  refuse_reading (bench, reading, "piece and feature");
}

static void
test_corrected_once (Bench *bench, gconstpointer data)
{
  TmReading *correction = make_reading (bench->job, "2", "001", "25.013");
  g_autoptr (TmReading) second = make_reading (bench->job, "3", "001", "25.014");
  TmWithdrawal note = { "", "", "burr", "" };
  TmWithdrawal bare = { "", "", "", "" };
  GError *error = NULL;

  record (bench, make_reading (bench->job, "1", "001", "25.012"));
  correction->row.replaces = "1";
  correction->row.reason = "misread";
  record (bench, correction);
  second->row.replaces = "1";
  second->row.reason = "again";
  refuse_reading (bench, second, "already");
  g_assert_false (tm_book_withdraw_reading (bench->book, ID, "1", &note, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (tm_book_withdraw_reading (bench->book, ID, "2", &bare, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "reason"));
  g_clear_error (&error);
  g_assert_false (tm_book_withdraw_reading (bench->book, ID, "77", &note, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (tm_book_withdraw_reading (bench->book, "nobody", "2", &note, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_JOB);
  g_clear_error (&error);
}

static void
test_recorder (Bench *bench, gconstpointer data)
{
  TmRecorder recorder = tm_book_recorder (bench->book, ID);
  TmReading *reading = make_reading (bench->job, "1", "001", "25.012");
  TmPinTrial *trial = tm_pin_trial_new ();
  TmCutRow *cut = tm_cut_row_new ();
  TmWithdrawal note = { "RW", "", "burr", "" };
  GError *error = NULL;

  trial->row = (TmEntryRow) { .id = "1",
                              .piece = reading->row.piece,
                              .feature = reading->row.feature,
                              .by = "RW",
                              .at = "",
                              .replaces = "",
                              .reason = "",
                              .extra = "" };
  trial->size = reading->value;
  trial->pin_class = "X";
  cut->row = trial->row;
  cut->dialled = reading->value;
  cut->passes = 2;
  g_assert_true (recorder.record_reading (recorder.self, reading, &error));
  g_assert_true (recorder.record_pin_trial (recorder.self, trial, &error));
  g_assert_true (recorder.record_cut (recorder.self, cut, &error));
  g_assert_true (recorder.withdraw_reading (recorder.self, "1", &note, &error));
  g_assert_true (recorder.withdraw_pin_trial (recorder.self, "1", &note, &error));
  g_assert_no_error (error);
  g_assert_cmpint (tm_job_add_reading (bench->job, reading), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_pin_trial (bench->job, trial), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_cut (bench->job, cut), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (bench->job, &reading->row, note.by, note.at, note.reason), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (bench->job, &trial->row, note.by, note.at, note.reason), ==, TM_ADD_OK);
  assert_same_as_book (bench);
  g_assert_false (recorder.record_cut (recorder.self, cut, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
}

/* The book numbers a row that has no id as the model does. */
static void
test_numbering (Bench *bench, gconstpointer data)
{
  record (bench, make_reading (bench->job, "9", "001", "25.012"));
  record (bench, make_reading (bench->job, "10", "001", "25.012"));
  record (bench, make_reading (bench->job, "a99", "001", "25.012"));
  record (bench, make_reading (bench->job, "", "001", "25.012"));
  assert_same_as_book (bench);
  g_assert_nonnull (tm_job_find_reading (bench->job, "11"));
}

static void
test_save_nothing (Bench *bench, gconstpointer data)
{
  gint64 facts = ask_file (bench->place.path, "SELECT count (*) FROM journal");
  gint64 seals = ask_file (bench->place.path, "SELECT count (*) FROM seal");

  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM journal"), ==, facts);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM seal"), ==, seals);
}

/* One limit changed: one fact, with who and when; the old version is still there. */
static void
test_save_one_change (Bench *bench, gconstpointer data)
{
  gint64 facts = ask_file (bench->place.path, "SELECT count (*) FROM journal");
  TmFeature *feature = tm_job_find_feature (bench->job, "1");

  record (bench, make_reading (bench->job, "1", "001", "25.012"));
  feature->upper = tm_quantity_new (25021000000, TM_UNIT_MM, 3);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM journal"), ==, facts + 2);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM feature"), ==, 2);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT upper_pm FROM current_feature"), ==, 25021000000);
  g_assert_cmpint (
      ask_file (bench->place.path,
                "SELECT changed_by = 'RW' AND changed_at = '2026-05-05T08:00:00Z' FROM current_feature"),
      ==, 1);
  bench->job->customer = "Other Works";
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM facts"), ==, 2);
}

static void
add_piece_at (Bench *bench, const char *serial, gint at)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = serial;
  g_assert_cmpint (tm_job_add_piece (bench->job, piece), ==, TM_ADD_OK);
  g_ptr_array_steal_index (bench->job->pieces, bench->job->pieces->len - 1);
  g_ptr_array_insert (bench->job->pieces, at, piece);
}

/* A row put in the middle or moved changes no other row. */
static void
test_save_order (Bench *bench, gconstpointer data)
{
  GPtrArray *pieces = bench->job->pieces;
  gint64 rows = ask_file (bench->place.path, "SELECT count (*) FROM piece");
  gpointer first;

  add_piece_at (bench, "between", 1);
  add_piece_at (bench, "first", 0);
  add_piece_at (bench, "last", -1);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM piece"), ==, rows + 3);
  first = g_ptr_array_steal_index (pieces, 0);
  g_ptr_array_add (pieces, first);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM piece"), ==, rows + 4);
}

static void
test_save_removal (Bench *bench, gconstpointer data)
{
  GError *error = NULL;

  record (bench, make_reading (bench->job, "1", "001", "25.012"));
  g_assert_cmpint (tm_job_remove_piece (bench->job, "002"), ==, TM_ADD_OK);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM piece WHERE key = '002'"), ==, 2);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM current_piece"), ==, 2);
  /* and it comes back as a new version */
  add_piece_at (bench, "002", -1);
  save (bench);
  record (bench, make_reading (bench->job, "2", "002", "25.012"));
  /* what the record names stays, whatever the caller's job says */
  g_ptr_array_remove_index (bench->job->pieces, 0);
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "piece 001"));
  g_clear_error (&error);
}

static void
test_removed_piece_is_not_read (Bench *bench, gconstpointer data)
{
  g_autoptr (TmReading) reading = make_reading (bench->job, "1", "002", "25.012");
  TmPiece gone = *reading->row.piece;

  reading->row.piece = &gone;
  g_assert_cmpint (tm_job_remove_piece (bench->job, "002"), ==, TM_ADD_OK);
  save (bench);
  refuse_reading (bench, reading, "piece 002");
}

static void
test_places_stay (Bench *bench, gconstpointer data)
{
  TmReading *reading = make_reading (bench->job, "1", "001", "25.012");
  TmFeature *feature = tm_job_find_feature (bench->job, "1");
  GError *error = NULL;

  reading->place = 3;
  record (bench, reading);
  feature->places = 2;
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "place 3"));
  g_clear_error (&error);
  feature->places = 3;
  save (bench);
}

static TmEvent *
make_event (const char *note)
{
  TmEvent *event = tm_event_new ();

  event->before_piece = "002";
  event->kind = "tool";
  event->note = note;
  return event;
}

static void
test_nameless_rows (Bench *bench, gconstpointer data)
{
  TmNonconformance *nonconformance = tm_nonconformance_new ();

  tm_job_add_event (bench->job, make_event ("a"));
  tm_job_add_event (bench->job, make_event ("a"));
  tm_job_add_event (bench->job, make_event ("b"));
  save (bench);
  g_ptr_array_remove_index (bench->job->events, 0);
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM current_event"), ==, 2);
  tm_job_add_event (bench->job, make_event ("c"));
  g_ptr_array_insert (bench->job->events, 0, make_event ("d"));
  nonconformance->number = "NC-1";
  tm_job_add_nonconformance (bench->job, nonconformance);
  save (bench);
  nonconformance->disposition = "use as is";
  save (bench);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM nonconformance"), ==, 2);
}

static void
test_signatures (Bench *bench, gconstpointer data)
{
  TmSignature *signature = tm_signature_new ();
  GError *error = NULL;

  signature->by = "R. Wren";
  tm_job_add_signature (bench->job, signature);
  save (bench);
  signature->by = "somebody else";
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_ptr_array_set_size (bench->job->signatures, 0);
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
}

/* A refused save leaves nothing behind, not even what came before the refusal. */
static void
test_save_all_or_nothing (Bench *bench, gconstpointer data)
{
  gint64 facts;
  GError *error = NULL;

  record (bench, make_reading (bench->job, "1", "001", "25.012"));
  facts = ask_file (bench->place.path, "SELECT count (*) FROM journal");
  bench->job->customer = "changed";
  tm_job_find_feature (bench->job, "1")->name = "changed";
  g_ptr_array_remove_index (bench->job->pieces, 0);
  g_assert_false (tm_book_save_definitions (bench->book, bench->job, "", "", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM journal"), ==, facts);
}

/* 1,000 features, all of them changed, well within the time of a key stroke's wait. */
static void
test_save_is_quick (Bench *bench, gconstpointer data)
{
  gint64 start;

  for (guint i = 2; i <= 1000; i++)
    {
      TmFeature *feature = tm_feature_new ();
      g_autofree char *balloon = g_strdup_printf ("%u", i);

      feature->balloon = tm_job_intern (bench->job, balloon);
      g_assert_cmpint (tm_job_add_feature (bench->job, feature), ==, TM_ADD_OK);
    }
  start = g_get_monotonic_time ();
  save (bench);
  for (guint i = 0; i < 1000; i++)
    ((TmFeature *)g_ptr_array_index (bench->job->features, i))->name = "changed";
  save (bench);
  g_test_message ("two saves of 1000 features: %" G_GINT64_FORMAT " us", g_get_monotonic_time () - start);
  g_assert_cmpint (ask_file (bench->place.path, "SELECT count (*) FROM feature"), ==, 2000);
  /* ten times what it takes, for slow and sanitized builds */
  g_assert_cmpint (g_get_monotonic_time () - start, <, 3000000);
}

static void
test_ranks (void)
{
  static const struct {
    gint64 before[6];
    guint n;
    guint n_kept; /* how many keep their rank */
  } cases[] = {
    { { 10, 20, 30 }, 3, 3 },          { { 10, 0, 20 }, 3, 2 },        { { 0, 10, 20 }, 3, 2 },
    { { 20, 30, 10 }, 3, 2 },          { { 30, 10, 20, 0, 0 }, 5, 2 }, { { 0, 0 }, 2, 0 },
    { { 10, 0, 11 }, 3, 0 }, /* no room: all anew */
    { { 100, 0, 0, 900, 300 }, 5, 2 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gint64 ranks[6];
      guint kept = 0;

      memcpy (ranks, cases[i].before, sizeof ranks);
      tm_rank_assign (ranks, cases[i].n);
      for (guint k = 0; k < cases[i].n; k++)
        {
          g_assert_cmpint (ranks[k], >, k > 0 ? ranks[k - 1] : 0);
          kept += ranks[k] == cases[i].before[k];
        }
      g_assert_cmpuint (kept, ==, cases[i].n_kept);
    }
  tm_rank_assign (NULL, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) g_test_add ("/book/record/" name_, Bench, NULL, set_up, function_, tear_down)
  ADD ("reading", test_reading);
  ADD ("correction-and-withdrawal", test_correction_and_withdrawal);
  ADD ("refusals", test_refusals);
  ADD ("corrected-once", test_corrected_once);
  ADD ("recorder", test_recorder);
  ADD ("numbering", test_numbering);
  ADD ("save-nothing", test_save_nothing);
  ADD ("save-one-change", test_save_one_change);
  ADD ("save-order", test_save_order);
  ADD ("save-removal", test_save_removal);
  ADD ("removed-piece-is-not-read", test_removed_piece_is_not_read);
  ADD ("places-stay", test_places_stay);
  ADD ("nameless-rows", test_nameless_rows);
  ADD ("signatures", test_signatures);
  ADD ("save-all-or-nothing", test_save_all_or_nothing);
  ADD ("save-is-quick", test_save_is_quick);
  g_test_add_func ("/book/record/ranks", test_ranks);
  return g_test_run ();
}
