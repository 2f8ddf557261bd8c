/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-toast: telling the person something, from any widget: a toast for what was done, a line that
 * stays until it is closed for an error that needs reading.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A short line that goes away by itself: "Recorded 25.012 mm at mouth 12". */
void tm_window_toast (GtkWidget *any_child, const char *text);

/* A line that stays until it is closed or another error takes its place. */
void tm_window_show_error (GtkWidget *any_child, const char *text);

/* Takes the error line away, if any. */
void tm_window_clear_error (GtkWidget *any_child);

G_END_DECLS
