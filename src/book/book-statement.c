/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-statement: prepared statements, kept for as long as the book is open.
 */

#include "book-private.h"

sqlite3_stmt *
tm_book_prepare (TmBook *book, const char *sql, GError **error)
{
  sqlite3_stmt *statement = g_hash_table_lookup (book->statements, sql);
  int rc;

  if (statement != NULL)
    {
      sqlite3_reset (statement);
      sqlite3_clear_bindings (statement);
      return statement;
    }
  rc = sqlite3_prepare_v3 (book->db, sql, -1, SQLITE_PREPARE_PERSISTENT, &statement, NULL);
  if (rc != SQLITE_OK)
    {
      tm_book_fail (book, rc, error);
      return NULL;
    }
  g_hash_table_insert (book->statements, g_strdup (sql), statement);
  return statement;
}

gboolean
tm_book_run (TmBook *book, sqlite3_stmt *statement, GError **error)
{
  int rc = sqlite3_step (statement);

  if (rc != SQLITE_DONE && rc != SQLITE_ROW)
    {
      tm_book_fail (book, rc, error);
      sqlite3_reset (statement);
      return FALSE;
    }
  sqlite3_reset (statement);
  return TRUE;
}

gboolean
tm_book_exec (TmBook *book, const char *sql, GError **error)
{
  int rc = sqlite3_exec (book->db, sql, NULL, NULL, NULL);

  return rc == SQLITE_OK || tm_book_fail (book, rc, error);
}

gboolean
tm_book_step (TmBook *book, sqlite3_stmt *statement, GError **error)
{
  int rc = sqlite3_step (statement);

  if (rc == SQLITE_ROW)
    return TRUE;
  if (rc != SQLITE_DONE)
    tm_book_fail (book, rc, error);
  sqlite3_reset (statement);
  return FALSE;
}

void
tm_bind_text (sqlite3_stmt *statement, int index, const char *text)
{
  sqlite3_bind_text (statement, index, text != NULL ? text : "", -1, SQLITE_STATIC);
}

const char *
tm_column_text (sqlite3_stmt *statement, int column)
{
  const char *text = (const char *)sqlite3_column_text (statement, column);

  return text != NULL ? text : "";
}

gboolean
tm_book_ask (TmBook *book, sqlite3_stmt *statement, gint64 fallback, gint64 *out, GError **error)
{
  int rc = sqlite3_step (statement);

  *out = rc == SQLITE_ROW && sqlite3_column_type (statement, 0) != SQLITE_NULL
             ? sqlite3_column_int64 (statement, 0)
             : fallback;
  if (rc != SQLITE_ROW && rc != SQLITE_DONE)
    tm_book_fail (book, rc, error);
  sqlite3_reset (statement);
  return rc == SQLITE_ROW || rc == SQLITE_DONE;
}
