/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli book signed: the list says what became of each signature, and a kept file comes out as it was
 * put in.
 */

#include <sqlite3.h>

#include "book-store.h"
#include "cli-support.h"
#include "exchange-job.h"

#define PAGES    "%PDF-1.7 invented pages"
#define WORKBOOK "PK invented workbook"

static char *
keep (TmBook *book, const TmJob *job, const char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  g_autoptr (GError) error = NULL;
  char *digest = tm_book_keep_content (book, job->id, bytes, &error);

  g_assert_no_error (error);
  return digest;
}

static void
save (TmBook *book, const TmJob *job)
{
  g_autoptr (GError) error = NULL;

  tm_book_save_definitions (book, job, "AB", "2026-05-05T10:00:00Z", &error);
  g_assert_no_error (error);
}

/* Adds the job to the book and signs it, as the window does; its file with the signature is written too. */
static void
sign_job (const char *book_path, char **pages, char **workbook)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmBook) book = tm_book_open (book_path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (TmJob) job = tm_job_from_bytes (bore_job, strlen (bore_job), "job", NULL, NULL, NULL, &error);
  g_autofree char *digest = tm_job_digest (job);
  g_autofree char *signed_file = g_build_filename (folder, "signed.tmjob", NULL);
  TmSignature *signature = tm_signature_new ();

  g_assert_no_error (error);
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  *pages = keep (book, job, PAGES);
  *workbook = keep (book, job, WORKBOOK);
  signature->by = "AB";
  signature->role = "Measured by";
  signature->at = "2026-05-05T10:00:00Z";
  signature->digest = tm_job_intern (job, digest);
  signature->report = "FA-7";
  signature->pages = tm_job_intern (job, *pages);
  signature->workbook = tm_job_intern (job, *workbook);
  tm_job_add_signature (job, signature);
  save (book, job);
  g_assert_true (tm_job_to_file (job, signed_file, &error));
}

/* It is for somebody else now. */
static void
change_job (const char *book_path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmBook) book = tm_book_open (book_path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (GPtrArray) list = tm_book_list (book, &error);
  g_autoptr (TmJob) job
      = tm_book_load_job (book, ((TmBookEntry *)g_ptr_array_index (list, 0))->id, NULL, NULL, &error);

  g_assert_no_error (error);
  job->customer = "Invented";
  save (book, job);
}

static void
assert_file (const char *name, const char *content)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *found = NULL;

  g_assert_true (g_file_get_contents (path, &found, NULL, NULL));
  g_assert_cmpstr (found, ==, content);
}

static gboolean
is_superseded (const char *book_path)
{
  g_auto (Call) call = { 0 };
  yajl_val list, row;
  gboolean superseded;

  run (&call, "book", "signed", "--book", book_path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  list = parse (&call);
  g_assert_cmpuint (YAJL_GET_ARRAY (list)->len, ==, 1);
  row = YAJL_GET_ARRAY (list)->values[0];
  assert_text (row, "report", "FA-7");
  assert_text (row, "role", "Measured by");
  g_assert_true (YAJL_IS_TRUE (member (member (row, "pages"), "kept")));
  superseded = YAJL_IS_TRUE (member (row, "superseded"));
  yajl_tree_free (list);
  return superseded;
}

static void
test_signed (void)
{
  g_autofree char *book = g_build_filename (folder, "signed.tmbook", NULL);
  g_autofree char *pages = NULL, *workbook = NULL, *digits = NULL;
  g_auto (Call) first = { 0 }, second = { 0 }, again = { 0 }, words = { 0 };

  sign_job (book, &pages, &workbook);
  g_assert_false (is_superseded (book));
  digits = g_strndup (workbook, 8);
  run (&first, "book", "signed", "T-1", "--book", book, "--out", "first.pdf", NULL);
  g_assert_cmpint (first.status, ==, 0);
  assert_file ("first.pdf", PAGES);
  run (&second, "book", "signed", "--book", book, "--digest", digits, "--out", "second", NULL);
  g_assert_cmpint (second.status, ==, 0);
  assert_file ("second", WORKBOOK);
  change_job (book);
  g_assert_true (is_superseded (book));
  run (&again, "book", "signed", "T-1", "--book", book, "--out", "again.xlsx", NULL);
  g_assert_cmpint (again.status, ==, 0);
  assert_file ("again.xlsx", WORKBOOK);
  run (&words, "book", "signed", "T-1", "--book", book, NULL);
  g_assert_nonnull (strstr (words.out, "report FA-7: Measured by, AB, 2026-05-05T10:00:00Z; superseded"));
  g_assert_nonnull (strstr (words.out, pages));
}

/* In another book the signature is there and its files are not. */
static void
test_elsewhere (void)
{
  g_autofree char *book = g_build_filename (folder, "there.tmbook", NULL);
  g_autofree char *other = g_build_filename (folder, "here.tmbook", NULL);
  g_autofree char *pages = NULL, *workbook = NULL;
  g_auto (Call) add = { 0 }, list = { 0 }, out = { 0 }, check = { 0 };

  sign_job (book, &pages, &workbook);
  run (&add, "book", "add", "signed.tmjob", "--book", other, NULL);
  g_assert_cmpint (add.status, ==, 0);
  run (&list, "book", "signed", "--book", other, NULL);
  g_assert_nonnull (strstr (list.out, "not kept in this book"));
  g_assert_null (strstr (list.out, "superseded"));
  run (&out, "book", "signed", "T-1", "--book", other, "--out", "none.pdf", NULL);
  assert_refused (&out, "keeps no file with the SHA-256");
  run (&check, "check", "signed.tmjob", NULL);
  g_assert_null (strstr (check.out, "superseded"));
}

/* The first pages of what keeps the files, table and index, as the database numbers them from 1. */
static GArray *
find_roots (const char *book_path, gsize *page_size)
{
  GArray *roots = g_array_new (FALSE, FALSE, sizeof (gint64));
  sqlite3 *book = NULL;
  sqlite3_stmt *statement = NULL;

  g_assert_cmpint (sqlite3_open_v2 (book_path, &book, SQLITE_OPEN_READWRITE, NULL), ==, SQLITE_OK);
  /* All of it stands in the file itself, no log beside it. */
  g_assert_cmpint (sqlite3_exec (book, "PRAGMA wal_checkpoint (TRUNCATE)", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (book,
                                       "SELECT rootpage, (SELECT page_size FROM pragma_page_size) FROM "
                                       "sqlite_schema WHERE tbl_name = 'content' AND rootpage > 0",
                                       -1, &statement, NULL),
                   ==, SQLITE_OK);
  while (sqlite3_step (statement) == SQLITE_ROW)
    {
      const gint64 root = sqlite3_column_int64 (statement, 0);

      g_array_append_val (roots, root);
      *page_size = (gsize)sqlite3_column_int64 (statement, 1);
    }
  sqlite3_finalize (statement);
  sqlite3_close (book);
  return roots;
}

static void
damage (const char *book_path)
{
  gsize length = 0, page_size = 0;
  g_autofree char *bytes = NULL;
  g_autoptr (GArray) roots = find_roots (book_path, &page_size);

  g_assert_cmpuint (roots->len, ==, 2);
  g_assert_true (g_file_get_contents (book_path, &bytes, &length, NULL));
  for (guint i = 0; i < roots->len; i++)
    {
      const gsize at = (gsize)(g_array_index (roots, gint64, i) - 1) * page_size;

      g_assert_cmpuint (at + page_size, <=, length);
      memset (bytes + at, 0xa5, page_size);
    }
  g_assert_true (g_file_set_contents (book_path, bytes, (gssize)length, NULL));
}

/* Where the book cannot be read, nothing is called not kept: one line says that it is damaged. */
static void
test_damaged (void)
{
  g_autofree char *book = g_build_filename (folder, "damaged.tmbook", NULL);
  g_autofree char *pages = NULL, *workbook = NULL;
  g_auto (Call) words = { 0 }, json = { 0 };

  sign_job (book, &pages, &workbook);
  damage (book);
  run (&words, "book", "signed", "--book", book, NULL);
  g_test_message ("%s", words.err);
  assert_refused (&words, "damaged.tmbook");
  run (&json, "book", "signed", "--book", book, "--json", NULL);
  assert_refused (&json, "damaged.tmbook");
}

/* Digits of a digest are digits in either case. */
static void
test_upper_case (void)
{
  g_autofree char *book = g_build_filename (folder, "upper.tmbook", NULL);
  g_autofree char *pages = NULL, *workbook = NULL, *whole = NULL, *digits = NULL;
  g_auto (Call) first = { 0 }, second = { 0 };

  sign_job (book, &pages, &workbook);
  whole = g_ascii_strup (pages, -1);
  g_assert_cmpstr (whole, !=, pages);
  digits = g_ascii_strup (workbook, 12);
  g_assert_false (g_str_has_prefix (workbook, digits));
  run (&first, "book", "signed", "--book", book, "--digest", whole, "--out", "whole", NULL);
  g_assert_cmpint (first.status, ==, 0);
  assert_file ("whole", PAGES);
  run (&second, "book", "signed", "--book", book, "--digest", digits, "--out", "digits", NULL);
  g_assert_cmpint (second.status, ==, 0);
  assert_file ("digits", WORKBOOK);
}

static void
test_refused (void)
{
  g_autofree char *book = g_build_filename (folder, "refused.tmbook", NULL);
  g_autofree char *pages = NULL, *workbook = NULL;
  static const struct {
    const char *operand, *option, *value, *out, *wanted;
  } cases[] = {
    { "T-1", "--digest", "00000000", NULL, "--out" },
    { "T-1", "--digest", "0000", "x", "at least 8" },
    { "T-1", "--digest", "00000000", "x", "no signed report has a file" },
    { "T-9", "--digest", "00000000", "x", "no job “T-9”" },
    { "T-1", NULL, NULL, "x.txt", ".pdf or .xlsx" },
  };

  sign_job (book, &pages, &workbook);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Call) call = { 0 };
      const char *words[5] = { NULL };
      guint n = 0;

      if (cases[i].out != NULL)
        words[n++] = "--out", words[n++] = cases[i].out;
      if (cases[i].option != NULL)
        words[n++] = cases[i].option, words[n++] = cases[i].value;
      run (&call, "book", "signed", cases[i].operand, "--book", book, words[0], words[1], words[2], words[3],
           NULL);
      assert_refused (&call, cases[i].wanted);
    }
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("tenthmark-cli-XXXXXX", NULL);
  g_test_add_func ("/cli/signed/book", test_signed);
  g_test_add_func ("/cli/signed/elsewhere", test_elsewhere);
  g_test_add_func ("/cli/signed/damaged", test_damaged);
  g_test_add_func ("/cli/signed/upper-case", test_upper_case);
  g_test_add_func ("/cli/signed/refused", test_refused);
  status = g_test_run ();
  remove_folder ();
  return status;
}
