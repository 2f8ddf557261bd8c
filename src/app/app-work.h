/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-work: long work on a thread of its own, with a window that shows how far it is and cancels
 * it.  The window appears only when the work takes longer than a moment.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _TmWork TmWork;

/* Runs on the worker thread: returns the result or NULL with @error.  Must not touch widgets, the
 * document, nor the window's book. */
typedef gpointer (*TmWorkFunc) (TmWork *work, gpointer data, GError **error);

/* Runs on the main loop.  @result is NULL with @error when it failed, NULL with no error when it was
 * cancelled; else it is the callee's.  @parent is the widget given at the start. */
typedef void (*TmWorkDone) (GtkWidget *parent, gpointer result, const GError *error, gpointer data);

/* @title: "Opening plate.tmjob".  @data goes to both functions and is freed with @free_data after;
 * a result that nobody took is freed with @free_result. */
void tm_work_run (GtkWidget *parent, const char *title, TmWorkFunc run, TmWorkDone done, gpointer data,
                  GDestroyNotify free_data, GDestroyNotify free_result);

/* From the worker: how far it is, 0..1; FALSE: it has been cancelled.  Has the signature of the
 * libraries' progress functions, with the work as their data. */
gboolean tm_work_progress (double fraction, gpointer work);

G_END_DECLS
