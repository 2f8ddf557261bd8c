/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Migrations: books that the program wrote as versions 1 to 6, and the mechanism held to its word with steps
 * that only this test knows.
 */

#include "book-fixture.h"
#include "book-schema.h"

#define ID           "5f6c2f0e-0000-4000-8000-000000000004"
#define VERSION_1_ID "5f6c2f0e-0000-4000-8000-000000000001"
#define VERSION_2_ID "5f6c2f0e-0000-4000-8000-000000000002"
#define VERSION_3_ID "5f6c2f0e-0000-4000-8000-000000000003"
#define VERSION_4_ID "5f6c2f0e-0000-4000-8000-000000000005"
#define VERSION_5_ID "5f6c2f0e-0000-4000-8000-000000000006"
/* The heads of those books as the program of that version told them. */
#define VERSION_1_HEAD "190c7d4b24bfba2c1e9d17b00c51865e54ed46a4c6b78999a073ff663cd30138"
#define VERSION_2_HEAD "8d1966b28692b9a1bc309c07b8f442049c106ee93b50f107015b744f9a32f170"
#define VERSION_3_HEAD "682207172aab3f34de2cb2daa60f1558be0772e1bc5f125a9d36fd294a28a0f3"
#define VERSION_4_HEAD "d964656d7b522f614e89dd79ee20e4d8b6f1a32f0b11de9ce28d13d4c3e3bedd"
#define VERSION_5_HEAD "e663764ce1806aaaee3bcf229dcbef2da2cc0fee2cf2e2de3f92b0ff083f19b0"
#define VERSION_6_HEAD "d512a8b3c19707fb87d2cc36680f764c632be0ea1923ef7f6bee20f799292517"

/* All steps that there are. */
#define BEFORE                                                                                        \
  tm_schema.steps[0], tm_schema.steps[1], tm_schema.steps[2], tm_schema.steps[3], tm_schema.steps[4], \
      tm_schema.steps[5], tm_schema.steps[6]

static const char step_8[]
    = "CREATE TABLE humidity (seq INTEGER PRIMARY KEY REFERENCES journal (seq), percent"
      " INTEGER NOT NULL) STRICT; ALTER TABLE cut ADD COLUMN coolant TEXT NOT NULL DEFAULT '';";
static const char step_9[] = "CREATE INDEX humidity_percent ON humidity (percent);";
static const char step_wrong[] = "CREATE TABLE half (x); CREATE TABLE half (x);";

static sqlite3 *
open_file (const char *path)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  return db;
}

/* Step by step, a new book too. */
static gboolean
migrate (const char *path, const char *const *steps, guint n, gboolean may_write, GError **error)
{
  const TmSchema schema = { steps, n, NULL };
  sqlite3 *db = open_file (path);
  gboolean done = tm_schema_migrate (db, path, &schema, may_write, error);

  g_assert_cmpint (sqlite3_get_autocommit (db), !=, 0);
  sqlite3_close (db);
  return done;
}

static void
fill (const char *path)
{
  g_autoptr (TmJob) job = make_rich_job (ID);

  put_job (path, job);
}

/* --- version 1 */

/* Makes the book that the program of before left: see the file. */
static void
make_version (const char *path, guint version)
{
  g_autofree char *name = g_strdup_printf ("book-version-%u.sql", version);
  g_autofree char *from = g_build_filename (g_getenv ("TM_TEST_DATA"), name, NULL);
  g_autofree char *sql = NULL;
  g_autofree char *marks = g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %u",
                                            TM_BOOK_APPLICATION_ID, version);
  sqlite3 *db = open_file (path);
  char *message = NULL;

  g_assert_true (g_file_get_contents (from, &sql, NULL, NULL));
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  g_assert_cmpint (sqlite3_exec (db, marks, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (db);
}

static char *
read_head (const char *path)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  char *head;

  g_assert_no_error (error);
  head = tm_book_head (book, NULL, &error);
  g_assert_no_error (error);
  return head;
}

/* A book of before is brought along and is clean: each old row gives its old journal fact, to the byte,
 * and so the head is the one that may have been written down. */
static void
test_version_1 (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = NULL;
  g_autofree char *head = NULL;
  const TmPinTrial *trial;

  make_version (place->path, 1);
  head = read_head (place->path);
  g_assert_cmpstr (head, ==, VERSION_1_HEAD);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  assert_clean (place->path);
  job = take_job (place->path, VERSION_1_ID);
  g_assert_cmpuint (job->readings->len, ==, 5);
  g_assert_cmpstr (job->customer, ==, "Other Works");
  g_assert_cmpint (job->drift_rule, ==, TM_DRIFT_WIDEN);
  g_assert_false (job->part_temp_limit.given);
  g_assert_cmpuint (job->calibrations->len, ==, 0);
  trial = g_ptr_array_index (job->pin_trials, 0);
  g_assert_cmpuint (trial->place, ==, 1);
  g_assert_cmpstr (trial->gauge, ==, "");
  g_assert_false (trial->measured.given);
}

/* Apart from what was recorded since, it is the job of before. */
static void
test_version_1_same_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) expected = make_old_job (VERSION_1_ID);
  g_autoptr (TmJob) job = NULL;
  TmReading *reading = make_reading (expected, "", "003", "0.9844");
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  g_assert_cmpint (tm_job_add_reading (expected, reading), ==, TM_ADD_OK);
  tm_job_withdraw (expected, &tm_job_find_reading (expected, "2")->row, "RW", "2026-05-05T08:00:00Z", "burr");
  expected->customer = "Other Works";
  tm_job_find_gauge (expected, "TG-1")->certificate = "C-2";
  make_version (place->path, 1);
  job = take_job (place->path, VERSION_1_ID);
  assert_same_job (job, expected);
  /* and the same content again is not another job */
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_add_job (book, expected, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

/* What is new goes into it, and comes back. */
static void
test_version_1_goes_on (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) wanted = make_rich_job (VERSION_1_ID);
  g_autoptr (TmJob) other = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  TmBook *book;

  make_version (place->path, 1);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_save_definitions (book, wanted, "RW", "", &error));
  g_assert_no_error (error);
  g_assert_true (tm_book_add_job (book, other, NULL, NULL, NULL, &error));
  tm_book_close (book);
  assert_clean (place->path);
  back = take_job (place->path, VERSION_1_ID);
  g_assert_cmpuint (back->calibrations->len, ==, 2);
  g_assert_cmpuint (back->study_readings->len, ==, 3);
  g_assert_cmpstr (tm_job_find_gauge (back, "PS-1")->pin_class, ==, "X");
  g_assert_true (back->check_hours.given);
}

/* --- one shape, however a book came to it */

static void
append_answers (GString *out, sqlite3 *db, const char *sql)
{
  sqlite3_stmt *statement = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), ==, SQLITE_OK);
  while (sqlite3_step (statement) == SQLITE_ROW)
    {
      for (int i = 0; i < sqlite3_column_count (statement); i++)
        {
          const char *text = (const char *)sqlite3_column_text (statement, i);

          g_string_append_printf (out, "%s|", text != NULL ? text : "NULL");
        }
      g_string_append_c (out, '\n');
    }
  g_assert_cmpint (sqlite3_finalize (statement), ==, SQLITE_OK);
}

/* What the file says that it is made of, and what SQLite makes of that. */
static char *
describe_schema (const char *path)
{
  static const char *const questions[] = {
    "PRAGMA application_id",
    "PRAGMA user_version",
    "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name",
    "SELECT * FROM pragma_table_list ORDER BY name",
    "SELECT s.name, x.* FROM sqlite_schema AS s, pragma_table_xinfo (s.name) AS x"
    " WHERE s.type IN ('table', 'view') ORDER BY s.name, x.cid",
    "SELECT s.name, l.name, l.\"unique\", l.origin, l.partial, x.* FROM sqlite_schema AS s,"
    " pragma_index_list (s.name) AS l, pragma_index_xinfo (l.name) AS x WHERE s.type = 'table'"
    " ORDER BY s.name, l.name, x.seqno",
    "SELECT s.name, k.* FROM sqlite_schema AS s, pragma_foreign_key_list (s.name) AS k WHERE s.type = 'table'"
    " ORDER BY s.name, k.id, k.seq",
  };
  GString *out = g_string_new (NULL);
  sqlite3 *db = open_file (path);

  for (gsize i = 0; i < G_N_ELEMENTS (questions); i++)
    append_answers (out, db, questions[i]);
  sqlite3_close (db);
  return g_string_free (out, FALSE);
}

static void
append_refusal (GString *out, sqlite3 *db, const char *table, const char *what)
{
  g_autoptr (GString) sql = g_string_new (what);
  char *message = NULL;

  g_string_replace (sql, "@", table, 0);
  g_assert_cmpint (sqlite3_exec (db, sql->str, NULL, NULL, &message), !=, SQLITE_OK);
  g_string_append_printf (out, "%s: %s\n", sql->str, message);
  sqlite3_free (message);
}

/* What each table says to whoever would change a row, take one out, or put another in its place.  Each must
 * have rows. */
static char *
describe_refusals (const char *path)
{
  g_autoptr (GString) names = g_string_new (NULL);
  g_auto (GStrv) tables = NULL;
  GString *out = g_string_new (NULL);
  sqlite3 *db = open_file (path);

  append_answers (names, db,
                  "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'"
                  " ORDER BY name");
  tables = g_strsplit (names->str, "|\n", -1);
  g_assert_cmpuint (g_strv_length (tables), >, 20);
  for (guint i = 0; *tables[i] != '\0'; i++)
    {
      append_refusal (out, db, tables[i], "UPDATE @ SET seq = seq + 1");
      append_refusal (out, db, tables[i], "DELETE FROM @");
      append_refusal (out, db, tables[i], "INSERT OR REPLACE INTO @ SELECT * FROM @ ORDER BY 1 LIMIT 1");
    }
  sqlite3_close (db);
  return g_string_free (out, FALSE);
}

/* A book of the present version that was one of @version; 0: new, but made by all the steps. */
static char *
make_from_version (const Place *place, guint version)
{
  char *path = g_strdup_printf ("%s/from-%u", place->folder, version);

  if (version > 0)
    make_version (path, version);
  g_assert_true (migrate (path, tm_schema.steps, tm_schema.n_steps, TRUE, NULL));
  return path;
}

/* A new book is made in one go, an older one brought along by the steps: nothing may tell them apart. */
static void
test_one_shape (Place *place, gconstpointer data)
{
  g_autofree char *wanted = NULL;
  sqlite3 *db = open_file (place->path);

  g_assert_nonnull (tm_schema.tables);
  g_assert_true (tm_schema_migrate (db, place->path, &tm_schema, TRUE, NULL));
  sqlite3_close (db);
  wanted = describe_schema (place->path);
  g_assert_nonnull (strstr (wanted, "offset_step_pm"));
  for (guint version = 0; version < tm_schema.n_steps; version++)
    {
      g_autofree char *path = make_from_version (place, version);
      g_autofree char *found = describe_schema (path);

      g_assert_cmpstr (found, ==, wanted);
    }
}

/* The same job in each: it comes back the same, is refused the same, and begins the same chain. */
static void
test_one_behaviour (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autofree char *head = NULL;
  g_autofree char *refusals = NULL;

  put_job (place->path, job);
  put_template (place->path);
  head = read_head (place->path);
  refusals = describe_refusals (place->path);
  for (guint version = 0; version < tm_schema.n_steps; version++)
    {
      g_autofree char *path = make_from_version (place, version);
      g_autofree char *other_head = NULL;
      g_autofree char *others = NULL;
      g_autoptr (TmJob) back = NULL;

      put_job (path, job);
      put_template (path);
      back = take_job (path, ID);
      assert_same_job (job, back);
      other_head = read_head (path);
      if (version == 0)
        g_assert_cmpstr (other_head, ==, head);
      others = describe_refusals (path);
      g_assert_cmpstr (others, ==, refusals);
      assert_clean (path);
    }
}

/* --- version 2 */

/* The program of before knew no place of a cut, no tool and no mate; its book is clean, and its head the one
 * that it told. */
static void
test_version_2 (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = NULL;
  g_autofree char *head = NULL;
  const TmCutRow *cut;

  make_version (place->path, 2);
  head = read_head (place->path);
  g_assert_cmpstr (head, ==, VERSION_2_HEAD);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  assert_clean (place->path);
  job = take_job (place->path, VERSION_2_ID);
  g_assert_cmpuint (job->tools->len + job->materials->len + job->mate_sizes->len, ==, 0);
  g_assert_false (job->cut_risk.given);
  g_assert_cmpuint (job->cuts->len, ==, 1);
  cut = g_ptr_array_index (job->cuts, 0);
  g_assert_cmpuint (cut->place, ==, 1);
  g_assert_cmpint (cut->reads, ==, TM_READS_DIAMETER);
  g_assert_cmpstr (cut->after, ==, "");
  g_assert_cmpstr (tm_job_find_feature (job, "10")->press.hub_material, ==, "");
}

static void
test_version_2_same_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) expected = make_later_job (VERSION_2_ID);
  g_autoptr (TmJob) job = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  g_assert_cmpint (tm_job_add_reading (expected, make_reading (expected, "", "003", "0.9844")), ==,
                   TM_ADD_OK);
  g_assert_cmpint (tm_job_add_pin_trial (expected, make_trial (expected, "", "003", "25.003")), ==,
                   TM_ADD_OK);
  tm_job_withdraw (expected, &tm_job_find_reading (expected, "2")->row, "RW", "2026-05-05T08:00:00Z", "burr");
  expected->customer = "Other Works";
  tm_job_find_gauge (expected, "TG-1")->certificate = "C-2";
  ((TmCalibration *)g_ptr_array_index (expected->calibrations, 1))->note = "read again";
  make_version (place->path, 2);
  job = take_job (place->path, VERSION_2_ID);
  assert_same_job (job, expected);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_add_job (book, expected, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

static void
test_version_2_goes_on (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) wanted = make_rich_job (VERSION_2_ID);
  g_autoptr (TmCutRow) cut = NULL;
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  TmBook *book;

  make_version (place->path, 2);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_save_definitions (book, wanted, "RW", "", &error));
  g_assert_no_error (error);
  cut = make_cut (wanted, "", "002", "boring bar 16");
  cut->row.feature = tm_job_find_feature (wanted, "10");
  cut->place = 4;
  g_assert_true (tm_book_record_cut (book, VERSION_2_ID, cut, &error));
  g_assert_no_error (error);
  tm_book_close (book);
  assert_clean (place->path);
  back = take_job (place->path, VERSION_2_ID);
  g_assert_cmpuint (back->mate_sizes->len, ==, 2);
  g_assert_true (tm_job_find_material (back, "bush bronze")->plastic);
  g_assert_cmpint (tm_job_find_tool (back, "boring bar 16")->reads, ==, TM_READS_RADIUS);
  g_assert_cmpuint (((TmCutRow *)g_ptr_array_index (back->cuts, 1))->place, ==, 4);
  g_assert_cmpint (tm_job_find_feature (back, "10")->press.hub_roughness.unit, ==, TM_UNIT_UM);
}

/* --- version 3 */

/* The program of before knew nothing of what an event is about, of pieces held back, of charts; an event that
 * it edited and one that it took out are as they were. */
static void
test_version_3 (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = NULL;
  g_autofree char *head = NULL;
  const TmEvent *event;

  make_version (place->path, 3);
  head = read_head (place->path);
  g_assert_cmpstr (head, ==, VERSION_3_HEAD);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  assert_clean (place->path);
  job = take_job (place->path, VERSION_3_ID);
  g_assert_cmpuint (job->events->len, ==, 1);
  event = g_ptr_array_index (job->events, 0);
  g_assert_cmpstr (event->amount, ==, "-0.0050");
  g_assert_cmpstr (event->feature, ==, "");
  g_assert_cmpstr (event->at, ==, "");
  g_assert_cmpstr (tm_job_find_piece (job, "002")->disposition, ==, "");
  g_assert_cmpuint (tm_job_find_feature (job, "10")->chart_baseline, ==, 0);
  g_assert_false (tm_job_find_tool (job, "boring bar 16")->offset_step.given);
}

static void
test_version_3_same_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) expected = make_tooled_job (VERSION_3_ID);
  g_autoptr (TmJob) job = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  g_assert_cmpint (tm_job_add_reading (expected, make_reading (expected, "", "003", "0.9844")), ==,
                   TM_ADD_OK);
  g_assert_cmpint (tm_job_add_pin_trial (expected, make_trial (expected, "", "003", "25.003")), ==,
                   TM_ADD_OK);
  g_assert_cmpint (tm_job_add_cut (expected, make_cut (expected, "", "002", "boring bar 16")), ==, TM_ADD_OK);
  expected->customer = "Other Works";
  tm_job_find_tool (expected, "boring bar 16")->note = "new screw";
  ((TmEvent *)g_ptr_array_index (expected->events, 1))->amount = "-0.0050";
  tm_job_remove_event (expected, g_ptr_array_index (expected->events, 0));
  make_version (place->path, 3);
  job = take_job (place->path, VERSION_3_ID);
  assert_same_job (job, expected);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_add_job (book, expected, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

/* An offset that is recorded in it and a disposition come back; taken away again, they stay in its history.
 */
static void
test_version_3_goes_on (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) wanted = make_rich_job (VERSION_3_ID);
  g_autoptr (TmJob) back = NULL;
  const TmEvent *offset;
  GError *error = NULL;
  TmBook *book;

  make_version (place->path, 3);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_save_definitions (book, wanted, "RW", "", &error));
  g_assert_no_error (error);
  back = tm_book_load_job (book, VERSION_3_ID, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (back->events->len, ==, 3);
  offset = g_ptr_array_index (back->events, 2);
  g_assert_cmpstr (offset->kind, ==, "offset");
  g_assert_cmpstr (offset->feature, ==, "10");
  g_assert_cmpstr (offset->tool, ==, "boring bar 16");
  g_assert_cmpstr (offset->by, ==, "RW");
  g_assert_cmpstr (offset->at, ==, "2026-05-04T11:12:33Z");
  g_assert_cmpstr (tm_job_find_piece (back, "003")->disposition, ==, "scrap");
  g_assert_cmpuint (tm_job_find_feature (back, "10")->chart_baseline, ==, 12);
  tm_job_remove_event (wanted, g_ptr_array_index (wanted->events, 2));
  tm_job_find_piece (wanted, "003")->disposition = "";
  g_assert_true (tm_book_save_definitions (book, wanted, "RW", "", &error));
  g_assert_no_error (error);
  tm_book_close (book);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM event WHERE kind = 'offset'"), ==, 1);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM event WHERE removed = 1 AND key IN"
                                          " (SELECT key FROM event WHERE kind = 'offset')"),
                   ==, 1);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM piece WHERE disposition = 'scrap'"), ==, 1);
  assert_clean (place->path);
}

/* --- version 4 */

/* The program of before knew nothing of drawings, supplies and reworks. */
static void
test_version_4 (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = NULL;
  g_autofree char *head = NULL;
  const TmNonconformance *row;
  const TmSignature *signature;

  make_version (place->path, 4);
  head = read_head (place->path);
  g_assert_cmpstr (head, ==, VERSION_4_HEAD);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  assert_clean (place->path);
  job = take_job (place->path, VERSION_4_ID);
  g_assert_cmpuint (job->supplies->len + job->sub_parts->len + job->drawings->len, ==, 0);
  g_assert_cmpstr (job->report_identifier, ==, "");
  g_assert_cmpint (job->article, ==, TM_ARTICLE_DETAIL);
  g_assert_false (tm_job_find_feature (job, "10")->affected);
  row = g_ptr_array_index (job->nonconformances, 1);
  g_assert_cmpstr (row->note, ==, "seen again");
  g_assert_cmpuint (row->place, ==, 0);
  g_assert_cmpstr (row->rework_at, ==, "");
  signature = g_ptr_array_index (job->signatures, 1);
  g_assert_cmpstr (signature->by, ==, "M. Fell");
  g_assert_cmpstr (signature->pages, ==, "");
}

static void
test_version_4_same_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) expected = make_batch_job (VERSION_4_ID);
  g_autoptr (TmJob) job = NULL;
  TmSignature *signature = tm_signature_new ();
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  expected->customer = "Other Works";
  tm_job_find_piece (expected, "003")->disposition = "release";
  ((TmNonconformance *)g_ptr_array_index (expected->nonconformances, 1))->note = "seen again";
  tm_job_remove_event (expected, g_ptr_array_index (expected->events, 0));
  signature->by = "M. Fell";
  signature->role = "customer";
  signature->at = "2026-05-05T11:00:00Z";
  signature->digest = "11ff";
  tm_job_add_signature (expected, signature);
  g_assert_cmpint (tm_job_add_reading (expected, make_reading (expected, "", "003", "0.9844")), ==,
                   TM_ADD_OK);
  make_version (place->path, 4);
  job = take_job (place->path, VERSION_4_ID);
  assert_same_job (job, expected);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_add_job (book, expected, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
}

/* A drawing and a rework go into it and come back; the drawing taken out again, its bytes stay. */
static void
test_version_4_goes_on (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) wanted = make_rich_job (VERSION_4_ID);
  g_autoptr (TmJob) back = NULL;
  TmSignature *signature = tm_signature_new ();
  GError *error = NULL;
  TmBook *book;

  make_version (place->path, 4);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  /* Signatures only grow. */
  signature->by = "M. Fell";
  signature->role = "customer";
  signature->at = "2026-05-05T11:00:00Z";
  signature->digest = "11ff";
  tm_job_add_signature (wanted, signature);
  g_assert_true (tm_book_save_definitions (book, wanted, "RW", "", &error));
  g_assert_no_error (error);
  back = tm_book_load_job (book, VERSION_4_ID, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (back->drawings->len, ==, 2);
  g_assert_cmpuint (back->balloon_marks->len, ==, 2);
  g_assert_true (g_bytes_equal (((TmDrawing *)g_ptr_array_index (back->drawings, 0))->content,
                                ((TmDrawing *)g_ptr_array_index (wanted->drawings, 0))->content));
  tm_job_remove_drawing (wanted, g_ptr_array_index (wanted->drawings, 1));
  tm_job_remove_drawing (wanted, g_ptr_array_index (wanted->drawings, 0));
  g_assert_true (tm_book_save_definitions (book, wanted, "RW", "", &error));
  g_assert_no_error (error);
  tm_book_close (book);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM content"), ==, 1);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM current_drawing"), ==, 0);
  assert_clean (place->path);
}

/* --- version 5 */

/* The program of before knew nothing of a template; what it kept of a signed report is there. */
static void
test_version_5 (Place *place, gconstpointer data)
{
  g_autofree char *head = NULL;
  g_autoptr (TmTemplate) template = NULL;
  g_autoptr (GBytes) pages = NULL;
  GError *error = NULL;
  TmBook *book;

  make_version (place->path, 5);
  head = read_head (place->path);
  g_assert_cmpstr (head, ==, VERSION_5_HEAD);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  assert_clean (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  template = tm_book_template (book, &error);
  g_assert_no_error (error);
  g_assert_true (tm_template_is_empty (template));
  pages = tm_book_read_content (book, VERSION_5_ID,
                                "2d36548b5c72f50aa2f81e28127b3ecd6698a1f241d94cf928e123f40173e3eb", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (g_bytes_get_size (pages), ==, 25);
  tm_book_close (book);
}

static void
test_version_5_same_job (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) expected = make_rich_job (VERSION_5_ID);
  g_autoptr (TmJob) job = NULL;

  expected->customer = "Other Works";
  tm_job_remove_drawing (expected, g_ptr_array_index (expected->drawings, 1));
  ((TmNonconformance *)g_ptr_array_index (expected->nonconformances, 0))->rework_by = "RW";
  g_assert_cmpint (tm_job_add_reading (expected, make_reading (expected, "", "003", "0.9844")), ==,
                   TM_ADD_OK);
  make_version (place->path, 5);
  job = take_job (place->path, VERSION_5_ID);
  assert_same_job (job, expected);
}

/* A template goes into it and comes back, with the job untouched. */
static void
test_version_5_goes_on (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) before = NULL;
  g_autoptr (TmJob) after = NULL;

  make_version (place->path, 5);
  before = take_job (place->path, VERSION_5_ID);
  put_template (place->path);
  assert_clean (place->path);
  after = take_job (place->path, VERSION_5_ID);
  assert_same_job (before, after);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template"), ==, 1);
}

/* --- version 6 */

/* The program of before knew one colour of the shop's; its template is as it was, with every version, and a
 * new version has both colours. */
static void
test_version_6 (Place *place, gconstpointer data)
{
  g_autoptr (TmTemplate) template = NULL;
  g_autoptr (TmTemplate) again = NULL;
  g_autoptr (GPtrArray) versions = NULL;
  g_autofree char *head = NULL;
  GError *error = NULL;
  TmBook *book;

  make_version (place->path, 6);
  head = read_head (place->path);
  g_assert_cmpstr (head, ==, VERSION_6_HEAD);
  assert_clean (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
  template = tm_book_template (book, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (template->address, ==, "2 Mill Lane");
  g_assert_cmphex (template->accent, ==, 0xa01e28);
  g_assert_false (template->has_ground);
  template->has_ground = TRUE;
  template->ground = 0xdfe8c4;
  g_assert_true (tm_book_save_template (book, template, "RW", "2026-12-01T08:00:00Z", &error));
  again = tm_book_template (book, &error);
  g_assert_no_error (error);
  g_assert_true (tm_template_equal (again, template));
  versions = tm_book_template_versions (book, &error);
  g_assert_cmpuint (versions->len, ==, 3);
  tm_book_close (book);
  assert_clean (place->path);
}

/* --- steps of this test's own */

/* By two steps in one go, with what was recorded unchanged. */
static void
test_older (Place *place, gconstpointer data)
{
  const char *steps[] = { BEFORE, step_8, step_9 };
  GError *error = NULL;
  gint64 facts;

  fill (place->path);
  facts = ask_file (place->path, "SELECT count (*) FROM journal");
  g_assert_true (migrate (place->path, steps, G_N_ELEMENTS (steps), TRUE, &error));
  g_assert_no_error (error);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps + 2);
  g_assert_cmpint (ask_file (place->path, "PRAGMA application_id"), ==, TM_BOOK_APPLICATION_ID);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM humidity"), ==, 0);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM cut WHERE coolant = ''"), ==, 3);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal"), ==, facts);
  g_assert_cmpint (ask_file (place->path, "SELECT value_pm FROM reading WHERE id = '1'"), ==, 25012000000);
  g_assert_true (migrate (place->path, steps, G_N_ELEMENTS (steps), TRUE, &error));
  g_assert_no_error (error);
}

/* A new book made by all the steps is the same as an old one brought along. */
static void
test_same_either_way (Place *place, gconstpointer data)
{
  g_autofree char *fresh = g_build_filename (place->folder, "fresh", NULL);
  g_autofree char *found = NULL;
  g_autofree char *wanted = NULL;
  const char *steps[] = { BEFORE, step_8, step_9 };

  fill (place->path);
  g_assert_true (migrate (place->path, steps, G_N_ELEMENTS (steps), TRUE, NULL));
  g_assert_true (migrate (fresh, steps, G_N_ELEMENTS (steps), TRUE, NULL));
  found = describe_schema (place->path);
  wanted = describe_schema (fresh);
  g_assert_cmpstr (found, ==, wanted);
}

static void
test_step_that_fails (Place *place, gconstpointer data)
{
  const char *steps[] = { BEFORE, step_8, step_wrong };
  GError *error = NULL;
  g_autoptr (TmJob) job = make_rich_job (ID);
  g_autoptr (TmJob) back = NULL;

  fill (place->path);
  g_assert_false (migrate (place->path, steps, G_N_ELEMENTS (steps), TRUE, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_FAILED);
  g_assert_nonnull (strstr (error->message, place->path));
  g_clear_error (&error);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
  assert_clean (place->path);
  back = take_job (place->path, ID);
  assert_same_job (job, back);
}

static void
test_newer (Place *place, gconstpointer data)
{
  GError *error = NULL;
  g_autofree char *sql = g_strdup_printf ("PRAGMA user_version = %u", tm_schema.n_steps + 1);

  fill (place->path);
  tamper (place->path, sql);
  g_assert_null (tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NEWER);
  g_assert_nonnull (strstr (error->message, place->path));
  g_clear_error (&error);
  g_assert_null (tm_book_open (place->path, TM_BOOK_OPEN_READ_ONLY, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NEWER);
  g_clear_error (&error);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps + 1);
}

static void
test_older_without_leave_to_write (Place *place, gconstpointer data)
{
  const char *steps[] = { BEFORE, step_8 };
  GError *error = NULL;

  fill (place->path);
  g_assert_false (migrate (place->path, steps, G_N_ELEMENTS (steps), FALSE, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_cmpint (ask_file (place->path, "PRAGMA user_version"), ==, tm_schema.n_steps);
}

static void
test_other_program (Place *place, gconstpointer data)
{
  GError *error = NULL;
  sqlite3 *db = open_file (place->path);

  g_assert_cmpint (sqlite3_exec (db, "PRAGMA application_id = 7; CREATE TABLE t (x)", NULL, NULL, NULL), ==,
                   SQLITE_OK);
  sqlite3_close (db);
  g_assert_null (tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NOT_A_BOOK);
  g_clear_error (&error);
}

/* An empty file, as a program that was stopped in the first moment leaves it, is a new book. */
static void
test_empty_file (Place *place, gconstpointer data)
{
  g_assert_true (g_file_set_contents (place->path, "", 0, NULL));
  fill (place->path);
  assert_clean (place->path);
}

/* Two programs that open a new book at once: one makes it, the other finds it made. */
static gpointer
open_cb (gpointer path)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);

  g_assert_no_error (error);
  return NULL;
}

static void
test_made_at_once (Place *place, gconstpointer data)
{
  for (guint round = 0; round < 10; round++)
    {
      g_autofree char *path = g_strdup_printf ("%s/at-once-%u", place->folder, round);
      GThread *threads[4];

      for (gsize i = 0; i < G_N_ELEMENTS (threads); i++)
        threads[i] = g_thread_new ("open", open_cb, path);
      for (gsize i = 0; i < G_N_ELEMENTS (threads); i++)
        g_thread_join (threads[i]);
      assert_clean (path);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) \
  g_test_add ("/book/migrate/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("version-1", test_version_1);
  ADD ("version-1-same-job", test_version_1_same_job);
  ADD ("version-1-goes-on", test_version_1_goes_on);
  ADD ("one-shape", test_one_shape);
  ADD ("one-behaviour", test_one_behaviour);
  ADD ("version-2", test_version_2);
  ADD ("version-2-same-job", test_version_2_same_job);
  ADD ("version-2-goes-on", test_version_2_goes_on);
  ADD ("version-3", test_version_3);
  ADD ("version-3-same-job", test_version_3_same_job);
  ADD ("version-3-goes-on", test_version_3_goes_on);
  ADD ("version-4", test_version_4);
  ADD ("version-4-same-job", test_version_4_same_job);
  ADD ("version-4-goes-on", test_version_4_goes_on);
  ADD ("version-5", test_version_5);
  ADD ("version-5-same-job", test_version_5_same_job);
  ADD ("version-5-goes-on", test_version_5_goes_on);
  ADD ("version-6", test_version_6);
  ADD ("older", test_older);
  ADD ("same-either-way", test_same_either_way);
  ADD ("step-that-fails", test_step_that_fails);
  ADD ("newer", test_newer);
  ADD ("older-without-leave-to-write", test_older_without_leave_to_write);
  ADD ("other-program", test_other_program);
  ADD ("empty-file", test_empty_file);
  ADD ("made-at-once", test_made_at_once);
  return g_test_run ();
}
