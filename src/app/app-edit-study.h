/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-study: changes to the studies of a job.
 *
 * As in app-edit.h: each change is in the book before the function returns TRUE, and on FALSE the job is as
 * before, with one line for the person in @error.  What is handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"
#include "core-study.h"

G_BEGIN_DECLS

gboolean tm_edit_add_study (TmDocument *document, TmStudy *study, GError **error);
/* With its readings. */
gboolean tm_edit_remove_study (TmDocument *document, TmStudy *study, GError **error);

/* Puts @value, typed as @typed, into @cell. */
gboolean tm_edit_add_study_reading (TmDocument *document, const TmStudy *study, TmStudyCell cell,
                                    const TmQuantity *value, const char *typed, GError **error);
/* The reading recorded last in @study, or NULL; borrowed. */
TmStudyReading *tm_edit_last_study_reading (TmDocument *document, const TmStudy *study);
/* Takes it back: its cell is to be measured again.  FALSE without @error when there is none. */
gboolean tm_edit_take_back_study_reading (TmDocument *document, const TmStudy *study, GError **error);

/* What a method's budget held before a study was put into it. */
typedef struct {
  char *method;            /* name; NULL: nothing to undo */
  TmMethod *before;        /* with texts of the job */
  GPtrArray *lines_before; /* TmBudgetLine: its lines for people */
} TmBudgetUndo;

void tm_budget_undo_clear (TmBudgetUndo *undo);

/* Puts the repeatability and the people's part that @result found into the method's budget, in place of
 * what stood there; @undo gets the way back. */
gboolean tm_edit_put_study_into_method (TmDocument *document, const TmStudy *study,
                                        const TmStudyResult *result, TmBudgetUndo *undo, GError **error);
/* The way back; @undo is then empty. */
gboolean tm_edit_undo_study_in_method (TmDocument *document, TmBudgetUndo *undo, GError **error);

G_END_DECLS
