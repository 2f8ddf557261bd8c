/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-workbook: the first-article report as a spreadsheet workbook (.xlsx).
 */

#pragma once

#include "report-content.h"
#include "report-error.h"
#include "report-form.h"

G_BEGIN_DECLS

/* What the workbook says of itself. */
typedef struct {
  const char *made;   /* UTC, YYYY-MM-DDThh:mm:ssZ; NULL: the time of writing.  Equal content, form and time
                       * give equal bytes */
  const char *digest; /* of the record: SHA-256, hex, as a signature signs it; NULL: as the
                       * content knows it, else it is not told */
} TmWorkbookFacts;

/* Writes @path through a temporary file beside it: the old file or a whole new one.  Of @form the words are
 * those of the first language, table heads of both; dates are shown in its form; numbers are numbers, which
 * the reader's program shows in its own; the orientation is each sheet's.  @facts may be NULL.  @progress is
 * asked many times a second, also while the file is packed; once it has answered FALSE nothing is left
 * behind. */
gboolean tm_workbook_write (const TmReportContent *content, const char *path, const TmReportForm *form,
                            const TmWorkbookFacts *facts, TmReportProgress progress, gpointer data,
                            GError **error);

G_END_DECLS
