/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The points of a run chart, each by its verdict.
 */

#include <math.h>

#include "plot-chart-private.h"

#define WHISKER_SLOT 4.0 /* pixels a piece: less, and whiskers would touch */

/* From the smallest mean of a column to the largest, and the mean of all; whiskers have no room. */
static void
draw_columns (const TmChartDrawing *d)
{
  const TmChartPlot *plot = d->plot;
  const double base = (double)plot->batch->series.reference;
  const TmColour *in = &d->frame.pen.theme->in;
  const TmChartThread bars = {
    .mean = plot->means, .low = plot->means, .high = plot->means, .base = base, .colour = in, .opacity = 0.7
  };
  const TmChartThread middle
      = { .mean = plot->means, .base = base, .colour = &d->frame.pen.theme->surface, .opacity = 1.0 };

  tm_chart_draw_thread (&d->frame, plot, &bars);
  if (plot->n_items > 4 * (d->frame.right - d->frame.left)) /* a mean of few is no line yet */
    tm_chart_draw_thread (&d->frame, plot, &middle);
}

static TmFrameMark
get_mark (const TmChartDrawing *d, guint index)
{
  const TmChartItem *item = &d->plot->items[index];
  const TmFrameMark mark = { .x = tm_frame_piece (&d->frame, item->x),
                             .mean = tm_chart_count (d->plot, item->mean),
                             .low = tm_chart_count (d->plot, item->low),
                             .high = tm_chart_count (d->plot, item->high),
                             .verdict = item->verdict,
                             .point = item->point };

  return mark;
}

static double
find_radius (const TmChartDrawing *d)
{
  const double each = d->plot->n_items > 0 ? (double)d->plot->batch->series.n_points / d->plot->n_items : 1.0;

  return CLAMP (tm_frame_slot (&d->frame) * each * 0.33, 1.4, d->frame.pen.size * 0.29);
}

/* The first of those out that stands at or right of @x. */
static guint
find_out (const TmChartDrawing *d, guint from, double x)
{
  guint low = from, high = d->plot->outs->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (tm_frame_piece (&d->frame, d->plot->items[g_array_index (d->plot->outs, guint, middle)].x) < x)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Out, in a picture too dense for points: arrows that do not cover each other. */
static void
draw_outs (const TmChartDrawing *d)
{
  for (guint i = 0; i < d->plot->outs->len;)
    {
      TmFrameMark mark = get_mark (d, g_array_index (d->plot->outs, guint, i));

      mark.mean = mark.point == TM_POINT_DOWN ? mark.low : mark.high;
      tm_frame_draw_mark (&d->frame, &mark, 3.0, FALSE);
      i = MAX (i + 1, find_out (d, i, mark.x + 9.0));
    }
}

/* Points that are in make one path: they are most. */
static void
draw_dots (const TmChartDrawing *d, double radius)
{
  cairo_t *cr = d->frame.pen.cr;

  cairo_new_path (cr);
  for (guint i = 0; i < d->plot->n_items; i++)
    {
      const TmChartItem *item = &d->plot->items[i];
      const double y = tm_chart_find_y (d, item->mean), x = tm_frame_piece (&d->frame, item->x);

      if (!isfinite (item->mean) || item->verdict != TM_VERDICT_IN || !tm_frame_holds (&d->frame, y))
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, x, y, radius, 0.0, 2.0 * G_PI);
    }
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->in, 1.0);
  cairo_fill (cr);
}

static void
draw_whiskers (const TmChartDrawing *d, double radius)
{
  cairo_t *cr = d->frame.pen.cr;

  cairo_new_path (cr);
  for (guint i = 0; i < d->plot->n_items; i++)
    {
      const TmChartItem *item = &d->plot->items[i];
      const double x = tm_frame_piece (&d->frame, item->x);

      if (!isfinite (item->mean) || item->verdict != TM_VERDICT_IN || !(item->high - item->low > 0))
        continue;
      cairo_move_to (cr, x, tm_frame_keep (&d->frame, tm_chart_find_y (d, item->high)));
      cairo_line_to (cr, x, tm_frame_keep (&d->frame, tm_chart_find_y (d, item->low)));
    }
  cairo_set_line_width (cr, CLAMP (radius * 0.5, 1.0, 1.8));
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->in, 1.0);
  cairo_stroke (cr);
}

static void
draw_single (const TmChartDrawing *d)
{
  const TmChartPlot *plot = d->plot;
  const double radius = find_radius (d);
  const gboolean whisker
      = tm_frame_slot (&d->frame) * plot->batch->series.n_points / MAX (1, plot->n_items) >= WHISKER_SLOT;
  const TmTheme *theme = d->frame.pen.theme;
  const TmChartThread thread = { .mean = plot->means,
                                 .base = (double)plot->batch->series.reference,
                                 .width = 1.0,
                                 .colour = &theme->in,
                                 .opacity = theme->dark ? 0.9 : 0.6 };

  tm_chart_draw_thread (&d->frame, plot, &thread);
  if (whisker)
    draw_whiskers (d, radius);
  draw_dots (d, radius);
  for (guint i = 0; i < plot->n_items; i++)
    {
      const TmChartItem *item = &plot->items[i];
      TmFrameMark mark;

      if (!isfinite (item->mean)
          || (item->verdict == TM_VERDICT_IN && tm_frame_holds (&d->frame, tm_chart_find_y (d, item->mean))))
        continue;
      mark = get_mark (d, i);
      tm_frame_draw_mark (&d->frame, &mark, radius, whisker);
    }
}

void
tm_chart_draw_points (const TmChartDrawing *d)
{
  if (!tm_chart_is_dense (&d->frame, d->plot))
    {
      draw_single (d);
      return;
    }
  draw_columns (d);
  draw_outs (d);
}
