/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-layout: laying out the pages of a report on a thread, from a copy of the job out of the book,
 * while the window goes on.
 */

#pragma once

#include "app-document.h"
#include "app-report-paper.h"

G_BEGIN_DECLS

typedef struct _TmReportLayout TmReportLayout;

/* On the main loop, once: @paper, for the callee, or NULL with @error; NULL without one when it was
 * cancelled. */
typedef void (*TmReportLaidOut) (GObject *owner, TmReportPaper *paper, const GError *error);

/* @again: where only the form is another, the paper that says the same; else NULL.  @done is not called when
 * @owner is gone by then. */
TmReportLayout *tm_report_layout_begin (GObject *owner, TmDocument *document, TmReportPaper *again,
                                        TmReportLaidOut done) G_GNUC_WARN_UNUSED_RESULT;
void tm_report_layout_cancel (TmReportLayout *layout);
/* How far it is, 0..1. */
double tm_report_layout_fraction (TmReportLayout *layout);
void tm_report_layout_unref (TmReportLayout *layout);

/* The same here and now, on whatever thread: of the job @id in the book at @book_path. */
TmReportPaper *tm_report_lay_out (const char *book_path, const char *id, const TmJobForm *form,
                                  TmReportProgress progress, gpointer data,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether a thread still lays pages out, wanted or not; it comes to its end on the main loop. */
gboolean tm_report_layout_is_any (void);

G_END_DECLS
