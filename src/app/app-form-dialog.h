/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-form-dialog: a modal window with the rows of a form: Cancel, Save, and for what is already there
 * Remove; what is wrong is said in a line above the rows.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* Saves or removes what @form is about: TRUE with what a toast says of it in @said, FALSE with @error, or
 * with the one line in @said that tells what is wrong with what was typed. */
typedef gboolean (*TmFormAct) (gpointer form, char **said, GError **error);

typedef struct {
  GtkWindow *window;
  GtkBox *body; /* from left to right */
  GtkBox *rows; /* in it, scrolled */
  GtkLabel *problem;
  GtkWidget *save;
  GtkWidget *remove; /* hidden until it is shown */
  TmFormAct on_save, on_remove;
  gpointer form;
} TmFormDialog;

/* Makes the window, not yet shown, over the one that @any_child is in; width and height in pixels. */
void tm_form_dialog_build (TmFormDialog *dialog, GtkWidget *any_child, const char *title, int width,
                           int height);

/* What its buttons do with @form, which goes with the window by @free_form; what was refused stands in the
 * line above the rows, what was done closes it.  @remove NULL: what is new has nothing to remove. */
void tm_form_dialog_act (TmFormDialog *dialog, TmFormAct save, TmFormAct remove, gpointer form,
                         GDestroyNotify free_form);

/* Enter in a row saves, as in any form: in @rows, and in a new one in @group. */
void tm_form_dialog_enter_saves (TmFormDialog *dialog, AdwEntryRow *const rows[], gsize n_rows);
AdwEntryRow *tm_form_dialog_entry (TmFormDialog *dialog, AdwPreferencesGroup *group, const char *title);

/* Shows it, with the cursor in @start. */
GtkWindow *tm_form_dialog_present (TmFormDialog *dialog, GtkWidget *start);

/* Puts @side to the right of the rows, both as wide as each other. */
void tm_form_dialog_add_side (TmFormDialog *dialog, GtkWidget *side);

/* Says @text in a toast of the window underneath and closes. */
void tm_form_dialog_done (TmFormDialog *dialog, const char *text);

G_END_DECLS
