/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-table-dialog: features from a pasted spreadsheet block, a CSV file or a QIF file, with what each row
 * was understood as, before anything is added.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

void tm_table_dialog_present (GtkWidget *any_child, TmDocument *document);

/* Reads @file into the open dialog, as if it had been chosen there. */
void tm_table_dialog_load (GtkWindow *dialog, GFile *file);

G_END_DECLS
