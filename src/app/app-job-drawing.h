/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-drawing: the drawing on the Job page: its features at the side, which are placed on it one after
 * the other.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_DRAWING (tm_job_drawing_get_type ())
G_DECLARE_FINAL_TYPE (TmJobDrawing, tm_job_drawing, TM, JOB_DRAWING, GtkBox)

GtkWidget *tm_job_drawing_new (void);

/* @document may be NULL. */
void tm_job_drawing_set_document (TmJobDrawing *self, TmDocument *document);

/* Puts the focus on the drawing, or on the button that adds one. */
void tm_job_drawing_enter (TmJobDrawing *self);

/* The feature @balloon (NULL: none in particular) is chosen and comes into sight. */
void tm_job_drawing_choose (TmJobDrawing *self, const char *balloon);

/* Asks for a file, or takes this one. */
void tm_job_drawing_add (TmJobDrawing *self);
void tm_job_drawing_take (TmJobDrawing *self, const char *path);

G_END_DECLS
