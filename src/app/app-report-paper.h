/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-paper: the pages of a job's report with all that they are drawn from, as one thing that several
 * threads may hold: the preview draws from it while another is made, printing draws from it too.
 *
 * What it tells does not change once it is made.  Only drawing and reading a page's text take turns.
 */

#pragma once

#include "app-report-form.h"
#include "report-content.h"
#include "report-pages.h"

G_BEGIN_DECLS

typedef struct _TmReportPaper TmReportPaper;

/* Where a section begins. */
typedef struct {
  const char *title;
  guint page; /* from 0 */
} TmPaperSection;

/* Composes and lays out; slow for a large job: not on the main loop.  Takes @job and its @content.  NULL with
 * @error: there is no such language, or @progress has cancelled (TM_REPORT_ERROR_CANCELLED). */
TmReportPaper *tm_report_paper_new (TmJob *job, TmReportContent *content, const TmJobForm *form,
                                    TmReportProgress progress, gpointer data,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What @paper says in another form: nothing is gathered again. */
TmReportPaper *tm_report_paper_again (TmReportPaper *paper, const TmJobForm *form, TmReportProgress progress,
                                      gpointer data, GError **error) G_GNUC_WARN_UNUSED_RESULT;
TmReportPaper *tm_report_paper_ref (TmReportPaper *paper);
void tm_report_paper_unref (TmReportPaper *paper);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmReportPaper, tm_report_paper_unref)

TmReportContent *tm_report_paper_content (TmReportPaper *paper);
const TmReportForm *tm_report_paper_form (TmReportPaper *paper);
const char *tm_report_paper_title (TmReportPaper *paper);

guint tm_report_paper_n_pages (TmReportPaper *paper);
/* Of the paper, points. */
void tm_report_paper_size (TmReportPaper *paper, double *width, double *height);
/* Of one page as it is read: one that lies on its side is as wide as the paper is high. */
void tm_report_paper_page_size (TmReportPaper *paper, guint page, double *width, double *height);
/* TmPaperSection, in order; and which of them a page begins in. */
const GArray *tm_report_paper_sections (TmReportPaper *paper);
const char *tm_report_paper_section_of (TmReportPaper *paper, guint page);

/* From any thread; the unit of @cr is a point.  As the printer wants it, and as it is read. */
void tm_report_paper_draw (TmReportPaper *paper, guint page, cairo_t *cr);
void tm_report_paper_draw_upright (TmReportPaper *paper, guint page, cairo_t *cr);
/* What stands on the page, line by line; free it. */
char *tm_report_paper_text (TmReportPaper *paper, guint page) G_GNUC_WARN_UNUSED_RESULT;

/* Writes all of it as a PDF: see tm_pages_write_pdf(). */
gboolean tm_report_paper_write (TmReportPaper *paper, const char *made, const char *path,
                                TmReportProgress progress, gpointer data, GError **error);

G_END_DECLS
