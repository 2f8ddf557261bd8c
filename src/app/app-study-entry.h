/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-entry: taking the readings of a gauge study, one at a time, in its random order.
 *
 * It shows which piece is next, who takes it and how far the study is, never a value taken before.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_STUDY_ENTRY (tm_study_entry_get_type ())
G_DECLARE_FINAL_TYPE (TmStudyEntry, tm_study_entry, TM, STUDY_ENTRY, GtkBox)

GtkWidget *tm_study_entry_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Both borrowed until others, or NULL, are set; the same again keeps what is typed. */
void tm_study_entry_set (TmStudyEntry *self, TmDocument *document, const TmStudy *study);

/* Puts the cursor where the reading is typed. */
void tm_study_entry_focus (TmStudyEntry *self);

/* Records what is typed, as Enter does: "" when it is recorded, else why not; borrowed. */
const char *tm_study_entry_submit (TmStudyEntry *self);

/* Takes the last reading back, as Ctrl+Z does; FALSE when there is none, or the book does not keep it. */
gboolean tm_study_entry_take_back (TmStudyEntry *self);

/* For tests. */
GtkEditable *tm_study_entry_editable (TmStudyEntry *self);
const char *tm_study_entry_who (TmStudyEntry *self);
const char *tm_study_entry_progress (TmStudyEntry *self);

G_END_DECLS
