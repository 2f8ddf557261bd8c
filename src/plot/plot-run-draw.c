/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-run-private.h"

typedef struct {
  TmFrame frame;
  const TmRunPlot *plot;
  TmFrameBand band;
  double event_y; /* middle of the upper line of event labels; NAN: no room */
  guint event_rows;
} Drawing;

/* The places of one piece stand side by side in its slot. */
static double
find_x (const Drawing *d, const TmRunPoint *point)
{
  const double places = MAX (1, d->plot->places);

  return d->frame.left + (point->piece + (point->place - 0.5) / places) * tm_frame_slot (&d->frame);
}

static double
find_widest (Drawing *d)
{
  const TmTextStyle bold = { .bold = TRUE }, plain = { 0 };
  double widest = tm_text_width (&d->frame.pen, _ ("target"), &plain);

  widest = MAX (widest, tm_text_width (&d->frame.pen, d->plot->lower_text, &bold));
  return MAX (widest, tm_text_width (&d->frame.pen, d->plot->upper_text, &bold));
}

static const TmFrameEvent *
get_events (const TmRunPlot *plot)
{
  return (const TmFrameEvent *)(gconstpointer)plot->events->data;
}

static void
place_parts (Drawing *d)
{
  TmFrame *frame = &d->frame;
  const double padding = MIN (frame->pen.size * 0.7, frame->height / 10.0);
  const gboolean tall = tm_frame_is_tall (frame);

  frame->axis = d->plot->axis;
  frame->slots = MAX (1, d->plot->serials->len);
  tm_frame_place_columns (frame, find_widest (d));
  frame->top = padding;
  d->event_y = NAN;
  if (tall && d->plot->events->len > 0)
    {
      d->event_y = frame->top + frame->pen.line / 2.0;
      d->event_rows = tm_frame_event_rows (frame, get_events (d->plot), d->plot->events->len);
      frame->top += frame->pen.line * (d->event_rows + 0.2);
    }
  frame->bottom = frame->height - padding - (tall ? frame->pen.line + frame->pen.size * 0.3 : 0.0);
}

static char *
name_piece_cb (gconstpointer data, guint piece)
{
  return g_strdup (g_ptr_array_index ((const GPtrArray *)data, piece));
}

static void
draw_thread (const Drawing *d)
{
  cairo_t *cr = d->frame.pen.cr;
  guint last = G_MAXUINT;

  if (d->plot->places > 1)
    return;
  cairo_new_path (cr);
  for (guint i = 0; i < d->plot->points->len; i++)
    {
      const TmRunPoint *point = &g_array_index (d->plot->points, TmRunPoint, i);
      const double y = tm_frame_keep (&d->frame, tm_frame_at (&d->frame, point->mean));
      if (last != G_MAXUINT && point->piece == last + 1)
        cairo_line_to (cr, find_x (d, point), y);
      else
        cairo_move_to (cr, find_x (d, point), y);
      last = point->piece;
    }
  cairo_set_line_width (cr, 1.0);
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->in, 0.6);
  cairo_stroke (cr);
}

static void
draw_points (const Drawing *d)
{
  const double room = tm_frame_slot (&d->frame) / MAX (1, d->plot->places);
  const double radius = CLAMP (room * 0.35, 1.5, d->frame.pen.size * 0.33);

  draw_thread (d);
  for (guint i = 0; i < d->plot->points->len; i++)
    {
      const TmRunPoint *point = &g_array_index (d->plot->points, TmRunPoint, i);
      const TmFrameMark mark
          = { find_x (d, point), point->mean, point->smallest, point->largest, point->verdict, point->point };

      tm_frame_draw_mark (&d->frame, &mark, radius, TRUE);
    }
}

static void
draw_all (Drawing *d)
{
  const TmLimits *limits = &d->plot->limits;

  tm_frame_draw_zones (&d->frame, &d->band);
  tm_frame_draw_limits (&d->frame, &d->band);
  tm_frame_draw_target (&d->frame, &d->band);
  /* The limits alone give the scale where both are there. */
  if (!limits->has_lower || !limits->has_upper)
    tm_frame_draw_ticks (&d->frame, tm_frame_most_ticks (&d->frame), d->plot->decimals);
  tm_frame_draw_pieces (&d->frame, d->plot->serials->len, name_piece_cb, d->plot->serials);
  tm_frame_draw_events (&d->frame, get_events (d->plot), d->plot->events->len, d->event_y);
  draw_points (d);
}

void
tm_run_plot_draw (const TmRunPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  Drawing d = { .plot = plot };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!tm_frame_begin (&d.frame, cr, width, height, theme))
    return;
  d.band = (TmFrameBand) {
    plot->limits,  plot->lower_text, plot->upper_text, plot->guard, plot->has_target ? plot->target : NAN,
    plot->decimals
  };
  place_parts (&d);
  if (plot->has_axis)
    draw_all (&d);
  else
    tm_frame_draw_empty (&d.frame, _ ("no sizes yet"));
  tm_frame_end (&d.frame);
}
