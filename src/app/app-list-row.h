/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-list-row: a row of a list with a name, a line under it and a word at its end, read out as one
 * sentence.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @under and @end may be "".  @key is kept with the row: tm_list_row_key(). */
GtkWidget *tm_list_row_new (const char *title, const char *under, const char *end, const char *sentence,
                            const char *key) G_GNUC_WARN_UNUSED_RESULT;
const char *tm_list_row_key (GtkListBoxRow *row);

/* A row that only says what the rows after it are; it is skipped by the keyboard. */
GtkWidget *tm_list_row_heading_new (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Takes every row out; TRUE when the focus was on one of them. */
gboolean tm_list_clear (GtkListBox *list);

/* Selects the row with @key, and puts the focus on it if asked; FALSE when there is none. */
gboolean tm_list_select (GtkListBox *list, const char *key, gboolean focus);

/* Tab and Shift+Tab leave @list, as they leave a table; the arrow keys move within it.  A GtkListBox of
 * GTK 4.8 walks through its rows, and so chooses each of them, before it lets the focus go. */
void tm_list_tab_leaves (GtkListBox *list);

G_END_DECLS
