/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "fault-vfs.h"

/* A file of ours: the real one lies behind it in the same allocation. */
typedef struct {
  sqlite3_file base;
  sqlite3_file *real;
} FaultFile;

static struct {
  guint countdown; /* 0: in health */
  int rc;
  gboolean stays;
  gboolean came;
} disk;

static struct {
  guint countdown;
  gboolean came;
} memory;

static sqlite3_vfs *real_vfs;
static sqlite3_vfs fault_vfs;
static sqlite3_mem_methods real_memory;

/* SQLITE_OK, or the fault whose turn it is. */
static int
take_fault (int rc)
{
  if (disk.countdown == 0)
    return SQLITE_OK;
  if (disk.countdown > 1)
    {
      disk.countdown--;
      return SQLITE_OK;
    }
  disk.came = TRUE;
  if (!disk.stays)
    disk.countdown = 0;
  return disk.rc == SQLITE_IOERR ? rc : disk.rc;
}

static sqlite3_file *
real_file (sqlite3_file *file)
{
  return ((FaultFile *)file)->real;
}

static int
close_cb (sqlite3_file *file)
{
  return real_file (file)->pMethods->xClose (real_file (file));
}

static int
read_cb (sqlite3_file *file, void *data, int length, sqlite3_int64 at)
{
  return real_file (file)->pMethods->xRead (real_file (file), data, length, at);
}

static int
write_cb (sqlite3_file *file, const void *data, int length, sqlite3_int64 at)
{
  int rc = take_fault (SQLITE_IOERR_WRITE);

  if (rc == SQLITE_OK)
    return real_file (file)->pMethods->xWrite (real_file (file), data, length, at);
  /* a write that fails may have got half-way */
  real_file (file)->pMethods->xWrite (real_file (file), data, length / 2, at);
  return rc;
}

static int
truncate_cb (sqlite3_file *file, sqlite3_int64 size)
{
  int rc = take_fault (SQLITE_IOERR_TRUNCATE);

  return rc != SQLITE_OK ? rc : real_file (file)->pMethods->xTruncate (real_file (file), size);
}

static int
sync_cb (sqlite3_file *file, int flags)
{
  int rc = take_fault (SQLITE_IOERR_FSYNC);

  return rc != SQLITE_OK ? rc : real_file (file)->pMethods->xSync (real_file (file), flags);
}

static int
size_cb (sqlite3_file *file, sqlite3_int64 *size)
{
  return real_file (file)->pMethods->xFileSize (real_file (file), size);
}

static int
lock_cb (sqlite3_file *file, int level)
{
  return real_file (file)->pMethods->xLock (real_file (file), level);
}

static int
unlock_cb (sqlite3_file *file, int level)
{
  return real_file (file)->pMethods->xUnlock (real_file (file), level);
}

static int
check_lock_cb (sqlite3_file *file, int *held)
{
  return real_file (file)->pMethods->xCheckReservedLock (real_file (file), held);
}

static int
control_cb (sqlite3_file *file, int operation, void *data)
{
  return real_file (file)->pMethods->xFileControl (real_file (file), operation, data);
}

static int
sector_cb (sqlite3_file *file)
{
  return real_file (file)->pMethods->xSectorSize (real_file (file));
}

static int
features_cb (sqlite3_file *file)
{
  return real_file (file)->pMethods->xDeviceCharacteristics (real_file (file));
}

static int
map_shared_cb (sqlite3_file *file, int page, int size, int extend, void volatile **out)
{
  int rc = extend ? take_fault (SQLITE_IOERR_SHMSIZE) : SQLITE_OK;

  return rc != SQLITE_OK ? rc
                         : real_file (file)->pMethods->xShmMap (real_file (file), page, size, extend, out);
}

static int
lock_shared_cb (sqlite3_file *file, int offset, int n, int flags)
{
  return real_file (file)->pMethods->xShmLock (real_file (file), offset, n, flags);
}

static void
barrier_cb (sqlite3_file *file)
{
  real_file (file)->pMethods->xShmBarrier (real_file (file));
}

static int
unmap_shared_cb (sqlite3_file *file, int delete)
{
  return real_file (file)->pMethods->xShmUnmap (real_file (file), delete);
}

static const sqlite3_io_methods methods = {
  .iVersion = 2,
  .xClose = close_cb,
  .xRead = read_cb,
  .xWrite = write_cb,
  .xTruncate = truncate_cb,
  .xSync = sync_cb,
  .xFileSize = size_cb,
  .xLock = lock_cb,
  .xUnlock = unlock_cb,
  .xCheckReservedLock = check_lock_cb,
  .xFileControl = control_cb,
  .xSectorSize = sector_cb,
  .xDeviceCharacteristics = features_cb,
  .xShmMap = map_shared_cb,
  .xShmLock = lock_shared_cb,
  .xShmBarrier = barrier_cb,
  .xShmUnmap = unmap_shared_cb,
};

static int
open_cb (sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out_flags)
{
  FaultFile *ours = (FaultFile *)file;
  int rc;

  ours->base.pMethods = NULL;
  ours->real = (sqlite3_file *)(ours + 1);
  rc = real_vfs->xOpen (real_vfs, name, ours->real, flags, out_flags);
  if (rc == SQLITE_OK)
    ours->base.pMethods = &methods;
  return rc;
}

static int
delete_cb (sqlite3_vfs *vfs, const char *name, int sync)
{
  int rc = take_fault (SQLITE_IOERR_DELETE);

  return rc != SQLITE_OK ? rc : real_vfs->xDelete (real_vfs, name, sync);
}

static gboolean
take_memory_fault (void)
{
  if (memory.countdown == 0 || --memory.countdown > 0)
    return FALSE;
  memory.came = TRUE;
  return TRUE;
}

static void *
allocate_cb (int n)
{
  return take_memory_fault () ? NULL : real_memory.xMalloc (n);
}

static void *
reallocate_cb (void *block, int n)
{
  return take_memory_fault () ? NULL : real_memory.xRealloc (block, n);
}

void
fault_set_up (void)
{
  sqlite3_mem_methods ours;

  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_GETMALLOC, &real_memory), ==, SQLITE_OK);
  ours = real_memory;
  ours.xMalloc = allocate_cb;
  ours.xRealloc = reallocate_cb;
  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_MALLOC, &ours), ==, SQLITE_OK);
  real_vfs = sqlite3_vfs_find (NULL);
  fault_vfs = *real_vfs;
  fault_vfs.pNext = NULL;
  fault_vfs.zName = "fault";
  fault_vfs.szOsFile = (int)sizeof (FaultFile) + real_vfs->szOsFile;
  fault_vfs.xOpen = open_cb;
  fault_vfs.xDelete = delete_cb;
  g_assert_cmpint (sqlite3_vfs_register (&fault_vfs, 1), ==, SQLITE_OK);
}

void
fault_arm_disk (guint nth, int rc, gboolean stays)
{
  disk.countdown = nth;
  disk.rc = rc;
  disk.stays = stays;
  disk.came = FALSE;
}

void
fault_arm_memory (guint nth)
{
  memory.countdown = nth;
  memory.came = FALSE;
}

gboolean
fault_disarm (void)
{
  gboolean came = disk.came || memory.came;

  disk.countdown = memory.countdown = 0;
  disk.came = memory.came = FALSE;
  return came;
}
