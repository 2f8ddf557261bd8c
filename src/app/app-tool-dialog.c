/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-tool-dialog.h"

#include <glib/gi18n-lib.h>

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

static gboolean
save_tool (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmJob *job = tm_document_job (dialog->document);
  const TmTool *old = dialog->name != NULL ? tm_job_find_tool (job, dialog->name) : NULL;
  TmTool *tool = tm_tool_form_read (&dialog->form, job, old, said);
  const char *name;

  if (tool == NULL)
    return FALSE;
  name = tool->name;
  *said = g_strdup_printf (_ ("Saved tool %s"), name);
  if (!tm_edit_put_tool (dialog->document, dialog->name, tool, error))
    return FALSE;
  if (dialog->saved != NULL && dialog->over != NULL)
    dialog->saved (dialog->over, name);
  return TRUE;
}

static gboolean
remove_tool (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;

  *said = g_strdup_printf (_ ("Removed tool %s"), dialog->name);
  return tm_edit_remove_tool (dialog->document, dialog->name, error);
}

static void
connect (Dialog *dialog)
{
  AdwEntryRow *const rows[] = { dialog->form.name,     dialog->form.graduation,    dialog->form.least_cut,
                                dialog->form.backlash, dialog->form.spring_passes, dialog->form.note };

  tm_form_dialog_enter_saves (&dialog->window, rows, G_N_ELEMENTS (rows));
  tm_form_dialog_act (&dialog->window, save_tool, dialog->name != NULL ? remove_tool : NULL, dialog,
                      free_dialog);
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
  connect (dialog);
  return tm_form_dialog_present (&dialog->window, GTK_WIDGET (dialog->form.name));
}
