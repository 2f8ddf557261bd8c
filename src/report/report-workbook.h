/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-workbook: the first-article report as a spreadsheet workbook (.xlsx).
 */

#pragma once

#include "report-content.h"
#include "report-error.h"
#include "report-form.h"

G_BEGIN_DECLS

/* Writes @path through a temporary file beside it: the old file or a whole new one.  Of @form the words are
 * those of the first language, table heads of both; dates are shown in its form; numbers are numbers, which
 * the reader's program shows in its own; the orientation is each sheet's. */
gboolean tm_workbook_write (const TmReportContent *content, const char *path, const TmReportForm *form,
                            TmReportProgress progress, gpointer data, GError **error);

G_END_DECLS
