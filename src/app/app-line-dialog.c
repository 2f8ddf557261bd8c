/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-line-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit.h"
#include "app-form-dialog.h"
#include "app-line-form.h"

typedef struct {
  TmDocument *document;
  char *method;
  TmBudgetLine *line; /* of the job, or NULL; only compared until it is found there again */
  TmFormDialog window;
  TmLineForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog->method);
  g_free (dialog);
}

static TmBudgetLine *
find_line (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  return g_ptr_array_find (job->budget_lines, dialog->line, NULL) ? dialog->line : NULL;
}

static void
save_cb (Dialog *dialog)
{
  TmJob *job = tm_document_job (dialog->document);
  TmBudgetLine *old = find_line (dialog);
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmBudgetLine *line = tm_line_form_read (&dialog->form, job, dialog->method, old, &problem);

  if (line == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  text = g_strdup_printf (_ ("Saved the line %s"), line->name);
  if (tm_edit_put_budget_line (dialog->document, old, line, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
remove_cb (Dialog *dialog)
{
  TmBudgetLine *old = find_line (dialog);
  g_autofree char *text = g_strdup_printf (_ ("Removed the line %s"), old != NULL ? old->name : "");
  g_autoptr (GError) error = NULL;

  if (old == NULL || tm_edit_remove_budget_line (dialog->document, old, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

/* Enter in a row saves, as in any form. */
static void
connect (Dialog *dialog)
{
  AdwEntryRow *rows[] = { dialog->form.name, dialog->form.value, dialog->form.divisor, dialog->form.dof,
                          dialog->form.source };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
}

GtkWindow *
tm_line_dialog_present (GtkWidget *any_child, TmDocument *document, const char *method, TmBudgetLine *line)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = g_strdup_printf (_ ("Budget line of %s"), method);

  dialog->document = g_object_ref (document);
  dialog->method = g_strdup (method);
  dialog->line = line;
  tm_form_dialog_build (&dialog->window, any_child, title, 540, 640);
  tm_line_form_build (&dialog->form, dialog->window.rows);
  tm_line_form_fill (&dialog->form, tm_document_job (document), line);
  gtk_widget_set_visible (dialog->window.remove, line != NULL);
  connect (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->form.name));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}
