/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-cut-words: planned cuts and cuts of the record, put into words.  No widgets.
 *
 * Every function returns a text of the caller's own, translated, "" when there is nothing to say.
 */

#pragma once

#include "bench-cut.h"

G_BEGIN_DECLS

/* Whether the plan has a number to dial. */
gboolean tm_cut_has_dial (const TmCutAdvice *advice);

/* In large type: "0.035", or in a few words why there is nothing to dial. */
char *tm_words_cut_title (const TmCutAdvice *advice, const TmTool *tool) G_GNUC_WARN_UNUSED_RESULT;

/* Beside it, in two lines: "mm on the radius", "7 marks of 0.005". */
char *tm_words_cut_marks (const TmTool *tool, const TmFeature *feature,
                          gint64 dial) G_GNUC_WARN_UNUSED_RESULT;

/* "Turn back by more than 0.1 mm and come up from one side. Then 2 spring passes." */
char *tm_words_cut_manner (const TmCutAdvice *advice, const TmTool *tool) G_GNUC_WARN_UNUSED_RESULT;

/* What kind of cut it is, or what to do where there is none: a sentence or two. */
char *tm_words_cut_status (const TmCutAdvice *advice, const TmTool *tool,
                           const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* In two lines: "after it" or, with something @typed, "after 0.020 dialled"; then "25.008 ± 0.006 mm". */
char *tm_words_cut_predicted (const TmCutAdvice *advice, const TmFeature *feature,
                              const char *typed) G_GNUC_WARN_UNUSED_RESULT;

/* "metal gone: 0.4 % of the 1 % accepted for this place; 0.1 % is spent" */
char *tm_words_cut_risk (const TmCutAdvice *advice) G_GNUC_WARN_UNUSED_RESULT;

/* That stations are unread, which the chances say nothing of. */
char *tm_words_cut_unread (const TmCutAdvice *advice) G_GNUC_WARN_UNUSED_RESULT;

/* How the cutter has answered so far, or what is assumed of it. */
char *tm_words_cut_response (const TmCutAdvice *advice, const TmTool *tool,
                             const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "This cut answered unlike the others: …" with what to look at; "" for one that did not. */
char *tm_words_cut_unlike (const TmCutOutcome *outcome) G_GNUC_WARN_UNUSED_RESULT;

/* The same of the newest cut at the place of @bench. */
char *tm_words_last_cut_unlike (const TmBench *bench, const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* "0.068 mm came off, 0.070 mm was asked for", or that no reading has closed it. */
char *tm_words_cut_outcome (const TmCutOutcome *outcome) G_GNUC_WARN_UNUSED_RESULT;

/* "cut of 0.035 mm on the radius, 2 spring passes" */
char *tm_words_cut_row (const TmCutRow *cut) G_GNUC_WARN_UNUSED_RESULT;

/* Why a cut that was typed is asked about. */
char *tm_words_cut_question (const TmCutAdvice *tried, const char *typed) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
