/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-frame.h"

gboolean
tm_drawing_frame_is_set (const TmDrawingFrame *frame)
{
  return frame->page_width > 0 && frame->page_height > 0 && frame->width > 0 && frame->height > 0;
}

double
tm_drawing_frame_fit_scale (const TmDrawingFrame *frame)
{
  double across, down;

  if (!tm_drawing_frame_is_set (frame))
    return 1;
  across = MAX (frame->width - 2 * TM_FRAME_MARGIN, 1) / frame->page_width;
  down = MAX (frame->height - 2 * TM_FRAME_MARGIN, 1) / frame->page_height;
  return MIN (MIN (across, down), TM_FRAME_MOST_SCALE);
}

/* A page that is smaller than the view stands in its middle; of a larger one no more is left free at an edge
 * than the margin. */
static double
keep_in (double at, double size, double view)
{
  if (size + 2 * TM_FRAME_MARGIN <= view)
    return (view - size) / 2;
  return CLAMP (at, view - size - TM_FRAME_MARGIN, TM_FRAME_MARGIN);
}

static void
settle (TmDrawingFrame *frame)
{
  frame->x = keep_in (frame->x, frame->page_width * frame->scale, frame->width);
  frame->y = keep_in (frame->y, frame->page_height * frame->scale, frame->height);
}

void
tm_drawing_frame_fit (TmDrawingFrame *frame)
{
  frame->scale = tm_drawing_frame_fit_scale (frame);
  frame->fits = TRUE;
  if (!tm_drawing_frame_is_set (frame))
    return;
  frame->x = (frame->width - frame->page_width * frame->scale) / 2;
  frame->y = (frame->height - frame->page_height * frame->scale) / 2;
}

void
tm_drawing_frame_set_page (TmDrawingFrame *frame, double width, double height)
{
  frame->page_width = width;
  frame->page_height = height;
  tm_drawing_frame_fit (frame);
}

void
tm_drawing_frame_set_view (TmDrawingFrame *frame, double width, double height)
{
  double share_x, share_y;

  if (!tm_drawing_frame_is_set (frame) || frame->fits)
    {
      frame->width = width;
      frame->height = height;
      tm_drawing_frame_fit (frame);
      return;
    }
  tm_drawing_frame_to_page (frame, frame->width / 2, frame->height / 2, &share_x, &share_y);
  frame->width = width;
  frame->height = height;
  if (tm_drawing_frame_is_set (frame))
    tm_drawing_frame_centre (frame, share_x, share_y, tm_drawing_frame_fit_scale (frame));
}

void
tm_drawing_frame_zoom (TmDrawingFrame *frame, double factor, double x, double y)
{
  double least = tm_drawing_frame_fit_scale (frame);
  double share_x, share_y, now_x, now_y;

  if (!tm_drawing_frame_is_set (frame) || !(factor > 0))
    return;
  tm_drawing_frame_to_page (frame, x, y, &share_x, &share_y);
  frame->scale = CLAMP (frame->scale * factor, least, MAX (least, TM_FRAME_MOST_SCALE));
  frame->fits = frame->scale <= least;
  tm_drawing_frame_to_view (frame, share_x, share_y, &now_x, &now_y);
  frame->x += x - now_x;
  frame->y += y - now_y;
  settle (frame);
}

void
tm_drawing_frame_pan (TmDrawingFrame *frame, double dx, double dy)
{
  if (!tm_drawing_frame_is_set (frame))
    return;
  frame->x += dx;
  frame->y += dy;
  settle (frame);
}

void
tm_drawing_frame_centre (TmDrawingFrame *frame, double share_x, double share_y, double scale)
{
  double least = tm_drawing_frame_fit_scale (frame);

  if (!tm_drawing_frame_is_set (frame))
    return;
  frame->scale = CLAMP (MAX (scale, frame->scale), least, MAX (least, TM_FRAME_MOST_SCALE));
  frame->fits = frame->scale <= least;
  frame->x = frame->width / 2 - share_x * frame->page_width * frame->scale;
  frame->y = frame->height / 2 - share_y * frame->page_height * frame->scale;
  settle (frame);
}

/* How far to go for @at to lie in @margin…@view - @margin. */
static double
find_way (double at, double view, double margin)
{
  margin = MIN (margin, view / 2);
  if (at < margin)
    return margin - at;
  return at > view - margin ? view - margin - at : 0;
}

void
tm_drawing_frame_reveal (TmDrawingFrame *frame, double share_x, double share_y, double margin)
{
  double x, y;

  tm_drawing_frame_to_view (frame, share_x, share_y, &x, &y);
  tm_drawing_frame_pan (frame, find_way (x, frame->width, margin), find_way (y, frame->height, margin));
}

void
tm_drawing_frame_to_view (const TmDrawingFrame *frame, double share_x, double share_y, double *x, double *y)
{
  *x = frame->x + share_x * frame->page_width * frame->scale;
  *y = frame->y + share_y * frame->page_height * frame->scale;
}

void
tm_drawing_frame_to_page (const TmDrawingFrame *frame, double x, double y, double *share_x, double *share_y)
{
  double across = frame->page_width * frame->scale, down = frame->page_height * frame->scale;

  *share_x = across > 0 ? (x - frame->x) / across : 0;
  *share_y = down > 0 ? (y - frame->y) / down : 0;
}
