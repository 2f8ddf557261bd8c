/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-journal: one transaction after the other, each fact chained to the one before.
 *
 * The head is read inside the immediate transaction that extends it, so that two programs that
 * write at once still make one chain.
 */

#include "book-private.h"

#include <string.h>

/* Numbers go on after the newest row of either table, so that a tail cut off behind the program's
 * back neither stops the bench nor gets its numbers used again. */
static const char head_sql[]
    = "SELECT max (coalesce (max (seq), 0), (SELECT coalesce (max (seq), 0) FROM seal)),"
      " (SELECT hash FROM seal ORDER BY n DESC LIMIT 1) FROM journal";

static gboolean
read_head (TmBook *book, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, head_sql, error);
  int rc;

  if (statement == NULL)
    return FALSE;
  memset (&book->chain, 0, sizeof book->chain);
  rc = sqlite3_step (statement);
  if (rc == SQLITE_ROW)
    {
      book->chain.seq = sqlite3_column_int64 (statement, 0);
      if (sqlite3_column_bytes (statement, 1) == TM_HASH_BYTES)
        memcpy (book->chain.hash, sqlite3_column_blob (statement, 1), TM_HASH_BYTES);
    }
  else
    tm_book_fail (book, rc, error);
  sqlite3_reset (statement);
  book->sealed = book->chain.seq;
  return rc == SQLITE_ROW;
}

gboolean
tm_book_begin (TmBook *book, GError **error)
{
  if (book->read_only)
    return tm_book_fail (book, SQLITE_READONLY, error);
  if (!tm_book_exec (book, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (read_head (book, error))
    return TRUE;
  tm_book_rollback (book);
  return FALSE;
}

void
tm_book_rollback (TmBook *book)
{
  /* SQLite rolls back by itself on a full disk or a failing one. */
  if (sqlite3_get_autocommit (book->db) == 0)
    sqlite3_exec (book->db, "ROLLBACK", NULL, NULL, NULL);
}

static gboolean
append_seal (TmBook *book, GError **error)
{
  sqlite3_stmt *statement
      = tm_book_prepare (book, "INSERT OR FAIL INTO seal (seq, hash) VALUES (?, ?)", error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, book->chain.seq);
  sqlite3_bind_blob (statement, 2, book->chain.hash, TM_HASH_BYTES, SQLITE_STATIC);
  return tm_book_run (book, statement, error);
}

gboolean
tm_book_commit (TmBook *book, GError **error)
{
  if ((book->chain.seq == book->sealed || append_seal (book, error)) && tm_book_exec (book, "COMMIT", error))
    return TRUE;
  tm_book_rollback (book);
  return FALSE;
}

gboolean
tm_book_end (TmBook *book, gboolean done, GError **error)
{
  if (done)
    return tm_book_commit (book, error);
  tm_book_rollback (book);
  return FALSE;
}

/* FAIL, here and in every insert, because one row that fails leaves nothing to undo: ABORT would make
 * SQLite copy each page before each row.  The transaction is rolled back by us. */
static const char extend_sql[]
    = "INSERT OR FAIL INTO journal (seq, job, kind, payload, prev) VALUES (?, ?, ?, ?, ?)";

static gboolean
append_fact (TmBook *book, gint64 seq, gint64 job, const char *kind, const TmFact *fact, GError **error)
{
  sqlite3_stmt *statement = book->extend;

  sqlite3_bind_int64 (statement, 1, seq);
  sqlite3_bind_int64 (statement, 2, job);
  sqlite3_bind_text (statement, 3, kind, -1, SQLITE_STATIC);
  sqlite3_bind_text (statement, 4, fact->payload, (int)fact->length, SQLITE_STATIC);
  sqlite3_bind_blob (statement, 5, book->chain.hash, TM_HASH_BYTES, SQLITE_STATIC);
  if (!tm_book_run (book, statement, error))
    return FALSE;
  book->chain.seq = seq;
  memcpy (book->chain.hash, fact->hash, sizeof fact->hash);
  return TRUE;
}

static sqlite3_stmt *
prepare_insert (TmBook *book, TmBookKind kind, GError **error)
{
  g_autofree char *sql = NULL;

  if (book->inserts[kind] != NULL)
    {
      sqlite3_reset (book->inserts[kind]);
      return book->inserts[kind];
    }
  sql = tm_kind_insert_sql (kind);
  book->inserts[kind] = tm_book_prepare (book, sql, error);
  return book->inserts[kind];
}

static void
bind_bytes (sqlite3_stmt *statement, int index, GBytes *bytes)
{
  gsize length;
  gconstpointer data = g_bytes_get_data (bytes, &length);

  sqlite3_bind_blob64 (statement, index, data, length, SQLITE_STATIC);
}

/* Makes the fact of the row that is in the cells. */
static void
make_fact (TmBook *book, TmBookKind kind, gint64 seq, gint64 job, TmFact *fact)
{
  g_string_truncate (book->payload, 0);
  tm_cells_payload (&book->cells, kind, book->payload);
  fact->payload = book->payload->str;
  fact->length = book->payload->len;
  tm_hash_fact (book->chain.hash, seq, job, tm_kind_info (kind)->table, fact->payload, fact->length,
                fact->hash);
}

/* @made: the row's fact, or NULL when it is still to be made. */
static gint64
append (TmBook *book, TmBookKind kind, gint64 job, const TmVersion *version, gconstpointer row,
        const TmFact *made, GError **error)
{
  sqlite3_stmt *statement = prepare_insert (book, kind, error);
  gint64 seq = book->chain.seq + 1;
  TmFact fact;

  if (book->extend == NULL)
    book->extend = tm_book_prepare (book, extend_sql, error);
  if (statement == NULL || book->extend == NULL)
    return 0;
  if (kind == TM_BOOK_JOB)
    job = seq;
  tm_cells_from_struct (&book->cells, kind, version, row);
  if (made == NULL)
    make_fact (book, kind, seq, job, &fact);
  if (!append_fact (book, seq, job, tm_kind_info (kind)->table, made != NULL ? made : &fact, error))
    return 0;
  sqlite3_bind_int64 (statement, 1, seq);
  sqlite3_bind_int64 (statement, 2, job);
  tm_cells_bind (&book->cells, statement);
  if (tm_kind_has_bytes (kind))
    bind_bytes (statement, (int)book->cells.n + 3, ((const TmBookContent *)row)->bytes);
  return tm_book_run (book, statement, error) ? seq : 0;
}

gint64
tm_book_append (TmBook *book, TmBookKind kind, gint64 job, const TmVersion *version, gconstpointer row,
                GError **error)
{
  if (kind == TM_BOOK_DRAWING && !tm_book_keep_drawing (book, job, row, error))
    return 0;
  return append (book, kind, job, version, row, NULL, error);
}

gint64
tm_book_append_made (TmBook *book, TmBookKind kind, gint64 job, gconstpointer row, const TmFact *fact,
                     GError **error)
{
  return append (book, kind, job, NULL, row, fact, error);
}
