/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-save-path.h"

#include <glib/gi18n-lib.h>

#include "app-edit.h"

char *
tm_save_path_end (const char *path, const char *ending, GError **error)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);
  g_autofree char *ended = NULL;
  g_autofree char *shown = NULL;

  if (g_str_has_suffix (lower, ending))
    return g_strdup (path);
  ended = g_strconcat (path, ending, NULL);
  if (!g_file_test (ended, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&ended);
  shown = g_filename_display_basename (ended);
  g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
               _ ("%s: there is such a file already, and nothing was written; choose it by its whole name to "
                  "write over it, or another name."),
               shown);
  return NULL;
}

char *
tm_save_path_chosen (GtkFileChooserNative *chooser, const char *ending, GError **error)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  return path != NULL ? tm_save_path_end (path, ending, error) : NULL;
}
