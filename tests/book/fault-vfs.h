/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * fault-vfs: a disk, and a memory, that fail when told to.
 *
 * The disk stands between SQLite and the real one and counts what would change a file: writes,
 * truncations, syncs, deletions and growth of the shared index.
 */

#pragma once

#include <glib.h>
#include <sqlite3.h>

G_BEGIN_DECLS

/* Before anything else is done with SQLite. */
void fault_set_up (void);

/* From now on the @nth change of a file (from 1) fails with @rc, and when @stays every one after. */
void fault_arm_disk (guint nth, int rc, gboolean stays);
/* From now on the @nth allocation of SQLite (from 1) fails, once. */
void fault_arm_memory (guint nth);
/* Back to health.  Returns: whether the fault came. */
gboolean fault_disarm (void);

G_END_DECLS
