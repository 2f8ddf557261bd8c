/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-target.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

G_DEFINE_QUARK (tm - report - error - quark, tm_report_error)

void
tm_target_fail (const char *path, int code, GError **error)
{
  g_set_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE,
               _ ("%s cannot be written: %s; choose another folder or make room"), path,
               code != 0 ? g_strerror (code) : _ ("the disk may be full"));
}

gboolean
tm_target_open (TmTarget *target, const char *path, GError **error)
{
  target->path = path;
  target->folder = g_path_get_dirname (path);
  target->beside = g_build_filename (target->folder, ".report-XXXXXX", NULL);
  target->fd = g_mkstemp_full (target->beside, O_RDWR | O_CLOEXEC, 0666); /* less what the umask takes */
  if (target->fd >= 0)
    return TRUE;
  tm_target_fail (path, errno, error);
  return FALSE;
}

gboolean
tm_target_write (TmTarget *target, const void *bytes, gsize length, GError **error)
{
  const char *at = bytes;

  while (length > 0)
    {
      const gssize written = write (target->fd, at, length);

      if (written < 0 && errno == EINTR)
        continue;
      if (written <= 0)
        {
          tm_target_fail (target->path, written < 0 ? errno : 0, error);
          return FALSE;
        }
      at += written;
      length -= (gsize)written;
    }
  return TRUE;
}

/* Some file systems cannot sync a folder; the file itself is safe all the same. */
static void
sync_folder (const char *folder)
{
  const int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd < 0)
    return;
  (void)fsync (fd);
  close (fd);
}

gboolean
tm_target_take_place (TmTarget *target, GError **error)
{
  if (fsync (target->fd) != 0 || g_rename (target->beside, target->path) != 0)
    {
      tm_target_fail (target->path, errno, error);
      return FALSE;
    }
  sync_folder (target->folder);
  return TRUE;
}

void
tm_target_close (TmTarget *target, gboolean done)
{
  if (target->fd >= 0)
    close (target->fd);
  if (target->fd >= 0 && !done)
    (void)g_unlink (target->beside);
  target->fd = -1;
  g_clear_pointer (&target->folder, g_free);
  g_clear_pointer (&target->beside, g_free);
}
