/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The job file on disk.
 */

#include "exchange-error.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

/* @path as an error message shows it. */
static char *
display_path (const char *path)
{
  return g_filename_display_name (path);
}

/* Reads what is left of @fd, at most the largest job file and one byte more. */
static gboolean
read_all (int fd, GString *into)
{
  const gsize most = (gsize)TM_EXCHANGE_MAX_BYTES + 1;

  while (into->len < most)
    {
      gsize have = into->len;
      gsize step = MIN (MAX (into->allocated_len - have - 1, 64 * 1024), most - have);
      gssize got;

      g_string_set_size (into, have + step);
      do
        got = read (fd, into->str + have, step);
      while (got < 0 && errno == EINTR);
      g_string_set_size (into, have + (gsize)MAX (got, 0));
      if (got <= 0)
        return got == 0;
    }
  return TRUE;
}

static GString *
load_file (const char *path, const char *shown, GError **error)
{
  int fd = g_open (path, O_RDONLY | O_CLOEXEC, 0);
  struct stat facts;
  GString *bytes = NULL;

  if (fd < 0 || fstat (fd, &facts) != 0)
    {
      tm_exchange_fail_io (error, shown, errno);
    }
  else if (S_ISDIR (facts.st_mode))
    {
      tm_exchange_fail_io (error, shown, EISDIR);
    }
  else if (facts.st_size > (off_t)TM_EXCHANGE_MAX_BYTES)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, shown, NULL,
                        _ ("larger than a job file may be (96 MiB); split the job"));
    }
  else
    {
      bytes = g_string_sized_new ((gsize)facts.st_size + 2);
      if (!read_all (fd, bytes))
        {
          tm_exchange_fail_io (error, shown, errno);
          g_string_free (g_steal_pointer (&bytes), TRUE);
        }
    }
  if (fd >= 0)
    close (fd);
  return bytes;
}

TmJob *
tm_job_from_file (const char *path, TmJobNotes *notes, TmExchangeProgress progress, gpointer user_data,
                  GError **error)
{
  g_autofree char *shown = display_path (path);
  g_autoptr (GString) bytes = load_file (path, shown, error);

  if (bytes == NULL)
    {
      if (notes != NULL)
        *notes = (TmJobNotes) { NULL, 0 };
      return NULL;
    }
  return tm_job_from_bytes (bytes->str, bytes->len, shown, notes, progress, user_data, error);
}

static gboolean
write_all (int fd, const char *data, gsize length)
{
  while (length > 0)
    {
      gssize put = write (fd, data, length);

      if (put < 0 && errno == EINTR)
        continue;
      if (put < 0)
        return FALSE;
      data += put;
      length -= (gsize)put;
    }
  return TRUE;
}

/* The new file gets the permissions of the one that it takes the place of. */
static void
keep_mode (int fd, const char *path)
{
  struct stat facts;

  if (stat (path, &facts) == 0)
    (void)!fchmod (fd, facts.st_mode & 07777);
}

/* Makes the rename itself durable.  Not every file system can sync a folder: that is no failure. */
static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd >= 0)
    {
      (void)!fsync (fd);
      close (fd);
    }
}

/* Writes @bytes to the open @fd, which is closed in any case; FALSE with errno. */
static gboolean
fill_file (int fd, const GString *bytes)
{
  gboolean done = write_all (fd, bytes->str, bytes->len) && fsync (fd) == 0;
  int kept = errno;

  if (close (fd) != 0 && done)
    return FALSE;
  errno = kept;
  return done;
}

/* A link stays one: what it leads to is written. */
static char *
follow_link (const char *path)
{
  char *real = realpath (path, NULL);
  char *target = g_strdup (real != NULL ? real : path);

  free (real);
  return target;
}

static gboolean
replace_file (const char *path, const GString *bytes)
{
  g_autofree char *target = follow_link (path);
  g_autofree char *temporary = g_strconcat (target, ".XXXXXX", NULL);
  int fd = g_mkstemp_full (temporary, O_WRONLY | O_CLOEXEC, 0666);
  int kept;

  if (fd < 0)
    return FALSE;
  keep_mode (fd, target);
  if (fill_file (fd, bytes) && g_rename (temporary, target) == 0)
    {
      sync_folder (target);
      return TRUE;
    }
  kept = errno;
  g_unlink (temporary);
  errno = kept;
  return FALSE;
}

gboolean
tm_job_to_file (const TmJob *job, const char *path, GError **error)
{
  g_autoptr (GString) bytes = tm_job_to_string (job);
  g_autofree char *shown = display_path (path);

  if (bytes->len > TM_EXCHANGE_MAX_BYTES)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, shown, NULL,
                        _ ("the job is larger than a job file may be (96 MiB); split the job"));
      return FALSE;
    }
  if (replace_file (path, bytes))
    return TRUE;
  tm_exchange_fail_io (error, shown, errno);
  return FALSE;
}
