/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-tool-dialog: the window for one cutting tool.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Called after the tool was saved under @name, with the widget that the dialog was presented over. */
typedef void (*TmToolSaved) (GtkWidget *any_child, const char *name);

/* Shows the tool called @name, or an empty form for a new one when it is NULL, over the window that
 * @any_child is in.  @saved (may be NULL) is called only while @any_child is still there. */
GtkWindow *tm_tool_dialog_present (GtkWidget *any_child, TmDocument *document, const char *name,
                                   TmToolSaved saved);

G_END_DECLS
