/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-frame: which part of a page a view shows, and how large.  Plain numbers, no screen.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Pixels to a point that a drawing may be enlarged to: nine times its size on paper. */
#define TM_FRAME_MOST_SCALE 12.0
/* Pixels to a point at which a drawing has its size on paper, of a screen with 96 dots to the inch. */
#define TM_FRAME_PAPER_SCALE (96.0 / 72.0)
/* Pixels that stay around a page that fits. */
#define TM_FRAME_MARGIN 16.0

/* Begin with TM_FRAME_NONE, then set page and view. */
typedef struct {
  double page_width, page_height; /* points, above 0 once there is a page */
  double width, height;           /* of the view, pixels */
  double scale;                   /* pixels to a point */
  double x, y;                    /* of the page's upper left corner in the view, pixels */
  gboolean fits;                  /* it goes on fitting when the view gets another size */
} TmDrawingFrame;

#define TM_FRAME_NONE ((TmDrawingFrame) { .fits = TRUE })

gboolean tm_drawing_frame_is_set (const TmDrawingFrame *frame);

/* Another page, shown whole. */
void tm_drawing_frame_set_page (TmDrawingFrame *frame, double width, double height);

/* Another size of the view: a page that fits goes on to, else what was in the middle stays there. */
void tm_drawing_frame_set_view (TmDrawingFrame *frame, double width, double height);

/* The scale at which the page fits. */
double tm_drawing_frame_fit_scale (const TmDrawingFrame *frame);
void tm_drawing_frame_fit (TmDrawingFrame *frame);

/* @factor above 1 enlarges; what is at @x, @y of the view stays there.  No smaller than fits, no larger than
 * TM_FRAME_MOST_SCALE. */
void tm_drawing_frame_zoom (TmDrawingFrame *frame, double factor, double x, double y);

/* Moves the page by so many pixels, as far as there is more of it to see. */
void tm_drawing_frame_pan (TmDrawingFrame *frame, double dx, double dy);

/* Brings a point, given in shares 0..1 of the page, to the middle at @scale, or at the present one when that
 * is larger. */
void tm_drawing_frame_centre (TmDrawingFrame *frame, double share_x, double share_y, double scale);

/* Pans no further than brings the point into sight, @margin pixels from the edge. */
void tm_drawing_frame_reveal (TmDrawingFrame *frame, double share_x, double share_y, double margin);

/* Between shares of the page and pixels of the view. */
void tm_drawing_frame_to_view (const TmDrawingFrame *frame, double share_x, double share_y, double *x,
                               double *y);
void tm_drawing_frame_to_page (const TmDrawingFrame *frame, double x, double y, double *share_x,
                               double *share_y);

G_END_DECLS
