/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-line-dialog.h"

#include <glib/gi18n-lib.h>

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

static gboolean
save_line (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmBudgetLine *old = find_line (dialog);
  TmBudgetLine *line
      = tm_line_form_read (&dialog->form, tm_document_job (dialog->document), dialog->method, old, said);

  if (line == NULL)
    return FALSE;
  *said = g_strdup_printf (_ ("Saved the line %s"), line->name);
  return tm_edit_put_budget_line (dialog->document, old, line, error);
}

static gboolean
remove_line (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmBudgetLine *old = find_line (dialog);

  *said = g_strdup_printf (_ ("Removed the line %s"), old != NULL ? old->name : "");
  return old == NULL || tm_edit_remove_budget_line (dialog->document, old, error);
}

static void
connect (Dialog *dialog)
{
  AdwEntryRow *const rows[] = { dialog->form.name, dialog->form.value, dialog->form.divisor, dialog->form.dof,
                                dialog->form.source };

  tm_form_dialog_enter_saves (&dialog->window, rows, G_N_ELEMENTS (rows));
  tm_form_dialog_act (&dialog->window, save_line, dialog->line != NULL ? remove_line : NULL, dialog,
                      free_dialog);
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
  connect (dialog);
  return tm_form_dialog_present (&dialog->window, GTK_WIDGET (dialog->form.name));
}
