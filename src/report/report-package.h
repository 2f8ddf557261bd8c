/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-package: the first-article report as a document, to be laid out by report-pages.
 */

#pragma once

#include "report-content.h"
#include "report-document.h"
#include "report-error.h"
#include "report-form.h"
#include "report-pages.h"

G_BEGIN_DECLS

/* What @content says, in the languages and forms of @form (see tm_report_form_check()).  @content and its job
 * must outlive the document: its pictures are drawn from them.  NULL when @progress (may be NULL) cancels. */
TmReportDocument *tm_report_package_new (const TmReportContent *content, const TmReportForm *form,
                                         TmReportProgress progress, gpointer data) G_GNUC_WARN_UNUSED_RESULT;

/* What whoever only wants the PDF is told of it. */
typedef struct {
  guint n_pages;
  char *missing_glyphs; /* of tm_report_missing_glyphs(), or NULL: owned by whoever asked */
} TmPackageMade;

/* Document, pages and file in one step, for whoever only wants the PDF.  @made: YYYY-MM-DDThh:mm:ssZ;
 * @told may be NULL, and is left alone on failure. */
gboolean tm_report_package_write (const TmReportContent *content, const TmReportForm *form, const char *made,
                                  const char *path, TmPackageMade *told, TmReportProgress progress,
                                  gpointer data, GError **error);

/* What the PDF says of itself, from the job, whose language it is said to be in; texts are borrowed from it.
 */
TmPdfFacts tm_report_package_facts (const TmJob *job, const char *made);

G_END_DECLS
