/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-hold-dialog: the pieces to hold back, with what is decided of each; printed and exported.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-hold-list.h"

G_BEGIN_DECLS

/* Keeps a reference of @list. */
GtkWindow *tm_hold_dialog_present (GtkWidget *any_child, TmDocument *document, TmHoldList *list);

/* Writes the table to @path, as the person would; FALSE with @error where it cannot be written. */
gboolean tm_hold_dialog_write (TmDocument *document, const TmHoldList *list, const char *path,
                               GError **error);

G_END_DECLS
