/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-gaps: finds what is missing before a report can go out.
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

/* Fills content->gaps from its job and lines, in the order of TmGapKind's subjects: the job, then
 * the lines, then the gauges and methods. */
void tm_report_find_gaps (TmReportContent *content);

/* Adds what the content's template requires and the job does not say. */
void tm_report_find_field_gaps (TmReportContent *content);

/* Makes one of those gaps that tell the same of several pieces, places or stations; it stands where the first
 * of them stood.  @gaps must be of lines, piece by piece; it frees with tm_gap_free(). */
void tm_report_join_gaps (GPtrArray *gaps);

void tm_gap_free (TmGap *gap);

/* Calls @each with each gauge tag that @reading was taken with: those of its method, or the tag it
 * names; the feature's method when it names none. */
typedef void (*TmTagFunc) (const char *tag, const TmReading *reading, gpointer data);
void tm_report_each_tag (const TmJob *job, const TmReading *reading, TmTagFunc each, gpointer data);

G_END_DECLS
