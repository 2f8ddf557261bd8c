/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-reading-words: what the readings of a place prove, put into sentences for the Bench. No widgets.
 *
 * Every function returns a text of the caller's own, translated, "" when there is nothing to say.
 */

#pragma once

#include "bench-session.h"

G_BEGIN_DECLS

/* In very large type: "Too close", "In", "Out – metal left", "Not measured". */
char *tm_words_verdict (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* Under it, where: "to call at bottom 12", "at all 4 stations", "3 of 4 stations read". */
char *tm_words_where (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* "25.018 ± 0.004 mm"; "25.018 mm" when the uncertainty is unknown; "" when not measured. */
char *tm_words_size (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* "93 % likely in, all stations", or why there is no likelihood. */
char *tm_words_chance (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* Taper, spread of diameters, bonus, what the gauge cannot see: a line each. */
char *tm_words_form (const TmJob *job, const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* The gauge that reads: its kind and tag, due date, how well it settles this band: a line each.
 * @method_name names a method or a bare gauge; @today is YYYY-MM-DD. */
char *tm_words_gauge (const TmJob *job, const TmFeature *feature, const char *method_name,
                      const char *today) G_GNUC_WARN_UNUSED_RESULT;

/* What to do next: one or two short sentences. */
char *tm_words_advice (const TmAdvice *advice, const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* The caution that goes with the advice (design: Cautions). */
char *tm_words_caution (const TmAdvice *advice) G_GNUC_WARN_UNUSED_RESULT;

/* The state word of a feature on a piece in the list: "in", "metal left", "too close", "3 of 4",
 * "not due", "—". @n_read of @n_due places or stations have a reading. */
char *tm_words_state (TmVerdict verdict, TmSide side, gboolean due, guint n_read,
                      guint n_due) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
