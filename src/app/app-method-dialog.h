/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-method-dialog: adding, changing or removing a method.
 */

#pragma once

#include "app-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @name NULL: a new method, that starts with the gauge tagged @tag unless that is NULL. */
GtkWindow *tm_method_dialog_present (GtkWidget *any_child, TmDocument *document, const char *name,
                                     const char *tag);

G_END_DECLS
