/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The charts that stand under the run chart on its axis of pieces: the lane of the cumulative sums, and the
 * dispersion.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

/* -------- Cumulative sums -------- */

/* Standard deviations to either edge of the lane; a sum that is larger has said enough. */
#define SUMS_SHOWN (2.0 * TM_BATCH_CUSUM_H)

/* In standard deviations, either way. */
static double
find_sum_y (const TmFrame *lane, double sum)
{
  const double share = CLAMP (sum / SUMS_SHOWN, -1.0, 1.0);

  return (lane->top + lane->bottom) / 2.0 - share * (lane->bottom - lane->top) / 2.0;
}

static void
draw_sum_lines (TmFrame *lane)
{
  static const double sums[] = { TM_BATCH_CUSUM_H, -TM_BATCH_CUSUM_H };

  tm_frame_fill (lane, lane->left, lane->top, lane->right - lane->left, lane->bottom - lane->top,
                 &lane->pen.theme->dim, 0.08);
  tm_frame_dashed (lane, lane->left, find_sum_y (lane, 0.0), lane->right, find_sum_y (lane, 0.0), 1.0,
                   &lane->pen.theme->dim, 1.0, 1.5, 3.0);
  tm_frame_number (lane, "0", find_sum_y (lane, 0.0), FALSE, TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (sums); i++)
    {
      const double y = find_sum_y (lane, sums[i]);
      g_autofree char *text = g_strdup_printf ("%s%.0f σ", sums[i] > 0 ? "+" : "−", fabs (sums[i]));

      tm_frame_dashed (lane, lane->left, y, lane->right, y, 1.0, &lane->pen.theme->text, 0.75, 7.0, 4.0);
      tm_frame_number (lane, text, y, FALSE, TRUE);
    }
}

/* The first signal, by a square and in words. */
static void
draw_sum_signal (TmFrame *lane, const TmChartPlot *plot)
{
  const TmTextStyle style = { .scale = 0.85 };
  const char *text = _ ("the cumulative sum signals");
  const gint first = plot->batch->first_cusum;
  const double half = lane->pen.size * 0.45;
  const TmCusumPoint *point;
  double x, y, words;

  if (first < 0 || (guint)first >= plot->n_items || (guint)first >= plot->batch->chart.n_groups)
    return;
  point = &plot->batch->cusum[first];
  x = tm_frame_piece (lane, plot->items[first].x);
  y = find_sum_y (lane, point->high > TM_BATCH_CUSUM_H ? point->high : -point->low);
  tm_chart_draw_square (lane, x, y);
  words = tm_text_width (&lane->pen, text, &style);
  x = CLAMP (x + half * 2.0, lane->left, MAX (lane->left, lane->right - words));
  y = CLAMP (y, lane->top + lane->pen.line * 0.5, lane->bottom - lane->pen.line * 0.5);
  tm_frame_fill (lane, x - 1.0, y - lane->pen.line * 0.4, words + 2.0, lane->pen.line * 0.8,
                 &lane->pen.theme->surface, 0.75);
  tm_text_draw_within (&lane->pen, text, x, y, lane->left, lane->right, &style, NULL);
}

void
tm_chart_draw_lane (TmFrame *frame, const TmChartPlot *plot, double top, double bottom)
{
  TmFrame lane = *frame;
  const TmTextStyle style = { .scale = 0.85, .dim = TRUE };
  TmChartThread thread = { .mean = plot->cusum_high,
                           .low = NULL,
                           .high = NULL,
                           .width = 1.4,
                           .colour = &frame->pen.theme->in,
                           .opacity = 1.0 };

  lane.top = top;
  lane.bottom = bottom;
  lane.axis.low = -SUMS_SHOWN;
  lane.axis.high = SUMS_SHOWN;
  lane.side.n = 0;
  draw_sum_lines (&lane);
  tm_chart_draw_thread (&lane, plot, &thread);
  thread.mean = plot->cusum_low;
  tm_chart_draw_thread (&lane, plot, &thread);
  tm_text_draw_within (&lane.pen, _ ("cumulative sum"), lane.left + lane.pen.size * 0.5,
                       lane.top + lane.pen.line * 0.5, lane.left, lane.right, &style, NULL);
  draw_sum_signal (&lane, plot);
}

/* -------- Dispersion -------- */

static const char *
get_kind_text (TmChartKind kind)
{
  switch (kind)
    {
    case TM_CHART_RANGES:
      return _ ("range within each group");
    case TM_CHART_DEVIATIONS:
      return _ ("standard deviation within each group");
    case TM_CHART_INDIVIDUALS:
    default:
      return _ ("moving range: from each piece to the next");
    }
}

static void
place_dispersion (TmFrame *frame, const TmChartPlot *plot)
{
  const double padding = MIN (frame->pen.size * 0.7, frame->height / 10.0);
  const gboolean tall = tm_frame_is_tall (frame);

  frame->axis = plot->dispersion_axis;
  tm_chart_place_columns (frame, plot);
  frame->top = padding + (tall ? frame->pen.line : 0.0);
  frame->bottom = frame->height - padding - (tall ? frame->pen.line + frame->pen.size * 0.3 : 0.0);
}

static void
draw_dispersion_number (TmFrame *frame, const TmChartPlot *plot, double value, gboolean bold)
{
  g_autofree char *text = isfinite (value) ? tm_chart_length_text (plot, value) : NULL;

  if (text != NULL)
    tm_frame_number (frame, text, tm_frame_at (frame, value), bold, !bold);
}

static void
draw_dispersion_limits (TmFrame *frame, const TmChartPlot *plot)
{
  const GArray *runs = plot->dispersion_runs;
  const TmChartRun *last;

  if (runs->len == 0)
    return;
  last = &g_array_index (runs, TmChartRun, runs->len - 1);
  tm_chart_draw_runs (frame, runs, 0.0, TRUE);
  draw_dispersion_number (frame, plot, last->upper, FALSE);
  draw_dispersion_number (frame, plot, last->centre, FALSE);
  if (last->lower > 0)
    draw_dispersion_number (frame, plot, last->lower, FALSE);
  tm_frame_number (frame, "0", frame->bottom, FALSE, TRUE);
}

static void
draw_dispersion_dots (const TmFrame *frame, const TmChartPlot *plot)
{
  const double each = (double)plot->batch->series.n_points / MAX (1, plot->n_items);
  const double radius = CLAMP (tm_frame_slot (frame) * each * 0.3, 1.3, frame->pen.size * 0.24);

  cairo_new_path (frame->pen.cr);
  for (guint i = 0; i < plot->n_items && i < tm_envelope_length (plot->dispersions); i++)
    {
      const double value = tm_envelope_value (plot->dispersions, i);

      if (!isfinite (value))
        continue;
      cairo_new_sub_path (frame->pen.cr);
      cairo_arc (frame->pen.cr, tm_frame_piece (frame, plot->items[i].x),
                 tm_frame_keep (frame, tm_frame_at (frame, value)), radius, 0.0, 2.0 * G_PI);
    }
  tm_pen_colour (&frame->pen, &frame->pen.theme->in, 1.0);
  cairo_fill (frame->pen.cr);
}

static void
draw_dispersion_values (TmFrame *frame, const TmChartPlot *plot)
{
  const gboolean dense = tm_chart_is_dense (frame, plot);
  const TmChartThread thread = { .mean = plot->dispersions,
                                 .low = dense ? plot->dispersions : NULL,
                                 .high = plot->dispersions,
                                 .width = 1.0,
                                 .colour = &frame->pen.theme->in,
                                 .opacity = dense ? 0.75 : 0.6 };

  tm_chart_draw_thread (frame, plot, &thread);
  if (!dense)
    draw_dispersion_dots (frame, plot);
}

static void
draw_dispersion_words (TmFrame *frame, const TmChartPlot *plot)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (TmChartBox));
  TmChartSpeech speech = { .frame = frame,
                           .plot = plot,
                           .marks = plot->dispersion_marks,
                           .middle = plot->dispersions,
                           .low = plot->dispersions,
                           .high = plot->dispersions,
                           .base = 0.0,
                           .boxes = boxes };

  tm_chart_draw_marks (&speech);
}

static char *
name_piece_cb (gconstpointer data, guint piece)
{
  return tm_chart_piece_name (data, piece);
}

static void
draw_dispersion (TmFrame *frame, const TmChartPlot *plot)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE };

  if (tm_frame_is_tall (frame))
    tm_text_draw_within (&frame->pen, get_kind_text (plot->batch->chart.kind), frame->left,
                         frame->top - frame->pen.line * 0.5, frame->left, frame->right, &style, NULL);
  draw_dispersion_limits (frame, plot);
  if (plot->dispersion_runs->len == 0)
    tm_frame_draw_ticks (frame, tm_frame_most_ticks (frame), plot->decimals);
  tm_frame_draw_pieces (frame, (guint)ceil (plot->slots - 0.5), name_piece_cb, plot);
  tm_frame_draw_events (frame, (const TmFrameEvent *)(gconstpointer)plot->events->data, plot->events->len,
                        NAN);
  draw_dispersion_values (frame, plot);
  draw_dispersion_words (frame, plot);
}

void
tm_chart_plot_draw_dispersion (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                               const TmTheme *theme)
{
  TmFrame frame;

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!tm_frame_begin (&frame, cr, width, height, theme))
    return;
  place_dispersion (&frame, plot);
  if (plot->has_dispersion)
    draw_dispersion (&frame, plot);
  else
    tm_frame_draw_empty (&frame, _ ("too few pieces to tell how they spread"));
  tm_frame_end (&frame);
}
