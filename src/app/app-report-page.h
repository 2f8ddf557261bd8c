/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-page: the Report: what is missing before it can go out, the characteristics as they
 * will stand in it, and the export.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "report-content.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_PAGE (tm_report_page_get_type ())
G_DECLARE_FINAL_TYPE (TmReportPage, tm_report_page, TM, REPORT_PAGE, GtkBox)

/* "go-to" (gpointer const TmGap *) asks to be taken to where something is missing; the gap's piece
 * and feature are those of the document's job. */
GtkWidget *tm_report_page_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_report_page_set_document (TmReportPage *self, TmDocument *document);

/* How many things are missing, as shown; gathers first when something has changed. For tests. */
guint tm_report_page_count_gaps (TmReportPage *self);

/* Activates a row of what is missing, from 0. For tests. */
void tm_report_page_activate_gap (TmReportPage *self, guint position);

G_END_DECLS
