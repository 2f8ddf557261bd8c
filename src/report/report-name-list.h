/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-name-list: many names within a sentence: "3–7, 9 and 12".
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* The serials of @pieces (const TmPiece *), in their order.  Three or more that count up by one are told as
 * a range; after a few the rest is counted: "1, 3, 5, 7, 9, 11 … and 12 more pieces". */
char *tm_report_serials (const GPtrArray *pieces) G_GNUC_WARN_UNUSED_RESULT;

/* Numbers of places (guint), likewise. */
char *tm_report_places (const GArray *places) G_GNUC_WARN_UNUSED_RESULT;

/* @names (const char *), each as it is: two stations that look like neighbours need not be any. */
char *tm_report_names (const GPtrArray *names) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
