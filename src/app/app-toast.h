/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-toast: telling the person something, from any widget: a toast for what was done, a line that
 * stays until it is closed for an error that needs reading.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* A short line that goes away by itself: "Recorded 25.012 mm at mouth 12". */
void tm_window_toast (GtkWidget *any_child, const char *text);

/* Has @overlay say @text as its description, for whoever cannot look at a toast before it has gone: what was
 * said last stays there to be read. */
void tm_toast_keep_words (AdwToastOverlay *overlay, const char *text);

/* A line that stays until it is closed or another error takes its place. */
void tm_window_show_error (GtkWidget *any_child, const char *text);

/* Takes the error line away, if any. */
void tm_window_clear_error (GtkWidget *any_child);

G_END_DECLS
