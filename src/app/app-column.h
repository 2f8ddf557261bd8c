/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-column: around words that wrap and stand in a row with others.  A row asks what it holds how narrow it
 * can be at the height that it has, and GTK finds that for each label by setting its text again and again:
 * felt at every key.  A column answers with the width that its child wants at any height.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TM_TYPE_COLUMN (tm_column_get_type ())
G_DECLARE_FINAL_TYPE (TmColumn, tm_column, TM, COLUMN, GtkWidget)

/* Takes @child, and its wish to expand as it is now; hidden while the child is. */
GtkWidget *tm_column_new (GtkWidget *child) G_GNUC_WARN_UNUSED_RESULT;

/* The same for words that need no width of their own: they take what others in the column leave them. */
GtkWidget *tm_column_new_filling (GtkWidget *child) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
