/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-press-table: the figures of a press as rows of three columns, each row read out as one sentence.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TM_TYPE_PRESS_TABLE (tm_press_table_get_type ())
G_DECLARE_FINAL_TYPE (TmPressTable, tm_press_table, TM, PRESS_TABLE, GtkBox)

GtkWidget *tm_press_table_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @rows: TmPressRow, only read; @middle: what the middle column is. Nothing is shown for no rows. */
void tm_press_table_show (TmPressTable *self, const GPtrArray *rows, const char *middle);

G_END_DECLS
