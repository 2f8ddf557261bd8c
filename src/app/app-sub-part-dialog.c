/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-sub-part-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
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

static const char *
read_text (AdwEntryRow *row, TmJob *job)
{
  g_autofree char *text = tm_form_text (row);

  return tm_job_intern (job, text);
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
  part->name = read_text (dialog->name, job);
  part->serial = read_text (dialog->serial, job);
  part->report = read_text (dialog->report, job);
  return part;
}

static void
save_cb (Dialog *dialog)
{
  TmSubPart *old = find_part (dialog);
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmSubPart *part = read_part (dialog, old, &problem);

  if (part == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  text = g_strdup_printf (_ ("Recorded: %s"), part->number);
  if (tm_edit_put_sub_part (dialog->document, old, part, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
remove_cb (Dialog *dialog)
{
  TmSubPart *old = find_part (dialog);
  g_autofree char *text = g_strdup_printf (_ ("Removed: %s"), old != NULL ? old->number : "");
  g_autoptr (GError) error = NULL;

  if (old == NULL || tm_edit_remove_sub_part (dialog->document, old, &error))
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
  AdwPreferencesGroup *group = tm_form_group (dialog->window.rows, _ ("Part of the assembly"), NULL);

  dialog->number = add_entry (dialog, group, _ ("Part number"));
  dialog->name = add_entry (dialog, group, _ ("Part name"));
  dialog->serial = add_entry (dialog, group, _ ("Serial"));
  dialog->report = add_entry (dialog, group, _ ("Identifier of its first-article report"));
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
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
  gtk_widget_set_visible (dialog->window.remove, part != NULL);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (lacks_report ? dialog->report : dialog->number));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}
