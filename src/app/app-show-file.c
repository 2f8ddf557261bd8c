/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-show-file.h"

#include <glib/gi18n-lib.h>

typedef struct {
  GtkWidget *teller;
  TmShowFileFailed failed;
  char *shown; /* the path, to be read */
} Show;

static void
free_show (Show *show)
{
  g_object_unref (show->teller);
  g_free (show->shown);
  g_free (show);
}

static char *
describe (const char *shown, const GError *error)
{
  if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED))
    return g_strdup_printf (_ ("%s: it was not opened (%s); open it from where it lies"), shown,
                            error->message);
  if (g_str_has_suffix (shown, ".pdf"))
    return g_strdup_printf (_ ("%s: this computer has no program that opens it; install one that shows PDF "
                               "files, or open it on another computer"),
                            shown);
  if (g_str_has_suffix (shown, ".xlsx") || g_str_has_suffix (shown, ".csv"))
    return g_strdup_printf (_ ("%s: this computer has no program that opens it; install one for "
                               "spreadsheets, or open it on another computer"),
                            shown);
  return g_strdup_printf (_ ("%s: this computer has no program that opens it; install one for such files, or "
                             "open it on another computer"),
                          shown);
}

static void
shown_cb (GObject *window, GAsyncResult *result, gpointer data)
{
  Show *show = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (!gtk_show_uri_full_finish ((GtkWindow *)window, result, &error)
      && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      text = describe (show->shown, error);
      show->failed (show->teller, text);
    }
  free_show (show);
}

void
tm_show_file (GtkWidget *teller, const char *path, TmShowFileFailed failed)
{
  g_autoptr (GFile) file = NULL;
  g_autofree char *uri = NULL;
  GtkRoot *root;
  Show *show;

  g_return_if_fail (GTK_IS_WIDGET (teller) && path != NULL && failed != NULL);

  file = g_file_new_for_path (path);
  uri = g_file_get_uri (file);
  root = gtk_widget_get_root (teller);
  show = g_new0 (Show, 1);
  show->teller = g_object_ref (teller);
  show->failed = failed;
  show->shown = g_filename_display_name (path);
  gtk_show_uri_full (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, uri, GDK_CURRENT_TIME, NULL, shown_cb,
                     show);
}
