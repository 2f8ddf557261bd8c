/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-evidence-words: several methods at one station, put together, in words.  No widgets.
 *
 * Every function returns a text of the caller's own, translated, "" when there is nothing to say.
 */

#pragma once

#include "core-combine.h"

G_BEGIN_DECLS

/* "0.7495 ± 0.0020 in": @reference + @size, with the digits that its @half width gives sense to. */
char *tm_words_size_pair (const TmFeature *feature, gint64 reference, double size,
                          double half) G_GNUC_WARN_UNUSED_RESULT;

/* For each method its name, and under it "0.7495 ± 0.0020 in: cannot settle this band". */
char *tm_words_methods (const TmCombined *combined, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "together 0.7491 ± 0.0003 in", and who disagrees. */
char *tm_words_together (const TmCombined *combined, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "24.9985 mm read, 24.9979 mm at 20 °C", for the deciding station of a judgement that was corrected. */
char *tm_words_corrected (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* Which figures of the method's budget nobody has measured here: "assumed: transfer feel TG-1". */
char *tm_words_assumed (const TmJob *job, const TmFeature *feature,
                        const char *method_name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
