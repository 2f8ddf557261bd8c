/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The job file on disk.
 */

#include "exchange-file.h"

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
fill_cb (int fd, gpointer data, GError **error)
{
  const GString *bytes = data;

  return tm_file_put (fd, bytes->str, bytes->len);
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
  return tm_file_replace (path, fill_cb, bytes, error);
}
