/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-dialog: a modal window over the one that any_child is in; Escape closes it.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* A window with @content under a header bar with only a title and a close button. */
GtkWindow *tm_dialog_new (GtkWidget *any_child, const char *title, int width, int height, GtkWidget *content);

/* Makes @window modal over @any_child's, closed by Escape. */
void tm_dialog_attach (GtkWindow *window, GtkWidget *any_child);

/* The modal window over @window that waits for an answer, or NULL; borrowed. */
GtkWindow *tm_dialog_over (GtkWindow *window);

/* Puts the cursor of a dialog, shown or about to be, into @row, and scrolls to it once it has its place. */
void tm_dialog_start_in (GtkWidget *row);

/* A header bar with Cancel, which closes the window, and @confirm, which answers it. */
GtkWidget *tm_dialog_header_new (GtkWidget *confirm);

/* The parts of a dialog with a few rows: what it is about, the rows, what it says to what is typed. */
typedef struct {
  GtkLabel *about;
  AdwPreferencesGroup *rows;
  GtkLabel *hint;
} TmDialogForm;

/* Builds these parts into @window, under a header with @confirm; @name is what the rows are read out as. */
TmDialogForm tm_dialog_form_build (AdwWindow *window, const char *name, GtkWidget *confirm);

/* A line for a problem, hidden while @text is NULL or "". */
GtkLabel *tm_dialog_problem_new (void);
void tm_dialog_problem_set (GtkLabel *line, const char *text);

/* @keyval, in @widget or in what it holds, does @action ("window.close"). */
void tm_add_key (GtkWidget *widget, guint keyval, const char *action);

/* A spoken name for a widget that has no label of its own. */
void tm_name_widget (GtkWidget *widget, const char *name);
/* The same for the text inside an entry or entry row. */
void tm_name_entry (GtkEditable *entry, const char *name);

G_END_DECLS
