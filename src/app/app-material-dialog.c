/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
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

static void
save_cb (Dialog *dialog)
{
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmShopMaterial *material = tm_material_form_read (&dialog->form, tm_document_job (dialog->document),
                                                    find_material (dialog), &problem);
  const char *name;

  if (material == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  name = material->name;
  text = g_strdup_printf (_ ("Saved material %s"), name);
  if (!tm_edit_put_material (dialog->document, dialog->name, material, &error))
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
  g_autofree char *text = g_strdup_printf (_ ("Removed material %s"), dialog->name);
  g_autoptr (GError) error = NULL;

  if (tm_edit_remove_material (dialog->document, dialog->name, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

/* Enter in a row saves, as in any form. */
static void
connect (Dialog *dialog)
{
  const TmMaterialForm *form = &dialog->form;
  AdwEntryRow *rows[]
      = { form->name, form->modulus, form->poisson, form->yield, form->expansion, form->cold, form->source };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
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
  gtk_widget_set_visible (dialog->window.remove, name != NULL);
  connect (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (like != NULL ? dialog->form.yield : dialog->form.name));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}
