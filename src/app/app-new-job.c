/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-new-job.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"

gboolean
tm_new_job_from_form (TmWindow *window, TmFirstJob *form, char **problem)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_first_job_make (form, problem);
  gboolean whole, added;

  if (job == NULL)
    return FALSE;
  if (!tm_book_add_job (tm_window_book (window), job, NULL, NULL, &added, &error))
    {
      *problem = g_strdup (error->message);
      return FALSE;
    }
  tm_first_job_clear (form);
  whole = job->features->len > 0 && job->pieces->len > 0;
  tm_window_show_job (window, g_steal_pointer (&job), whole ? NULL : "job");
  return TRUE;
}

static void
begun_cb (TmFirstJob *form, GtkWindow *dialog)
{
  TmWindow *window = TM_WINDOW (gtk_window_get_transient_for (dialog));
  GtkLabel *line = g_object_get_data (G_OBJECT (dialog), "problem");
  g_autofree char *problem = NULL;

  if (tm_new_job_from_form (window, form, &problem))
    gtk_window_destroy (dialog);
  else
    tm_dialog_problem_set (line, problem);
}

void
tm_new_job_dialog_present (TmWindow *window)
{
  GtkWidget *form = tm_first_job_new ();
  GtkLabel *line = tm_dialog_problem_new ();
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWindow *dialog;

  gtk_widget_add_css_class (inner, "tm-dialog");
  gtk_box_append (GTK_BOX (inner), form);
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (line));
  dialog = tm_dialog_new (GTK_WIDGET (window), _ ("New job"), 560, -1, inner);
  g_object_set_data (G_OBJECT (dialog), "problem", line);
  g_signal_connect (form, "begun", G_CALLBACK (begun_cb), dialog);
  gtk_window_present (dialog);
}
