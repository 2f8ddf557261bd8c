/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-drawing-private: the parts of the view; tests look in here too.
 */

#pragma once

#include "app-drawing-list.h"
#include "app-drawing-new.h"
#include "app-drawing-view.h"
#include "app-job-drawing.h"

G_BEGIN_DECLS

struct _TmJobDrawing {
  GtkBox parent_instance;

  TmDocument *document;
  double new_x, new_y; /* of the feature being typed, shares of the page */
  gboolean listing;    /* the drop-down is being filled */

  TmDrawingList *list;
  TmDrawingView *view;
  TmDrawingNew *new_feature;
  GtkStack *stack;    /* "empty", "drawing" */
  GtkStack *paper;    /* "view", "problem" */
  GtkWidget *problem; /* AdwStatusPage */
  GtkWidget *add;     /* on the empty page */
  GtkDropDown *drop;
  GtkLabel *percent;
  GtkLabel *hint;
};

/* app-job-drawing-bar.c: the line over the drawing. */
GtkWidget *tm_job_drawing_build_bar (TmJobDrawing *self);
void tm_job_drawing_show_drawings (TmJobDrawing *self);
void tm_job_drawing_show_percent (TmJobDrawing *self);
/* What to do next. */
void tm_job_drawing_show_hint (TmJobDrawing *self);

G_END_DECLS
