/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-gaps: what is missing before the report can go out, as a list with its count.
 *
 * "activated" (gpointer const TmGap *): one of them was chosen.
 */

#pragma once

#include <gtk/gtk.h>

#include "report-content.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_GAPS (tm_report_gaps_get_type ())
G_DECLARE_FINAL_TYPE (TmReportGaps, tm_report_gaps, TM, REPORT_GAPS, GtkBox)

GtkWidget *tm_report_gaps_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @gaps must outlive its showing here; NULL: not known yet. */
void tm_report_gaps_set (TmReportGaps *self, GPtrArray *gaps);

/* "3 things are missing"; as it changes. */
GtkLabel *tm_report_gaps_title (TmReportGaps *self);

guint tm_report_gaps_count (TmReportGaps *self);
void tm_report_gaps_activate (TmReportGaps *self, guint position);

G_END_DECLS
