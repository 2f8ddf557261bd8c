/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-sign: at the head of the Report page: whether the report is signed, whether what was signed is
 * still what the record says, each signature, and the way to sign.
 *
 *   "checked" ()  a thread has found out what tm_report_sign_complete() hands over
 *
 * Whether a signature holds takes the digest of the whole record, which a thread makes of a copy out of the
 * book, and only while the page is looked at.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "report-content.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_SIGN (tm_report_sign_get_type ())
G_DECLARE_FINAL_TYPE (TmReportSign, tm_report_sign, TM, REPORT_SIGN, GtkBox)

GtkWidget *tm_report_sign_new (void);

/* Call it before connecting to the document: what changed is then no longer known when others hear of it. */
void tm_report_sign_set_document (TmReportSign *self, TmDocument *document);

/* While @looked_at what has changed is found out: the page is in sight, though this may be folded away. */
void tm_report_sign_set_looked_at (TmReportSign *self, gboolean looked_at);

/* Hands @content what it cannot know of itself, as far as it is known: the digest of the record, and another
 * job with the same report identifier. */
void tm_report_sign_complete (TmReportSign *self, TmReportContent *content);

/* What the action "report.sign" does: reads what is signed, and asks. */
void tm_report_sign_begin (TmReportSign *self);

G_END_DECLS
