/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-dialog: all fields of one gauge, to be added or changed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @tag: of the gauge to change; NULL adds one.  @copy_of: the tag of the gauge whose figures a new one
 * starts with, or NULL.  Returns: the dialog. */
GtkWidget *tm_gauge_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag,
                                    const char *copy_of);

G_END_DECLS
