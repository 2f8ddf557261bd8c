/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauges-page: the Gauges of a job: a stack of views with a switch above it.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_GAUGES_PAGE (tm_gauges_page_get_type ())
G_DECLARE_FINAL_TYPE (TmGaugesPage, tm_gauges_page, TM, GAUGES_PAGE, GtkBox)

GtkWidget *tm_gauges_page_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_gauges_page_set_document (TmGaugesPage *self, TmDocument *document);

/* Shows the view that app-gauges-views names so, and remembers it; the action "gauges.view" does the same.
 * An unknown name does nothing. */
void tm_gauges_page_show_view (TmGaugesPage *self, const char *name);

/* Shows the register with @tag chosen; "" for none in particular. */
void tm_gauges_page_show_gauge (TmGaugesPage *self, const char *tag);

/* The view named so, made when it is first asked for; NULL when there is none. */
GtkWidget *tm_gauges_page_view (TmGaugesPage *self, const char *name);

/* Puts the focus where the shown view is best entered. */
void tm_gauges_page_enter (TmGaugesPage *self);

G_END_DECLS
