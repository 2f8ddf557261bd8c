/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-form-dialog.h"
#include "app-form.h"
#include "app-template-form.h"
#include "app-template-preview.h"
#include "app-template-versions.h"
#include "app-toast.h"
#include "exchange-template.h"

/* Pixels. */
#define WIDTH  1080
#define HEIGHT 680

#define ENDING ".tmtemplate"

typedef struct {
  TmBook *book;         /* outlives the dialog */
  TmDocument *document; /* or NULL */
  TmFormDialog window;
  TmTemplateForm *form;
  GtkWidget *preview;
  GtkFileChooserNative *chooser;
  TmTemplate *typed; /* what the form said before a version was taken; or NULL */
  GtkWidget *versions, *back;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_object (&dialog->chooser);
  tm_template_form_free (dialog->form);
  g_clear_object (&dialog->document);
  tm_template_free (dialog->typed);
  g_free (dialog);
}

static void
changed_cb (Dialog *dialog)
{
  tm_dialog_problem_set (dialog->window.problem, NULL);
  tm_template_preview_show (TM_TEMPLATE_PREVIEW (dialog->preview), tm_template_form_peek (dialog->form));
}

/* -------- Saving -------- */

static gboolean
save (Dialog *dialog, const TmTemplate *template, GError **error)
{
  g_autofree char *at = tm_now_utc ();
  const char *by = dialog->document != NULL ? tm_bench_by (tm_document_bench (dialog->document)) : "";

  if (!tm_book_save_template (dialog->book, template, by, at, error))
    return FALSE;
  /* It is kept; a document that cannot read it back now has it when the job is opened next. */
  if (dialog->document != NULL)
    (void)tm_document_load_template (dialog->document, NULL);
  return TRUE;
}

static void
save_cb (Dialog *dialog)
{
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  const TmTemplate *template = tm_template_form_read (dialog->form, &problem);

  if (template == NULL)
    tm_dialog_problem_set (dialog->window.problem, problem);
  else if (save (dialog, template, &error))
    tm_form_dialog_done (&dialog->window, _ ("Report template recorded"));
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
remove_cb (Dialog *dialog)
{
  g_autoptr (GError) error = NULL;

  if (save (dialog, NULL, &error))
    tm_form_dialog_done (&dialog->window,
                         _ ("Report template taken away; earlier versions stay in the book"));
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

/* -------- Template files -------- */

static void
take_file (Dialog *dialog, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmTemplate) template = tm_template_from_file (path, &error);

  tm_dialog_problem_set (dialog->window.problem, error != NULL ? error->message : NULL);
  if (template != NULL)
    tm_template_form_show (dialog->form, template);
}

static void
write_file (Dialog *dialog, const char *path)
{
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  const TmTemplate *template = tm_template_form_read (dialog->form, &problem);

  if (template != NULL)
    tm_template_to_file (template, path, &error);
  tm_dialog_problem_set (dialog->window.problem, error != NULL ? error->message : problem);
}

static void
open_chosen_cb (GtkFileChooserNative *chooser, int response, Dialog *dialog)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (response == GTK_RESPONSE_ACCEPT && path != NULL)
    take_file (dialog, path);
  g_clear_object (&dialog->chooser);
}

static void
write_chosen_cb (GtkFileChooserNative *chooser, int response, Dialog *dialog)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (response == GTK_RESPONSE_ACCEPT && path != NULL)
    write_file (dialog, path);
  g_clear_object (&dialog->chooser);
}

static void
choose_file (Dialog *dialog, const char *title, GtkFileChooserAction action, GCallback chosen)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Report templates"));
  gtk_file_filter_add_pattern (filter, "*" ENDING);
  g_clear_object (&dialog->chooser);
  dialog->chooser = gtk_file_chooser_native_new (title, dialog->window.window, action, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog->chooser), filter);
  if (action == GTK_FILE_CHOOSER_ACTION_SAVE)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog->chooser), _ ("shop.tmtemplate"));
  g_signal_connect (dialog->chooser, "response", chosen, dialog);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog->chooser));
}

static void
open_cb (Dialog *dialog)
{
  choose_file (dialog, _ ("Open a report template"), GTK_FILE_CHOOSER_ACTION_OPEN,
               G_CALLBACK (open_chosen_cb));
}

static void
write_cb (Dialog *dialog)
{
  choose_file (dialog, _ ("Save the report template as a file"), GTK_FILE_CHOOSER_ACTION_SAVE,
               G_CALLBACK (write_chosen_cb));
}

static void
add_file_buttons (Dialog *dialog)
{
  AdwPreferencesGroup *group = tm_form_group (dialog->window.rows, _ ("Template file"),
                                              _ ("For the book of another bench, and for the command line. "
                                                 "What is opened is kept once it is saved."));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *open = tm_button_new (_ ("_Open a file…"));
  GtkWidget *write = tm_button_new (_ ("Save as a f_ile…"));

  gtk_box_append (GTK_BOX (box), open);
  gtk_box_append (GTK_BOX (box), write);
  adw_preferences_group_add (group, box);
  g_signal_connect_swapped (open, "clicked", G_CALLBACK (open_cb), dialog);
  g_signal_connect_swapped (write, "clicked", G_CALLBACK (write_cb), dialog);
}

/* -------- Versions -------- */

/* Kept once it is saved, so that the form can still be changed; what it said before is not lost. */
static void
taken_cb (const TmTemplate *template, gpointer data)
{
  Dialog *dialog = data;

  if (dialog->typed == NULL)
    dialog->typed = tm_template_copy (tm_template_form_peek (dialog->form));
  tm_template_form_show (dialog->form, template);
  gtk_widget_set_sensitive (dialog->back, TRUE);
}

static void
back_cb (Dialog *dialog)
{
  g_autoptr (TmTemplate) typed = g_steal_pointer (&dialog->typed);

  if (typed == NULL)
    return;
  tm_template_form_show (dialog->form, typed);
  gtk_widget_grab_focus (dialog->versions);
  gtk_widget_set_sensitive (dialog->back, FALSE);
}

static void
versions_cb (Dialog *dialog)
{
  g_autoptr (GError) error = NULL;

  if (tm_template_versions_present (dialog->versions, dialog->book, dialog->document, taken_cb, dialog,
                                    &error)
      == NULL)
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static gboolean
has_versions (const Dialog *dialog)
{
  g_autoptr (GPtrArray) versions = tm_book_template_versions (dialog->book, NULL);

  return versions != NULL && versions->len > 0;
}

static void
add_version_buttons (Dialog *dialog)
{
  AdwPreferencesGroup *group
      = tm_form_group (dialog->window.rows, _ ("Versions"),
                       _ ("The book keeps every version that was saved. One that is taken "
                          "again stands here, and is kept as a new version once it is saved."));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  dialog->versions = tm_button_new (_ ("Earlier _versions…"));
  dialog->back = tm_button_new (_ ("_Back to what was typed"));
  gtk_widget_set_sensitive (dialog->versions, has_versions (dialog));
  gtk_widget_set_sensitive (dialog->back, FALSE);
  gtk_box_append (GTK_BOX (box), dialog->versions);
  gtk_box_append (GTK_BOX (box), dialog->back);
  adw_preferences_group_add (group, box);
  g_signal_connect_swapped (dialog->versions, "clicked", G_CALLBACK (versions_cb), dialog);
  g_signal_connect_swapped (dialog->back, "clicked", G_CALLBACK (back_cb), dialog);
}

/* -------- The window -------- */

static void
build (Dialog *dialog, const TmTemplate *template)
{
  dialog->preview = tm_template_preview_new (dialog->document);
  gtk_widget_add_css_class (dialog->preview, "tm-paper");
  tm_form_dialog_add_side (&dialog->window, dialog->preview);
  dialog->form = tm_template_form_new (dialog->window.rows, G_CALLBACK (changed_cb), dialog);
  add_version_buttons (dialog);
  add_file_buttons (dialog);
  tm_template_form_show (dialog->form, template);
  gtk_widget_set_visible (dialog->window.remove, !tm_template_is_empty (template));
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
}

GtkWindow *
tm_template_dialog_present (GtkWidget *any_child, TmBook *book, TmDocument *document)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmTemplate) template = NULL;
  Dialog *dialog;

  g_return_val_if_fail (book != NULL, NULL);

  template = tm_book_template (book, &error);
  if (template == NULL)
    {
      tm_window_show_error (any_child, error->message);
      return NULL;
    }
  dialog = g_new0 (Dialog, 1);
  dialog->book = book;
  dialog->document = document != NULL ? g_object_ref (document) : NULL;
  tm_form_dialog_build (&dialog->window, any_child, _ ("Report template"), WIDTH, HEIGHT);
  build (dialog, template);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}

static Dialog *
dialog_of (GtkWindow *window)
{
  return g_object_get_data (G_OBJECT (window), "dialog");
}

void
tm_template_dialog_take_logo (GtkWindow *window, const char *path)
{
  tm_template_form_take_logo (dialog_of (window)->form, path);
}

void
tm_template_dialog_take_file (GtkWindow *window, const char *path)
{
  take_file (dialog_of (window), path);
}

void
tm_template_dialog_write_file (GtkWindow *window, const char *path)
{
  write_file (dialog_of (window), path);
}
