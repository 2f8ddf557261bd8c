/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How pieces or groups scatter, on the run chart’s axis of pieces.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

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
  draw_dispersion_number (frame, plot, last->lower, FALSE);
}

/* Without limits the largest alone has a number. */
static void
draw_largest (TmFrame *frame, const TmChartPlot *plot)
{
  const TmSpan span = tm_envelope_span (plot->dispersions, 0, tm_envelope_length (plot->dispersions));

  if (plot->dispersion_runs->len == 0 && span.high > 0)
    draw_dispersion_number (frame, plot, span.high, FALSE);
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
                                 .opacity = dense                    ? 0.75
                                            : frame->pen.theme->dark ? 0.9
                                                                     : 0.6 };

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
                           .counts = plot->dispersion_counts,
                           .middle = plot->dispersions,
                           .low = plot->dispersions,
                           .high = plot->dispersions,
                           .base = 0.0,
                           .boxes = boxes };

  tm_chart_draw_marks (&speech);
}

static void
draw_dispersion (TmFrame *frame, const TmChartPlot *plot)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE };

  if (tm_frame_is_tall (frame))
    tm_text_draw_within (&frame->pen, get_kind_text (plot->batch->chart.kind), frame->left,
                         frame->top - frame->pen.line * 0.5, frame->left, frame->right, &style, NULL);
  draw_dispersion_limits (frame, plot);
  draw_largest (frame, plot);
  tm_frame_number (frame, "0", frame->bottom, FALSE, TRUE);
  tm_frame_draw_pieces (frame, (guint)ceil (plot->slots - 0.5), tm_chart_name_piece_cb, plot);
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
