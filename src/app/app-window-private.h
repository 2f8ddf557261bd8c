/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-window-private: what the files of the window share.
 */

#pragma once

#include "app-home.h"
#include "app-window.h"

G_BEGIN_DECLS

struct _TmWindow {
  AdwApplicationWindow parent_instance;

  char *book_path;
  TmBook *book;         /* NULL when it could not be opened */
  TmDocument *document; /* NULL on Home */

  AdwToastOverlay *toasts;
  AdwToast *toast; /* shown now, or NULL */
  gint64 toast_at; /* when it was first shown, steady microseconds */
  GtkStack *title_stack;
  GtkBox *page_switch;
  GtkWidget *home_tools;
  GtkWidget *job_tools;
  GtkLabel *job_title;
  GtkWidget *piece_tools;
  GtkDropDown *piece_drop;
  GtkRevealer *error_revealer;
  GtkLabel *error_label;
  GtkStack *stack;
  TmHome *home;
  GtkStack *pages;

  char *page;     /* name of the page shown */
  gboolean fresh; /* the job was just opened: its page has not been entered */
  GtkFileChooserNative *chooser;
};

/* app-window-actions.c */
void tm_window_install_actions (GtkWidgetClass *klass);

/* app-window-pieces.c: the piece selector. */
void tm_window_setup_pieces (TmWindow *self);
void tm_window_refresh_pieces (TmWindow *self);
void tm_window_follow_piece (TmWindow *self);
void tm_window_step_piece (TmWindow *self, int step);

/* app-window.c */
void tm_window_show_page (TmWindow *self, const char *name);
void tm_window_open_book (TmWindow *self);
void tm_window_go_home (TmWindow *self);
void tm_window_put_error (TmWindow *self, const char *text);

G_END_DECLS
