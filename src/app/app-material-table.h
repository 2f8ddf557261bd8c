/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-material-table: the figures of one material, line by line, and under them what is to be known of them.
 * Each row is read out as one sentence.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-elastic.h"

G_BEGIN_DECLS

#define TM_TYPE_MATERIAL_TABLE (tm_material_table_get_type ())
G_DECLARE_FINAL_TYPE (TmMaterialTable, tm_material_table, TM, MATERIAL_TABLE, GtkBox)

GtkWidget *tm_material_table_new (void);

/* @table: the tables' material of that name, or NULL. */
void tm_material_table_show (TmMaterialTable *self, const TmElastic *material, const TmElastic *table);

/* The rows; for tests. */
GtkListBox *tm_material_table_list (TmMaterialTable *self);

G_END_DECLS
