/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-edit-material.h"
#include "app-form-dialog.h"
#include "app-material-form.h"

typedef struct {
  TmDocument *document;
  char *name; /* as it is in the job; NULL: a new one */
  TmFormDialog window;
  TmMaterialForm form;
  TmMaterialSaved saved;
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

static const TmShopMaterial *
find_material (Dialog *dialog)
{
  return dialog->name != NULL ? tm_job_find_material (tm_document_job (dialog->document), dialog->name)
                              : NULL;
}

static gboolean
save_material (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmShopMaterial *material = tm_material_form_read (&dialog->form, tm_document_job (dialog->document),
                                                    find_material (dialog), said);
  const char *name;

  if (material == NULL)
    return FALSE;
  name = material->name;
  *said = g_strdup_printf (_ ("Saved material %s"), name);
  if (!tm_edit_put_material (dialog->document, dialog->name, material, error))
    return FALSE;
  if (dialog->saved != NULL && dialog->over != NULL)
    dialog->saved (dialog->over, name);
  return TRUE;
}

static gboolean
remove_material (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;

  *said = g_strdup_printf (_ ("Removed material %s"), dialog->name);
  return tm_edit_remove_material (dialog->document, dialog->name, error);
}

static void
connect (Dialog *dialog)
{
  const TmMaterialForm *form = &dialog->form;
  AdwEntryRow *const rows[]
      = { form->name, form->modulus, form->poisson, form->yield, form->expansion, form->cold, form->source };

  tm_form_dialog_enter_saves (&dialog->window, rows, G_N_ELEMENTS (rows));
  tm_form_dialog_act (&dialog->window, save_material, dialog->name != NULL ? remove_material : NULL, dialog,
                      free_dialog);
}

GtkWindow *
tm_material_dialog_present (GtkWidget *any_child, TmDocument *document, const char *name, const char *like,
                            TmMaterialSaved saved)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = name != NULL ? g_strdup_printf (_ ("Material %s"), name) : NULL;

  dialog->document = g_object_ref (document);
  dialog->name = g_strdup (name);
  dialog->saved = saved;
  g_set_weak_pointer (&dialog->over, any_child);
  tm_form_dialog_build (&dialog->window, any_child, title != NULL ? title : _ ("New material"), 560, 700);
  tm_material_form_build (&dialog->form, dialog->window.rows);
  tm_material_form_fill (&dialog->form, find_material (dialog), like);
  connect (dialog);
  return tm_form_dialog_present (&dialog->window,
                                 GTK_WIDGET (like != NULL ? dialog->form.yield : dialog->form.name));
}
