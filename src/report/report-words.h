/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-words: the translated words that a report's layouts share.
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

/* "in", "out", "too close", "not measured" in the user's language; borrowed. */
const char *tm_report_verdict_word (TmVerdict verdict);
const char *tm_report_side_word (TmSide side);
const char *tm_report_why_word (TmWhy why);
const char *tm_report_settles_word (TmSettles settles);

/* A fact's name for people, of its member name in the job file ("part_number"…). */
const char *tm_report_fact_name (const char *field);

/* "1 (Ø25 H7 bearing bore)", with "place 2" where the feature has several; free it. */
char *tm_report_feature_name (const TmFeature *feature, guint place) G_GNUC_WARN_UNUSED_RESULT;

/* The same where a long name would push away what stands around it: its texts are cut, and say so; free it.
 */
char *tm_report_feature_short_name (const TmFeature *feature, guint place) G_GNUC_WARN_UNUSED_RESULT;

/* @text, cut to @most letters with an ellipsis, and valid; free it. */
char *tm_report_shorten (const char *text, guint most) G_GNUC_WARN_UNUSED_RESULT;

/* The tags of the gauges behind a method's or gauge's name, joined: "TG-1, M-3"; free it. */
char *tm_report_gauges_of (const TmJob *job, const char *method_name) G_GNUC_WARN_UNUSED_RESULT;

/* The decision rule of @job in one or two sentences; free it. */
char *tm_report_rule (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* Every serial number of a few pieces; of many, the first and the last; free it. */
char *tm_report_pieces (const TmReportContent *content) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
