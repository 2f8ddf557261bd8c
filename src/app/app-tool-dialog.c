/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-tool-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit-tool.h"
#include "app-form-dialog.h"
#include "app-tool-form.h"

typedef struct {
  TmDocument *document;
  char *name; /* as it is in the job; NULL: a new one */
  TmFormDialog window;
  TmToolForm form;
  TmToolSaved saved;
  GtkWidget *over; /* weak */
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_weak_pointer (&dialog->over);
  g_object_unref (dialog->document);
  g_free (dialog->name);
  g_free (dialog);
}

static void
save_cb (Dialog *dialog)
{
  TmJob *job = tm_document_job (dialog->document);
  const TmTool *old = dialog->name != NULL ? tm_job_find_tool (job, dialog->name) : NULL;
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmTool *tool = tm_tool_form_read (&dialog->form, job, old, &problem);
  const char *name;

  if (tool == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  name = tool->name;
  text = g_strdup_printf (_ ("Saved tool %s"), name);
  if (!tm_edit_put_tool (dialog->document, dialog->name, tool, &error))
    {
      tm_dialog_problem_set (dialog->window.problem, error->message);
      return;
    }
  if (dialog->saved != NULL && dialog->over != NULL)
    dialog->saved (dialog->over, name);
  tm_form_dialog_done (&dialog->window, text);
}

static void
remove_cb (Dialog *dialog)
{
  g_autofree char *text = g_strdup_printf (_ ("Removed tool %s"), dialog->name);
  g_autoptr (GError) error = NULL;

  if (tm_edit_remove_tool (dialog->document, dialog->name, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

/* Enter in a row saves, as in any form. */
static void
connect (Dialog *dialog)
{
  AdwEntryRow *rows[] = { dialog->form.name,     dialog->form.graduation,    dialog->form.least_cut,
                          dialog->form.backlash, dialog->form.spring_passes, dialog->form.note };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
}

GtkWindow *
tm_tool_dialog_present (GtkWidget *any_child, TmDocument *document, const char *name, TmToolSaved saved)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  TmJob *job = tm_document_job (document);
  const TmTool *tool = name != NULL ? tm_job_find_tool (job, name) : NULL;
  g_autofree char *title = tool != NULL ? g_strdup_printf (_ ("Tool %s"), name) : NULL;

  dialog->document = g_object_ref (document);
  dialog->name = g_strdup (tool != NULL ? name : NULL);
  dialog->saved = saved;
  g_set_weak_pointer (&dialog->over, any_child);
  tm_form_dialog_build (&dialog->window, any_child, title != NULL ? title : _ ("New tool"), 560, 660);
  tm_tool_form_build (&dialog->form, dialog->window.rows);
  tm_tool_form_fill (&dialog->form, tool, job->unit);
  gtk_widget_set_visible (dialog->window.remove, tool != NULL);
  connect (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->form.name));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}
