/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

/* -------- Place -------- */

double
tm_chart_find_y (const TmChartDrawing *d, double relative)
{
  return tm_frame_at (&d->frame, tm_chart_count (d->plot, relative));
}

void
tm_chart_place_columns (TmFrame *frame, const TmChartPlot *plot)
{
  frame->slots = plot->slots;
  tm_frame_place_columns (frame, plot->widest * frame->pen.size);
}

static const TmFrameEvent *
get_events (const TmChartPlot *plot)
{
  return (const TmFrameEvent *)(gconstpointer)plot->events->data;
}

static void
place_lane (TmChartDrawing *d)
{
  TmFrame *frame = &d->frame;
  const double tall = MAX (frame->pen.line * 4.0, (frame->bottom - frame->top) * 0.24);

  d->lane_top = d->lane_bottom = NAN;
  if (d->plot->cusum_high == NULL || frame->bottom - frame->top < tall * 2.0)
    return;
  d->lane_bottom = frame->bottom;
  d->lane_top = frame->bottom - tall;
  frame->bottom = d->lane_top - frame->pen.size * 0.6;
}

static void
place_parts (TmChartDrawing *d)
{
  TmFrame *frame = &d->frame;
  const double padding = MIN (frame->pen.size * 0.7, frame->height / 10.0);
  const gboolean tall = tm_frame_is_tall (frame);

  frame->axis = d->plot->axis;
  tm_chart_place_columns (frame, d->plot);
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

/* -------- Moving average -------- */

static void
draw_ewma (TmChartDrawing *d)
{
  TmChartThread thread
      = { .base = (double)d->plot->batch->series.reference, .colour = &d->frame.pen.theme->text };
  const TmEnvelope *limits[] = { d->plot->ewma_lower, d->plot->ewma_upper };

  if (d->plot->ewma == NULL)
    return;
  thread.width = 1.0;
  thread.opacity = 0.7;
  thread.dotted = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (limits) && !tm_chart_is_dense (&d->frame, d->plot); i++)
    {
      thread.mean = limits[i];
      tm_chart_draw_thread (&d->frame, d->plot, &thread);
    }
  thread.mean = d->plot->ewma;
  thread.width = 1.2;
  thread.opacity = 0.8;
  thread.dotted = FALSE;
  tm_chart_draw_thread (&d->frame, d->plot, &thread);
}

/* -------- Focus, words -------- */

static void
draw_focus (TmChartDrawing *d, gint focus)
{
  const double bottom = isfinite (d->lane_bottom) ? d->lane_bottom : d->frame.bottom;
  const double width = CLAMP (tm_frame_slot (&d->frame), 3.0, d->frame.pen.size * 1.2);
  g_autofree char *name = NULL;
  double x;

  if (focus < 0 || (guint)focus >= d->plot->batch->series.n_points || focus > d->plot->slots - 0.5)
    return;
  x = tm_frame_piece (&d->frame, focus);
  name = tm_chart_piece_name (d->plot, (guint)focus);
  tm_frame_fill (&d->frame, x - width / 2.0, d->frame.top, width, bottom - d->frame.top,
                 &d->frame.pen.theme->text, 0.14);
  tm_frame_mark_piece (&d->frame, x, name);
}

/* Where it leaves its limits, else at its end what the line is. */
static void
say_ewma (TmChartDrawing *d, TmChartSpeech *speech)
{
  const gint first = d->plot->batch->first_ewma;
  const gboolean signals = first >= 0 && (guint)first < d->plot->n_items;
  const gint at = signals ? first : d->plot->last;
  double value, x, y;

  if (d->plot->ewma == NULL || at < 0)
    return;
  value = tm_envelope_value (d->plot->ewma, (guint)at);
  if (!isfinite (value))
    return;
  x = tm_frame_piece (&d->frame, d->plot->items[at].x);
  y = tm_frame_keep (&d->frame, tm_chart_find_y (d, value));
  if (signals)
    tm_chart_draw_square (&d->frame, x, y);
  tm_chart_draw_say (speech, x, y,
                     signals ? _ ("the moving average leaves its limits") : _ ("moving average"));
}

static void
draw_words (TmChartDrawing *d)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (TmChartBox));
  TmChartSpeech speech = { .frame = &d->frame,
                           .plot = d->plot,
                           .marks = d->plot->location_marks,
                           .counts = d->plot->location_counts,
                           .middle = d->plot->means,
                           .low = d->plot->lows,
                           .high = d->plot->highs,
                           .base = (double)d->plot->batch->series.reference,
                           .boxes = boxes };

  tm_chart_keep_limits_clear (&speech);
  say_ewma (d, &speech);
  tm_chart_draw_marks (&speech);
}

/* -------- All -------- */

/* The line of the pieces lies under the lane of the sums, the area of the sizes over it. */
static void
draw_foot (TmChartDrawing *d, gint focus)
{
  const double bottom = d->frame.bottom;

  draw_focus (d, focus);
  if (isfinite (d->lane_bottom))
    d->frame.bottom = d->lane_bottom;
  tm_frame_draw_pieces (&d->frame, (guint)ceil (d->plot->slots - 0.5), tm_chart_name_piece_cb, d->plot);
  tm_frame_draw_events (&d->frame, get_events (d->plot), d->plot->events->len, d->event_y);
  d->frame.bottom = bottom;
}

static void
draw_all (TmChartDrawing *d, gint focus)
{
  const TmLimits *limits = &d->plot->band.limits;

  tm_frame_draw_zones (&d->frame, &d->plot->band);
  tm_frame_draw_limits (&d->frame, &d->plot->band);
  tm_frame_draw_target (&d->frame, &d->plot->band);
  tm_chart_draw_control (d);
  if (!limits->has_lower || !limits->has_upper)
    tm_frame_draw_ticks (&d->frame, tm_frame_most_ticks (&d->frame), d->plot->decimals);
  if (tm_chart_shows_trend (d) && d->plot->foretold)
    tm_chart_draw_forecast (d); /* its piece stands at the foot before others take the room */
  draw_foot (d, focus);
  tm_chart_draw_points (d);
  draw_ewma (d);
  if (tm_chart_shows_trend (d))
    tm_chart_draw_trend_line (d);
  if (isfinite (d->lane_top))
    tm_chart_draw_lane (&d->frame, d->plot, d->lane_top, d->lane_bottom);
  draw_words (d);
}

void
tm_chart_plot_draw (const TmChartPlot *plot, cairo_t *cr, double width, double height, gint focus,
                    const TmTheme *theme)
{
  TmChartDrawing d = { .plot = plot };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!tm_frame_begin (&d.frame, cr, width, height, theme))
    return;
  place_parts (&d);
  place_lane (&d);
  if (plot->has_axis && plot->n_items > 0)
    draw_all (&d, focus);
  else
    tm_frame_draw_empty (&d.frame, _ ("no sizes yet"));
  tm_frame_end (&d.frame);
}

gint
tm_chart_plot_piece_at (const TmChartPlot *plot, double width, double height, double x)
{
  TmFrame frame = { .width = width, .height = height };
  double piece;

  g_return_val_if_fail (plot != NULL, -1);
  if (!(width >= 8.0) || !isfinite (width) || !isfinite (x) || plot->batch->series.n_points == 0)
    return -1;
  frame.pen.size = tm_theme_light ()->text_size;
  tm_chart_place_columns (&frame, plot);
  piece = floor ((x - frame.left) / tm_frame_slot (&frame));
  if (piece < -0.5 || piece >= plot->batch->series.n_points)
    return -1;
  return (gint)piece;
}
