/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-mate-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-edit-mate.h"
#include "app-form-dialog.h"
#include "app-form.h"
#include "app-mate-form.h"

typedef struct {
  TmDocument *document;
  GtkWidget *opener;
  TmMateSize *mate; /* of the job, or NULL; only compared until it is found there again */
  TmFormDialog window;
  TmMateForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_object_unref (dialog->opener);
  g_free (dialog);
}

static TmMateSize *
find_mate (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  return g_ptr_array_find (job->mate_sizes, dialog->mate, NULL) ? dialog->mate : NULL;
}

static gboolean
is_same_size (const TmMateSize *a, const TmMateSize *b)
{
  return a->smallest.count == b->smallest.count && a->largest.given == b->largest.given
         && a->largest.count == b->largest.count && a->uncertainty.count == b->uncertainty.count;
}

/* Who measured it and when goes with the sizes: another size was measured anew. */
static void
sign (Dialog *dialog, TmMateSize *mate, const TmMateSize *old)
{
  TmJob *job = tm_document_job (dialog->document);
  g_autofree char *now = tm_now_utc ();

  if (old != NULL && is_same_size (mate, old))
    return;
  mate->by = tm_job_intern (job, tm_bench_by (tm_document_bench (dialog->document)));
  mate->at = tm_job_intern (job, now);
}

static gboolean
save_mate (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmMateSize *old = find_mate (dialog);
  TmMateSize *mate = tm_mate_form_read (&dialog->form, tm_document_job (dialog->document), old, said);
  g_autofree char *serial = NULL;

  if (mate == NULL)
    return FALSE;
  sign (dialog, mate, old);
  *said = g_strdup_printf (_ ("Saved the mate %s"), mate->serial);
  serial = g_strdup (mate->serial);
  if (!tm_edit_put_mate_size (dialog->document, old, mate, error))
    return FALSE;
  /* The one just measured is the one to be looked at. */
  gtk_widget_activate_action (dialog->opener, "fit.choose-mate", "s", serial);
  return TRUE;
}

static gboolean
remove_mate (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmMateSize *old = find_mate (dialog);

  *said = g_strdup_printf (_ ("Removed the mate %s"), old != NULL ? old->serial : "");
  return old == NULL || tm_edit_remove_mate_size (dialog->document, old, error);
}

static void
connect (Dialog *dialog)
{
  AdwEntryRow *const rows[] = { dialog->form.serial,      dialog->form.smallest, dialog->form.largest,
                                dialog->form.uncertainty, dialog->form.place,    dialog->form.note };

  tm_form_dialog_enter_saves (&dialog->window, rows, G_N_ELEMENTS (rows));
  tm_form_dialog_act (&dialog->window, save_mate, dialog->mate != NULL ? remove_mate : NULL, dialog,
                      free_dialog);
}

GtkWindow *
tm_mate_dialog_present (GtkWidget *any_child, TmDocument *document, const TmFeature *feature,
                        TmMateSize *mate)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = g_strdup_printf (_ ("Measured mate of feature %s"), feature->balloon);

  dialog->document = g_object_ref (document);
  dialog->opener = g_object_ref (any_child);
  dialog->mate = mate;
  tm_form_dialog_build (&dialog->window, any_child, title, 540, 620);
  tm_mate_form_build (&dialog->form, dialog->window.rows, feature);
  tm_mate_form_fill (&dialog->form, tm_document_job (document), mate);
  connect (dialog);
  return tm_form_dialog_present (&dialog->window, GTK_WIDGET (dialog->form.serial));
}
