/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-cut-bar: in the place of the reading entry while a cut is planned: the number to dial with its chances,
 * an entry for another number, and what was done, to be recorded.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-cut-choices.h"
#include "app-document.h"
#include "bench-cut.h"

G_BEGIN_DECLS

#define TM_TYPE_CUT_BAR (tm_cut_bar_get_type ())
G_DECLARE_FINAL_TYPE (TmCutBar, tm_cut_bar, TM, CUT_BAR, GtkBox)

/* "record" (): Enter in the entry or the note; "tried" (): another number stands in the entry, or none. */
GtkWidget *tm_cut_bar_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Plans anew for the present place of the document's session.  At another place what was typed for the old
 * one goes. */
void tm_cut_bar_show (TmCutBar *self, TmDocument *document);

/* The job is closed. */
void tm_cut_bar_drop_document (TmCutBar *self);

/* NULL while no job is shown.  What is to be drawn: of the number in the entry, else of the plan, with or
 * without a number. */
const TmCutAdvice *tm_cut_bar_advice (TmCutBar *self);

/* What was typed; where nothing was, the planned number goes into the entry first, to be seen, and "" is
 * returned.  Borrowed. */
const char *tm_cut_bar_text (TmCutBar *self);
/* FALSE just after that: an Enter that bounces, or is held, is no answer to what was shown. */
gboolean tm_cut_bar_is_settled (TmCutBar *self);
/* Whether anything is typed, in the entry or as a note. */
gboolean tm_cut_bar_has_text (TmCutBar *self);
guint tm_cut_bar_passes (TmCutBar *self);
const char *tm_cut_bar_note (TmCutBar *self);

/* Puts a number into the entry, as a drag does. */
void tm_cut_bar_set_dial (TmCutBar *self, gint64 dial);

/* A line under the entry: a refusal or a question; "" takes it away. */
void tm_cut_bar_say (TmCutBar *self, const char *text, gboolean asks);

/* After a cut was recorded. */
void tm_cut_bar_clear (TmCutBar *self);

void tm_cut_bar_focus (TmCutBar *self);

TmCutChoices *tm_cut_bar_choices (TmCutBar *self);

/* For tests. */
GtkWidget *tm_cut_bar_entry (TmCutBar *self);

G_END_DECLS
