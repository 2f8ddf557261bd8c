/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-access: what assistive tools read of GTK's and libadwaita's own composite widgets.  In GTK 4.8
 * the part that takes the focus has no name unless it is given one.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* A new row for one line of text whose text, name (@title) and focus can be read. */
AdwEntryRow *tm_access_entry_row_new (const char *title) G_GNUC_WARN_UNUSED_RESULT;

/* A new row for a choice whose name says what is chosen. */
AdwComboRow *tm_access_combo_row_new (const char *title) G_GNUC_WARN_UNUSED_RESULT;

/* Names @drop and the button inside it, which has the focus: "Unit: millimetre", then as chosen. */
void tm_access_name_drop_down (GtkDropDown *drop, const char *name);

/* Names @view and the list inside it, which has the focus. */
void tm_access_name_column_view (GtkColumnView *view, const char *name);

/* Brings the row at @position into view: GTK 4.8 has the action on the inner list alone. */
void tm_access_scroll_column_view (GtkColumnView *view, guint position);

/* Names the row of a list or table that shows @child, the child of one of its list items. */
void tm_access_name_row (GtkWidget *child, const char *name);

/* Shows the page @name of @stack, and takes the others out of what is read: GTK 4.8 tells an assistive
 * tool of every page of a stack, seen or not. */
void tm_access_show_page (GtkStack *stack, const char *name);

/* Takes the pictures inside @widget, which only decorate, out of what is read, and the list with which
 * a combo row shows its choice.  Call it before the widget is shown. */
void tm_access_hide_decoration (GtkWidget *widget);

/* Names every @type inside @widget, such as the list of a group of rows. */
void tm_access_name_inside (GtkWidget *widget, GType type, const char *name);

G_END_DECLS
