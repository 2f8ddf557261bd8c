/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-words: a gauge study in sentences that need no statistics. No widgets.
 *
 * Every function returns a text of the caller's own, translated.
 */

#pragma once

#include "core-study.h"

G_BEGIN_DECLS

/* "25.4 % of the band" in the list: how far it is, or what came out. */
char *tm_words_study_state (const TmJob *job, const TmStudy *study) G_GNUC_WARN_UNUSED_RESULT;

/* "bore micrometer on 1 · Ø25 H7; pieces 10, people 3, repeats 3" */
char *tm_words_study_plan (const TmJob *job, const TmStudy *study) G_GNUC_WARN_UNUSED_RESULT;

/* "AB, Anna Berg": a person of the study by initials, and by name where the job knows it. */
char *tm_words_study_person (const TmJob *job, const char *initials) G_GNUC_WARN_UNUSED_RESULT;

/* The one sentence that counts: "The gauge eats 27 % of the band." */
char *tm_words_study_headline (const TmJob *job, const TmStudy *study,
                               const TmStudyResult *result) G_GNUC_WARN_UNUSED_RESULT;

/* What it means, a sentence a line. */
char *tm_words_study_result (const TmJob *job, const TmStudy *study,
                             const TmStudyResult *result) G_GNUC_WARN_UNUSED_RESULT;

/* What putting it into the method would change, or has changed: the method's repeatability and its line
 * for people, old and new. */
char *tm_words_study_budget (TmJob *job, const TmStudy *study,
                             const TmStudyResult *result) G_GNUC_WARN_UNUSED_RESULT;

/* TRUE while the budget of the method holds what this study found. */
gboolean tm_study_is_in_method (const TmJob *job, const TmStudy *study);

/* Two methods on the same pieces, a sentence a line; @unit is that of @paired. */
char *tm_words_paired (const TmPaired *paired, const char *method_a, const char *method_b,
                       TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
