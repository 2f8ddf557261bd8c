/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-page: the Report: what is missing before it can go out, the pages as they will print, the
 * characteristics as a table; its form, printing and export.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-report-preview.h"
#include "report-content.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_PAGE (tm_report_page_get_type ())
G_DECLARE_FINAL_TYPE (TmReportPage, tm_report_page, TM, REPORT_PAGE, GtkBox)

/* "go-to" (gpointer const TmGap *) asks to be taken to where something is missing; the gap's piece
 * and feature are those of the document's job. */
GtkWidget *tm_report_page_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_report_page_set_document (TmReportPage *self, TmDocument *document);

/* Puts the focus on what is missing, where something is, else on the pages. */
void tm_report_page_enter (TmReportPage *self);

/* How many things are missing, as shown; gathers first when something has changed. For tests. */
guint tm_report_page_count_gaps (TmReportPage *self);

/* Activates a row of what is missing, from 0. For tests. */
void tm_report_page_activate_gap (TmReportPage *self, guint position);

/* The pages shown, with those of the record as it is now laid out and nothing left to be done.  For tests. */
TmReportPreview *tm_report_page_preview (TmReportPage *self);
gboolean tm_report_page_is_settled (TmReportPage *self);

/* Paper, orientation, decimal mark or dates were chosen anew: the record is the same.  @page is a
 * TmReportPage. */
void tm_report_page_form_changed (GtkWidget *page);

G_END_DECLS
