/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-target: the file that a report becomes.  It grows beside its place and takes it in one step: the old
 * file or a whole new one.
 */

#pragma once

#include "report-error.h"

G_BEGIN_DECLS

typedef struct {
  const char *path;
  char *folder;
  char *beside;
  int fd;
} TmTarget;

#define TM_TARGET_INIT \
  {                    \
    .fd = -1           \
  }

/* @path is borrowed. */
gboolean tm_target_open (TmTarget *target, const char *path, GError **error);
gboolean tm_target_write (TmTarget *target, const void *bytes, gsize length, GError **error);
/* Has it on the disk, and moves it to its place. */
gboolean tm_target_take_place (TmTarget *target, GError **error);
/* Also after a failure; unless it @done took its place, nothing stays. */
void tm_target_close (TmTarget *target, gboolean done);

/* @code: errno. */
void tm_target_fail (const char *path, int code, GError **error);

G_END_DECLS
