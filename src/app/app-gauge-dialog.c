/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-gauge-form.h"
#include "app-toast.h"

/* Pixels. */
#define DIALOG_WIDTH  560
#define DIALOG_HEIGHT 680

typedef struct {
  TmDocument *document;
  char *tag; /* of the gauge as it is in the job; NULL: a new one */
  TmGaugeForm form;
  GtkLabel *problem;
  GtkWindow *window;
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
  GtkWidget *parent = GTK_WIDGET (gtk_window_get_transient_for (dialog->window));
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmGauge *gauge = tm_gauge_form_read (&dialog->form, job, find_gauge (dialog, dialog->tag), &problem);

  if (gauge == NULL)
    {
      tm_dialog_problem_set (dialog->problem, problem);
      return;
    }
  text = g_strdup_printf (dialog->tag != NULL ? _ ("Saved gauge %s") : _ ("Added gauge %s"), gauge->tag);
  if (!tm_edit_put_gauge (dialog->document, dialog->tag, gauge, &error))
    {
      tm_dialog_problem_set (dialog->problem, error->message);
      return;
    }
  if (parent != NULL)
    tm_window_toast (parent, text);
  gtk_window_destroy (dialog->window);
}

static GtkWidget *
build_header (Dialog *dialog)
{
  GtkWidget *save = tm_button_new (dialog->tag != NULL ? _ ("_Save") : _ ("_Add"));

  gtk_widget_add_css_class (save, "suggested-action");
  g_signal_connect_swapped (save, "clicked", G_CALLBACK (save_cb), dialog);
  return tm_dialog_header_new (save);
}

static GtkWidget *
build_content (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);

  dialog->problem = tm_dialog_problem_new ();
  gtk_widget_add_css_class (rows, "tm-dialog");
  tm_gauge_form_build (&dialog->form, GTK_BOX (rows));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), rows);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), build_header (dialog));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), scroller);
  return box;
}

GtkWidget *
tm_gauge_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag, const char *copy_of)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = tag != NULL ? g_strdup_printf (_ ("Gauge %s"), tag) : g_strdup (_ ("Add a gauge"));
  const TmGauge *shown;

  dialog->document = g_object_ref (document);
  dialog->tag = g_strdup (tag);
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, title);
  gtk_window_set_default_size (dialog->window, DIALOG_WIDTH, DIALOG_HEIGHT);
  adw_window_set_content (ADW_WINDOW (dialog->window), build_content (dialog));
  tm_dialog_attach (dialog->window, any_child);
  shown = find_gauge (dialog, tag != NULL ? tag : copy_of);
  tm_gauge_form_fill (&dialog->form, shown, tm_document_job (document)->unit, tag == NULL && shown != NULL);
  tm_gauge_form_connect (&dialog->form, G_CALLBACK (save_cb), dialog);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->form.tag));
  gtk_window_present (dialog->window);
  return GTK_WIDGET (dialog->window);
}
