/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-report-form: how the report's pages are asked for on the command line.
 */

#pragma once

#include "report-content.h"
#include "report-form.h"

G_BEGIN_DECLS

/* As typed. */
typedef struct {
  const char *paper;
} TmFormWords;

/* Completes @form, whose languages and orientation are typed already.  FALSE: said on standard error. */
gboolean tm_read_form (const TmFormWords *words, TmReportForm *form);

/* Writes the pages as PDF, dated now, or by SOURCE_DATE_EPOCH (reproducible-builds.org) where that is set. */
gboolean tm_write_pages (const TmReportContent *content, const TmReportForm *form, const char *path,
                         guint *n_pages, GError **error);

G_END_DECLS
