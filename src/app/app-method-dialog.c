/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-method-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form-dialog.h"
#include "app-form.h"
#include "app-method-form.h"
#include "core-pooled.h"

typedef struct {
  TmDocument *document;
  char *name; /* as it is in the job; NULL: a new one */
  TmFormDialog window;
  TmMethodForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog->name);
  g_free (dialog);
}

static const TmMethod *
find_method (Dialog *dialog)
{
  return dialog->name != NULL ? tm_job_find_method (tm_document_job (dialog->document), dialog->name) : NULL;
}

static gboolean
save_method (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmMethod *method
      = tm_method_form_read (&dialog->form, tm_document_job (dialog->document), find_method (dialog), said);

  if (method == NULL)
    return FALSE;
  *said = g_strdup_printf (_ ("Saved method %s"), method->name);
  return tm_edit_put_method (dialog->document, dialog->name, method, error);
}

static gboolean
remove_method (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;

  *said = g_strdup_printf (_ ("Removed method %s"), dialog->name);
  return tm_edit_remove_method (dialog->document, dialog->name, error);
}

/* Offers what the job's own readings say: it is saved only with the rest. */
static void
readings_cb (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  g_autofree char *typed = tm_form_text (dialog->form.name);
  const char *name = dialog->name != NULL ? dialog->name : typed;
  g_autofree char *source = NULL;
  g_autofree char *problem = NULL;
  TmPooled pooled;
  TmQuantity sd;

  if (!tm_pooled_repeatability (job, name, TM_DIMENSION_LENGTH, &pooled))
    {
      problem = g_strdup_printf (
          _ ("No station of this job was read twice by %s; read some again, or make a study."),
          *name != '\0' ? name : _ ("this method"));
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  sd = tm_pooled_quantity (&pooled, tm_method_form_unit (&dialog->form, job));
  source = g_strdup_printf (
      ngettext ("readings: %u at %u station", "readings: %u at %u stations", pooled.n_stations),
      pooled.n_readings, pooled.n_stations);
  tm_method_form_propose (&dialog->form, &sd, pooled.dof, source);
  tm_dialog_problem_set (dialog->window.problem, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->form.repeatability));
}

static void
add_readings_button (Dialog *dialog)
{
  GtkWidget *button = tm_button_new (_ ("_From readings…"));

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (
      button, _ ("Pool the spread of every station of this job that the method has read more than once"));
  adw_preferences_group_set_header_suffix (dialog->form.spread, button);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (readings_cb), dialog);
}

static void
connect (Dialog *dialog)
{
  AdwEntryRow *const rows[]
      = { dialog->form.name, dialog->form.repeatability, dialog->form.dof, dialog->form.source };

  tm_form_dialog_enter_saves (&dialog->window, rows, G_N_ELEMENTS (rows));
  tm_form_dialog_act (&dialog->window, save_method, dialog->name != NULL ? remove_method : NULL, dialog,
                      free_dialog);
}

static void
fill (Dialog *dialog, const char *tag)
{
  const TmJob *job = tm_document_job (dialog->document);
  TmMethod *start;

  if (dialog->name != NULL || tag == NULL)
    {
      tm_method_form_fill (&dialog->form, job, find_method (dialog));
      return;
    }
  start = tm_method_new ();
  g_ptr_array_add (start->gauges, (gpointer)tag);
  tm_method_form_fill (&dialog->form, job, start);
  tm_method_free (start);
}

GtkWindow *
tm_method_dialog_present (GtkWidget *any_child, TmDocument *document, const char *name, const char *tag)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = name != NULL ? g_strdup_printf (_ ("Method %s"), name) : NULL;

  dialog->document = g_object_ref (document);
  dialog->name = g_strdup (name);
  tm_form_dialog_build (&dialog->window, any_child, title != NULL ? title : _ ("New method"), 560, 640);
  tm_method_form_build (&dialog->form, dialog->window.rows);
  add_readings_button (dialog);
  fill (dialog, tag);
  connect (dialog);
  return tm_form_dialog_present (&dialog->window, GTK_WIDGET (dialog->form.name));
}
