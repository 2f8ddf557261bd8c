/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-supply-dialog.h"

#include <glib/gi18n-lib.h>

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
  supply->specification = tm_form_read_text (dialog->specification, job);
  supply->code = tm_form_read_text (dialog->code, job);
  supply->supplier = tm_form_read_text (dialog->supplier, job);
  supply->certificate = tm_form_read_text (dialog->certificate, job);
  supply->note = tm_form_read_text (dialog->note, job);
  return supply;
}

static gboolean
save_supply (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmSupply *old = find_supply (dialog);
  TmSupply *supply = read_supply (dialog, old, said);

  if (supply == NULL)
    return FALSE;
  *said = g_strdup_printf (_ ("Recorded: %s"), supply->name);
  return tm_edit_put_supply (dialog->document, old, supply, error);
}

static gboolean
remove_supply (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmSupply *old = find_supply (dialog);

  *said = g_strdup_printf (_ ("Removed: %s"), old != NULL ? old->name : "");
  return old == NULL || tm_edit_remove_supply (dialog->document, old, error);
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
  dialog->name = tm_form_dialog_entry (&dialog->window, what, _ ("Name"));
  dialog->specification = tm_form_dialog_entry (&dialog->window, what, _ ("Specification or test procedure"));
  dialog->code = tm_form_dialog_entry (&dialog->window, what, _ ("Code, where the customer has one"));
  proof = tm_form_group (dialog->window.rows, _ ("What proves it"), NULL);
  dialog->supplier = tm_form_dialog_entry (&dialog->window, proof, _ ("Supplier or laboratory"));
  dialog->approval = tm_form_choice (proof, _ ("Approval of the supplier"), approvals);
  dialog->certificate
      = tm_form_dialog_entry (&dialog->window, proof, _ ("Number of the certificate or report"));
  dialog->note = tm_form_dialog_entry (&dialog->window, proof, _ ("Note"));
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
  tm_form_dialog_act (&dialog->window, save_supply, supply != NULL ? remove_supply : NULL, dialog,
                      free_dialog);
  return tm_form_dialog_present (&dialog->window, find_start (dialog));
}
