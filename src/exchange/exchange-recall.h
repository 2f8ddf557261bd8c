/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-recall: what a gauge found bad has touched, as a table for a spreadsheet.
 */

#pragma once

#include "core-recall.h"

G_BEGIN_DECLS

/* The line of headings, to begin a table with (RFC 4180, UTF-8). */
void tm_recall_table_begin (GString *out);

/* A line for each of @rows (TmRecallRow, as tm_recall() gives them) of @job.  Text that a spreadsheet
 * would take for a formula is written so that it stays text. */
void tm_recall_table_add (GString *out, const TmJob *job, const GArray *rows);

/* What was read, in the feature's unit and with its digits: "25.012", "pass", "0.05 / -0.02" (the offsets
 * of a position), "12.006 X minus: went". */
char *tm_recall_value_text (const TmRecallRow *row) G_GNUC_WARN_UNUSED_RESULT;

/* The method that the reading names or its feature's; the set of a trial. */
const char *tm_recall_method_text (const TmRecallRow *row);

G_END_DECLS
