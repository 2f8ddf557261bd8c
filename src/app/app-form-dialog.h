/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-form-dialog: a modal window with the rows of a form: Cancel, Save, and for what is already there
 * Remove; what is wrong is said in a line above the rows.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

typedef struct {
  GtkWindow *window;
  GtkBox *body; /* from left to right */
  GtkBox *rows; /* in it, scrolled */
  GtkLabel *problem;
  GtkWidget *save;
  GtkWidget *remove; /* hidden until it is shown */
} TmFormDialog;

/* Makes the window, not yet shown, over the one that @any_child is in; width and height in pixels. */
void tm_form_dialog_build (TmFormDialog *dialog, GtkWidget *any_child, const char *title, int width,
                           int height);

/* Puts @side to the right of the rows, both as wide as each other. */
void tm_form_dialog_add_side (TmFormDialog *dialog, GtkWidget *side);

/* Says @text in a toast of the window underneath and closes. */
void tm_form_dialog_done (TmFormDialog *dialog, const char *text);

G_END_DECLS
