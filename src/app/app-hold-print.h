/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-hold-print: the pieces to hold back on paper, with room to sign.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-hold-list.h"

G_BEGIN_DECLS

/* Of each page (one at least) of @width and @height points the line that it begins with, guint; text is
 * wrapped, never cut.  @cr is measured with, its unit a point. */
GArray *tm_hold_print_paginate (const TmHoldList *list, const TmJob *job, cairo_t *cr, double width,
                                double height) G_GNUC_WARN_UNUSED_RESULT;

/* Draws page @page, from 0, of those in black. */
void tm_hold_print_draw (const TmHoldList *list, const TmJob *job, const GArray *starts, cairo_t *cr,
                         double width, double height, guint page);

/* Asks for a printer and prints; @path: writes a PDF there instead, asking nothing.  @job must outlive the
 * call, which ends when everything is drawn.  FALSE with @error where that failed; given up is no error. */
gboolean tm_hold_print_run (GtkWindow *parent, const TmHoldList *list, const TmJob *job, const char *path,
                            GError **error);

G_END_DECLS
