/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-panel-line: a line of words in the narrow column beside the Bench.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Adds an empty line to @box; it fills the width of the column, wraps, and never asks for more. */
GtkLabel *tm_panel_line_add (GtkWidget *box, const char *css_class);

/* Shows @text, which is taken, or hides the line where there is none.  Only what has changed is set, so that
 * only that is laid out again. */
void tm_panel_line_take (GtkLabel *line, char *text);

G_END_DECLS
