/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-line-words: what workbook and pages say of one line of the characteristics.
 */

#pragma once

#include "report-content.h"
#include "report-form.h"

G_BEGIN_DECLS

/* Digits to print the sizes with: never fewer than the verdict needs. */
guint tm_report_line_decimals (const TmReportLine *line);

/* The earliest due date of the gauges behind the result: when the chain as a whole is due.  Without
 * the date of the one that reads there is none: "". */
const char *tm_report_line_due (const TmJob *job, const TmReportLine *line);

/* Whose value the verdict rests on: of the method assigned, of all put together, of the pins. */
const char *tm_report_line_counted (const TmReportLine *line);

/* "first result 24.990 out, reworked 2026-05-04 (NC-14), then 25.010 in"; NULL where the place was not
 * reworked after it was read; free it. */
char *tm_report_line_first (const TmReportLine *line, TmDateForm dates) G_GNUC_WARN_UNUSED_RESULT;

/* The feature's own comment, the reason beside the verdict, the value that counts where it is none of the
 * readings, a bonus, and what its nonconformance says and was decided; free it. */
char *tm_report_line_comment (const TmReportLine *line) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
