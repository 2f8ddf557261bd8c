/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-feature-form.h"
#include "app-toast.h"

typedef struct {
  TmDocument *document;
  char *balloon; /* of the feature as it is in the job */
  TmFeatureForm form;
  GtkLabel *problem;
  GtkWindow *window;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog->balloon);
  g_free (dialog);
}

static TmFeature *
find_feature (Dialog *dialog)
{
  return tm_job_find_feature (tm_document_job (dialog->document), dialog->balloon);
}

static void
follow_cb (Dialog *dialog)
{
  const TmFeature *feature = find_feature (dialog);

  if (feature != NULL)
    tm_feature_form_follow (&dialog->form, tm_document_job (dialog->document), feature);
}

static void
save_cb (Dialog *dialog)
{
  TmJob *job = tm_document_job (dialog->document);
  const TmFeature *feature = find_feature (dialog);
  GtkWidget *parent = GTK_WIDGET (gtk_window_get_transient_for (dialog->window));
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmFeature *with;

  if (feature == NULL)
    return;
  with = tm_feature_form_read (&dialog->form, job, feature, &problem);
  if (with == NULL)
    {
      tm_dialog_problem_set (dialog->problem, problem);
      return;
    }
  text = g_strdup_printf (_ ("Saved feature %s"), with->balloon);
  if (!tm_edit_replace_feature (dialog->document, dialog->balloon, with, &error))
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
  GtkWidget *save = tm_button_new (_ ("_Save"));

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
  tm_feature_form_build (&dialog->form, GTK_BOX (rows));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), rows);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), build_header (dialog));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), scroller);
  return box;
}

/* Enter in a row saves, as in any form. */
static void
connect_rows (Dialog *dialog)
{
  TmFeatureForm *form = &dialog->form;
  AdwEntryRow *rows[]
      = { form->balloon,    form->callout,      form->name,       form->nominal,      form->lower,
          form->upper,      form->stations,     form->places,     form->size_feature, form->every,
          form->sheet,      form->zone,         form->comment,    form->tooling,      form->mate_lower,
          form->mate_upper, form->wanted_least, form->wanted_most };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->form.callout, "changed", G_CALLBACK (follow_cb), dialog);
  g_signal_connect_swapped (dialog->form.check, "notify::selected", G_CALLBACK (follow_cb), dialog);
  g_signal_connect_swapped (dialog->form.mate, "notify::selected", G_CALLBACK (follow_cb), dialog);
}

static GtkWidget *
find_row (TmFeatureForm *form, TmFeatureRow row)
{
  GtkWidget *rows[TM_N_FEATURE_ROWS] = {
    [TM_FEATURE_ROW_CALLOUT] = GTK_WIDGET (form->callout),
    [TM_FEATURE_ROW_METHOD] = GTK_WIDGET (form->method),
    [TM_FEATURE_ROW_TOOLING] = GTK_WIDGET (form->tooling),
    [TM_FEATURE_ROW_MATE] = GTK_WIDGET (form->mate),
  };

  return rows[row];
}

void
tm_feature_dialog_present (GtkWidget *any_child, TmDocument *document, TmFeature *feature, TmFeatureRow row)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = g_strdup_printf (_ ("Feature %s"), feature->balloon);

  dialog->document = g_object_ref (document);
  dialog->balloon = g_strdup (feature->balloon);
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, title);
  gtk_window_set_default_size (dialog->window, 560, 680);
  adw_window_set_content (ADW_WINDOW (dialog->window), build_content (dialog));
  tm_dialog_attach (dialog->window, any_child);
  tm_feature_form_fill (&dialog->form, tm_document_job (document), feature);
  connect_rows (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  tm_dialog_start_in (find_row (&dialog->form, row));
  gtk_window_present (dialog->window);
}
