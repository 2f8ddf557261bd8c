/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-sub-part-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-edit-supply.h"
#include "app-form-dialog.h"
#include "app-form-read.h"
#include "app-form.h"

/* Pixels. */
#define WIDTH  540
#define HEIGHT 400

typedef struct {
  TmDocument *document;
  TmSubPart *part; /* of the job, or NULL; only compared until it is found there again */
  TmFormDialog window;
  AdwEntryRow *number, *name, *serial, *report;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog);
}

static TmSubPart *
find_part (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  return g_ptr_array_find (job->sub_parts, dialog->part, NULL) ? dialog->part : NULL;
}

/* NULL with one line in @problem. */
static TmSubPart *
read_part (Dialog *dialog, const TmSubPart *old, char **problem)
{
  TmJob *job = tm_document_job (dialog->document);
  TmSubPart *part = old != NULL ? tm_edit_copy_sub_part (old) : tm_sub_part_new ();

  if (!tm_form_read_name (dialog->number, job, &part->number, problem))
    {
      tm_sub_part_free (part);
      return NULL;
    }
  part->name = tm_form_read_text (dialog->name, job);
  part->serial = tm_form_read_text (dialog->serial, job);
  part->report = tm_form_read_text (dialog->report, job);
  return part;
}

static gboolean
save_part (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmSubPart *old = find_part (dialog);
  TmSubPart *part = read_part (dialog, old, said);

  if (part == NULL)
    return FALSE;
  *said = g_strdup_printf (_ ("Recorded: %s"), part->number);
  return tm_edit_put_sub_part (dialog->document, old, part, error);
}

static gboolean
remove_part (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmSubPart *old = find_part (dialog);

  *said = g_strdup_printf (_ ("Removed: %s"), old != NULL ? old->number : "");
  return old == NULL || tm_edit_remove_sub_part (dialog->document, old, error);
}

static void
build (Dialog *dialog)
{
  AdwPreferencesGroup *group = tm_form_group (dialog->window.rows, _ ("Part of the assembly"), NULL);

  dialog->number = tm_form_dialog_entry (&dialog->window, group, _ ("Part number"));
  dialog->name = tm_form_dialog_entry (&dialog->window, group, _ ("Part name"));
  dialog->serial = tm_form_dialog_entry (&dialog->window, group, _ ("Serial"));
  dialog->report
      = tm_form_dialog_entry (&dialog->window, group, _ ("Identifier of its first-article report"));
}

static void
fill (Dialog *dialog, const TmSubPart *part)
{
  tm_form_set_text (dialog->number, part->number);
  tm_form_set_text (dialog->name, part->name);
  tm_form_set_text (dialog->serial, part->serial);
  tm_form_set_text (dialog->report, part->report);
}

GtkWindow *
tm_sub_part_dialog_present (GtkWidget *any_child, TmDocument *document, TmSubPart *part)
{
  Dialog *dialog;
  gboolean lacks_report;

  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  dialog = g_new0 (Dialog, 1);
  lacks_report = part != NULL && *part->report == '\0';
  dialog->document = g_object_ref (document);
  dialog->part = part;
  tm_form_dialog_build (&dialog->window, any_child,
                        part != NULL ? _ ("Part of the assembly") : _ ("New part of the assembly"), WIDTH,
                        HEIGHT);
  build (dialog);
  if (part != NULL)
    fill (dialog, part);
  tm_form_dialog_act (&dialog->window, save_part, part != NULL ? remove_part : NULL, dialog, free_dialog);
  return tm_form_dialog_present (&dialog->window,
                                 GTK_WIDGET (lacks_report ? dialog->report : dialog->number));
}
