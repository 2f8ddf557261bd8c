/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-table-dialog: features from a pasted spreadsheet block or a CSV file, with what each row was
 * understood as, before anything is added.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

void tm_table_dialog_present (GtkWidget *any_child, TmDocument *document);

G_END_DECLS
