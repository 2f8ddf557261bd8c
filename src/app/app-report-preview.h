/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-preview: the pages of a report with what leads through them: sections, page number, zoom.  Its
 * buttons use the actions "report.zoom-in", "-out", "-width", "-page" of a widget around it.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-report-view.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_PREVIEW (tm_report_preview_get_type ())
G_DECLARE_FINAL_TYPE (TmReportPreview, tm_report_preview, TM, REPORT_PREVIEW, GtkBox)

GtkWidget *tm_report_preview_new (void) G_GNUC_WARN_UNUSED_RESULT;

TmReportView *tm_report_preview_view (TmReportPreview *self);
/* What leads through the pages, to stand in a row of tools; not yet in any widget. */
GtkWidget *tm_report_preview_tools (TmReportPreview *self);

/* @paper may be NULL: nothing to show. */
void tm_report_preview_set_paper (TmReportPreview *self, TmReportPaper *paper);

/* Over the pages: how far new ones are, 0..1; below zero: none are made. */
void tm_report_preview_set_progress (TmReportPreview *self, double fraction);

/* In place of the pages: why there are none; NULL: there are. */
void tm_report_preview_set_problem (TmReportPreview *self, const char *problem);
const char *tm_report_preview_problem (TmReportPreview *self);

/* Puts the cursor where a page is asked for. */
void tm_report_preview_ask_page (TmReportPreview *self);

G_END_DECLS
