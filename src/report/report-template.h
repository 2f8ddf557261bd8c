/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-template: what the shop's template makes of a report.
 */

#pragma once

#include "report-document.h"
#include "report-error.h"
#include "report-form.h"

G_BEGIN_DECLS

/* Whether the logo can be drawn; else an error (TM_REPORT_ERROR_FAILED) in one line.  Slow: it opens the
 * file.  TRUE for NULL. */
gboolean tm_report_template_check (const TmTemplate *template, GError **error);

/* The logo, ready to be drawn; NULL where there is none or it cannot be. */
TmDrawingPage *tm_report_template_logo (const TmTemplate *template) G_GNUC_WARN_UNUSED_RESULT;

/* Puts the shop's name, address, logo and colour into the document; a logo that cannot be drawn stays out. */
void tm_report_template_apply (const TmTemplate *template, TmReportDocument *document);

/* The languages that a report of that form speaks, "de" or "" for the program's own where nothing says more;
 * @codes gets one or two, borrowed.  Returns how many. */
guint tm_report_template_languages (const TmReportForm *form, const char *codes[2]);

/* Whether it states anything there; FALSE for NULL. */
gboolean tm_report_has_statements (const TmTemplate *template, TmStatementPlace place);
/* The statement as that form has it: in its first language and, where that is another text, in the second,
 * on a line of its own; free it. */
char *tm_report_statement (const TmTemplateStatement *statement,
                           const TmReportForm *form) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
