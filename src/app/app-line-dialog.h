/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-line-dialog: adding, changing or removing one line of a method's budget.
 */

#pragma once

#include "app-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @line NULL: a new line of the method called @method. */
GtkWindow *tm_line_dialog_present (GtkWidget *any_child, TmDocument *document, const char *method,
                                   TmBudgetLine *line);

G_END_DECLS
