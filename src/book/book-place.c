/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-place: what kind of folder a book lies in.
 */

#include "book-private.h"

#include <fcntl.h>
#include <linux/magic.h>
#include <sys/vfs.h>
#include <unistd.h>

/* Values of statfs(2) that <linux/magic.h> does not hold in every version. */
#define MAGIC_SMB2 0xfe534d42u
#define MAGIC_CIFS 0xff534d42u
#define MAGIC_9P   0x01021997u
#define MAGIC_CEPH 0x00c36400u
#define MAGIC_FUSE 0x65735546u
#define MAGIC_VBOX 0x786f4256u
#define MAGIC_GFS2 0x01161970u
#define MAGIC_OCFS 0x7461636fu

gboolean
tm_place_magic_is_network (guint32 magic)
{
  static const guint32 network[]
      = { NFS_SUPER_MAGIC, SMB_SUPER_MAGIC, MAGIC_SMB2,       MAGIC_CIFS,  MAGIC_9P,
          MAGIC_CEPH,      MAGIC_FUSE,      MAGIC_VBOX,       MAGIC_GFS2,  MAGIC_OCFS,
          AFS_SUPER_MAGIC, NCP_SUPER_MAGIC, CODA_SUPER_MAGIC, AFS_FS_MAGIC };

  for (gsize i = 0; i < G_N_ELEMENTS (network); i++)
    {
      if (network[i] == magic)
        return TRUE;
    }
  return FALSE;
}

gboolean
tm_place_is_network (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  struct statfs facts;

  return statfs (folder, &facts) == 0 && tm_place_magic_is_network ((guint32)facts.f_type);
}

gboolean
tm_place_is_writable (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  return access (folder, W_OK | X_OK) == 0 && (access (path, F_OK) != 0 || access (path, W_OK) == 0);
}

void
tm_place_sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

  if (fd < 0)
    return;
  fsync (fd);
  close (fd);
}
