/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-outcome: what a complete gauge study says: words, numbers, pictures, and putting it into the
 * method's budget.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_STUDY_OUTCOME (tm_study_outcome_get_type ())
G_DECLARE_FINAL_TYPE (TmStudyOutcome, tm_study_outcome, TM, STUDY_OUTCOME, GtkBox)

GtkWidget *tm_study_outcome_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Both borrowed until others, or NULL, are set. */
void tm_study_outcome_set (TmStudyOutcome *self, TmDocument *document, const TmStudy *study);

/* Puts the focus on what can be done with it. */
void tm_study_outcome_focus (TmStudyOutcome *self);

/* Puts it into the method's budget, and the way back (also Ctrl+Z). */
void tm_study_outcome_put (TmStudyOutcome *self);
void tm_study_outcome_undo (TmStudyOutcome *self);

/* For tests. */
const char *tm_study_outcome_headline (TmStudyOutcome *self);
const char *tm_study_outcome_words (TmStudyOutcome *self);
const char *tm_study_outcome_budget (TmStudyOutcome *self);

G_END_DECLS
