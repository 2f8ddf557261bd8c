/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-dialog: the shop's report template, beside the first page that it makes.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @document: the open job, whose pages follow what is saved; or NULL.  NULL, with an error shown, when the
 * book's template cannot be read. */
GtkWindow *tm_template_dialog_present (GtkWidget *any_child, TmBook *book, TmDocument *document);

/* For a caller that has chosen a file: the logo in it, or all of a template out of it. */
void tm_template_dialog_take_logo (GtkWindow *window, const char *path);
void tm_template_dialog_take_file (GtkWindow *window, const char *path);
/* Writes what the rows say; what goes wrong stands in the dialog. */
void tm_template_dialog_write_file (GtkWindow *window, const char *path);

G_END_DECLS
