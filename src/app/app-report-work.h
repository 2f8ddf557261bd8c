/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-work: the long work on reports, off the main loop: gathering the content of a large
 * job, writing a workbook or a table. Works on a copy of the job out of the book.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "report-content.h"

G_BEGIN_DECLS

/* Content with the job that it borrows from; either may be NULL. */
typedef struct {
  TmJob *job;
  TmReportContent *content;
} TmReportCopy;

void tm_report_copy_clear (TmReportCopy *copy);

/* Runs on the main loop: @copy is empty when it was cancelled or failed, with @error then; what it
 * holds may be taken out of it. */
typedef void (*TmReportGathered) (GtkWidget *parent, TmReportCopy *copy, const GError *error);

void tm_report_gather (GtkWidget *parent, TmDocument *document, TmReportGathered done);

/* Runs on the main loop; on failure or cancel @path is NULL. */
typedef void (*TmReportWritten) (GtkWidget *parent, const char *path, const GError *error);

/* Writes a workbook, or a CSV table when @path ends in .csv. */
void tm_report_write (GtkWidget *parent, TmDocument *document, const char *path, TmReportWritten done);

/* What tm_report_write() writes, for @job, here and now.  FALSE with @error. */
gboolean tm_report_write_job (const TmJob *job, const char *path, gboolean (*progress) (double, gpointer),
                              gpointer data, GError **error);

G_END_DECLS
