/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-supply-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit-supply.h"
#include "app-form-dialog.h"
#include "app-form-read.h"
#include "app-form.h"
#include "app-supply-words.h"

/* Pixels. */
#define WIDTH  540
#define HEIGHT 600

typedef struct {
  TmDocument *document;
  TmSupply *supply; /* of the job, or NULL; only compared until it is found there again */
  TmFormDialog window;
  AdwComboRow *kind, *approval;
  AdwEntryRow *name, *specification, *code, *supplier, *certificate, *note;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog);
}

static TmSupply *
find_supply (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  return g_ptr_array_find (job->supplies, dialog->supply, NULL) ? dialog->supply : NULL;
}

static const char *
read_text (AdwEntryRow *row, TmJob *job)
{
  g_autofree char *text = tm_form_text (row);

  return tm_job_intern (job, text);
}

/* NULL with one line in @problem. */
static TmSupply *
read_supply (Dialog *dialog, const TmSupply *old, char **problem)
{
  TmJob *job = tm_document_job (dialog->document);
  TmSupply *supply = old != NULL ? tm_edit_copy_supply (old) : tm_supply_new ();

  if (!tm_form_read_name (dialog->name, job, &supply->name, problem))
    {
      tm_supply_free (supply);
      return NULL;
    }
  supply->kind = (TmSupplyKind)MIN (tm_form_chosen (dialog->kind), TM_N_SUPPLIES - 1);
  supply->approval = (TmApproval)MIN (tm_form_chosen (dialog->approval), TM_APPROVAL_NOT_ASKED);
  supply->specification = read_text (dialog->specification, job);
  supply->code = read_text (dialog->code, job);
  supply->supplier = read_text (dialog->supplier, job);
  supply->certificate = read_text (dialog->certificate, job);
  supply->note = read_text (dialog->note, job);
  return supply;
}

static void
save_cb (Dialog *dialog)
{
  TmSupply *old = find_supply (dialog);
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmSupply *supply = read_supply (dialog, old, &problem);

  if (supply == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  text = g_strdup_printf (_ ("Recorded: %s"), supply->name);
  if (tm_edit_put_supply (dialog->document, old, supply, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
remove_cb (Dialog *dialog)
{
  TmSupply *old = find_supply (dialog);
  g_autofree char *text = g_strdup_printf (_ ("Removed: %s"), old != NULL ? old->name : "");
  g_autoptr (GError) error = NULL;

  if (old == NULL || tm_edit_remove_supply (dialog->document, old, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static AdwEntryRow *
add_entry (Dialog *dialog, AdwPreferencesGroup *group, const char *title)
{
  AdwEntryRow *row = tm_form_entry (group, title);

  g_signal_connect_swapped (row, "entry-activated", G_CALLBACK (save_cb), dialog);
  return row;
}

static void
build (Dialog *dialog)
{
  const char *kinds[TM_N_SUPPLIES + 1] = { NULL };
  const char *approvals[TM_APPROVAL_NOT_ASKED + 2] = { NULL };
  AdwPreferencesGroup *what = tm_form_group (dialog->window.rows, _ ("What is asked for"), NULL);
  AdwPreferencesGroup *proof;

  for (guint i = 0; i < TM_N_SUPPLIES; i++)
    kinds[i] = tm_words_supply_kind ((TmSupplyKind)i);
  for (guint i = 0; i <= TM_APPROVAL_NOT_ASKED; i++)
    approvals[i] = tm_words_approval ((TmApproval)i);
  dialog->kind = tm_form_choice (what, _ ("Kind"), kinds);
  dialog->name = add_entry (dialog, what, _ ("Name"));
  dialog->specification = add_entry (dialog, what, _ ("Specification or test procedure"));
  dialog->code = add_entry (dialog, what, _ ("Code, where the customer has one"));
  proof = tm_form_group (dialog->window.rows, _ ("What proves it"), NULL);
  dialog->supplier = add_entry (dialog, proof, _ ("Supplier or laboratory"));
  dialog->approval = tm_form_choice (proof, _ ("Approval of the supplier"), approvals);
  dialog->certificate = add_entry (dialog, proof, _ ("Number of the certificate or report"));
  dialog->note = add_entry (dialog, proof, _ ("Note"));
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
}

static void
fill (Dialog *dialog, const TmSupply *supply)
{
  adw_combo_row_set_selected (dialog->kind, supply->kind);
  adw_combo_row_set_selected (dialog->approval, supply->approval);
  tm_form_set_text (dialog->name, supply->name);
  tm_form_set_text (dialog->specification, supply->specification);
  tm_form_set_text (dialog->code, supply->code);
  tm_form_set_text (dialog->supplier, supply->supplier);
  tm_form_set_text (dialog->certificate, supply->certificate);
  tm_form_set_text (dialog->note, supply->note);
}

/* The first thing that is wanting has the cursor. */
static GtkWidget *
find_start (Dialog *dialog)
{
  if (dialog->supply == NULL)
    return GTK_WIDGET (dialog->kind);
  return GTK_WIDGET (*dialog->supply->certificate == '\0' ? dialog->certificate : dialog->name);
}

GtkWindow *
tm_supply_dialog_present (GtkWidget *any_child, TmDocument *document, TmSupply *supply)
{
  Dialog *dialog;

  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  dialog->supply = supply;
  tm_form_dialog_build (
      &dialog->window, any_child,
      supply != NULL ? _ ("Material, process or test") : _ ("New material, process or test"), WIDTH, HEIGHT);
  build (dialog);
  if (supply != NULL)
    fill (dialog, supply);
  gtk_widget_set_visible (dialog->window.remove, supply != NULL);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (find_start (dialog));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}
