/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The line of a drift, and its forecast to the guard.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

#define CONE_STEPS 24

static double
find_line (const TmTrend *trend, double number)
{
  return trend->mean_y + trend->slope * (number - trend->mean_x);
}

/* Half the width of the 95 % band of the fitted mean. */
static double
find_half (const TmTrend *trend, double number)
{
  const double away = number - trend->mean_x;
  double t;

  if (!(trend->slope_se > 0) || !(trend->sxx > 0) || trend->n < 3)
    return 0.0;
  t = (trend->slope_upper - trend->slope) / trend->slope_se;
  return t * trend->residual * sqrt (1.0 / (double)trend->n + away * away / trend->sxx);
}

gboolean
tm_chart_has_drift (const TmChartPlot *plot)
{
  const TmTrend *trend = &plot->batch->trend;

  return tm_batch_has_drift (plot->batch) && plot->batch->series.n_measured > 3 && isfinite (trend->slope)
         && isfinite (trend->mean_y);
}

/* A line where there is no drift would be taken for one. */
gboolean
tm_chart_shows_trend (const TmChartDrawing *d)
{
  return (d->plot->show & TM_CHART_SHOW_TREND) != 0 && d->plot->last >= 0 && tm_chart_has_drift (d->plot);
}

static double
find_number_x (const TmChartDrawing *d, double number)
{
  return tm_frame_piece (&d->frame, TM_CHART_X (number));
}

void
tm_chart_draw_trend_line (TmChartDrawing *d)
{
  const TmTrend *trend = &d->plot->batch->trend;
  const double from = d->plot->trend_from + 1.0, to = d->plot->items[d->plot->last].last + 1.0;

  tm_frame_line (&d->frame, find_number_x (d, from), tm_chart_find_y (d, find_line (trend, from)),
                 find_number_x (d, to), tm_chart_find_y (d, find_line (trend, to)), 2.0,
                 &d->frame.pen.theme->text, 1.0);
}

static void
draw_cone (const TmChartDrawing *d, double from, double to)
{
  const TmTrend *trend = &d->plot->ahead;
  cairo_t *cr = d->frame.pen.cr;

  cairo_new_path (cr);
  for (int i = 0; i <= CONE_STEPS; i++)
    {
      const double at = from + (to - from) * i / CONE_STEPS;
      cairo_line_to (cr, find_number_x (d, at),
                     tm_chart_find_y (d, find_line (trend, at) + find_half (trend, at)));
    }
  for (int i = CONE_STEPS; i >= 0; i--)
    {
      const double at = from + (to - from) * i / CONE_STEPS;
      cairo_line_to (cr, find_number_x (d, at),
                     tm_chart_find_y (d, find_line (trend, at) - find_half (trend, at)));
    }
  cairo_close_path (cr);
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->planned, 0.3);
  cairo_fill (cr);
}

/* Where the mean meets the guard, down to the pieces. */
static void
draw_meeting (TmChartDrawing *d, double x, double y)
{
  const TmColour *planned = &d->frame.pen.theme->planned;
  g_autofree char *name = tm_chart_piece_name (d->plot, (guint)floor (d->plot->meets));
  g_autofree char *text = g_strdup_printf (_ ("piece %s"), name);
  const double foot = isfinite (d->lane_bottom) ? d->lane_bottom : d->frame.bottom;

  tm_frame_dashed (&d->frame, x, y, x, foot, 1.6, planned, 1.0, 2.5, 3.0);
  tm_frame_mark_piece (&d->frame, x, text);
}

void
tm_chart_draw_forecast (TmChartDrawing *d)
{
  const TmTrend *trend = &d->plot->ahead;
  const double from = d->plot->items[d->plot->last].last + 1.0;
  const double edge = d->plot->slots + 0.5, to = MIN (d->plot->meets + 1.0, edge);

  cairo_save (d->frame.pen.cr);
  cairo_rectangle (d->frame.pen.cr, d->frame.left, d->frame.top, d->frame.right - d->frame.left,
                   d->frame.bottom - d->frame.top);
  cairo_clip (d->frame.pen.cr);
  draw_cone (d, from, to);
  tm_frame_dashed (&d->frame, find_number_x (d, from), tm_chart_find_y (d, find_line (trend, from)),
                   find_number_x (d, to), tm_chart_find_y (d, find_line (trend, to)), 1.6,
                   &d->frame.pen.theme->text, 0.9, 5.0, 4.0);
  cairo_restore (d->frame.pen.cr);
  if (d->plot->meets + 1.0 <= edge)
    draw_meeting (d, find_number_x (d, to),
                  tm_frame_keep (&d->frame, tm_chart_find_y (d, find_line (trend, to))));
}
