/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-error: what SQLite says, as one line that names the book and the mend.
 */

#include "book-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>

GQuark
tm_book_error_quark (void)
{
  return g_quark_from_static_string ("tm-book-error-quark");
}

typedef struct {
  int rc;
  TmBookError code;
  const char *message; /* template: %1$s the path, %2$s what SQLite says */
} Cause;

static const Cause causes[] = {
  { SQLITE_READONLY_DBMOVED, TM_BOOK_ERROR_CANNOT_OPEN,
    N_ ("“%1$s” was moved or deleted while it was open (%2$s); put it back and open it again") },
  { SQLITE_BUSY, TM_BOOK_ERROR_BUSY,
    N_ ("“%1$s” is held by another program (%2$s); let it finish or close it there, then try again") },
  { SQLITE_LOCKED, TM_BOOK_ERROR_BUSY,
    N_ ("“%1$s” is held by another program (%2$s); let it finish or close it there, then try again") },
  { SQLITE_FULL, TM_BOOK_ERROR_FULL,
    N_ ("the disk that holds “%1$s” is full (%2$s); nothing of this was written; make room and try again") },
  { SQLITE_READONLY, TM_BOOK_ERROR_READ_ONLY,
    N_ ("“%1$s” cannot be written (%2$s); give yourself the right to write to it and to its folder, or work "
        "on "
        "a copy") },
  { SQLITE_CANTOPEN, TM_BOOK_ERROR_CANNOT_OPEN,
    N_ ("cannot open “%1$s” (%2$s); look whether the folder is there and whether you may read and write "
        "it") },
  { SQLITE_PERM, TM_BOOK_ERROR_CANNOT_OPEN,
    N_ ("cannot open “%1$s” (%2$s); look whether the folder is there and whether you may read and write "
        "it") },
  { SQLITE_NOTADB, TM_BOOK_ERROR_NOT_A_BOOK, N_ ("“%1$s” is not a book (%2$s); choose another file") },
  { SQLITE_CORRUPT, TM_BOOK_ERROR_DAMAGED,
    N_ ("“%1$s” is damaged (%2$s); keep it as it is, verify it, and go on with the newest backup") },
  { SQLITE_IOERR, TM_BOOK_ERROR_FAILED,
    N_ ("“%1$s” could not be read or written (%2$s); look to the disk or the network connection, then try "
        "again") },
  { SQLITE_NOMEM, TM_BOOK_ERROR_FAILED,
    N_ ("no memory left while working on “%1$s” (%2$s); close other programs and try again") },
  { SQLITE_INTERRUPT, TM_BOOK_ERROR_CANCELLED, N_ ("work on “%1$s” was cancelled (%2$s)") },
};

static const Cause any_cause
    = { SQLITE_ERROR, TM_BOOK_ERROR_FAILED, N_ ("“%1$s”: %2$s; open the book again and try once more") };

/* A full disk shows as any of several failures, by what was being written. */
static gboolean
is_full (sqlite3 *db, int rc)
{
  int primary = rc & 0xff;
  int number;

  if (db == NULL || (primary != SQLITE_IOERR && primary != SQLITE_CANTOPEN))
    return FALSE;
  number = sqlite3_system_errno (db);
  return number == ENOSPC || number == EDQUOT;
}

static const Cause *
find_cause (sqlite3 *db, int rc)
{
  if (is_full (db, rc))
    rc = SQLITE_FULL;
  for (gsize i = 0; i < G_N_ELEMENTS (causes); i++)
    {
      if (causes[i].rc == rc || causes[i].rc == (rc & 0xff))
        return &causes[i];
    }
  return &any_cause;
}

gboolean
tm_book_fail_at (const char *path, sqlite3 *db, int rc, GError **error)
{
  const Cause *cause;
  /* Where the cause was found before SQLite was asked, its last answer is about something else. */
  const char *said
      = db != NULL && sqlite3_errcode (db) != SQLITE_OK ? sqlite3_errmsg (db) : sqlite3_errstr (rc);

  if (db != NULL && rc == SQLITE_ERROR)
    rc = sqlite3_extended_errcode (db);
  cause = find_cause (db, rc);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  g_set_error (error, TM_BOOK_ERROR, cause->code, _ (cause->message), path, said);
#pragma GCC diagnostic pop
  return FALSE;
}

gboolean
tm_book_fail (TmBook *book, int rc, GError **error)
{
  return tm_book_fail_at (book->path, book->db, rc, error);
}
