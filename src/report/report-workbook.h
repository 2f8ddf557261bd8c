/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-workbook: the first-article report as a spreadsheet workbook (.xlsx).
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

#define TM_REPORT_ERROR (tm_report_error_quark ())
GQuark tm_report_error_quark (void);

typedef enum {
  TM_REPORT_ERROR_CANNOT_WRITE, /* folder missing, read-only, disk full */
  TM_REPORT_ERROR_TOO_LARGE,    /* more rows than a sheet holds */
  TM_REPORT_ERROR_CANCELLED,
  TM_REPORT_ERROR_FAILED,
} TmReportError;

typedef enum { TM_PAPER_A4, TM_PAPER_LETTER } TmPaper;

typedef gboolean (*TmReportProgress) (double fraction, gpointer data);

/* The paper of the user's locale: Letter where LC_PAPER or the territory says so, else A4. */
TmPaper tm_paper_of_locale (void);

/* Writes @path through a temporary file beside it: the old file or a whole new one. */
gboolean tm_workbook_write (const TmReportContent *content, const char *path, TmPaper paper,
                            TmReportProgress progress, gpointer data, GError **error);

G_END_DECLS
