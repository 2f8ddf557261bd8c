/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit-drawing.h"
#include "app-form-dialog.h"
#include "app-form-read.h"
#include "app-form.h"

/* Pixels. */
#define WIDTH  520
#define HEIGHT 320

typedef struct {
  TmDocument *document;
  char *drawing; /* name */
  TmFormDialog window;
  AdwEntryRow *name, *sheet;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog->drawing);
  g_free (dialog);
}

static TmDrawing *
find_drawing (Dialog *dialog)
{
  return tm_job_find_drawing (tm_document_job (dialog->document), dialog->drawing);
}

static void
save_cb (Dialog *dialog)
{
  TmDrawing *drawing = find_drawing (dialog);
  g_autofree char *problem = NULL;
  g_autofree char *sheet = tm_form_text (dialog->sheet);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  const char *name = NULL;

  if (!tm_form_read_name (dialog->name, tm_document_job (dialog->document), &name, &problem))
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  text = g_strdup_printf (_ ("Recorded: %s"), name);
  if (drawing == NULL || tm_edit_name_drawing (dialog->document, drawing, name, sheet, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
remove_cb (Dialog *dialog)
{
  TmDrawing *drawing = find_drawing (dialog);
  g_autofree char *text = g_strdup_printf (_ ("Removed: %s"), dialog->drawing);
  g_autoptr (GError) error = NULL;

  if (drawing == NULL || tm_edit_remove_drawing (dialog->document, drawing, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static AdwEntryRow *
add_entry (Dialog *dialog, AdwPreferencesGroup *group, const char *title, const char *text)
{
  AdwEntryRow *row = tm_form_entry (group, title);

  tm_form_fill_text (row, text);
  g_signal_connect_swapped (row, "entry-activated", G_CALLBACK (save_cb), dialog);
  return row;
}

void
tm_drawing_dialog_present (GtkWidget *any_child, TmDocument *document, const TmDrawing *drawing)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  AdwPreferencesGroup *group;

  g_return_if_fail (drawing != NULL);

  dialog->document = g_object_ref (document);
  dialog->drawing = g_strdup (drawing->name);
  tm_form_dialog_build (&dialog->window, any_child, _ ("Drawing"), WIDTH, HEIGHT);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  group = tm_form_group (dialog->window.rows, _ ("Drawing"),
                         _ ("Removing it takes its balloons off; the features stay."));
  dialog->name = add_entry (dialog, group, _ ("Number or name"), drawing->name);
  dialog->sheet = add_entry (dialog, group, _ ("Sheet"), drawing->sheet);
  gtk_widget_set_visible (dialog->window.remove, TRUE);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->name));
  gtk_window_present (dialog->window.window);
}
