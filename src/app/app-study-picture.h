/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-picture: a picture of a gauge study as a widget, with its words for a screen reader.
 */

#pragma once

#include <gtk/gtk.h>

#include "plot-theme.h"

G_BEGIN_DECLS

#define TM_TYPE_STUDY_PICTURE (tm_study_picture_get_type ())
G_DECLARE_FINAL_TYPE (TmStudyPicture, tm_study_picture, TM, STUDY_PICTURE, GtkWidget)

typedef void (*TmStudyPictureDraw) (gconstpointer plot, cairo_t *cr, double width, double height,
                                    const TmTheme *theme);

GtkWidget *tm_study_picture_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Draws @plot, which is borrowed until another, or NULL, is set; @words are what it shows. */
void tm_study_picture_set (TmStudyPicture *self, gconstpointer plot, TmStudyPictureDraw draw,
                           const char *words);

G_END_DECLS
