/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-gaps: finds what is missing before a report can go out.
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

/* Fills content->gaps from its job and lines, in the order of TmGapKind's subjects: the job, then
 * the lines, then the gauges. */
void tm_report_find_gaps (TmReportContent *content);

/* Calls @each with each gauge tag that @reading was taken with: those of its method, or the tag it
 * names; the feature's method when it names none. */
typedef void (*TmTagFunc) (const char *tag, const TmReading *reading, gpointer data);
void tm_report_each_tag (const TmJob *job, const TmReading *reading, TmTagFunc each, gpointer data);

/* TRUE for a gauge without a scale of its own (no resolution: a telescoping gauge, a calliper set to
 * a micrometer): the gauge that reads it carries the calibration. */
gboolean tm_gauge_has_no_scale (const TmGauge *gauge);

/* TRUE when the calibration of @gauge covers the day of @at (UTC text, or "": any day up to the due
 * date). */
gboolean tm_gauge_covers (const TmGauge *gauge, const char *at);

G_END_DECLS
