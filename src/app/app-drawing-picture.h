/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-picture: a page of a file, whole, without balloons.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TM_TYPE_DRAWING_PICTURE (tm_drawing_picture_get_type ())
G_DECLARE_FINAL_TYPE (TmDrawingPicture, tm_drawing_picture, TM, DRAWING_PICTURE, GtkWidget)

GtkWidget *tm_drawing_picture_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @name: what is read out. */
void tm_drawing_picture_show (TmDrawingPicture *self, GBytes *content, guint page, const char *name);

G_END_DECLS
