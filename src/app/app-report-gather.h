/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-gather: the content of a report with what only the book knows of it.
 */

#pragma once

#include "book-store.h"
#include "report-content.h"
#include "report-form.h"

G_BEGIN_DECLS

/* Of @job, a copy out of @book, on whatever thread: judged, by the template of @form, and told whether what
 * was signed still holds and whether another job has the same report identifier.  NULL with @error. */
TmReportContent *tm_report_gather (TmBook *book, const TmJob *job, const TmReportForm *form,
                                   GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
