/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-schema.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <sys/stat.h>
#include <unistd.h>

/* How SQLite is asked for the file. */
typedef enum {
  WAY_WRITE,
  WAY_SHARE,  /* only reads, but somebody may be writing: takes part in the locks */
  WAY_FROZEN, /* only reads, and nobody can be writing: no locks, no files beside it */
} Way;

/* SQLite keeps the log beside the file that a link leads to. */
static char *
resolve (const char *path)
{
  char *found = realpath (path, NULL);
  char *real = g_strdup (found != NULL ? found : path);

  free (found);
  return real;
}

static gboolean
stands_beside (const char *path, const char *ending)
{
  g_autofree char *beside = g_strconcat (path, ending, NULL);

  return access (beside, F_OK) == 0;
}

/* A book that lies alone on the disk is whole in its one file.  With a log or its index beside it
 * somebody has it open, or left it in a hurry: those files hold part of the truth. */
static Way
choose_way (const char *path, guint flags)
{
  gboolean alone
      = !stands_beside (path, "-wal") && !stands_beside (path, "-shm") && !stands_beside (path, "-journal");

  if ((flags & TM_BOOK_OPEN_READ_ONLY) == 0 && tm_place_is_writable (path))
    return WAY_WRITE;
  return alone ? WAY_FROZEN : WAY_SHARE;
}

static gboolean
check_file (const char *path, Way way, GError **error)
{
  struct stat facts;

  if (stat (path, &facts) != 0)
    {
      if (errno == ENOENT && way == WAY_WRITE)
        return TRUE;
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANNOT_OPEN,
                   _ ("cannot open “%s” (%s); look whether the file and its folder are there"), path,
                   g_strerror (errno));
      return FALSE;
    }
  if (!S_ISREG (facts.st_mode))
    {
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANNOT_OPEN,
                   _ ("cannot open “%s”: it is not a file; name a file in that place"), path);
      return FALSE;
    }
  return TRUE;
}

/* SQLite counts every byte it allocates under one lock unless told not to; it can be told only
 * before it is first used, and does no harm later. */
static void
quieten_sqlite (void)
{
  static gsize done;

  if (!g_once_init_enter (&done))
    return;
  sqlite3_config (SQLITE_CONFIG_MEMSTATUS, 0);
  g_once_init_leave (&done, 1);
}

static sqlite3 *
open_database (const char *path, const char *real, Way way, GError **error)
{
  g_autofree char *escaped = g_uri_escape_string (real, G_URI_RESERVED_CHARS_ALLOWED_IN_PATH, FALSE);
  g_autofree char *uri = g_strdup_printf ("file:%s%s", escaped, way == WAY_FROZEN ? "?immutable=1" : "");
  int flags = SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE
              | (way == WAY_WRITE ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE : SQLITE_OPEN_READONLY);
  sqlite3 *db = NULL;
  int rc = sqlite3_open_v2 (uri, &db, flags, NULL);

  if (rc == SQLITE_OK)
    return db;
  tm_book_fail_at (path, db, rc, error);
  sqlite3_close (db);
  return NULL;
}

/* SQLite trusts what stands in the schema; a book from elsewhere may hold anything. */
static void
harden (sqlite3 *db)
{
  sqlite3_db_config (db, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_db_config (db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  sqlite3_db_config (db, SQLITE_DBCONFIG_ENABLE_FKEY, 1, NULL);
  sqlite3_busy_timeout (db, TM_BOOK_BUSY_MS);
}

/* Two programs that open the same book at once may each wait for the other to let go before the kind
 * of journal changes; SQLite then refuses at once, and whoever asks again gets it. */
static gboolean
change_journal (TmBook *book, const char *sql, GError **error)
{
  gint64 until = g_get_monotonic_time () + TM_BOOK_BUSY_MS * G_TIME_SPAN_MILLISECOND;
  int rc;

  while (((rc = sqlite3_exec (book->db, sql, NULL, NULL, NULL)) & 0xff) == SQLITE_BUSY
         && g_get_monotonic_time () < until)
    sqlite3_sleep (5);
  return rc == SQLITE_OK || tm_book_fail (book, rc, error);
}

/* With the rollback journal EXTRA also syncs the folder when the journal goes: without it the last
 * reading could come undone by a power failure. */
static gboolean
choose_journal (TmBook *book, GError **error)
{
  if (!change_journal (book, book->rollback ? "PRAGMA journal_mode = DELETE" : "PRAGMA journal_mode = WAL",
                       error))
    return FALSE;
  sqlite3_wal_autocheckpoint (book->db, TM_BOOK_CHECKPOINT_PAGES);
  return tm_book_exec (book, book->rollback ? "PRAGMA synchronous = EXTRA" : "PRAGMA synchronous = FULL",
                       error);
}

/* The file is looked at before anything about it is changed. */
static gboolean
set_up (TmBook *book, guint flags, GError **error)
{
  gboolean exists = access (book->real, F_OK) == 0;

  harden (book->db);
  if (!tm_book_exec (
          book, TM_BOOK_CACHE_SQL "; PRAGMA temp_store = MEMORY; PRAGMA journal_size_limit = 8388608", error))
    return FALSE;
  if (book->read_only)
    return tm_schema_migrate (book->db, book->path, &tm_schema, FALSE, error);
  book->rollback = (flags & TM_BOOK_OPEN_ROLLBACK) != 0 || tm_place_is_network (book->real);
  if (!tm_schema_check (book->db, book->path, &tm_schema, error) || !choose_journal (book, error)
      || !tm_schema_migrate (book->db, book->path, &tm_schema, TRUE, error))
    return FALSE;
  if (!exists)
    tm_place_sync_folder (book->real);
  return TRUE;
}

static void
finalize_cb (gpointer statement)
{
  sqlite3_finalize (statement);
}

TmBook *
tm_book_open (const char *path, TmBookOpenFlags flags, GError **error)
{
  g_autoptr (TmBook) book = NULL;
  g_autofree char *real = NULL;
  Way way;

  g_return_val_if_fail (path != NULL, NULL);

  real = resolve (path);
  way = choose_way (real, (guint)flags);
  if (!check_file (path, way, error))
    return NULL;
  book = g_new0 (TmBook, 1);
  book->path = g_strdup (path);
  book->real = g_steal_pointer (&real);
  book->read_only = way != WAY_WRITE;
  book->statements = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, finalize_cb);
  book->recorders = g_ptr_array_new_with_free_func (g_free);
  book->payload = g_string_new (NULL);
  tm_cells_init (&book->cells);
  if (!tm_hash_init ())
    {
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_FAILED,
                   _ ("cannot open “%s”: the checksum library does not start; install libsodium again"),
                   path);
      return NULL;
    }
  quieten_sqlite ();
  book->db = open_database (book->path, book->real, way, error);
  if (book->db == NULL || !set_up (book, (guint)flags, error))
    return NULL;
  return g_steal_pointer (&book);
}

void
tm_book_close (TmBook *book)
{
  if (book == NULL)
    return;
  g_hash_table_unref (book->statements);
  if (book->db != NULL)
    {
      tm_book_rollback (book);
      /* When another program reads, what can be folded in is; the rest stays safe in the log. */
      if (!book->read_only)
        sqlite3_wal_checkpoint_v2 (book->db, NULL, SQLITE_CHECKPOINT_PASSIVE, NULL, NULL);
      sqlite3_close (book->db);
    }
  tm_cells_clear (&book->cells);
  g_ptr_array_unref (book->recorders);
  g_string_free (book->payload, TRUE);
  g_free (book->path);
  g_free (book->real);
  g_free (book);
}

const char *
tm_book_path (const TmBook *book)
{
  g_return_val_if_fail (book != NULL, NULL);

  return book->path;
}

gboolean
tm_book_is_read_only (const TmBook *book)
{
  g_return_val_if_fail (book != NULL, TRUE);

  return book->read_only;
}

gboolean
tm_book_checkpoint (TmBook *book, GError **error)
{
  int rc;

  g_return_val_if_fail (book != NULL, FALSE);

  if (book->read_only || book->rollback)
    return TRUE;
  /* Readers elsewhere only delay this: passive never waits for them. */
  rc = sqlite3_wal_checkpoint_v2 (book->db, NULL, SQLITE_CHECKPOINT_PASSIVE, NULL, NULL);
  return rc == SQLITE_OK || rc == SQLITE_BUSY || rc == SQLITE_LOCKED || tm_book_fail (book, rc, error);
}
