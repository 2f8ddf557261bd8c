/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-view: the gauge studies of a job: the list, and beside it the chosen one, to be taken or
 * taken; and two methods compared on the same pieces.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-paired-panel.h"
#include "app-study-entry.h"
#include "app-study-outcome.h"

G_BEGIN_DECLS

#define TM_TYPE_STUDY_VIEW (tm_study_view_get_type ())
G_DECLARE_FINAL_TYPE (TmStudyView, tm_study_view, TM, STUDY_VIEW, GtkBox)

GtkWidget *tm_study_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_study_view_set_document (TmStudyView *self, TmDocument *document);

/* Puts the focus where the view is best entered. */
void tm_study_view_enter (TmStudyView *self);

/* Shows the study called @name, when there is one. */
void tm_study_view_choose (TmStudyView *self, const char *name);

/* "empty", "entry", "outcome" or "paired", and the widgets of these pages; for tests. */
const char *tm_study_view_page (TmStudyView *self);
TmStudyEntry *tm_study_view_entry (TmStudyView *self);
TmStudyOutcome *tm_study_view_outcome (TmStudyView *self);
TmPairedPanel *tm_study_view_paired (TmStudyView *self);

G_END_DECLS
