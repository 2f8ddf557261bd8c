/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every way to change a book behind the program's back is found and named.
 */

#include "book-fixture.h"

#include <gio/gio.h>

#define ID "5f6c2f0e-0000-4000-8000-000000000003"

typedef struct {
  const char *name;
  const char *sql;
  const char *what;  /* of one of the faults */
  const char *where; /* in the same fault */
  const char *how;   /* in the same fault */
} Tampering;

static const Tampering tamperings[] = {
  { "value", OPEN_TABLE ("reading") "UPDATE reading SET value_pm = value_pm + 1000000 WHERE id = '1'",
    "reading", "part INV-1001, piece 002, feature 10, reading 1",
    "value is 25.0130 mm in the table, 25.0120 mm in the journal" },
  { "decimals", OPEN_TABLE ("reading") "UPDATE reading SET value_form = 'mm.3' WHERE id = '1'", "reading",
    "reading 1", "value is 25.012 mm in the table, 25.0120 mm in the journal" },
  { "typed", OPEN_TABLE ("reading") "UPDATE reading SET typed = '1' WHERE id = 'b-7'", "reading",
    "part INV-1001, piece 002, feature 10, reading b-7", "typed is 1 in the table, .9843 in in the journal" },
  { "person and time",
    OPEN_TABLE ("reading") "UPDATE reading SET taken_by = 'XX', taken_at = '' WHERE id = '2'", "reading",
    "part INV-1001, piece 001, feature 2, reading 2",
    "taken_by is XX in the table, RW in the journal; taken_at is nothing in the table" },
  { "piece of a reading", OPEN_TABLE ("reading") "UPDATE reading SET piece = '001' WHERE id = '1'", "reading",
    "piece 002, feature 10, reading 1", "piece is 001 in the table, 002 in the journal" },
  { "outcome", OPEN_TABLE ("reading") "UPDATE reading SET outcome = 'pass' WHERE id = '9'", "reading",
    "reading 9", "outcome is pass in the table, fail in the journal" },
  { "deleted reading", OPEN_TABLE ("reading") "DELETE FROM reading WHERE id = '2'", "reading",
    "part INV-1001, piece 001, feature 2, reading 2", "it was deleted" },
  { "all readings", OPEN_TABLE ("reading") "DELETE FROM reading", "reading", "reading b-7",
    "it was deleted" },
  { "inserted reading",
    "INSERT INTO reading SELECT 100000, job, 'forged', piece, feature, place, station, value_pm, value_form,"
    " outcome, dx_pm, dx_form, dy_pm, dy_form, typed, method, part_temp_count, part_temp_form, "
    "gauge_temp_count,"
    " gauge_temp_form, taken_by, taken_at, '', '', extra, '' FROM reading WHERE id = '1'",
    "reading", "part INV-1001, piece 002, feature 10, reading forged",
    "in the table but not in the journal" },
  { "limit", OPEN_TABLE ("feature") "UPDATE feature SET upper_pm = 25100000000 WHERE balloon = '10'",
    "feature", "part INV-1001, feature 10", "upper is 25.100 mm in the table, 25.021 mm in the journal" },
  { "gauge", OPEN_TABLE ("gauge") "UPDATE gauge SET due = '2030-01-01' WHERE tag = 'M-25'", "gauge",
    "part INV-1001, gauge M-25", "due is 2030-01-01 in the table, 2027-03-01 in the journal" },
  { "removed mark", OPEN_TABLE ("person") "UPDATE person SET removed = 1", "person",
    "part INV-1001, person RW", "removed is 1 in the table, 0 in the journal" },
  { "withdrawal", OPEN_TABLE ("withdrawal") "DELETE FROM withdrawal WHERE target = 'reading'", "withdrawal",
    "withdrawal of 9", "it was deleted" },
  { "trial", OPEN_TABLE ("pin_trial") "UPDATE pin_trial SET went = 0", "pin_trial",
    "part INV-1001, piece 001, feature 10, pin trial 1", "went is 0 in the table, 1 in the journal" },
  { "place of a trial", OPEN_TABLE ("pin_trial") "UPDATE pin_trial SET place = 3 WHERE id = '1'", "pin_trial",
    "pin trial 1", "place is 3 in the table, nothing in the journal" },
  { "set of a trial", OPEN_TABLE ("pin_trial") "UPDATE pin_trial SET gauge = 'PS-2' WHERE id = '2'",
    "pin_trial", "pin trial 2", "gauge is PS-2 in the table, PS-1 in the journal" },
  { "overdue reason", OPEN_TABLE ("reading") "UPDATE reading SET overdue_reason = '' WHERE id = '1'",
    "reading", "reading 1", "overdue_reason is nothing in the table, no other gauge that day" },
  { "calibration", OPEN_TABLE ("calibration") "UPDATE calibration SET outcome = ''", "calibration",
    "part INV-1001, calibration of gauge M-25", "outcome is nothing in the table, bad in the journal" },
  { "certificate's uncertainty", OPEN_TABLE ("calibration") "UPDATE calibration SET uncertainty_pm = 254000",
    "calibration", "gauge M-25", "uncertainty is 0.00001 in in the table, 0.00003 in in the journal" },
  { "check", OPEN_TABLE ("gauge_check") "UPDATE gauge_check SET reading_pm = standard_pm", "gauge_check",
    "check of gauge M-25", "reading is 1.0000 in in the table, 1.0001 in in the journal" },
  { "pin size", OPEN_TABLE ("pin_size") "DELETE FROM pin_size", "pin_size", "measured pin of set PS-1",
    "it was deleted" },
  { "budget line", OPEN_TABLE ("budget_line") "UPDATE budget_line SET value_pm = 1000000", "budget_line",
    "budget line of method transfer", "value is 0.0010 mm in the table, 0.0020 mm in the journal" },
  { "study", OPEN_TABLE ("study") "UPDATE study SET seed_count = 7", "study", "study one",
    "seed is 7 in the table, 12345 in the journal" },
  { "study reading", OPEN_TABLE ("study_reading") "UPDATE study_reading SET value_pm = value_pm + 254000",
    "study_reading", "reading of study one", "value is 0.98431 in in the table, 0.98430 in in the journal" },
  { "rule of the shop", OPEN_TABLE ("facts") "UPDATE facts SET drift_rule = ''", "facts", "part INV-1001",
    "drift_rule is nothing in the table, ask in the journal" },
  { "cut", OPEN_TABLE ("cut") "UPDATE cut SET passes = 5 WHERE id = '1'", "cut",
    "piece 003, feature 10, cut 1", "passes is 5 in the table, 4 in the journal" },
  { "place of a cut", OPEN_TABLE ("cut") "UPDATE cut SET place = 2 WHERE id = '1'", "cut", "cut 1",
    "place is 2 in the table, nothing in the journal" },
  { "reading before a cut", OPEN_TABLE ("cut") "UPDATE cut SET after_reading = '' WHERE id = '3'", "cut",
    "piece 002, feature 10, cut 3", "after_reading is nothing in the table, b-7 in the journal" },
  { "dial of a cut", OPEN_TABLE ("cut") "UPDATE cut SET reads = '' WHERE id = '2'", "cut", "cut 2",
    "reads is nothing in the table, radius in the journal" },
  { "withdrawal of a cut", OPEN_TABLE ("withdrawal") "DELETE FROM withdrawal WHERE target = 'cut'",
    "withdrawal", "withdrawal of 2", "it was deleted" },
  { "tool", OPEN_TABLE ("tool") "UPDATE tool SET graduation_pm = 12700000", "tool",
    "part INV-1001, tool boring bar 16", "graduation is 0.0005 in in the table, 0.0010 in in the journal" },
  { "material", OPEN_TABLE ("material") "UPDATE material SET yield_count = 300000000", "material",
    "material bush bronze", "yield is 300 in the table, 150 in the journal" },
  { "mate", OPEN_TABLE ("mate") "UPDATE mate SET largest_pm = NULL WHERE feature = '10'", "mate", "mate B1",
    "largest is nothing in the table, 25.026 mm in the journal" },
  { "wanted fit", OPEN_TABLE ("feature") "UPDATE feature SET wanted_most_pm = 0 WHERE balloon = '10'",
    "feature", "feature 10", "wanted_most is 0.0000 mm in the table, -0.0100 mm in the journal" },
  { "accepted risk", OPEN_TABLE ("facts") "UPDATE facts SET cut_risk_count = 500000", "facts",
    "part INV-1001", "cut_risk is 0.500 in the table, 0.001 in the journal" },
  { "signature", OPEN_TABLE ("signature") "UPDATE signature SET digest = 'ff00'", "signature", "signature 1",
    "digest is ff00 in the table, 00ff in the journal" },
  { "event", OPEN_TABLE ("event") "UPDATE event SET note = '' WHERE key = '2'", "event", "event 2",
    "note is nothing" },
  { "nonconformance", OPEN_TABLE ("nonconformance") "UPDATE nonconformance SET disposition = 'use as is'",
    "nonconformance", "nonconformance NC-14",
    "disposition is use as is in the table, rework in the journal" },
  { "facts", OPEN_TABLE ("facts") "UPDATE facts SET revision = 'D'", "facts", "part INV-1001",
    "revision is D in the table, C in the journal" },
  { "job id", OPEN_TABLE ("job") "UPDATE job SET id = 'other' WHERE seq = 1", "job", ID,
    "id is other in the table" },
  { "other job",
    OPEN_TABLE ("piece") "UPDATE piece SET job = (SELECT max (seq) FROM job) WHERE key = '001' AND job ="
                         " (SELECT min (seq) FROM job)",
    "piece", "piece 001", "job is" },
  { "journal payload",
    OPEN_TABLE ("journal") "UPDATE journal SET payload = replace (payload, 'value_pm=25012000000',"
                           " 'value_pm=25013000000') WHERE kind = 'reading'",
    "journal", "part INV-1001, piece 002, feature 10, reading 1", "does not give the hash" },
  { "journal and table",
    OPEN_TABLE ("journal") OPEN_TABLE ("reading") "UPDATE journal SET payload = replace (payload,"
                                                  " 'value_pm=25012000000', 'value_pm=25013000000');"
                                                  "UPDATE reading SET value_pm = 25013000000 WHERE id = '1'",
    "journal", "part INV-1001, piece 002, feature 10, reading 1", "does not give the hash" },
  { "journal kind", OPEN_TABLE ("journal") "UPDATE journal SET kind = 'nonsense' WHERE seq = 5", "journal",
    "row 5", "no kind of fact" },
  { "journal hash", OPEN_TABLE ("journal") "UPDATE journal SET prev = zeroblob (32) WHERE seq = 7", "journal",
    "part", "row 6 does not give the hash that row 7 carries" },
  { "journal row deleted", OPEN_TABLE ("journal") "DELETE FROM journal WHERE seq = 9", "journal",
    "journal row 9", "1 row is missing here" },
  { "journal row and table row deleted",
    OPEN_TABLE ("journal")
        OPEN_TABLE ("reading") "DELETE FROM journal WHERE seq = (SELECT seq FROM reading WHERE id"
                               " = '2'); DELETE FROM reading WHERE id = '2'",
    "journal", "journal row", "1 row is missing here" },
  { "journal row added",
    "INSERT INTO journal SELECT (SELECT max (seq) FROM journal) + 1, job, kind, payload, prev FROM journal "
    "WHERE kind = 'cut' ORDER BY seq LIMIT 1",
    "journal", "cut 1", "no seal" },
  { "tail",
    OPEN_TABLE ("journal") OPEN_TABLE ("piece") "DELETE FROM piece WHERE seq > (SELECT max (seq) - 2 FROM "
                                                "journal); DELETE FROM journal WHERE seq > (SELECT max (seq) "
                                                "- 2 FROM journal)",
    "journal", "journal row 63", "the end is cut off: facts sealed: 64, facts left: 62" },
  { "tail and its seal",
    OPEN_TABLE ("journal") OPEN_TABLE ("seal") OPEN_TABLE ("piece") OPEN_TABLE ("feature") OPEN_TABLE ("job")
        OPEN_TABLE ("facts") "DELETE FROM piece WHERE job > 2; DELETE FROM feature WHERE job > 2;"
                             " DELETE FROM facts WHERE job > 2; DELETE FROM journal WHERE job > 2;"
                             " DELETE FROM job WHERE seq > 2; DELETE FROM seal WHERE n > 1",
    "journal", "seal 2", "the end is cut off: transactions counted: 2, transactions left: 1" },
  { "seal hash", OPEN_TABLE ("seal") "UPDATE seal SET hash = zeroblob (32) WHERE n = 1", "journal",
    "part INV-1001", "was sealed" },
  { "trigger", "DROP TRIGGER reading_stays", "schema", "trigger reading_stays", "removed" },
  { "foreign trigger", "CREATE TRIGGER t AFTER INSERT ON reading BEGIN SELECT 1; END", "schema", "trigger t",
    "not part of a book" },
  { "column", "ALTER TABLE cut RENAME COLUMN passes TO p", "file", "cut", "cannot be read" },
  { "table", OPEN_TABLE ("cut") "DROP TABLE cut", "schema", "table cut", "removed" },
};

static void
fill (const char *path)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) other = make_bench_job ("other-job", 2);

  put_job (path, job);
  put_job (path, other);
  assert_clean (path);
}

static gboolean
is_named (const TmBookFault *fault, const Tampering *tampering)
{
  return g_str_equal (fault->what, tampering->what) && strstr (fault->where, tampering->where) != NULL
         && strstr (fault->how, tampering->how) != NULL;
}

static void
assert_named (const char *path, const Tampering *tampering)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_autoptr (GPtrArray) faults = NULL;
  gboolean named = FALSE;
  gboolean at_schema = FALSE;

  g_assert_no_error (error);
  faults = tm_book_verify (book, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < faults->len; i++)
    {
      const TmBookFault *fault = g_ptr_array_index (faults, i);

      g_test_message ("%s: %s: %s", fault->what, fault->where, fault->how);
      named = named || is_named (fault, tampering);
      /* The record comes before the triggers that were taken away to change it. */
      g_assert_true (!at_schema || g_str_equal (fault->what, "schema"));
      at_schema = g_str_equal (fault->what, "schema");
    }
  if (!named)
    g_error ("%s: not named as “%s: %s: %s”", tampering->name, tampering->what, tampering->where,
             tampering->how);
}

static void
test_tampering (Place *place, gconstpointer data)
{
  const Tampering *tampering = data;

  fill (place->path);
  tamper (place->path, tampering->sql);
  assert_named (place->path, tampering);
}

/* The same with the tool that anybody has at hand. */
static void
test_sqlite_tool (Place *place, gconstpointer data)
{
  g_autofree char *tool = g_find_program_in_path ("sqlite3");
  const char *arguments[] = { tool, place->path, tamperings[0].sql, NULL };
  g_autoptr (GSubprocess) process = NULL;
  GError *error = NULL;

  if (tool == NULL)
    {
      g_test_skip ("the sqlite3 tool is not installed");
      return;
    }
  fill (place->path);
  process = g_subprocess_newv (arguments, G_SUBPROCESS_FLAGS_NONE, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_wait_check (process, NULL, &error));
  g_assert_no_error (error);
  assert_named (place->path, &tamperings[0]);
}

/* One bit of the file, anywhere beyond the header, on a copy: never a crash, and never a job that
 * differs in silence.  (A bit in unused space changes nothing.) */
static void
test_flipped_bits (Place *place, gconstpointer data)
{
  g_autofree char *copy = g_build_filename (place->folder, "copy.book", NULL);
  g_autofree char *bytes = NULL;
  g_autoptr (TmJob) job = make_rich_job (ID);
  gsize length = 0;
  guint found = 0;

  fill (place->path);
  g_assert_true (g_file_get_contents (place->path, &bytes, &length, NULL));
  for (guint i = 0; i < 150; i++)
    {
      gsize at = (gsize)g_test_rand_int_range (100, (gint32)length);
      char bit = (char)(1 << g_test_rand_int_range (0, 8));
      GError *error = NULL;
      g_autoptr (TmBook) book = NULL;
      g_autoptr (GPtrArray) faults = NULL;
      g_autoptr (TmJob) back = NULL;

      bytes[at] = (char)(bytes[at] ^ bit);
      g_assert_true (g_file_set_contents (copy, bytes, (gssize)length, NULL));
      bytes[at] = (char)(bytes[at] ^ bit);
      book = tm_book_open (copy, TM_BOOK_OPEN_READ_ONLY, &error);
      faults = book != NULL ? tm_book_verify (book, NULL, &error) : NULL;
      if (faults != NULL && faults->len == 0)
        {
          back = tm_book_load_job (book, ID, NULL, NULL, &error);
          g_assert_no_error (error);
          assert_same_job (job, back);
        }
      else
        found++;
      g_assert_true (error == NULL || error->domain == TM_BOOK_ERROR);
      g_clear_error (&error);
    }
  g_test_message ("%u of 150 flipped bits were in use and found", found);
}

/* A damaged page is an answer of verification, and a clear error of everything else. */
static void
test_damaged_pages (Place *place, gconstpointer data)
{
  g_autofree char *bytes = NULL;
  gsize length = 0;
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  gint64 root;

  fill (place->path);
  root = ask_file (place->path, "SELECT rootpage FROM sqlite_schema WHERE name = 'reading'");
  g_assert_true (g_file_get_contents (place->path, &bytes, &length, NULL));
  memset (bytes + (root - 1) * 4096, 0xa5, 4096);
  g_assert_true (g_file_set_contents (place->path, bytes, (gssize)length, NULL));
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
  g_assert_null (tm_book_load_job (book, ID, NULL, NULL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, place->path));
  g_clear_error (&error);
  faults = tm_book_verify (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (faults->len, >, 0);
  g_assert_cmpstr (((TmBookFault *)g_ptr_array_index (faults, 0))->what, ==, "file");
}

static void
test_truncated_file (Place *place, gconstpointer data)
{
  g_autofree char *bytes = NULL;
  gsize length = 0;

  fill (place->path);
  g_assert_true (g_file_get_contents (place->path, &bytes, &length, NULL));
  for (gsize cut = 0; cut < length; cut += 3 * 4096 + 500)
    {
      GError *error = NULL;
      g_autoptr (TmBook) book = NULL;
      g_autoptr (GPtrArray) faults = NULL;

      g_assert_true (g_file_set_contents (place->path, bytes, (gssize)cut, NULL));
      book = tm_book_open (place->path, TM_BOOK_OPEN_READ_ONLY, &error);
      faults = book != NULL ? tm_book_verify (book, NULL, &error) : NULL;
      g_assert_true (faults == NULL || faults->len > 0);
      g_assert_true (error == NULL || error->domain == TM_BOOK_ERROR);
      g_clear_error (&error);
    }
}

/* Recording goes on after an intrusion, and the fault stays where it was. */
static void
test_going_on (Place *place, gconstpointer data)
{
  static const Tampering tail = { "tail", NULL, "journal", "journal row", "missing here" };
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmReading) reading = make_reading (job, "50", "001", "1.000");
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  fill (place->path);
  tamper (place->path, OPEN_TABLE ("journal") "DELETE FROM journal WHERE seq > 28");
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_record_reading (book, ID, reading, &error));
  g_assert_no_error (error);
  g_clear_pointer (&book, tm_book_close);
  assert_named (place->path, &tail);
}

/* The chain as its description says, computed here with GLib's SHA-256 instead of libsodium's. */
static void
test_chain (Place *place, gconstpointer data)
{
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;
  guint8 hash[32] = { 0 };
  g_autofree char *head = NULL;
  g_autoptr (TmBook) book = NULL;
  GString *hex = g_string_new (NULL);
  guint n = 0;

  fill (place->path);
  g_assert_cmpint (sqlite3_open (place->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (
      sqlite3_prepare_v2 (db,
                          "SELECT prev, seq || char (9) || job || char (9) || kind || char (10) ||"
                          " payload FROM journal ORDER BY seq",
                          -1, &statement, NULL),
      ==, SQLITE_OK);
  while (sqlite3_step (statement) == SQLITE_ROW)
    {
      g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
      gsize length = sizeof hash;

      g_assert_cmpmem (sqlite3_column_blob (statement, 0), 32, hash, 32);
      g_checksum_update (sum, hash, sizeof hash);
      g_checksum_update (sum, sqlite3_column_text (statement, 1), sqlite3_column_bytes (statement, 1));
      g_checksum_get_digest (sum, hash, &length);
      n++;
    }
  sqlite3_finalize (statement);
  sqlite3_close (db);
  for (guint i = 0; i < sizeof hash; i++)
    g_string_append_printf (hex, "%02x", hash[i]);
  book = tm_book_open (place->path, TM_BOOK_OPEN_READ_ONLY, NULL);
  head = tm_book_head (book, NULL, NULL);
  g_assert_cmpstr (head, ==, hex->str);
  g_assert_cmpuint (n, ==, 64);
  g_string_free (hex, TRUE);
}

static void
test_empty_book (Place *place, gconstpointer data)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (GPtrArray) faults = tm_book_verify (book, NULL, &error);
  g_autofree char *head = tm_book_head (book, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_cmpstr (head, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (tamperings); i++)
    {
      g_autofree char *path = g_strconcat ("/book/verify/", tamperings[i].name, NULL);

      g_strdelimit (path, " ", '-');
      g_test_add (path, Place, &tamperings[i], place_set_up, test_tampering, place_tear_down);
    }
#define ADD(name_, function_) \
  g_test_add ("/book/verify/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("sqlite-tool", test_sqlite_tool);
  ADD ("flipped-bits", test_flipped_bits);
  ADD ("damaged-pages", test_damaged_pages);
  ADD ("truncated-file", test_truncated_file);
  ADD ("going-on", test_going_on);
  ADD ("chain", test_chain);
  ADD ("empty-book", test_empty_book);
  return g_test_run ();
}
