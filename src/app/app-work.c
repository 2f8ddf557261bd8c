/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-work.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

/* Work shorter than this shows no window. */
#define SHOW_AFTER_MS 400
#define REFRESH_MS    80

struct _TmWork {
  GtkWidget *parent;
  TmWorkFunc run;
  TmWorkDone done;
  gpointer data;
  GDestroyNotify free_data;
  GDestroyNotify free_result;

  GApplication *application; /* does not end before the work has; or NULL */
  GCancellable *cancellable;
  gint permille; /* atomic: written by the worker */

  char *title;
  GtkWidget *window;
  GtkWidget *bar;
  guint show_id;
  guint refresh_id;
};

static void
free_work (TmWork *work)
{
  if (work->free_data != NULL)
    work->free_data (work->data);
  if (work->application != NULL)
    g_application_release (work->application);
  g_clear_object (&work->application);
  g_clear_object (&work->parent);
  g_clear_object (&work->cancellable);
  g_free (work->title);
  g_free (work);
}

gboolean
tm_work_progress (double fraction, gpointer data)
{
  TmWork *work = data;

  g_atomic_int_set (&work->permille, (gint)(CLAMP (fraction, 0.0, 1.0) * 1000.0));
  return !g_cancellable_is_cancelled (work->cancellable);
}

static gboolean
refresh_cb (gpointer data)
{
  TmWork *work = data;
  gint permille = g_atomic_int_get (&work->permille);

  if (permille > 0)
    gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (work->bar), permille / 1000.0);
  else
    gtk_progress_bar_pulse (GTK_PROGRESS_BAR (work->bar));
  return G_SOURCE_CONTINUE;
}

static void
cancel_cb (GtkWidget *button, TmWork *work)
{
  g_cancellable_cancel (work->cancellable);
  gtk_widget_set_sensitive (button, FALSE);
}

/* Closing the window is the same as cancelling; it goes away when the worker has let go. */
static gboolean
close_request_cb (GtkWindow *window, TmWork *work)
{
  g_cancellable_cancel (work->cancellable);
  return TRUE;
}

static GtkWidget *
build_content (TmWork *work)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *label = gtk_label_new (work->title);
  GtkWidget *cancel = gtk_button_new_with_mnemonic (_ ("_Cancel"));

  work->bar = gtk_progress_bar_new ();
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 48);
  gtk_accessible_update_property (GTK_ACCESSIBLE (work->bar), GTK_ACCESSIBLE_PROPERTY_LABEL, work->title, -1);
  gtk_widget_set_halign (cancel, GTK_ALIGN_CENTER);
  g_signal_connect (cancel, "clicked", G_CALLBACK (cancel_cb), work);
  gtk_widget_add_css_class (box, "tm-work");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), work->bar);
  gtk_box_append (GTK_BOX (box), cancel);
  return box;
}

/* A parent whose window has been closed meanwhile is not to be told anything. */
static gboolean
is_open (GtkWidget *parent)
{
  GtkRoot *root = gtk_widget_get_root (parent);

  return root != NULL && gtk_widget_get_realized (GTK_WIDGET (root));
}

static gboolean
show_cb (gpointer data)
{
  TmWork *work = data;
  GtkRoot *root = gtk_widget_get_root (work->parent);

  work->show_id = 0;
  work->window = adw_window_new ();
  gtk_window_set_modal (GTK_WINDOW (work->window), TRUE);
  gtk_window_set_resizable (GTK_WINDOW (work->window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (work->window), 420, -1);
  gtk_window_set_title (GTK_WINDOW (work->window), work->title);
  if (GTK_IS_WINDOW (root) && is_open (work->parent))
    gtk_window_set_transient_for (GTK_WINDOW (work->window), GTK_WINDOW (root));
  adw_window_set_content (ADW_WINDOW (work->window), build_content (work));
  g_signal_connect (work->window, "close-request", G_CALLBACK (close_request_cb), work);
  work->refresh_id = g_timeout_add (REFRESH_MS, refresh_cb, work);
  gtk_window_present (GTK_WINDOW (work->window));
  return G_SOURCE_REMOVE;
}

static void
take_window_away (TmWork *work)
{
  g_clear_handle_id (&work->show_id, g_source_remove);
  g_clear_handle_id (&work->refresh_id, g_source_remove);
  if (work->window != NULL)
    gtk_window_destroy (GTK_WINDOW (work->window));
  work->window = NULL;
}

static void
finished_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  TmWork *work = data;
  g_autoptr (GError) error = NULL;
  gpointer value = g_task_propagate_pointer (G_TASK (result), &error);
  gboolean cancelled = g_cancellable_is_cancelled (work->cancellable) && error != NULL;

  take_window_away (work);
  if (is_open (work->parent))
    work->done (work->parent, value, cancelled ? NULL : error, work->data);
  else if (value != NULL && work->free_result != NULL)
    work->free_result (value);
  free_work (work);
}

static void
run_in_thread_cb (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  TmWork *work = task_data;
  GError *error = NULL;
  gpointer value = work->run (work, work->data, &error);

  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, value, work->free_result);
}

void
tm_work_run (GtkWidget *parent, const char *title, TmWorkFunc run, TmWorkDone done, gpointer data,
             GDestroyNotify free_data, GDestroyNotify free_result)
{
  g_autoptr (GTask) task = NULL;
  TmWork *work = g_new0 (TmWork, 1);

  work->parent = g_object_ref (parent);
  work->run = run;
  work->done = done;
  work->data = data;
  work->free_data = free_data;
  work->free_result = free_result;
  work->title = g_strdup (title);
  work->cancellable = g_cancellable_new ();
  work->show_id = g_timeout_add (SHOW_AFTER_MS, show_cb, work);
  /* A file that is half written when the window closes is written to its end. */
  g_set_object (&work->application, g_application_get_default ());
  if (work->application != NULL)
    g_application_hold (work->application);

  /* The cancellable is not the task's: work that finished although it was cancelled counts. */
  task = g_task_new (NULL, NULL, finished_cb, work);
  g_task_set_task_data (task, work, NULL);
  g_task_run_in_thread (task, run_in_thread_cb);
}
