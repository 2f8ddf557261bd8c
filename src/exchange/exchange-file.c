/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

gboolean
tm_file_put (int fd, const char *data, gsize length)
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

/* Fills the open @fd, which is closed in any case; FALSE with @error or errno. */
static gboolean
fill_file (int fd, TmFileFill fill, gpointer data, GError **error)
{
  gboolean done = fill (fd, data, error) && fsync (fd) == 0;
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
replace_file (const char *path, TmFileFill fill, gpointer data, GError **error)
{
  g_autofree char *target = follow_link (path);
  g_autofree char *temporary = g_strconcat (target, ".XXXXXX", NULL);
  int fd = g_mkstemp_full (temporary, O_WRONLY | O_CLOEXEC, 0666);
  int kept;

  if (fd < 0)
    return FALSE;
  keep_mode (fd, target);
  if (fill_file (fd, fill, data, error) && g_rename (temporary, target) == 0)
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
tm_file_replace (const char *path, TmFileFill fill, gpointer data, GError **error)
{
  g_autofree char *shown = NULL;
  g_autoptr (GError) reason = NULL;
  int kept;

  if (replace_file (path, fill, data, &reason))
    return TRUE;
  kept = errno;
  if (reason != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&reason));
      return FALSE;
    }
  shown = g_filename_display_name (path);
  tm_exchange_fail_io (error, shown, kept);
  return FALSE;
}

/* Reads what is left of @fd, at most @most bytes and one more. */
static gboolean
read_all (int fd, gsize most, GString *into)
{
  while (into->len <= most)
    {
      gsize have = into->len;
      gsize step = MIN (MAX (into->allocated_len - have - 1, 64 * 1024), most + 1 - have);
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

GString *
tm_file_load (const char *path, gsize most, const char *too_large, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
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
  else if (facts.st_size > (off_t)most)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, shown, NULL, "%s", too_large);
    }
  else
    {
      bytes = g_string_sized_new ((gsize)facts.st_size + 2);
      if (!read_all (fd, most, bytes))
        {
          tm_exchange_fail_io (error, shown, errno);
          g_string_free (g_steal_pointer (&bytes), TRUE);
        }
    }
  if (fd >= 0)
    close (fd);
  return bytes;
}
