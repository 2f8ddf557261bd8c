/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-form: rows of a form, each with its spoken name.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

AdwPreferencesGroup *tm_form_group (GtkBox *into, const char *title, const char *description);

AdwEntryRow *tm_form_entry (AdwPreferencesGroup *group, const char *title);

/* The same with a title that is shown as it is written: a name that a person gave. */
AdwEntryRow *tm_form_plain_entry (AdwPreferencesGroup *group, const char *title);

/* @words: NULL-terminated, translated. */
AdwComboRow *tm_form_choice (AdwPreferencesGroup *group, const char *title, const char *const *words);

/* What was typed, without spaces around it. */
char *tm_form_text (AdwEntryRow *row) G_GNUC_WARN_UNUSED_RESULT;
void tm_form_set_text (AdwEntryRow *row, const char *text);

guint tm_form_chosen (AdwComboRow *row);

/* Other words in a choice; @chosen is the index of the one selected. */
void tm_form_set_words (AdwComboRow *row, const char *const *words, guint chosen);

/* Marks the row as the one that is wrong and puts the cursor there; FALSE takes the mark away. */
void tm_form_mark_wrong (AdwEntryRow *row, gboolean wrong);

/* Marks @row as wrong and puts @line, which it takes, into *@problem.  Always returns FALSE. */
gboolean tm_form_refuse (AdwEntryRow *row, char **problem, char *line);

/* Gives @widget, which was just added, the focus once it has its place: only then does it come into sight. */
void tm_form_focus_new (GtkWidget *widget);

G_END_DECLS
