/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-show-file: a file in the program that the desktop has for it, and what to say where it has none.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @text: a line with the path, and what to do. */
typedef void (*TmShowFileFailed) (GtkWidget *teller, const char *text);

/* Opens the file at @path, over the window of @teller, which is held until the desktop has answered; @failed
 * is then called on the main loop where the file was not opened. */
void tm_show_file (GtkWidget *teller, const char *path, TmShowFileFailed failed);

G_END_DECLS
