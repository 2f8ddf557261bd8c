/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-event-dialog: an event between two pieces is added, changed or removed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @event, of the job, is changed. */
GtkWindow *tm_event_dialog_present (GtkWidget *any_child, TmDocument *document, TmEvent *event);

/* One is added, that begins as @proposal: its texts are copied; by who measures now, at this time.  NULL: a
 * new tool before the first piece that has no reading. */
GtkWindow *tm_event_dialog_present_new (GtkWidget *any_child, TmDocument *document, const TmEvent *proposal);

G_END_DECLS
