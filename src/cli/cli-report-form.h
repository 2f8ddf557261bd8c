/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-report-form: how the report's pages are asked for on the command line.
 */

#pragma once

#include "report-content.h"
#include "report-form.h"
#include "report-package.h"

G_BEGIN_DECLS

/* As typed. */
typedef struct {
  const char *paper;
} TmFormWords;

/* Completes @form, whose languages and orientation are typed already.  FALSE: said on standard error. */
gboolean tm_read_form (const TmFormWords *words, TmReportForm *form);

/* The time that a report is dated by: now, or SOURCE_DATE_EPOCH (reproducible-builds.org) where that is set;
 * free it. */
char *tm_report_now (void) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the pages as PDF, dated by tm_report_now(); @told as of tm_report_package_write(). */
gboolean tm_write_pages (const TmReportContent *content, const TmReportForm *form, const char *path,
                         TmPackageMade *told, GError **error);

G_END_DECLS
