/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-words: what the screens say of a gauge.  All texts translated.
 */

#pragma once

#include "core-gauge.h"

G_BEGIN_DECLS

/* The kind in the person's language when it is one that the program knows, else as it was written. */
const char *tm_words_gauge_kind (const char *kind);

/* "25 … 50 mm", "up to 100 mm", "12.010 mm", "1.00 … 10.00 mm by 0.02"; "" when nothing is said. */
char *tm_words_gauge_range (const TmGauge *gauge) G_GNUC_WARN_UNUSED_RESULT;

/* "ZZ minus", "X", "plus"; "" likewise. */
char *tm_words_gauge_class (const TmGauge *gauge) G_GNUC_WARN_UNUSED_RESULT;

/* "overdue since 2 Mar 2026", "due 14 Dec 2026, in 19 days", "due 14 Mar 2027", "no due date", "found
 * bad on 1 Apr 2026", as of the day @today. */
char *tm_words_gauge_state (const TmJob *job, const TmGauge *gauge,
                            const char *today) G_GNUC_WARN_UNUSED_RESULT;

/* The shape that goes before such a state: a triangle for overdue, a diamond for soon, else "". */
const char *tm_words_due_mark (TmDue due);

/* "±0.002 mm"; "" when absent. */
char *tm_words_limit (const TmQuantity *quantity) G_GNUC_WARN_UNUSED_RESULT;

/* "+0.0012 mm", "−0.0012 mm", "0": a signed count in the unit that @like was written in. */
char *tm_words_signed (gint64 count, const TmQuantity *like) G_GNUC_WARN_UNUSED_RESULT;

/* Where a gauge's figures come from, in the person's language where the program knows it. */
const char *tm_words_gauge_source (const char *source);

/* The day of the record's clock, "YYYY-MM-DD". */
char *tm_today (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
