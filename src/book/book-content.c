/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-content: the bytes of files that a job keeps, drawings and signed reports, and the shop's logo.
 *
 * They are named by their SHA-256 and kept for good, once in each job, and once for the shop, whose number is
 * 0.  Each is a fact of the journal, so that bytes that were changed or taken out are found.
 */

#include "book-fault.h"

#include <glib/gi18n-lib.h>

/* What is asked about the file with a digest: of the shop the job is 0. */
static sqlite3_stmt *
ask_content (TmBook *book, const char *what, gint64 number, const char *digest, GError **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT %s FROM %s WHERE job = ? AND digest = ?", what,
                                          number == 0 ? "shop_content" : "content");
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);

  if (statement == NULL)
    return NULL;
  sqlite3_bind_int64 (statement, 1, number);
  tm_bind_text (statement, 2, digest);
  return statement;
}

static gboolean
has_content (TmBook *book, gint64 number, const char *digest, gboolean *present, GError **error)
{
  sqlite3_stmt *statement = ask_content (book, "1", number, digest, error);
  gint64 found = 0;

  if (statement == NULL || !tm_book_ask (book, statement, 0, &found, error))
    return FALSE;
  *present = found == 1;
  return TRUE;
}

static gboolean
check_size (TmBook *book, GBytes *bytes, GError **error)
{
  gsize length = g_bytes_get_size (bytes);

  if (length > 0 && length <= TM_BOOK_CONTENT_MAX)
    return TRUE;
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED,
               _ ("“%s” keeps no file that is empty or larger than %u MiB; choose a smaller one"), book->path,
               TM_BOOK_CONTENT_MAX / 1048576u);
  return FALSE;
}

/* Inside a transaction. */
static gboolean
keep (TmBook *book, gint64 number, const char *digest, GBytes *bytes, GError **error)
{
  TmBookContent row = { digest, (gint64)g_bytes_get_size (bytes), bytes };
  gboolean present = FALSE;

  return check_size (book, bytes, error) && has_content (book, number, digest, &present, error)
         && (present
             || tm_book_append (book, number == 0 ? TM_BOOK_SHOP_CONTENT : TM_BOOK_CONTENT, number, NULL,
                                &row, error)
                    > 0);
}

gboolean
tm_book_keep_drawing (TmBook *book, gint64 number, const TmDrawing *drawing, GError **error)
{
  gboolean present = FALSE;

  /* The last version of a drawing that is taken out of the job names no bytes. */
  if (*drawing->digest == '\0')
    return TRUE;
  if (drawing->content != NULL)
    return keep (book, number, drawing->digest, drawing->content, error);
  if (!has_content (book, number, drawing->digest, &present, error))
    return FALSE;
  if (present)
    return TRUE;
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED,
               _ ("“%s” has not the bytes of drawing %s; add the drawing's file again"), book->path,
               drawing->name);
  return FALSE;
}

static char *
keep_bytes (TmBook *book, const char *job_id, GBytes *bytes, GError **error)
{
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);
  gint64 number;
  gboolean done;

  if (!tm_book_begin (book, error))
    return NULL;
  number = tm_book_job_number (book, job_id, error);
  done = number > 0 && keep (book, number, digest, bytes, error);
  return tm_book_end (book, done, error) ? g_steal_pointer (&digest) : NULL;
}

char *
tm_book_keep_content (TmBook *book, const char *job_id, GBytes *bytes, GError **error)
{
  g_return_val_if_fail (book != NULL && job_id != NULL && bytes != NULL, NULL);

  return keep_bytes (book, job_id, bytes, error);
}

gboolean
tm_book_keeps_content (TmBook *book, const char *job_id, const char *digest, gboolean *kept, GError **error)
{
  gint64 number;

  g_return_val_if_fail (book != NULL && job_id != NULL && digest != NULL && kept != NULL, FALSE);

  number = tm_book_job_number (book, job_id, error);
  return number > 0 && has_content (book, number, digest, kept, error);
}

static GBytes *
read_content (TmBook *book, gint64 number, const char *digest, GError **error)
{
  sqlite3_stmt *statement = ask_content (book, "bytes", number, digest, error);
  GError *failure = NULL;
  GBytes *bytes = NULL;

  if (statement == NULL)
    return NULL;
  if (tm_book_step (book, statement, &failure))
    bytes = g_bytes_new (sqlite3_column_blob (statement, 0), (gsize)sqlite3_column_bytes (statement, 0));
  sqlite3_reset (statement);
  if (failure != NULL)
    g_propagate_error (error, failure);
  else if (bytes == NULL)
    g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_FILE,
                 _ ("“%s” keeps no file with the SHA-256 %s; look for it where the job was signed"),
                 book->path, digest);
  return bytes;
}

/* What leaves the book is what was put in. */
static gboolean
check_digest (TmBook *book, GBytes *bytes, const char *digest, GError **error)
{
  g_autofree char *found = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);

  if (g_str_equal (found, digest))
    return TRUE;
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED,
               _ ("“%s”: the file kept under the SHA-256 %s was changed; look for it in a backup"),
               book->path, digest);
  return FALSE;
}

GBytes *
tm_book_read_content (TmBook *book, const char *job_id, const char *digest, GError **error)
{
  g_autoptr (GBytes) bytes = NULL;
  gint64 number;

  g_return_val_if_fail (book != NULL && job_id != NULL && digest != NULL, NULL);

  number = tm_book_job_number (book, job_id, error);
  bytes = number > 0 ? read_content (book, number, digest, error) : NULL;
  return bytes != NULL && check_digest (book, bytes, digest, error) ? g_steal_pointer (&bytes) : NULL;
}

gboolean
tm_book_load_drawings (TmBook *book, gint64 number, TmJob *job, GError **error)
{
  for (guint i = 0; i < job->drawings->len; i++)
    {
      TmDrawing *drawing = g_ptr_array_index (job->drawings, i);
      gboolean present = FALSE;

      if (!has_content (book, number, drawing->digest, &present, error))
        return FALSE;
      if (!present)
        continue;
      drawing->content = read_content (book, number, drawing->digest, error);
      if (drawing->content == NULL)
        return FALSE;
    }
  return TRUE;
}

gboolean
tm_book_keep_logo (TmBook *book, const char *digest, GBytes *logo, GError **error)
{
  return keep (book, 0, digest, logo, error);
}

GBytes *
tm_book_read_logo (TmBook *book, const char *digest, GError **error)
{
  return read_content (book, 0, digest, error);
}

static gboolean
check_kept (TmBook *book, TmBookKind kind, TmFaults *faults, GError **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT digest, bytes, job FROM %s", tm_kind_info (kind)->table);
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  while (tm_book_step (book, statement, &failure))
    {
      const char *digest = tm_column_text (statement, 0);
      g_autofree char *payload = g_strdup_printf ("digest=%s\n", digest);
      g_autofree char *found = g_compute_checksum_for_data (
          G_CHECKSUM_SHA256, sqlite3_column_blob (statement, 1), (gsize)sqlite3_column_bytes (statement, 1));

      if (!g_str_equal (found, digest))
        tm_faults_add (faults, tm_kind_info (kind)->table,
                       tm_faults_where (faults, sqlite3_column_int64 (statement, 2), kind, payload),
                       g_strdup (_ ("its bytes do not give its SHA-256: they were changed")));
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

gboolean
tm_book_check_contents (TmBook *book, TmFaults *faults, GError **error)
{
  return check_kept (book, TM_BOOK_CONTENT, faults, error)
         && check_kept (book, TM_BOOK_SHOP_CONTENT, faults, error);
}
