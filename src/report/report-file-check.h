/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-file-check: is a workbook just written whole?
 *
 * The writing library keeps sheets in temporary files and does not notice when the disk under those
 * fills up: the workbook would then hold a sheet that ends in the middle.  So each finished file is
 * read back once.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Asked now and then; FALSE: stop. */
typedef struct {
  gboolean (*goes_on) (gpointer data);
  gpointer data;
} TmFileWatch;

/* TRUE when @path is a zip archive whose every XML member ends with the end of its root element.  Fails with
 * G_IO_ERROR_CANCELLED where @watch, which may be NULL, wants to stop. */
gboolean tm_file_check_workbook (const char *path, const TmFileWatch *watch, GError **error);

G_END_DECLS
