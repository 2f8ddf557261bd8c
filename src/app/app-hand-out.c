/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-hand-out.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "app-dialog.h"
#include "app-save-path.h"
#include "app-show-file.h"
#include "app-toast.h"
#include "book-store.h"

static const char *
get_ending (TmHandOut what)
{
  return what == TM_HAND_OUT_PAGES ? ".pdf" : ".xlsx";
}

const char *
tm_hand_out_digest (const TmSignature *signature, TmHandOut what)
{
  return what == TM_HAND_OUT_PAGES ? signature->pages : signature->workbook;
}

char *
tm_hand_out_name (const TmJob *job, const TmSignature *signature, TmHandOut what)
{
  /* Translators: a file name: the report's identifier, the day, and the ending. */
  char *name = g_strdup_printf (_ ("%s signed %.10s%s"),
                                *signature->report != '\0' ? signature->report : job->part_number,
                                signature->at, get_ending (what));

  return g_strdelimit (name, "/\\:*?\"<>|", '-');
}

static gboolean
write_bytes (GBytes *bytes, const char *path, GError **error)
{
  gsize length;
  gconstpointer data = g_bytes_get_data (bytes, &length);
  g_autofree char *shown = g_filename_display_name (path);

  if (g_file_set_contents_full (path, data, (gssize)length,
                                G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, error))
    return TRUE;
  g_prefix_error (error, _ ("%s: cannot be written; choose another folder or free some space: "), shown);
  return FALSE;
}

/* The book holds the bytes against their SHA-256 on the way out. */
gboolean
tm_hand_out_write (TmDocument *document, const char *digest, const char *path, GError **error)
{
  g_autoptr (GBytes) bytes
      = tm_book_read_content (tm_document_book (document), tm_document_job (document)->id, digest, error);

  return bytes != NULL && write_bytes (bytes, path, error);
}

/* -------- Saving -------- */

typedef struct {
  GtkWidget *any_child;
  TmDocument *document;
  GtkLabel *problem;
  char *digest, *ending;
} Save;

static void
free_save (gpointer data, GClosure *closure)
{
  Save *save = data;

  g_object_unref (save->any_child);
  g_object_unref (save->document);
  g_object_unref (save->problem);
  g_free (save->digest);
  g_free (save->ending);
  g_free (save);
}

static void
write_chosen (Save *save, const char *path)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_autofree char *text = g_strdup_printf (_ ("Written as it was signed: %s"), shown);
  GtkRoot *root = gtk_widget_get_root (save->any_child);
  GtkWindow *under = GTK_IS_WINDOW (root) ? gtk_window_get_transient_for (GTK_WINDOW (root)) : NULL;
  g_autoptr (GError) error = NULL;

  if (!tm_hand_out_write (save->document, save->digest, path, &error))
    {
      tm_dialog_problem_set (save->problem, error->message);
      return;
    }
  tm_dialog_problem_set (save->problem, NULL);
  tm_window_toast (under != NULL ? GTK_WIDGET (under) : save->any_child, text);
}

static void
chosen_cb (GtkFileChooserNative *chooser, int response, Save *save)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path
      = response == GTK_RESPONSE_ACCEPT ? tm_save_path_chosen (chooser, save->ending, &error) : NULL;

  if (path != NULL)
    write_chosen (save, path);
  else if (error != NULL)
    tm_dialog_problem_set (save->problem, error->message);
  g_object_unref (chooser);
}

void
tm_hand_out_save (GtkWidget *any_child, TmDocument *document, const TmSignature *signature, TmHandOut what,
                  GtkLabel *problem)
{
  Save *save = g_new0 (Save, 1);
  GtkRoot *root = gtk_widget_get_root (any_child);
  g_autofree char *name = tm_hand_out_name (tm_document_job (document), signature, what);
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      what == TM_HAND_OUT_PAGES ? _ ("Save the signed pages") : _ ("Save the signed workbook"),
      GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);

  save->any_child = g_object_ref (any_child);
  save->document = g_object_ref (document);
  save->problem = g_object_ref (problem);
  save->digest = g_strdup (tm_hand_out_digest (signature, what));
  save->ending = g_strdup (get_ending (what));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect_data (chooser, "response", G_CALLBACK (chosen_cb), save, free_save, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* -------- Showing -------- */

/* In a folder of its own, so that two of the same name do not meet; it is the desktop's to clear. */
static char *
write_copy (TmDocument *document, const TmSignature *signature, TmHandOut what, GError **error)
{
  g_autofree char *name = tm_hand_out_name (tm_document_job (document), signature, what);
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-signed-XXXXXX", error);
  g_autofree char *path = folder != NULL ? g_build_filename (folder, name, NULL) : NULL;

  if (path == NULL || !tm_hand_out_write (document, tm_hand_out_digest (signature, what), path, error))
    return NULL;
  /* What is changed there is not what was signed. */
  (void)g_chmod (path, 0400);
  return g_steal_pointer (&path);
}

static void
tell_cb (GtkWidget *problem, const char *text)
{
  tm_dialog_problem_set (GTK_LABEL (problem), text);
}

void
tm_hand_out_open (TmDocument *document, const TmSignature *signature, TmHandOut what, GtkLabel *problem)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = write_copy (document, signature, what, &error);

  tm_dialog_problem_set (problem, error != NULL ? error->message : NULL);
  if (path != NULL)
    tm_show_file (GTK_WIDGET (problem), path, tell_cb);
}
