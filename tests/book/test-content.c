/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Files that a job keeps: byte for byte, once, for good, and found out when they are touched.
 */

#include "book-fixture.h"

#define ID "5f6c2f0e-0000-4000-8000-000000000021"

static TmBook *
open_with_job (const Place *place)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 1);
  GError *error = NULL;
  TmBook *book;

  put_job (place->path, job);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
  return book;
}

static void
test_kept (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  /* SHA-256 of "abc": FIPS 180-4's first example. */
  const char *known = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
  g_autoptr (GBytes) bytes = g_bytes_new_static ("abc", 3);
  g_autoptr (GBytes) back = NULL;
  g_autofree char *digest = NULL;
  g_autofree char *again = NULL;
  GError *error = NULL;

  digest = tm_book_keep_content (book, ID, bytes, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (digest, ==, known);
  again = tm_book_keep_content (book, ID, bytes, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (again, ==, known);
  back = tm_book_read_content (book, ID, known, &error);
  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (back, bytes));
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM content"), ==, 1);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal WHERE kind = 'content'"), ==, 1);
  assert_clean (place->path);
}

/* A large one, with every byte in it. */
static void
test_large (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  gsize length = 5u * 1048576u + 7;
  guint8 *data_in = g_malloc (length);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GBytes) back = NULL;
  g_autofree char *digest = NULL;
  GError *error = NULL;

  for (gsize i = 0; i < length; i++)
    data_in[i] = (guint8)(i * 2654435761u >> 13);
  bytes = g_bytes_new_take (data_in, length);
  digest = tm_book_keep_content (book, ID, bytes, &error);
  g_assert_no_error (error);
  back = tm_book_read_content (book, ID, digest, &error);
  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (back, bytes));
}

static void
test_refused (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  g_autoptr (GBytes) empty = g_bytes_new_static ("", 0);
  g_autoptr (GBytes) some = g_bytes_new_static ("x", 1);
  GError *error = NULL;

  g_assert_null (tm_book_keep_content (book, ID, empty, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (tm_book_keep_content (book, "no such job", some, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_JOB);
  g_clear_error (&error);
  g_assert_null (tm_book_read_content (book, ID, "00", &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_FILE);
  g_assert_nonnull (strstr (error->message, place->path));
  g_clear_error (&error);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM content"), ==, 0);
  assert_clean (place->path);
}

/* A drawing whose bytes are nowhere is not taken, and the job is as it was. */
static void
test_drawing_without_bytes (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_rich_job (ID);
  TmDrawing *drawing = g_ptr_array_index (job->drawings, 0);
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);

  g_clear_pointer (&drawing->content, g_bytes_unref);
  g_assert_false (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "sheet 1"));
  g_clear_error (&error);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM job"), ==, 0);
}

typedef struct {
  const char *sql;
  const char *says;
} Tampering;

static void
test_tampering (Place *place, gconstpointer data)
{
  static const Tampering cases[] = {
    { OPEN_TABLE ("content") "UPDATE content SET bytes = X'00'", "SHA-256" },
    { OPEN_TABLE ("content") "DELETE FROM content", "deleted" },
    { OPEN_TABLE ("content") "UPDATE content SET length = 8", "length" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/%" G_GSIZE_FORMAT, place->folder, i);
      g_autoptr (TmJob) job = make_rich_job (ID);
      g_autoptr (GPtrArray) faults = NULL;
      gboolean found = FALSE;
      TmBook *book;

      put_job (path, job);
      assert_clean (path);
      tamper (path, cases[i].sql);
      book = tm_book_open (path, TM_BOOK_OPEN_READ_ONLY, NULL);
      faults = tm_book_verify (book, NULL, NULL);
      for (guint f = 0; f < faults->len; f++)
        {
          const TmBookFault *fault = g_ptr_array_index (faults, f);

          found
              = found || (g_str_equal (fault->what, "content") && strstr (fault->how, cases[i].says) != NULL);
        }
      g_assert_true (found);
      tm_book_close (book);
    }
}

static void
record (TmBook *book, const char *id)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 1);
  g_autoptr (TmReading) reading = make_reading (job, id, "001", "25.010");
  GError *error = NULL;

  tm_book_record_reading (book, ID, reading, &error);
  g_assert_no_error (error);
}

/* What is signed is held against what the book had when it was read. */
static void
test_changed_since (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  g_autoptr (TmJob) other = make_bench_job ("5f6c2f0e-0000-4000-8000-000000000022", 1);
  g_autoptr (GBytes) bytes = g_bytes_new_static ("abc", 3);
  g_autofree char *digest = NULL;
  gboolean changed = TRUE, kept = TRUE;
  gint64 mark = 0;
  GError *error = NULL;

  g_assert_true (tm_book_keeps_content (book, ID, "ab", &kept, &error));
  g_assert_false (kept);
  g_assert_true (tm_book_mark (book, &mark, &error));
  digest = tm_book_keep_content (book, ID, bytes, &error);
  g_assert_true (tm_book_keeps_content (book, ID, digest, &kept, &error));
  g_assert_true (kept);
  put_job (place->path, other);
  g_assert_true (tm_book_changed_since (book, ID, mark, &changed, &error));
  g_assert_false (changed);
  record (book, "1");
  g_assert_true (tm_book_changed_since (book, ID, mark, &changed, &error));
  g_assert_true (changed);
  g_assert_false (tm_book_changed_since (book, "no such job", mark, &changed, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_JOB);
  g_clear_error (&error);
}

static void
test_not_handed_out (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  g_autoptr (GBytes) bytes = g_bytes_new_static ("abc", 3);
  g_autofree char *digest = tm_book_keep_content (book, ID, bytes, NULL);
  GError *error = NULL;

  tamper (place->path, OPEN_TABLE ("content") "UPDATE content SET bytes = X'616264'");
  g_assert_null (tm_book_read_content (book, ID, digest, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED);
  g_clear_error (&error);
}

static guint
count_reports (TmBook *book, const char *identifier, const char *except)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) found = tm_book_find_report (book, identifier, except, &error);

  g_assert_no_error (error);
  return found->len;
}

/* The identifier as it is now counts, not one that was given up. */
static void
test_find_report (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  g_autoptr (TmJob) job = make_bench_job ("5f6c2f0e-0000-4000-8000-000000000022", 1);
  g_autoptr (GPtrArray) found = NULL;
  GError *error = NULL;

  job->report_identifier = " FA-7";
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_cmpuint (count_reports (book, "", NULL), ==, 0);
  g_assert_cmpuint (count_reports (book, "FA-70", ID), ==, 0);
  g_assert_cmpuint (count_reports (book, "FA-7", job->id), ==, 0);
  found = tm_book_find_report (book, "fa-7 ", ID, &error);
  g_assert_cmpuint (found->len, ==, 1);
  g_assert_cmpstr (((const TmBookEntry *)g_ptr_array_index (found, 0))->id, ==, job->id);
  job->report_identifier = "FA-8";
  g_assert_true (tm_book_save_definitions (book, job, "AB", "2026-05-04T09:12:33Z", &error));
  g_assert_cmpuint (count_reports (book, "FA-7", ID), ==, 0);
  g_assert_cmpuint (count_reports (book, "FA-8", ID), ==, 1);
}

/* A signature is never taken out nor edited; the list names those who have one. */
static void
test_signed_jobs (Place *place, gconstpointer data)
{
  g_autoptr (TmBook) book = open_with_job (place);
  g_autoptr (TmJob) job = make_bench_job (ID, 1);
  g_autoptr (GPtrArray) before = NULL, after = NULL;
  TmSignature *signature = tm_signature_new ();
  GError *error = NULL;

  before = tm_book_signed_jobs (book, &error);
  g_assert_cmpuint (before->len, ==, 0);
  signature->by = "AB";
  signature->digest = "00";
  tm_job_add_signature (job, signature);
  g_assert_true (tm_book_save_definitions (book, job, "AB", "2026-05-04T09:12:33Z", &error));
  after = tm_book_signed_jobs (book, &error);
  g_assert_cmpuint (after->len, ==, 1);
  g_assert_cmpstr (g_ptr_array_index (after, 0), ==, ID);
  signature->pages = "11";
  g_assert_false (tm_book_save_definitions (book, job, "AB", "2026-05-04T09:12:34Z", &error));
  g_clear_error (&error);
  g_ptr_array_set_size (job->signatures, 0);
  g_assert_false (tm_book_save_definitions (book, job, "AB", "2026-05-04T09:12:34Z", &error));
  g_clear_error (&error);
  assert_clean (place->path);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) \
  g_test_add ("/book/content/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("kept", test_kept);
  ADD ("large", test_large);
  ADD ("refused", test_refused);
  ADD ("drawing-without-bytes", test_drawing_without_bytes);
  ADD ("tampering", test_tampering);
  ADD ("not-handed-out", test_not_handed_out);
  ADD ("changed-since", test_changed_since);
  ADD ("find-report", test_find_report);
  ADD ("signed-jobs", test_signed_jobs);
  return g_test_run ();
}
