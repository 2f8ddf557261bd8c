/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-window-actions: what the window's menu, buttons and shortcuts do.
 */

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-edit.h"
#include "app-files.h"
#include "app-new-job.h"
#include "app-revision-dialog.h"
#include "app-template-dialog.h"
#include "app-toast.h"
#include "app-window-private.h"
#include "app-words.h"

/* Longer than the half second in which a toast replaces another. */
#define TOAST_SETTLES_US G_USEC_PER_SEC

/* The same id with other content: never merged; the person may open the one in the book. */
static void
other_response_cb (AdwMessageDialog *dialog, const char *response, TmWindow *self)
{
  const char *id = g_object_get_data (G_OBJECT (dialog), "job-id");

  if (g_str_equal (response, "open"))
    tm_window_open_job (self, id);
}

static void
ask_about_other (TmWindow *self, const TmFilesResult *result)
{
  GtkWidget *dialog
      = adw_message_dialog_new (GTK_WINDOW (self), _ ("This job is already in the book"), result->message);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("_Leave the file"), "open",
                                    _ ("_Open the job in the book"), NULL);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "open");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_object_set_data_full (G_OBJECT (dialog), "job-id", g_strdup (result->id), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (other_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* Says what a file brought that is worth knowing. */
static void
say_opened (TmWindow *self, const TmFilesResult *result)
{
  g_autofree char *text = NULL;

  if (result->n_unknown > 0)
    text
        = g_strdup_printf (ngettext ("%u entry of the file is not known here and was kept: %s",
                                     "%u entries of the file are not known here and were kept; the first: %s",
                                     result->n_unknown),
                           result->n_unknown, result->first_unknown);
  else if (result->added)
    text = g_strdup (_ ("Added to the book"));
  if (text != NULL)
    tm_window_toast (GTK_WIDGET (self), text);
}

static void
opened_cb (GtkWidget *parent, TmFilesResult *result)
{
  TmWindow *self = TM_WINDOW (parent);

  switch (result->status)
    {
    case TM_FILES_DONE:
      tm_window_show_job (self, g_steal_pointer (&result->job), NULL);
      say_opened (self, result);
      break;
    case TM_FILES_OTHER_IN_BOOK:
      ask_about_other (self, result);
      break;
    case TM_FILES_FAILED:
      tm_window_put_error (self, result->message);
      break;
    case TM_FILES_CANCELLED:
      tm_window_toast (parent, _ ("Cancelled; nothing was added"));
      break;
    }
  tm_files_result_free (result);
}

void
tm_window_open_file (TmWindow *self, const char *path)
{
  g_return_if_fail (TM_IS_WINDOW (self));

  if (self->book != NULL)
    tm_files_import (GTK_WIDGET (self), self->book_path, path, opened_cb);
}

void
tm_window_open_job (TmWindow *self, const char *id)
{
  g_return_if_fail (TM_IS_WINDOW (self));

  if (self->book != NULL)
    tm_files_load (GTK_WIDGET (self), self->book_path, id, _ ("the job"), opened_cb);
}

static void
exported_cb (GtkWidget *parent, TmFilesResult *result)
{
  TmWindow *self = TM_WINDOW (parent);

  if (result->status == TM_FILES_DONE)
    {
      g_autofree char *name = g_filename_display_basename (result->path);
      g_autofree char *text = g_strdup_printf (_ ("Saved as %s"), name);

      tm_window_toast (parent, text);
    }
  else if (result->status == TM_FILES_FAILED)
    tm_window_put_error (self, result->message);
  else
    tm_window_toast (parent, _ ("Cancelled; no file was written"));
  tm_files_result_free (result);
}

static GtkFileFilter *
new_job_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Job files (.tmjob)"));
  gtk_file_filter_add_suffix (filter, "tmjob");
  return filter;
}

/* Shows a file chooser; the window holds it until it is answered. */
static void
choose_file (TmWindow *self, const char *title, GtkFileChooserAction action, const char *name,
             GCallback response_cb)
{
  g_autoptr (GtkFileFilter) filter = new_job_filter ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  if (name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect_object (self->chooser, "response", response_cb, self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static char *
chosen_path (GtkFileChooserNative *chooser, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response != GTK_RESPONSE_ACCEPT)
    return NULL;
  file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  return file != NULL ? g_file_get_path (file) : NULL;
}

static void
open_response_cb (GtkFileChooserNative *chooser, int response, TmWindow *self)
{
  g_autofree char *path = chosen_path (chooser, response);

  g_clear_object (&self->chooser);
  if (path != NULL)
    tm_window_open_file (self, path);
}

static void
save_response_cb (GtkFileChooserNative *chooser, int response, TmWindow *self)
{
  g_autofree char *path = chosen_path (chooser, response);

  g_clear_object (&self->chooser);
  if (path != NULL && self->document != NULL)
    tm_files_export (GTK_WIDGET (self), self->book_path, tm_document_job (self->document)->id, path,
                     exported_cb);
}

/* "SG-118 rev C.tmjob", without what a file name cannot hold. */
static char *
propose_name (const TmJob *job)
{
  GString *name = g_string_new (job->part_number);

  if (*job->revision != '\0')
    g_string_append_printf (name, " rev %s", job->revision);
  g_string_append (name, ".tmjob");
  g_strdelimit (name->str, "/\\:*?\"<>|", '-');
  return g_string_free (name, FALSE);
}

static void
open_file_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  choose_file (TM_WINDOW (widget), _ ("Open a job file"), GTK_FILE_CHOOSER_ACTION_OPEN, NULL,
               G_CALLBACK (open_response_cb));
}

static void
export_job_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmWindow *self = TM_WINDOW (widget);
  g_autofree char *proposed = propose_name (tm_document_job (self->document));

  choose_file (self, _ ("Save as a job file"), GTK_FILE_CHOOSER_ACTION_SAVE, proposed,
               G_CALLBACK (save_response_cb));
}

/* The report is exported from its page. */
static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmWindow *self = TM_WINDOW (widget);
  GtkWidget *page;

  tm_window_show_page (self, "report");
  page = gtk_stack_get_child_by_name (self->pages, "report");
  if (page != NULL)
    gtk_widget_activate_action (page, "report.export-workbook", NULL);
}

static void
retry_book_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmWindow *self = TM_WINDOW (widget);

  if (self->book == NULL)
    tm_window_open_book (self);
}

static void
import_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_window_open_file (TM_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
open_job_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_window_open_job (TM_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
new_job_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_new_job_dialog_present (TM_WINDOW (widget));
}

static void
home_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_window_go_home (TM_WINDOW (widget));
}

static void
add_piece_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmWindow *self = TM_WINDOW (widget);
  const TmJob *job = tm_document_job (self->document);
  g_autofree char *serial = tm_edit_next_serial (job);
  g_autofree char *text = g_strdup_printf (_ ("Added piece %s"), serial);
  g_autoptr (GError) error = NULL;

  if (!tm_edit_add_piece (self->document, serial, job->pieces->len == 0, &error))
    {
      tm_window_put_error (self, error->message);
      return;
    }
  tm_window_toast (widget, text);
  gtk_drop_down_set_selected (self->piece_drop, job->pieces->len - 1);
}

static void
step_piece_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_window_step_piece (TM_WINDOW (widget), g_str_has_suffix (name, "next-piece") ? 1 : -1);
}

static void
forget_toast_cb (AdwToast *toast, TmWindow *self)
{
  if (self->toast == toast)
    g_clear_object (&self->toast);
}

/* libadwaita 1.2 leaves the button of a toast without a name. */
static void
name_toast (TmWindow *self)
{
  GtkWidget *last = gtk_widget_get_last_child (GTK_WIDGET (self->toasts));

  if (last != adw_toast_overlay_get_child (self->toasts))
    tm_access_name_inside (last, GTK_TYPE_BUTTON, _ ("Close this message"));
}

static void
show_new_toast (TmWindow *self, const char *text)
{
  AdwToast *toast = adw_toast_new (text);

  adw_toast_set_timeout (toast, 3);
  g_signal_connect_object (toast, "dismissed", G_CALLBACK (forget_toast_cb), self, 0);
  self->toast = g_object_ref (toast);
  self->toast_at = g_get_monotonic_time ();
  adw_toast_overlay_add_toast (self->toasts, toast);
  name_toast (self);
}

/* Who reads fast must not be told of old readings, one after the other.  A toast that is still coming
 * in gets the new words: libadwaita 1.2 does not outlive one that is dismissed before it is there. */
static void
show_toast_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmWindow *self = TM_WINDOW (widget);
  const char *said = g_variant_get_string (parameter, NULL);
  g_autofree char *text = g_markup_escape_text (said, -1);

  tm_toast_keep_words (self->toasts, said);
  if (self->toast != NULL && g_get_monotonic_time () - self->toast_at < TOAST_SETTLES_US)
    {
      adw_toast_set_title (self->toast, text);
      return;
    }
  if (self->toast != NULL)
    adw_toast_dismiss (self->toast);
  show_new_toast (self, text);
}

static void
new_revision_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_revision_dialog_present (TM_WINDOW (widget));
}

static void
template_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmWindow *self = TM_WINDOW (widget);

  if (self->book != NULL)
    tm_template_dialog_present (widget, self->book, self->document);
}

static void
show_error_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_window_put_error (TM_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

void
tm_window_install_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.home", NULL, home_action);
  gtk_widget_class_install_action (klass, "win.new-job", NULL, new_job_action);
  gtk_widget_class_install_action (klass, "win.open-file", NULL, open_file_action);
  gtk_widget_class_install_action (klass, "win.import", "s", import_action);
  gtk_widget_class_install_action (klass, "win.open-job", "s", open_job_action);
  gtk_widget_class_install_action (klass, "win.retry-book", NULL, retry_book_action);
  gtk_widget_class_install_action (klass, "win.new-revision", NULL, new_revision_action);
  gtk_widget_class_install_action (klass, "win.export", NULL, export_action);
  gtk_widget_class_install_action (klass, "win.export-job", NULL, export_job_action);
  gtk_widget_class_install_action (klass, "win.template", NULL, template_action);
  gtk_widget_class_install_action (klass, "win.add-piece", NULL, add_piece_action);
  gtk_widget_class_install_action (klass, "win.next-piece", NULL, step_piece_action);
  gtk_widget_class_install_action (klass, "win.previous-piece", NULL, step_piece_action);
  gtk_widget_class_install_action (klass, "win.show-toast", "s", show_toast_action);
  gtk_widget_class_install_action (klass, "win.show-error", "s", show_error_action);
}
