/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-suitability-words: how well a method settles a feature, in words that need no statistics.  No
 * widgets.  Every text is translated; a char * is the caller's own.
 */

#pragma once

#include "core-suitability.h"

G_BEGIN_DECLS

/* "settles it", "settles most readings", "settles few readings", "cannot settle it", "not known". */
const char *tm_words_settles (TmSettles settles);

/* How the method assigned to @feature does: as tm_words_suitability_word(), or "no method", "not in the
 * register", "pass or fail", "no limits". */
const char *tm_words_assigned (const TmJob *job, const TmFeature *feature);

/* TRUE when the method assigned to @feature can never prove it. */
gboolean tm_assigned_cannot (const TmJob *job, const TmFeature *feature);

/* "2 features cannot be proven with their method. 1 has no method."  "" for a job without features. */
char *tm_words_suitability_summary (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* How a method would do: as tm_words_settles(), or "not made for it", "does not reach it", "one limit
 * only". */
const char *tm_words_suitability_word (const TmFeature *feature, const TmSuitability *row);
/* It can never prove the feature: it does not fit or reach it, or is too coarse. */
gboolean tm_suitability_cannot (const TmSuitability *row);

/* What speaks against a method, or must be known of it: "out of its range, overdue, rests on assumed
 * figures"; "" for nothing. */
char *tm_words_suitability_remarks (const TmSuitability *row) G_GNUC_WARN_UNUSED_RESULT;

/* A row as one sentence. */
char *tm_words_suitability (const TmFeature *feature, const TmSuitability *row,
                            gboolean assigned) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
