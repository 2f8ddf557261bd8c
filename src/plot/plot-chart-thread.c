/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values over the pieces: joined points, or, where they stand too dense for points, columns of pixels.
 */

#include <math.h>

#include "plot-chart-private.h"

#define DENSE_SLOT 2.2 /* pixels a piece: less, and columns are drawn in place of points */

gboolean
tm_chart_is_dense (const TmFrame *frame, const TmChartPlot *plot)
{
  const double each = plot->n_items > 0 ? (double)plot->batch->series.n_points / plot->n_items : 1.0;

  return tm_frame_slot (frame) * each < DENSE_SLOT;
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
      y = tm_frame_keep (frame, tm_frame_at (frame, thread->base + value));
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

/* One bar for each column of pixels, from the smallest to the largest that fall on it. */
static void
trace_columns (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint from = 0;

  for (double x = floor (frame->left); x < frame->right; x += 1.0)
    {
      const guint to = find_column_end (frame, plot, x);
      const TmSpan low = tm_envelope_span (thread->low, from, to);
      const TmSpan high = thread->high == thread->low ? low : tm_envelope_span (thread->high, from, to);

      from = to;
      if (low.n > 0 && high.n > 0)
        {
          const double top = tm_frame_keep (frame, tm_frame_at (frame, thread->base + high.high));
          const double bottom = tm_frame_keep (frame, tm_frame_at (frame, thread->base + low.low));

          cairo_rectangle (frame->pen.cr, x, floor (top), 1.0, MAX (1.0, ceil (bottom) - floor (top)));
        }
    }
}

/* Steps of whole pixels from one column to the next: at this density no different from a line, and many times
 * cheaper. */
static void
trace_column_means (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint from = 0, stretch = G_MAXUINT;
  double last = NAN;

  for (double x = floor (frame->left); x < frame->right; x += 1.0)
    {
      const guint to = find_column_end (frame, plot, x);
      const TmSpan mean = tm_envelope_span (thread->mean, from, to);

      if (mean.n > 0)
        {
          const double y
              = floor (tm_frame_keep (frame, tm_frame_at (frame, thread->base + mean.sum / mean.n)));
          const double before = plot->items[from].stretch == stretch ? last : y;

          cairo_rectangle (frame->pen.cr, x, MIN (y, before), 1.0, fabs (y - before) + 1.0);
          last = y;
          stretch = plot->items[to - 1].stretch;
        }
      from = to;
    }
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

void
tm_chart_draw_thread (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  static const double dots[] = { 1.0, 2.5 };

  cairo_new_path (frame->pen.cr);
  if (tm_chart_is_dense (frame, plot))
    {
      draw_dense (frame, plot, thread);
      return;
    }
  trace_points (frame, plot, thread);
  if (thread->dotted)
    cairo_set_dash (frame->pen.cr, dots, 2, 0.0);
  cairo_set_line_width (frame->pen.cr, thread->width);
  cairo_set_line_join (frame->pen.cr, CAIRO_LINE_JOIN_BEVEL);
  tm_pen_colour (&frame->pen, thread->colour, thread->opacity);
  cairo_stroke (frame->pen.cr);
  cairo_set_dash (frame->pen.cr, NULL, 0, 0.0);
}
