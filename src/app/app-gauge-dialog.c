/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form-dialog.h"
#include "app-gauge-form.h"

/* Pixels. */
#define DIALOG_WIDTH  560
#define DIALOG_HEIGHT 680

typedef struct {
  TmDocument *document;
  char *tag; /* of the gauge as it is in the job; NULL: a new one */
  TmFormDialog window;
  TmGaugeForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  tm_gauge_form_clear (&dialog->form);
  g_free (dialog->tag);
  g_free (dialog);
}

static const TmGauge *
find_gauge (Dialog *dialog, const char *tag)
{
  return tag != NULL ? tm_job_find_gauge (tm_document_job (dialog->document), tag) : NULL;
}

static void
save_cb (Dialog *dialog)
{
  TmJob *job = tm_document_job (dialog->document);
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmGauge *gauge = tm_gauge_form_read (&dialog->form, job, find_gauge (dialog, dialog->tag), &problem);

  if (gauge == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  text = g_strdup_printf (dialog->tag != NULL ? _ ("Saved gauge %s") : _ ("Added gauge %s"), gauge->tag);
  if (tm_edit_put_gauge (dialog->document, dialog->tag, gauge, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

GtkWidget *
tm_gauge_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag, const char *copy_of)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = tag != NULL ? g_strdup_printf (_ ("Gauge %s"), tag) : g_strdup (_ ("Add a gauge"));
  const TmGauge *shown;

  dialog->document = g_object_ref (document);
  dialog->tag = g_strdup (tag);
  tm_form_dialog_build (&dialog->window, any_child, title, DIALOG_WIDTH, DIALOG_HEIGHT);
  tm_button_set_label (dialog->window.save, tag != NULL ? _ ("_Save") : _ ("_Add"));
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  tm_gauge_form_build (&dialog->form, dialog->window.rows);
  shown = find_gauge (dialog, tag != NULL ? tag : copy_of);
  tm_gauge_form_fill (&dialog->form, shown, tm_document_job (document)->unit, tag == NULL && shown != NULL);
  tm_gauge_form_connect (&dialog->form, G_CALLBACK (save_cb), dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->form.tag));
  gtk_window_present (dialog->window.window);
  return GTK_WIDGET (dialog->window.window);
}
