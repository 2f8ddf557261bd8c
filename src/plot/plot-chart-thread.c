/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values over the pieces: joined points, or, where they stand too dense for points, columns of pixels.
 */

#include <math.h>

#include "plot-chart-private.h"

#define DENSE_SLOT 2.2 /* pixels a piece: less, and columns are drawn in place of points */
#define MOST_REACH 3.0 /* pixels that a bar reaches back over empty columns */

gboolean
tm_chart_is_dense (const TmFrame *frame, const TmChartPlot *plot)
{
  const double each = plot->n_items > 0 ? (double)plot->batch->series.n_points / plot->n_items : 1.0;

  return tm_frame_slot (frame) * each < DENSE_SLOT;
}

static double
find_thread_y (const TmFrame *frame, const TmChartThread *thread, double value)
{
  const double y = tm_frame_at (frame, thread->base + value);

  return thread->kept ? tm_frame_keep (frame, y) : y;
}

static void
trace_points (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint stretch = G_MAXUINT;

  for (guint i = 0; i < plot->n_items; i++)
    {
      const TmChartItem *item = &plot->items[i];
      const double value = tm_envelope_value (thread->mean, i);
      double x, y;

      if (!isfinite (value))
        continue;
      x = tm_frame_piece (frame, item->x);
      y = find_thread_y (frame, thread, value);
      if (item->stretch == stretch)
        cairo_line_to (frame->pen.cr, x, y);
      else
        cairo_move_to (frame->pen.cr, x, y);
      stretch = item->stretch;
    }
}

/* Of many items a column ends at a round number of them: by less than an eighth of a pixel elsewhere, and the
 * envelope need not look at single items. */
static guint
find_column_end (const TmFrame *frame, const TmChartPlot *plot, double x)
{
  const double slot = tm_frame_slot (frame);
  const double each = plot->n_items / MAX (1.0, plot->batch->series.n_points) / slot;
  const guint end = tm_chart_find_item (plot, (x + 1.0 - frame->left) / slot - 0.5);
  guint grain = 1;

  while (grain * TM_ENVELOPE_FAN * 4.0 <= each)
    grain *= TM_ENVELOPE_FAN;
  return end == plot->n_items ? end : end / grain * grain;
}

/* The bar of the column drawn last; x NAN: none of this stretch. */
typedef struct {
  double x, top, bottom;
} Bar;

/* Reaches back to the bar before it, as a line would: where pieces that were not measured lie between, single
 * values would be lone dots. */
static void
add_bar (cairo_t *cr, const Bar *before, const Bar *bar)
{
  double top = bar->top, bottom = bar->bottom, from = bar->x;

  if (isfinite (before->x))
    {
      top = MIN (top, before->bottom);
      bottom = MAX (bottom, before->top);
      from = MAX (before->x + 1.0, bar->x - MOST_REACH);
    }
  cairo_rectangle (cr, from, top, bar->x + 1.0 - from, bottom - top);
}

/* One bar for each column of pixels, from the smallest to the largest that fall on it. */
static void
trace_columns (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  Bar before = { .x = NAN };
  guint from = 0, stretch = G_MAXUINT;

  for (double x = floor (frame->left); x < frame->right; x += 1.0)
    {
      const guint to = find_column_end (frame, plot, x);
      const TmSpan low = tm_envelope_span (thread->low, from, to);
      const TmSpan high = thread->high == thread->low ? low : tm_envelope_span (thread->high, from, to);
      Bar bar
          = { x, tm_frame_at (frame, thread->base + high.high), tm_frame_at (frame, thread->base + low.low) };

      if (from < to && plot->items[from].stretch != stretch)
        before.x = NAN;
      stretch = from < to ? plot->items[to - 1].stretch : stretch;
      from = to;
      if (low.n == 0 || high.n == 0 || bar.bottom < frame->top || bar.top > frame->bottom)
        continue;
      bar.top = floor (tm_frame_keep (frame, bar.top));
      bar.bottom = MAX (bar.top + 1.0, ceil (tm_frame_keep (frame, bar.bottom)));
      add_bar (frame->pen.cr, &before, &bar);
      before = bar;
    }
}

/* A level stroke from one column to another, whole pixels. */
typedef struct {
  double from, to, y; /* y NAN: none is open */
} Step;

static void
end_step (cairo_t *cr, Step *step)
{
  if (isfinite (step->y))
    cairo_rectangle (cr, step->from, step->y, step->to - step->from, 1.0);
  step->y = NAN;
}

/* Columns of one height make one stroke; where the next lies elsewhere, its first pixel reaches over. */
static void
add_step (cairo_t *cr, Step *step, double x, double y, gboolean joined)
{
  const double before = step->y;

  if (joined && isfinite (before) && fabs (y - before) < 0.5)
    {
      step->to = x + 1.0;
      return;
    }
  end_step (cr, step);
  if (joined && isfinite (before) && fabs (y - before) > 1.5)
    cairo_rectangle (cr, x, MIN (y, before) + 1.0, 1.0, fabs (y - before) - 1.0);
  *step = (Step) { x, x + 1.0, y };
}

/* Steps of whole pixels from one column to the next: at this density no different from a line, and many times
 * cheaper. */
static void
trace_column_means (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint from = 0, stretch = G_MAXUINT;
  Step step = { 0.0, 0.0, NAN };

  for (double x = floor (frame->left); x < frame->right; x += 1.0)
    {
      const guint to = find_column_end (frame, plot, x);
      const TmSpan mean = tm_envelope_span (thread->mean, from, to);
      const double y = mean.n > 0 ? find_thread_y (frame, thread, mean.sum / mean.n) : NAN;

      if (mean.n > 0 && tm_frame_holds (frame, y))
        add_step (frame->pen.cr, &step, x, floor (y), plot->items[from].stretch == stretch);
      else if (mean.n > 0)
        end_step (frame->pen.cr, &step);
      if (mean.n > 0)
        stretch = plot->items[to - 1].stretch;
      from = to;
    }
  end_step (frame->pen.cr, &step);
}

static void
draw_dense (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  if (thread->low != NULL)
    trace_columns (frame, plot, thread);
  else
    trace_column_means (frame, plot, thread);
  tm_pen_colour (&frame->pen, thread->colour, thread->opacity);
  cairo_fill (frame->pen.cr);
}

/* A clip that is not wanted would cost more than the line. */
static void
clip_to_area (const TmFrame *frame, const TmChartThread *thread)
{
  const TmSpan all = tm_envelope_span (thread->mean, 0, tm_envelope_length (thread->mean));
  const double top = floor (frame->top), left = floor (frame->left);

  if (all.n == 0 || thread->kept
      || (tm_frame_holds (frame, tm_frame_at (frame, thread->base + all.low))
          && tm_frame_holds (frame, tm_frame_at (frame, thread->base + all.high))))
    return;
  cairo_rectangle (frame->pen.cr, left, top, ceil (frame->right) - left, ceil (frame->bottom) - top);
  cairo_clip (frame->pen.cr);
}

static void
stroke_points (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  static const double dots[] = { 1.0, 2.5 };
  cairo_t *cr = frame->pen.cr;

  cairo_save (cr);
  clip_to_area (frame, thread);
  trace_points (frame, plot, thread);
  if (thread->dotted)
    cairo_set_dash (cr, dots, 2, 0.0);
  cairo_set_line_width (cr, thread->width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  tm_pen_colour (&frame->pen, thread->colour, thread->opacity);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
tm_chart_draw_thread (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  cairo_new_path (frame->pen.cr);
  if (tm_chart_is_dense (frame, plot))
    draw_dense (frame, plot, thread);
  else
    stroke_points (frame, plot, thread);
}
