/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-lock.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

/* A file is written by putting a new one in its place: the lock of the old one then means nothing. */
static gboolean
is_still_at (int descriptor, const char *path)
{
  struct stat held, found;

  return fstat (descriptor, &held) == 0 && stat (path, &found) == 0 && held.st_dev == found.st_dev
         && held.st_ino == found.st_ino;
}

static gboolean
wait_for (int descriptor)
{
  while (flock (descriptor, LOCK_EX) != 0)
    if (errno != EINTR)
      return FALSE;
  return TRUE;
}

int
tm_lock_take (const char *path)
{
  for (;;)
    {
      int descriptor = g_open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0);
      gboolean locked;

      if (descriptor < 0)
        return -1;
      locked = wait_for (descriptor);
      if (locked && is_still_at (descriptor, path))
        return descriptor;
      close (descriptor);
      if (!locked)
        return -1;
    }
}

void
tm_lock_release (int lock)
{
  if (lock >= 0)
    close (lock);
}
