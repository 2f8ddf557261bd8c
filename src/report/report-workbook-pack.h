/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-workbook-pack: turns the sheets of a workbook into its file.
 *
 * The writing library packs a file in one call that cannot be interrupted.  It is made on a thread of its
 * own, so that the caller can go on being asked, and can leave at once.
 */

#pragma once

#include <xlsxwriter.h>

#include "report-error.h"

G_BEGIN_DECLS

/* Asked while the file grows to @bytes; FALSE: leave. */
typedef gboolean (*TmPackWatch) (gsize bytes, gpointer data);

typedef enum {
  TM_PACKED,
  TM_PACK_FAILED, /* the status says why */
  TM_PACK_LEFT,   /* @watch wanted to; the rest is cleared away behind the caller */
} TmPackEnd;

/* Takes @book in any case.  @path: the file that it writes, in a folder of its own: after TM_PACK_LEFT both
 * are gone, and cannot come back.  @watch is called on the caller's thread. */
TmPackEnd tm_workbook_pack (lxw_workbook *book, const char *path, TmPackWatch watch, gpointer data,
                            lxw_error *status);

/* Frees a workbook that is not packed, behind the caller: a large one takes a while. */
void tm_workbook_drop (lxw_workbook *book);

G_END_DECLS
