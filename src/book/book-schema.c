/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-schema.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

static gboolean
ask_number (sqlite3 *db, const char *path, const char *sql, gint64 *number, GError **error)
{
  sqlite3_stmt *statement = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &statement, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (statement);
  if (rc == SQLITE_ROW)
    *number = sqlite3_column_int64 (statement, 0);
  else
    tm_book_fail_at (path, db, rc, error);
  sqlite3_finalize (statement);
  return rc == SQLITE_ROW;
}

static gboolean
run_sql (sqlite3 *db, const char *path, const char *sql, GError **error)
{
  int rc = sqlite3_exec (db, sql, NULL, NULL, NULL);

  return rc == SQLITE_OK || tm_book_fail_at (path, db, rc, error);
}

/* What @db is: its version, 0 for a new book. */
static gboolean
read_version (sqlite3 *db, const char *path, guint n_steps, gint64 *version, GError **error)
{
  gint64 application = 0;
  gint64 objects = 0;

  if (!ask_number (db, path, "PRAGMA application_id", &application, error)
      || !ask_number (db, path, "PRAGMA user_version", version, error)
      || !ask_number (db, path, "SELECT count (*) FROM sqlite_schema", &objects, error))
    return FALSE;
  if (application != TM_BOOK_APPLICATION_ID && (application != 0 || objects != 0 || *version != 0))
    {
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NOT_A_BOOK,
                   _ ("“%s” is a database of another program, not a book; choose another file"), path);
      return FALSE;
    }
  if (*version > (gint64)n_steps)
    {
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NEWER,
                   _ ("“%s” was written by a later version of this program (book version %" PRId64
                      ", this program reads up to %u); update the program"),
                   path, *version, n_steps);
      return FALSE;
    }
  return TRUE;
}

/* All of it in one read transaction: another program may be making the book at this moment. */
static gboolean
look (sqlite3 *db, const char *path, guint n_steps, gint64 *version, GError **error)
{
  gboolean right;

  if (!run_sql (db, path, "BEGIN", error))
    return FALSE;
  right = read_version (db, path, n_steps, version, error);
  sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
  return right;
}

gboolean
tm_schema_check (sqlite3 *db, const char *path, const TmSchema *schema, GError **error)
{
  gint64 version = 0;

  return look (db, path, schema->n_steps, &version, error);
}

/* From version @from to the present one; a new book, which is version 0, in one go. */
static gboolean
build (sqlite3 *db, const char *path, const TmSchema *schema, guint from, GError **error)
{
  g_autofree char *marks = g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %u;",
                                            TM_BOOK_APPLICATION_ID, schema->n_steps);
  gboolean whole = from == 0 && schema->tables != NULL;

  if (whole && !run_sql (db, path, schema->tables, error))
    return FALSE;
  for (guint i = whole ? schema->n_steps : from; i < schema->n_steps; i++)
    {
      if (!run_sql (db, path, schema->steps[i], error))
        return FALSE;
    }
  return run_sql (db, path, marks, error);
}

gboolean
tm_schema_migrate (sqlite3 *db, const char *path, const TmSchema *schema, gboolean may_write, GError **error)
{
  gint64 version = 0;

  if (!look (db, path, schema->n_steps, &version, error))
    return FALSE;
  if (version == schema->n_steps)
    return TRUE;
  if (!may_write)
    {
      g_set_error (
          error, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY,
          _ ("“%s” is an older or an empty book and cannot be written here; copy it to a folder of your "
             "own and open the copy"),
          path);
      return FALSE;
    }
  /* Another program may have done it between the look and the lock: look again inside. */
  if (!run_sql (db, path, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (read_version (db, path, schema->n_steps, &version, error)
      && build (db, path, schema, (guint)version, error) && run_sql (db, path, "COMMIT", error))
    return TRUE;
  if (sqlite3_get_autocommit (db) == 0)
    sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
  return FALSE;
}
