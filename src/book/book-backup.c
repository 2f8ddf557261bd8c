/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-backup: a copy that has its name only when it is whole, verified and on the disk.
 */

#include "book-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

static gboolean
refuse_target (const char *path, int number, GError **error)
{
  if (number == EEXIST)
    g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED,
                 _ ("“%s” is there already and is not overwritten; give the backup another name"), path);
  else
    g_set_error (error, TM_BOOK_ERROR,
                 number == ENOSPC || number == EDQUOT ? TM_BOOK_ERROR_FULL : TM_BOOK_ERROR_CANNOT_OPEN,
                 _ ("cannot write the backup “%s” (%s); choose a folder that can be written and has room"),
                 path, g_strerror (number));
  return FALSE;
}

/* An empty file of a name of its own beside @path. */
static char *
make_temporary (const char *path, GError **error)
{
  g_autofree char *name = g_strconcat (path, ".XXXXXX", NULL);
  int fd = g_mkstemp_full (name, O_RDWR | O_CLOEXEC, 0644);

  if (fd < 0)
    {
      refuse_target (path, errno, error);
      return NULL;
    }
  close (fd);
  return g_steal_pointer (&name);
}

/* Another program may be writing at this moment; one that never lets go is named, not waited for. */
static int
copy_pages (TmBook *book, sqlite3 *to)
{
  gint64 until = g_get_monotonic_time () + TM_BOOK_BUSY_MS * G_TIME_SPAN_MILLISECOND;
  sqlite3_backup *backup = sqlite3_backup_init (to, "main", book->db, "main");
  int rc, finished;

  if (backup == NULL)
    return sqlite3_extended_errcode (to);
  while (((rc = sqlite3_backup_step (backup, -1)) == SQLITE_BUSY || rc == SQLITE_LOCKED)
         && g_get_monotonic_time () < until)
    sqlite3_sleep (20);
  /* What is only busy is no failure to sqlite3_backup_finish(). */
  finished = sqlite3_backup_finish (backup);
  return finished != SQLITE_OK || rc == SQLITE_DONE ? finished : rc;
}

/* The copy is one file alone: it does not keep the write-ahead log. */
static gboolean
copy_to (TmBook *book, const char *temporary, const char *path, GError **error)
{
  sqlite3 *to = NULL;
  int rc = sqlite3_open_v2 (temporary, &to,
                            SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, NULL);

  if (rc == SQLITE_OK)
    rc = copy_pages (book, to);
  if (rc == SQLITE_OK)
    rc = sqlite3_exec (to, "PRAGMA journal_mode = DELETE", NULL, NULL, NULL);
  if (rc == SQLITE_BUSY || rc == SQLITE_LOCKED)
    tm_book_fail_at (book->path, NULL, rc, error); /* nobody else knows the copy yet */
  else if (rc != SQLITE_OK)
    tm_book_fail_at (path, to, rc, error);
  sqlite3_close (to);
  return rc == SQLITE_OK;
}

static gboolean
verify_copy (const char *temporary, const char *path, GError **error)
{
  g_autoptr (TmBook) copy = tm_book_open (temporary, TM_BOOK_OPEN_READ_ONLY, error);
  g_autoptr (GPtrArray) faults = copy != NULL ? tm_book_verify (copy, NULL, error) : NULL;
  const TmBookFault *first;

  if (faults == NULL)
    return FALSE;
  if (faults->len == 0)
    return TRUE;
  first = g_ptr_array_index (faults, 0);
  g_set_error (
      error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED,
      _ ("no backup “%s” was made: the book does not verify (%s: %s); verify the book and look what was "
         "changed"),
      path, first->where, first->how);
  return FALSE;
}

static gboolean
sync_file (const char *file)
{
  int fd = open (file, O_RDONLY | O_CLOEXEC);
  gboolean done = fd >= 0 && fsync (fd) == 0;

  if (fd >= 0)
    close (fd);
  return done;
}

/* Names the finished copy, never over another file. */
static gboolean
give_name (const char *temporary, const char *path, GError **error)
{
  if (!sync_file (temporary))
    return refuse_target (path, errno, error);
  if (renameat2 (AT_FDCWD, temporary, AT_FDCWD, path, RENAME_NOREPLACE) != 0)
    {
      /* Some file systems cannot do that; a hard link refuses an existing name as well. */
      if (errno != EINVAL && errno != ENOSYS)
        return refuse_target (path, errno, error);
      if (link (temporary, path) != 0)
        return refuse_target (path, errno, error);
      g_unlink (temporary);
    }
  tm_place_sync_folder (path);
  return TRUE;
}

gboolean
tm_book_backup (TmBook *book, const char *path, GError **error)
{
  g_autofree char *temporary = NULL;

  g_return_val_if_fail (book != NULL && path != NULL, FALSE);

  if (g_file_test (path, G_FILE_TEST_EXISTS | G_FILE_TEST_IS_SYMLINK))
    return refuse_target (path, EEXIST, error);
  temporary = make_temporary (path, error);
  if (temporary == NULL)
    return FALSE;
  if (copy_to (book, temporary, path, error) && verify_copy (temporary, path, error)
      && give_name (temporary, path, error))
    return TRUE;
  g_unlink (temporary);
  return FALSE;
}
