/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-events-dialog: what happened between the pieces of a job, as a list; one is added, changed or removed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

GtkWindow *tm_events_dialog_present (GtkWidget *any_child, TmDocument *document);

G_END_DECLS
