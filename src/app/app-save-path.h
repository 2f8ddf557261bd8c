/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-save-path: where a file is written that was chosen in a dialog.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @path with @ending (".pdf") where it was left away, in capitals or not.  NULL with @error (TM_EDIT_ERROR)
 * when that names another file, which is there: the dialog has asked about overwriting @path alone. */
char *tm_save_path_end (const char *path, const char *ending, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same of what is chosen in @chooser; NULL without @error when that is no file. */
char *tm_save_path_chosen (GtkFileChooserNative *chooser, const char *ending,
                           GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
