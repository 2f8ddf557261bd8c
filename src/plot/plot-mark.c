/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-mark.h"

#include <math.h>

/* More hatch lines than this on one rectangle help nobody. */
#define MOST_HATCHES 2000.0

const TmColour *
tm_mark_colour (const TmTheme *theme, TmVerdict verdict)
{
  switch (verdict)
    {
    case TM_VERDICT_IN:
      return &theme->in;
    case TM_VERDICT_OUT:
      return &theme->out;
    case TM_VERDICT_TOO_CLOSE:
      return &theme->close;
    case TM_VERDICT_NOT_MEASURED:
    case TM_N_VERDICTS:
    default:
      return &theme->dim;
    }
}

static void
trace_circle (cairo_t *cr, double x, double y, double radius)
{
  cairo_new_path (cr);
  cairo_arc (cr, x, y, radius, 0.0, 2.0 * G_PI);
  cairo_close_path (cr);
}

static void
trace_arrow (cairo_t *cr, double x, double y, double radius, TmPoint point)
{
  static const double turns[] = { G_PI, 0.0, -G_PI / 2.0, G_PI / 2.0 };

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, turns[point]);
  cairo_new_path (cr);
  cairo_move_to (cr, radius * 1.15, 0.0);
  cairo_line_to (cr, -radius * 0.85, -radius * 1.1);
  cairo_line_to (cr, -radius * 0.85, radius * 1.1);
  cairo_close_path (cr);
  cairo_restore (cr);
}

static void
trace_diamond (cairo_t *cr, double x, double y, double radius)
{
  cairo_new_path (cr);
  cairo_move_to (cr, x, y - radius * 1.2);
  cairo_line_to (cr, x + radius * 1.2, y);
  cairo_line_to (cr, x, y + radius * 1.2);
  cairo_line_to (cr, x - radius * 1.2, y);
  cairo_close_path (cr);
}

static void
trace_mark (cairo_t *cr, double x, double y, double radius, TmVerdict verdict, TmPoint point)
{
  if (verdict == TM_VERDICT_OUT && point == TM_POINT_NONE)
    trace_diamond (cr, x, y, radius);
  else if (verdict == TM_VERDICT_OUT)
    trace_arrow (cr, x, y, radius, point);
  else
    trace_circle (cr, x, y, radius);
}

static void
fill_hatched (const TmPen *pen, double x, double y, double radius, const TmColour *colour)
{
  cairo_save (pen->cr);
  cairo_clip_preserve (pen->cr);
  tm_pen_colour (pen, &pen->theme->surface, 1.0);
  cairo_paint (pen->cr);
  tm_hatch_draw (pen, x - radius, y - radius, radius * 2.0, radius * 2.0, radius * 0.62, colour);
  cairo_restore (pen->cr);
}

void
tm_mark_draw (const TmPen *pen, double x, double y, double radius, TmVerdict verdict, TmPoint point)
{
  const TmColour *colour = tm_mark_colour (pen->theme, verdict);

  if (!(radius > 0))
    return;
  if (verdict == TM_VERDICT_NOT_MEASURED)
    {
      tm_mark_draw_hollow (pen, x, y, radius, verdict, point);
      return;
    }
  cairo_save (pen->cr);
  if (verdict == TM_VERDICT_TOO_CLOSE)
    {
      trace_mark (pen->cr, x, y, radius, verdict, point);
      fill_hatched (pen, x, y, radius, colour);
      trace_mark (pen->cr, x, y, radius, verdict, point);
      cairo_set_line_width (pen->cr, MAX (1.2, radius * 0.36));
      tm_pen_colour (pen, colour, 1.0);
      cairo_stroke (pen->cr);
    }
  else
    {
      trace_mark (pen->cr, x, y, radius, verdict, point);
      tm_pen_colour (pen, colour, 1.0);
      cairo_fill (pen->cr);
    }
  cairo_restore (pen->cr);
}

void
tm_mark_draw_hollow (const TmPen *pen, double x, double y, double radius, TmVerdict verdict, TmPoint point)
{
  if (!(radius > 0))
    return;
  cairo_save (pen->cr);
  trace_mark (pen->cr, x, y, radius, verdict, point);
  tm_pen_colour (pen, &pen->theme->surface, 1.0);
  cairo_fill_preserve (pen->cr);
  tm_pen_colour (pen, tm_mark_colour (pen->theme, verdict), 1.0);
  cairo_set_line_width (pen->cr, MAX (1.2, radius * 0.36));
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

void
tm_whisker_draw (const TmPen *pen, double from, double to, double y, double left, double right, double bar,
                 const TmColour *colour)
{
  if (!isfinite (from) || !isfinite (to) || to < left || from > right)
    return;
  cairo_save (pen->cr);
  cairo_new_path (pen->cr);
  cairo_move_to (pen->cr, MAX (from, left), y);
  cairo_line_to (pen->cr, MIN (to, right), y);
  if (from >= left)
    {
      cairo_move_to (pen->cr, from, y - bar);
      cairo_line_to (pen->cr, from, y + bar);
    }
  if (to <= right)
    {
      cairo_move_to (pen->cr, to, y - bar);
      cairo_line_to (pen->cr, to, y + bar);
    }
  tm_pen_colour (pen, colour, 1.0);
  cairo_set_line_width (pen->cr, 2.0);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

void
tm_hatch_draw (const TmPen *pen, double x, double y, double width, double height, double gap,
               const TmColour *colour)
{
  double line;

  if (!(width > 0) || !(height > 0) || !(gap > 0))
    return;
  gap = MAX (gap, (width + height) / MOST_HATCHES);
  line = MAX (0.8, gap * 0.18);
  cairo_save (pen->cr);
  cairo_new_path (pen->cr);
  cairo_rectangle (pen->cr, x, y, width, height);
  cairo_clip (pen->cr);
  /* Each line only as long as it shows, and a little over: a line that is clipped away costs as much to draw
   * as one that is seen, and in a high and narrow zone most of each would be. */
  for (double at = x - height; at < x + width; at += gap)
    {
      const double from = MAX (0.0, x - at - line * 2.0);
      const double to = MIN (height, x + width - at + line * 2.0);

      cairo_move_to (pen->cr, at + from, y + height - from);
      cairo_line_to (pen->cr, at + to, y + height - to);
    }
  tm_pen_colour (pen, colour, 1.0);
  cairo_set_line_width (pen->cr, line);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}
