/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-lock: one writer at a time for a job file.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Waits until no other program holds the lock of the file at @path, and takes it.  A file that is
 * replaced while we wait is locked anew, so that what the other wrote is what we then read.
 * Returns: a descriptor for tm_lock_release(), or -1 where the file is not there or its file system
 * knows no locks; the work can be done all the same. */
int tm_lock_take (const char *path) G_GNUC_WARN_UNUSED_RESULT;

void tm_lock_release (int lock);

G_END_DECLS
