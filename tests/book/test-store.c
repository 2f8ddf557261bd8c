/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Jobs in and out of the book, opening, listing, backing up.
 */

#include "book-fixture.h"
#include "book-private.h"
#include "book-schema.h"

#include <glib/gstdio.h>
#include <unistd.h>

#define ID "5f6c2f0e-0000-4000-8000-000000000001"

static void
test_round_trip (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;

  put_job (place->path, job);
  back = take_job (place->path, ID);
  assert_same_job (job, back);
  assert_clean (place->path);
}

/* Empty lists and absent texts. */
static void
test_bare_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = tm_job_new ();
  g_autoptr (TmJob) back = NULL;

  job->id = "bare";
  put_job (place->path, job);
  back = take_job (place->path, "bare");
  assert_same_job (job, back);
  assert_clean (place->path);
}

static void
test_same_id (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) other = make_rich_job (ID);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  gboolean added = TRUE;
  gint64 facts;

  put_job (place->path, job);
  facts = ask_file (place->path, "SELECT count (*) FROM journal");
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, &added, &error));
  g_assert_no_error (error);
  g_assert_false (added);
  other->part_number = "INV-9";
  other->revision = "D";
  g_assert_false (tm_book_add_job (book, other, NULL, NULL, &added, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_SAME_ID);
  g_assert_nonnull (strstr (error->message, "INV-1001"));
  g_assert_nonnull (strstr (error->message, "INV-9"));
  g_assert_nonnull (strstr (error->message, ID));
  g_assert_null (strchr (error->message, '\n'));
  g_clear_error (&error);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal"), ==, facts);
}

/* One reading more, one withdrawn, one person less: each is other content. */
static void
test_same_id_small_difference (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  put_job (place->path, job);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (TmJob) other = make_rich_job (ID);

      if (i == 0)
        ((TmReading *)g_ptr_array_index (other->readings, 1))->value.count++;
      else if (i == 1)
        ((TmReading *)g_ptr_array_index (other->readings, 3))->row.withdrawn->reason = "other";
      else if (i == 2)
        g_ptr_array_set_size (other->signatures, 0);
      else
        ((TmReading *)g_ptr_array_index (other->readings, 1))->value.decimals++;
      g_assert_false (tm_book_add_job (book, other, NULL, NULL, NULL, &error));
      g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_SAME_ID);
      g_clear_error (&error);
    }
}

static void
test_no_such_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  put_job (place->path, job);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_null (tm_book_load_job (book, "nobody", NULL, NULL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_JOB);
  g_assert_nonnull (strstr (error->message, "nobody"));
  g_clear_error (&error);
}

static gboolean
cancel_cb (double fraction, gpointer data)
{
  guint *calls = data;

  g_assert_cmpfloat (fraction, >=, 0.0);
  g_assert_cmpfloat (fraction, <=, 1.0);
  return ++*calls < 2;
}

static void
test_cancel (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 1);
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  guint calls = 0;

  for (guint i = 1; i <= 3 * TM_BOOK_STRIDE; i++)
    {
      TmReading *reading = make_reading (job, "", "001", "25.010");

      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
  g_assert_false (tm_book_add_job (book, job, cancel_cb, &calls, NULL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANCELLED);
  g_clear_error (&error);
  g_assert_cmpuint (calls, ==, 2);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal"), ==, 0);
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  calls = 0;
  g_assert_null (tm_book_load_job (book, ID, cancel_cb, &calls, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANCELLED);
  g_clear_error (&error);
  g_clear_pointer (&book, tm_book_close);
  assert_clean (place->path);
}

static void
test_list (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) rich = make_rich_job (ID);
  g_autoptr (TmJob) bench = make_bench_job ("second", 3);
  g_autoptr (GPtrArray) entries = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autoptr (TmReading) reading = make_reading (rich, "40", "001", "1.000");
  const TmBookEntry *entry;

  put_job (place->path, rich);
  put_job (place->path, bench);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  entries = tm_book_list (book, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (entries->len, ==, 2);
  entry = g_ptr_array_index (entries, 0);
  g_assert_cmpstr (entry->id, ==, "second");
  g_assert_cmpuint (entry->n_pieces, ==, 3);
  g_clear_pointer (&entries, g_ptr_array_unref);

  reading->row.at = "2026-06-01T00:00:00Z";
  g_assert_true (tm_book_record_reading (book, ID, reading, &error));
  g_assert_no_error (error);
  entries = tm_book_list (book, &error);
  entry = g_ptr_array_index (entries, 0);
  g_assert_cmpstr (entry->id, ==, ID);
  g_assert_cmpstr (entry->part_number, ==, "INV-1001");
  g_assert_cmpstr (entry->part_name, ==, "Housing “A”");
  g_assert_cmpstr (entry->revision, ==, "C");
  g_assert_cmpstr (entry->customer, ==, "Invented Works");
  g_assert_cmpstr (entry->order, ==, "PO 5");
  g_assert_cmpuint (entry->n_features, ==, 3);
  g_assert_cmpuint (entry->n_pieces, ==, 3);
  /* five rows, one of them corrected, one withdrawn */
  g_assert_cmpuint (entry->n_readings, ==, 3);
  g_assert_cmpstr (entry->last_at, ==, "2026-06-01T00:00:00Z");
}

static void
test_set_up (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_autofree char *log = g_strconcat (place->path, "-wal", NULL);
  sqlite3_stmt *mode;

  g_assert_no_error (error);
  g_assert_cmpstr (tm_book_path (book), ==, place->path);
  g_assert_false (tm_book_is_read_only (book));
  mode = tm_book_prepare (book, "PRAGMA journal_mode", &error);
  g_assert_true (tm_book_step (book, mode, &error));
  g_assert_cmpstr (tm_column_text (mode, 0), ==, "wal");
  sqlite3_reset (mode);
  for (guint i = 0; i < 2; i++)
    {
      gint64 number = 0;
      sqlite3_stmt *ask
          = tm_book_prepare (book, i == 0 ? "PRAGMA synchronous" : "PRAGMA foreign_keys", &error);

      g_assert_true (tm_book_ask (book, ask, -1, &number, &error));
      g_assert_cmpint (number, ==, i == 0 ? 2 : 1); /* FULL; on */
    }
  g_assert_cmpint (ask_file (place->path, "PRAGMA application_id"), ==, 0x544d626b);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_true (tm_book_checkpoint (book, &error));
  g_assert_no_error (error);
  g_clear_pointer (&book, tm_book_close);
  g_assert_false (g_file_test (log, G_FILE_TEST_EXISTS));
}

static void
test_value_is_integer (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);

  put_job (place->path, job);
  /* .9843 in = .9843 * 25.4e9 pm, exact by the 1959 inch */
  g_assert_cmpint (ask_file (place->path, "SELECT value_pm FROM reading WHERE id = 'b-7'"), ==, 25001220000);
  g_assert_cmpint (
      ask_file (place->path,
                "SELECT count (*) FROM reading WHERE typeof (value_pm) NOT IN ('integer', 'null')"),
      ==, 0);
}

static void
test_only_grows (Place *place, gconstpointer data)
{
  static const char *const tables[]
      = { "journal",        "seal",          "job",         "facts",     "person",
          "gauge",          "method",        "feature",     "piece",     "event",
          "nonconformance", "signature",     "reading",     "pin_trial", "cut",
          "withdrawal",     "calibration",   "gauge_check", "pin_size",  "budget_line",
          "study",          "study_reading", "tool",        "material",  "mate" };
  g_autoptr (TmJob) job = make_rich_job (ID);
  sqlite3 *db = NULL;

  put_job (place->path, job);
  g_assert_cmpint (sqlite3_open (place->path, &db), ==, SQLITE_OK);
  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      const char *forms[]
          = { "UPDATE %s SET rowid = rowid", "DELETE FROM %s", "INSERT OR REPLACE INTO %s SELECT * FROM %s" };

      for (gsize k = 0; k < G_N_ELEMENTS (forms); k++)
        {
          g_auto (GStrv) parts = g_strsplit (forms[k], "%s", -1);
          g_autofree char *sql = g_strjoinv (tables[i], parts);

          g_assert_cmpint (sqlite3_exec (db, sql, NULL, NULL, NULL), ==, SQLITE_CONSTRAINT);
          g_assert_nonnull (strstr (sqlite3_errmsg (db), "only grows"));
        }
    }
  sqlite3_close (db);
  assert_clean (place->path);
}

/* Any name is a name: a percent sign or a question mark means nothing to the opener. */
static void
test_odd_name (Place *place, gconstpointer data)
{
  g_autofree char *path = g_build_filename (place->folder, "a?b #%41 ü.book", NULL);
  g_autoptr (TmJob) job = make_rich_job (ID);

  put_job (path, job);
  g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
  assert_clean (path);
}

static void
assert_open_fails (const char *path, int flags, TmBookError code)
{
  GError *error = NULL;

  g_assert_null (tm_book_open (path, (TmBookOpenFlags)flags, &error));
  g_assert_error (error, TM_BOOK_ERROR, (int)code);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_null (strchr (error->message, '\n'));
  g_clear_error (&error);
}

static void
test_wrong_files (Place *place, gconstpointer data)
{
  g_autofree char *text = g_build_filename (place->folder, "text", NULL);
  g_autofree char *other = g_build_filename (place->folder, "other", NULL);
  g_autofree char *nowhere = g_build_filename (place->folder, "no", "book", NULL);
  g_autofree char *content = g_strnfill (5000, 'x');
  g_autofree char *after = NULL;
  sqlite3 *db = NULL;

  g_assert_true (g_file_set_contents (text, content, -1, NULL));
  assert_open_fails (text, TM_BOOK_OPEN_NORMAL, TM_BOOK_ERROR_NOT_A_BOOK);
  g_assert_true (g_file_get_contents (text, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, content);
  assert_open_fails (nowhere, TM_BOOK_OPEN_NORMAL, TM_BOOK_ERROR_CANNOT_OPEN);
  assert_open_fails (place->folder, TM_BOOK_OPEN_NORMAL, TM_BOOK_ERROR_CANNOT_OPEN);
  assert_open_fails (place->path, TM_BOOK_OPEN_READ_ONLY, TM_BOOK_ERROR_CANNOT_OPEN);
  g_assert_cmpint (sqlite3_open (other, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "CREATE TABLE t (x)", NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (db);
  assert_open_fails (other, TM_BOOK_OPEN_NORMAL, TM_BOOK_ERROR_NOT_A_BOOK);
  g_assert_cmpint (ask_file (other, "SELECT count (*) FROM sqlite_schema"), ==, 1);
}

static void
test_read_only_flag (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;
  g_autoptr (TmReading) reading = make_reading (job, "77", "001", "1.000");
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gsize length_before = 0;
  gsize length_after = 0;
  g_autoptr (GDir) dir = NULL;

  put_job (place->path, job);
  g_assert_true (g_file_get_contents (place->path, &before, &length_before, NULL));
  book = tm_book_open (place->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  g_assert_true (tm_book_is_read_only (book));
  back = tm_book_load_job (book, ID, NULL, NULL, &error);
  assert_same_job (job, back);
  g_assert_false (tm_book_record_reading (book, ID, reading, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  g_clear_error (&error);
  dir = g_dir_open (place->folder, 0, NULL);
  g_assert_cmpstr (g_dir_read_name (dir), ==, "shop.book");
  g_assert_null (g_dir_read_name (dir));
  g_clear_pointer (&book, tm_book_close);
  g_assert_true (g_file_get_contents (place->path, &after, &length_after, NULL));
  g_assert_cmpmem (before, (int)length_before, after, (int)length_after);
}

/* Through a link the log beside the real file is still seen. */
static void
test_link (Place *place, gconstpointer data)
{
  g_autofree char *folder = g_build_filename (place->folder, "links", NULL);
  g_autofree char *link = g_build_filename (folder, "link.book", NULL);
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) writer = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (TmBook) reader = NULL;

  g_assert_cmpint (g_mkdir (folder, 0755), ==, 0);
  g_assert_cmpint (symlink (place->path, link), ==, 0);
  g_assert_true (tm_book_add_job (writer, job, NULL, NULL, NULL, &error));
  reader = tm_book_open (link, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  back = tm_book_load_job (reader, ID, NULL, NULL, &error);
  g_assert_no_error (error);
  assert_same_job (job, back);
  g_unlink (link);
  g_rmdir (folder);
}

/* A reader beside a writer sees what is in the log. */
static void
test_read_beside_writer (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) writer = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (TmBook) reader = NULL;

  g_assert_true (tm_book_add_job (writer, job, NULL, NULL, NULL, &error));
  reader = tm_book_open (place->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  back = tm_book_load_job (reader, ID, NULL, NULL, &error);
  g_assert_no_error (error);
  assert_same_job (job, back);
}

static void
test_rollback_journal (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_ROLLBACK, &error);
  g_autofree char *log = g_strconcat (place->path, "-wal", NULL);

  g_assert_no_error (error);
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_false (g_file_test (log, G_FILE_TEST_EXISTS));
  back = tm_book_load_job (book, ID, NULL, NULL, &error);
  assert_same_job (job, back);
  g_assert_true (tm_book_checkpoint (book, &error));
  g_clear_pointer (&book, tm_book_close);
  /* and from there back to the log, and again */
  assert_clean (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_ROLLBACK, &error);
  g_assert_no_error (error);
}

/* File system magic numbers as the Linux manual page statfs(2) lists them. */
static void
test_network_magic (void)
{
  static const guint32 network[]
      = { 0x6969, 0x517b, 0xff534d42, 0xfe534d42, 0x65735546, 0x01021997, 0x73757245 };
  static const guint32 local[] = { 0xef53, 0x9123683e, 0x58465342, 0x01021994, 0x4d44, 0x9660, 0x794c7630 };

  for (gsize i = 0; i < G_N_ELEMENTS (network); i++)
    g_assert_true (tm_place_magic_is_network (network[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (local); i++)
    g_assert_false (tm_place_magic_is_network (local[i]));
}

static void
test_backup (Place *place, gconstpointer data)
{
  g_autofree char *copy = g_build_filename (place->folder, "copy.book", NULL);
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_autofree char *head = NULL;
  g_autofree char *copy_head = NULL;
  g_autoptr (TmBook) other = NULL;
  guint64 n = 0;

  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_true (tm_book_backup (book, copy, &error));
  g_assert_no_error (error);
  back = take_job (copy, ID);
  assert_same_job (job, back);
  assert_clean (copy);
  head = tm_book_head (book, &n, &error);
  g_assert_cmpuint (n, ==, (guint64)ask_file (place->path, "SELECT count (*) FROM journal"));
  g_assert_cmpuint (strlen (head), ==, 64);
  other = tm_book_open (copy, TM_BOOK_OPEN_READ_ONLY, &error);
  copy_head = tm_book_head (other, NULL, &error);
  g_assert_cmpstr (head, ==, copy_head);
  /* never over another file, and nothing is left beside it */
  g_assert_false (tm_book_backup (book, copy, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, copy));
  g_clear_error (&error);
}

static void
test_backup_refuses_altered (Place *place, gconstpointer data)
{
  g_autofree char *copy = g_build_filename (place->folder, "copy.book", NULL);
  g_autoptr (TmJob) job = make_rich_job (ID);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autoptr (GDir) dir = NULL;
  const char *name;

  put_job (place->path, job);
  tamper (place->path, OPEN_TABLE ("reading") "UPDATE reading SET value_pm = 1 WHERE id = '1'");
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_false (tm_book_backup (book, copy, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED);
  g_clear_error (&error);
  g_clear_pointer (&book, tm_book_close);
  dir = g_dir_open (place->folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_assert_cmpstr (name, ==, "shop.book");
}

/* A member that joins the model must join the book: these sizes are of a 64-bit machine. */
static void
test_nothing_left_out (void)
{
  if (sizeof (gpointer) != 8)
    {
      g_test_skip ("sizes are for 64-bit machines");
      return;
    }
  g_assert_cmpuint (sizeof (TmPerson), ==, 24);
  g_assert_cmpuint (sizeof (TmGauge), ==, 224);
  g_assert_cmpuint (sizeof (TmMethod), ==, 64);
  g_assert_cmpuint (sizeof (TmFeature), ==, 496);
  g_assert_cmpuint (sizeof (TmPiece), ==, 40);
  g_assert_cmpuint (sizeof (TmReading), ==, 224);
  g_assert_cmpuint (sizeof (TmPinTrial), ==, 168);
  g_assert_cmpuint (sizeof (TmCutRow), ==, 152);
  g_assert_cmpuint (sizeof (TmEvent), ==, 72);
  g_assert_cmpuint (sizeof (TmNonconformance), ==, 96);
  g_assert_cmpuint (sizeof (TmSignature), ==, 64);
  g_assert_cmpuint (sizeof (TmCalibration), ==, 112);
  g_assert_cmpuint (sizeof (TmCheck), ==, 72);
  g_assert_cmpuint (sizeof (TmPinSize), ==, 48);
  g_assert_cmpuint (sizeof (TmBudgetLine), ==, 96);
  g_assert_cmpuint (sizeof (TmStudy), ==, 120);
  g_assert_cmpuint (sizeof (TmStudyReading), ==, 80);
  g_assert_cmpuint (sizeof (TmTool), ==, 112);
  g_assert_cmpuint (sizeof (TmShopMaterial), ==, 112);
  g_assert_cmpuint (sizeof (TmMateSize), ==, 120);
  g_assert_cmpuint (sizeof (TmSupply), ==, 72);
  g_assert_cmpuint (sizeof (TmSubPart), ==, 40);
  g_assert_cmpuint (sizeof (TmReportField), ==, 24);
  g_assert_cmpuint (sizeof (TmDrawing), ==, 56);
  g_assert_cmpuint (sizeof (TmBalloonMark), ==, 96);
  g_assert_cmpuint (sizeof (TmJob), ==, 584);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) \
  g_test_add ("/book/store/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("round-trip", test_round_trip);
  ADD ("bare-job", test_bare_job);
  ADD ("same-id", test_same_id);
  ADD ("same-id-small-difference", test_same_id_small_difference);
  ADD ("no-such-job", test_no_such_job);
  ADD ("cancel", test_cancel);
  ADD ("list", test_list);
  ADD ("set-up", test_set_up);
  ADD ("value-is-integer", test_value_is_integer);
  ADD ("only-grows", test_only_grows);
  ADD ("odd-name", test_odd_name);
  ADD ("wrong-files", test_wrong_files);
  ADD ("read-only-flag", test_read_only_flag);
  ADD ("read-beside-writer", test_read_beside_writer);
  ADD ("link", test_link);
  ADD ("rollback-journal", test_rollback_journal);
  ADD ("backup", test_backup);
  ADD ("backup-refuses-altered", test_backup_refuses_altered);
  g_test_add_func ("/book/store/network-magic", test_network_magic);
  g_test_add_func ("/book/store/nothing-left-out", test_nothing_left_out);
  return g_test_run ();
}
