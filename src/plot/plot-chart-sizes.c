/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the pictures with the sizes along the bottom have in common.
 */

#include <math.h>

#include "plot-chart-private.h"

/* -------- Ahead of drawing -------- */

static int
compare_values_cb (gconstpointer a, gconstpointer b, gpointer data)
{
  const double first = *(const double *)a, second = *(const double *)b;

  return first < second ? -1 : first > second;
}

void
tm_chart_sort (TmChartPlot *plot)
{
  const TmSeries *series = &plot->batch->series;

  plot->sorted = g_new (double, MAX (1, series->n_points));
  for (guint i = 0; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      plot->sorted[plot->n_sorted++] = series->points[i].mean;
  g_qsort_with_data (plot->sorted, (gint)plot->n_sorted, sizeof (double), compare_values_cb, NULL);
}

static void
find_mean (TmChartPlot *plot)
{
  double mean = 0.0, squares = 0.0;

  for (guint i = 0; i < plot->n_sorted; i++)
    mean += (plot->sorted[i] - plot->sorted[0]) / plot->n_sorted;
  for (guint i = 0; i < plot->n_sorted; i++)
    squares += pow (plot->sorted[i] - plot->sorted[0] - mean, 2.0);
  plot->mean = plot->n_sorted > 0 ? plot->sorted[0] + mean : NAN;
  plot->deviation = plot->n_sorted > 1 ? sqrt (squares / (plot->n_sorted - 1.0)) : NAN;
}

/* The shape that the capability stands on; none where it stands on the values themselves. */
void
tm_chart_fit_shape (TmChartPlot *plot)
{
  const TmCapability *capability = &plot->batch->capability;

  find_mean (plot);
  if (capability->status == TM_CAPABLE_TOO_FEW || capability->status == TM_CAPABLE_NO_SPREAD
      || capability->shape == TM_SHAPE_EMPIRIC || capability->unshaped || !(plot->deviation > 0))
    return;
  plot->shape = capability->fit;
  /* The capability's spread has measuring taken out; the bars have not. */
  if (capability->shape == TM_SHAPE_NORMAL)
    plot->shape = (TmFittedShape) { TM_SHAPE_NORMAL, 0.0, plot->mean, plot->deviation, NAN };
  plot->has_curve = isfinite (plot->shape.a) && isfinite (plot->shape.b);
}

/* -------- Ground -------- */

void
tm_chart_place_sizes (TmFrame *frame, const TmChartPlot *plot, double widest)
{
  const double padding = tm_frame_padding (frame);
  const gboolean tall = tm_frame_is_tall (frame);

  frame->sideways = TRUE;
  frame->axis = plot->axis;
  tm_frame_place_columns (frame, widest);
  frame->top = padding + (tall ? frame->pen.line * 1.2 : 0.0);
  frame->bottom = frame->height - padding - (tall ? frame->pen.line * 1.2 : 0.0);
}

void
tm_chart_draw_ground (TmFrame *frame, const TmChartPlot *plot)
{
  tm_frame_draw_zones (frame, &plot->band);
  tm_frame_draw_limits (frame, &plot->band);
  tm_frame_draw_target (frame, &plot->band);
  tm_frame_draw_ticks (frame, tm_frame_most_ticks (frame), plot->decimals);
}

void
tm_chart_draw_heading (TmFrame *frame, const char *text)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE };

  if (tm_frame_is_tall (frame))
    tm_text_draw_within (&frame->pen, text, frame->left, frame->top - frame->pen.line * 0.6, 0.0,
                         frame->width, &style, NULL);
}

void
tm_chart_draw_foot_line (const TmFrame *frame)
{
  tm_frame_line (frame, frame->left, frame->bottom, frame->right, frame->bottom, 1.5, &frame->pen.theme->text,
                 0.6);
}
