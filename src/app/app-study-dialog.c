/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-study.h"

#define WIDTH  560
#define HEIGHT 660

typedef struct {
  TmDocument *document;
  GtkWindow *window;
  GtkWidget *owner; /* weak */
  TmStudyPlanned planned;
  gpointer data;
  GtkLabel *problem;
  GtkLabel *hint;
  TmStudyForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_weak_pointer (&dialog->owner);
  g_object_unref (dialog->document);
  tm_study_form_clear (&dialog->form);
  g_free (dialog);
}

static Dialog *
get_dialog (GtkWindow *window)
{
  return g_object_get_data (G_OBJECT (window), "dialog");
}

/* The seed is drawn once; from then on the order is the same everywhere. */
static gboolean
add_study (Dialog *dialog, char **name, char **problem, GError **error)
{
  TmJob *job = tm_document_job (dialog->document);
  TmStudy *study = tm_study_form_read (&dialog->form, job, problem);
  g_autofree char *at = tm_now_utc ();

  if (study == NULL)
    return FALSE;
  study->seed = tm_quantity_new (g_random_int_range (1, G_MAXINT32), TM_UNIT_COUNT, 0);
  study->at = tm_job_intern (job, at);
  *name = g_strdup (study->name);
  return tm_edit_add_study (dialog->document, study, error);
}

static void
confirm_cb (Dialog *dialog)
{
  g_autofree char *problem = NULL, *name = NULL;
  g_autoptr (GError) error = NULL;

  if (!add_study (dialog, &name, &problem, &error))
    {
      tm_dialog_problem_set (dialog->problem, problem != NULL ? problem : error->message);
      return;
    }
  if (dialog->owner != NULL)
    dialog->planned (name, dialog->data);
  gtk_window_close (dialog->window);
}

static void
changed_cb (Dialog *dialog)
{
  g_autofree char *hint = tm_study_form_hint (&dialog->form);

  gtk_label_set_text (dialog->hint, hint);
}

static void
connect_rows (Dialog *dialog)
{
  AdwEntryRow *rows[] = { dialog->form.name, dialog->form.band, dialog->form.pieces, dialog->form.people,
                          dialog->form.repeats };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (confirm_cb), dialog);
      g_signal_connect_swapped (rows[i], "changed", G_CALLBACK (changed_cb), dialog);
    }
}

static GtkWidget *
build_content (Dialog *dialog)
{
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *confirm = tm_button_new (_ ("_Plan it"));

  gtk_widget_add_css_class (confirm, "suggested-action");
  g_signal_connect_swapped (confirm, "clicked", G_CALLBACK (confirm_cb), dialog);
  dialog->problem = tm_dialog_problem_new ();
  dialog->hint = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0f, "wrap", TRUE, NULL);
  gtk_widget_add_css_class (GTK_WIDGET (dialog->hint), "dim-label");
  tm_study_form_build (&dialog->form, GTK_BOX (inner));
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (dialog->hint));
  gtk_widget_add_css_class (inner, "tm-dialog");
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), inner);
  gtk_box_append (GTK_BOX (outer), tm_dialog_header_new (confirm));
  gtk_box_append (GTK_BOX (outer), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (outer), scroller);
  return outer;
}

GtkWindow *
tm_study_dialog_present (GtkWidget *any_child, TmDocument *document, TmStudyPlanned planned, gpointer data)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->document = g_object_ref (document);
  dialog->planned = planned;
  dialog->data = data;
  g_set_weak_pointer (&dialog->owner, any_child);
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, _ ("New study"));
  gtk_window_set_default_size (dialog->window, WIDTH, HEIGHT);
  adw_window_set_content (ADW_WINDOW (dialog->window), build_content (dialog));
  tm_dialog_attach (dialog->window, any_child);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  tm_study_form_fill (&dialog->form, tm_document_job (document));
  connect_rows (dialog);
  changed_cb (dialog);
  gtk_window_present (dialog->window);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->form.name));
  return dialog->window;
}

TmStudyForm *
tm_study_dialog_form (GtkWindow *window)
{
  return &get_dialog (window)->form;
}

void
tm_study_dialog_confirm (GtkWindow *window)
{
  confirm_cb (get_dialog (window));
}

const char *
tm_study_dialog_problem (GtkWindow *window)
{
  return gtk_label_get_text (get_dialog (window)->problem);
}
