/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-table-item: one row of a table as it was understood, as an object for GListModel.
 */

#pragma once

#include <gtk/gtk.h>

#include "exchange-table.h"

G_BEGIN_DECLS

#define TM_TYPE_TABLE_ITEM (tm_table_item_get_type ())
G_DECLARE_FINAL_TYPE (TmTableItem, tm_table_item, TM, TABLE_ITEM, GObject)

/* Copies what is shown: it outlives the preview. */
TmTableItem *tm_table_item_new (const TmTableRow *row);

/* Line, number, requirement, what it was understood as. */
void tm_table_add_columns (GtkColumnView *view);

G_END_DECLS
