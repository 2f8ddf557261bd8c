/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-work: writing a report to a file, off the main loop, from a copy of the job out of the book.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Runs on the main loop; on failure or cancel @path is NULL.  @warning: a line on what the file does not show
 * as it was meant, or NULL. */
typedef void (*TmReportWritten) (GtkWidget *parent, const char *path, const char *warning,
                                 const GError *error);

/* By the ending of @path: .xlsx a workbook, .pdf the pages, .qif QIF, .csv a table of the characteristics, in
 * the form that the person has chosen.  With progress and cancel; the old file or a whole new one. */
void tm_report_write (GtkWidget *parent, TmDocument *document, const char *path, TmReportWritten done);

G_END_DECLS
