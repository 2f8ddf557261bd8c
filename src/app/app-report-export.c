/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-export.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-report-work.h"
#include "app-save-path.h"
#include "app-show-file.h"
#include "app-toast.h"

typedef struct {
  const char *title;
  const char *ending;
  const char *kind; /* of file */
} Kind;

static const Kind kinds[] = {
  [TM_EXPORT_WORKBOOK] = { N_ ("Export the report as a workbook"), ".xlsx", N_ ("Workbook") },
  [TM_EXPORT_PAGES] = { N_ ("Export the report as PDF"), ".pdf", N_ ("PDF") },
  [TM_EXPORT_QIF] = { N_ ("Export the report as QIF"), ".qif", N_ ("QIF 3.0") },
  [TM_EXPORT_TABLE] = { N_ ("Export the characteristics as CSV"), ".csv", N_ ("Comma-separated values") },
};

/* -------- What was written -------- */

static void
open_cb (AdwToast *toast, GtkWidget *page)
{
  tm_show_file (page, g_object_get_data (G_OBJECT (toast), "path"), tm_window_show_error);
}

static void
say_written (GtkWidget *page, const char *path)
{
  GtkWidget *overlay = gtk_widget_get_ancestor (page, ADW_TYPE_TOAST_OVERLAY);
  g_autofree char *shown = g_filename_display_name (path);
  g_autofree char *text = g_strdup_printf (_ ("Written: %s"), shown);
  g_autofree char *markup = g_markup_escape_text (text, -1);
  AdwToast *toast;

  if (overlay == NULL)
    return;
  toast = adw_toast_new (markup);
  adw_toast_set_button_label (toast, _ ("_Open"));
  adw_toast_set_timeout (toast, 10);
  g_object_set_data_full (G_OBJECT (toast), "path", g_strdup (path), g_free);
  g_signal_connect_object (toast, "button-clicked", G_CALLBACK (open_cb), page, 0);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), toast);
  tm_toast_keep_words (ADW_TOAST_OVERLAY (overlay), text);
}

static void
written_cb (GtkWidget *page, const char *path, const char *warning, const GError *error)
{
  if (error != NULL)
    tm_window_show_error (page, error->message);
  else if (path == NULL)
    tm_window_toast (page, _ ("Cancelled; nothing was written"));
  else
    {
      tm_window_clear_error (page);
      say_written (page, path);
      if (warning != NULL)
        tm_window_show_error (page, warning);
    }
}

void
tm_report_export_to (GtkWidget *page, TmDocument *document, const char *path)
{
  tm_report_write (page, document, path, written_cb);
}

/* -------- Where to -------- */

typedef struct {
  GtkWidget *page; /* borrowed: the chooser is the page's */
  TmDocument *document;
  const Kind *kind;
} Choosing;

static void
free_choosing (gpointer data)
{
  Choosing *choosing = data;

  g_object_unref (choosing->document);
  g_free (choosing);
}

static void
chosen_cb (GtkFileChooserNative *chooser, int response, const Choosing *choosing)
{
  GtkWidget *page = choosing->page;
  g_autoptr (TmDocument) document = g_object_ref (choosing->document);
  g_autoptr (GError) error = NULL;
  g_autofree char *path = response == GTK_RESPONSE_ACCEPT
                              ? tm_save_path_chosen (chooser, choosing->kind->ending, &error)
                              : NULL;

  /* The chooser, and with it @choosing, goes here. */
  g_object_set_data (G_OBJECT (page), "tm-export", NULL);
  if (path != NULL)
    tm_report_export_to (page, document, path);
  else if (error != NULL)
    tm_window_show_error (page, error->message);
}

static char *
suggest_name (const TmJob *job, const char *ending)
{
  g_autofree char *name
      = *job->revision != '\0'
            /* Translators: a file name: part number, revision. */
            ? g_strdup_printf (_ ("%s rev %s first article%s"), job->part_number, job->revision, ending)
            : g_strdup_printf (_ ("%s first article%s"), job->part_number, ending);

  return g_strdup (g_strdelimit (name, "/\\:*?\"<>|", '-'));
}

void
tm_report_export (GtkWidget *page, TmDocument *document, TmExport export)
{
  const Kind *kind = &kinds[export];
  g_autofree char *name = suggest_name (tm_document_job (document), kind->ending);
  g_autofree char *pattern = g_strconcat ("*", kind->ending, NULL);
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  GtkRoot *root = gtk_widget_get_root (page);
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (_ (kind->title), GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL,
                                     GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  Choosing *choosing = g_new0 (Choosing, 1);

  gtk_file_filter_set_name (filter, _ (kind->kind));
  gtk_file_filter_add_pattern (filter, pattern);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  *choosing = (Choosing) { page, g_object_ref (document), kind };
  g_object_set_data_full (G_OBJECT (chooser), "choosing", choosing, free_choosing);
  g_signal_connect (chooser, "response", G_CALLBACK (chosen_cb), choosing);
  g_object_set_data_full (G_OBJECT (page), "tm-export", chooser, g_object_unref);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}
