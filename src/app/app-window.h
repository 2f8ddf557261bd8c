/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-window: the one window: Home, and the pages of the job that is open.  Owns the book.
 *
 * Actions ("win."): home, page(s), new-job, open-file, import(s: path), open-job(s: id),
 * export-job, new-revision, add-piece, next-piece, previous-piece, show-toast(s), show-error(s).
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_WINDOW (tm_window_get_type ())
G_DECLARE_FINAL_TYPE (TmWindow, tm_window, TM, WINDOW, AdwApplicationWindow)

/* Opens the book at @book_path, making it when it is missing; when that fails Home says why.
 * @application may be NULL. */
TmWindow *tm_window_new (GtkApplication *application, const char *book_path);

/* The open job, or NULL on Home. */
TmDocument *tm_window_document (TmWindow *self);

/* NULL when it could not be opened. */
TmBook *tm_window_book (TmWindow *self);

/* Adds the job file at @path to the book and shows the job. */
void tm_window_open_file (TmWindow *self, const char *path);

/* Shows the job of the book with this id. */
void tm_window_open_job (TmWindow *self, const char *id);

/* Shows @job, which is in the book; takes ownership.  @page: a page's name, or NULL for the one
 * that has the next thing to do. */
void tm_window_show_job (TmWindow *self, TmJob *job, const char *page);

G_END_DECLS
