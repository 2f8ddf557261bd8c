/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-cut-choices: over a planned cut: the tool that makes it, and what it is aimed at.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_CUT_CHOICES (tm_cut_choices_get_type ())
G_DECLARE_FINAL_TYPE (TmCutChoices, tm_cut_choices, TM, CUT_CHOICES, GtkBox)

/* "tool-chosen" (const char *name); "mate-chosen" (const char *serial): "" for the drawing;
 * "edit-tool" (const char *name): "" for a new one. */
GtkWidget *tm_cut_choices_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Lists the tools of the job and, where the feature has measured mates and a wanted clearance, these; shows
 * what the session has. */
void tm_cut_choices_show (TmCutChoices *self, TmDocument *document);

G_END_DECLS
