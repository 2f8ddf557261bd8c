/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-new: a line in which the requirement of a new feature is typed, for a place on the drawing.
 *
 *   "typed" (char *requirement)  Enter
 *   "closed" ()                  it went out of sight, with a feature or without
 */

#pragma once

#include <gtk/gtk.h>

#include "core-model.h"

G_BEGIN_DECLS

#define TM_TYPE_DRAWING_NEW (tm_drawing_new_get_type ())
G_DECLARE_FINAL_TYPE (TmDrawingNew, tm_drawing_new, TM, DRAWING_NEW, GtkBox)

GtkWidget *tm_drawing_new_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Comes into sight for the feature that will be @balloon of @job, which must live until it is closed. */
void tm_drawing_new_open (TmDrawingNew *self, const TmJob *job, const char *balloon);
void tm_drawing_new_close (TmDrawingNew *self);

G_END_DECLS
