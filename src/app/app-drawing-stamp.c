/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-stamp.h"

#include <math.h>

/* What marks and lines reach beyond a balloon and its leader line. */
#define AROUND 10.0
/* A long leader line would make a large picture of almost nothing: it is drawn each time. */
#define MOST_AREA (240.0 * 240.0)
/* A leader line that differs by less looks the same. */
#define SAME 0.25

static gboolean
same_leader (const TmBalloon *a, const TmBalloon *b)
{
  return a->led == b->led
         && (!a->led
             || (fabs ((a->to_x - a->x) - (b->to_x - b->x)) < SAME
                 && fabs ((a->to_y - a->y) - (b->to_y - b->y)) < SAME));
}

static gboolean
looks_so (const TmDrawingStamp *stamp, const TmBalloon *balloon, int device)
{
  const TmBalloon *of = &stamp->of;

  return stamp->surface != NULL && stamp->device == device && of->text == balloon->text
         && of->verdict == balloon->verdict && of->point == balloon->point && of->plain == balloon->plain
         && of->chosen == balloon->chosen && of->focused == balloon->focused && same_leader (of, balloon);
}

void
tm_drawing_stamp_clear (TmDrawingStamp *stamp)
{
  g_clear_pointer (&stamp->surface, cairo_surface_destroy);
}

/* FALSE: it is too large for a picture. */
static gboolean
make (TmDrawingStamp *stamp, const TmBalloon *balloon, int device, const TmTheme *theme)
{
  double across = tm_balloon_half_width (balloon->text, theme) + AROUND;
  double down = tm_balloon_radius (theme) + AROUND;
  double dx = balloon->led ? balloon->to_x - balloon->x : 0,
         dy = balloon->led ? balloon->to_y - balloon->y : 0;
  double left = floor (MIN (-across, dx - AROUND)), top = floor (MIN (-down, dy - AROUND));
  double width = ceil (MAX (across, dx + AROUND)) - left, height = ceil (MAX (down, dy + AROUND)) - top;
  TmBalloon at = *balloon;
  cairo_t *cr;

  tm_drawing_stamp_clear (stamp);
  if (!(width * height <= MOST_AREA))
    return FALSE;
  stamp->surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int)width * device, (int)height * device);
  cairo_surface_set_device_scale (stamp->surface, device, device);
  stamp->of = *balloon;
  stamp->device = device;
  stamp->left = left;
  stamp->top = top;
  at.x = -left;
  at.y = -top;
  at.to_x = at.x + dx;
  at.to_y = at.y + dy;
  cr = cairo_create (stamp->surface);
  tm_balloon_draw (&at, cr, theme);
  cairo_destroy (cr);
  return TRUE;
}

void
tm_drawing_stamp_draw (TmDrawingStamp *stamp, const TmBalloon *balloon, cairo_t *cr, int device,
                       const TmTheme *theme)
{
  if (!looks_so (stamp, balloon, device) && !make (stamp, balloon, device, theme))
    {
      tm_balloon_draw (balloon, cr, theme);
      return;
    }
  cairo_set_source_surface (cr, stamp->surface, floor (balloon->x + 0.5) + stamp->left,
                            floor (balloon->y + 0.5) + stamp->top);
  cairo_paint (cr);
}
