/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The control limits of a chart.
 */

#include <math.h>

#include "plot-chart-private.h"

/* -------- Ahead of drawing -------- */

static gboolean
same (double a, double b)
{
  return (isnan (a) && isnan (b)) || (a <= b && a >= b);
}

static void
add_run (GArray *runs, const TmChartRun *run)
{
  TmChartRun *last = runs->len > 0 ? &g_array_index (runs, TmChartRun, runs->len - 1) : NULL;

  if (!isfinite (run->upper))
    return;
  if (last != NULL && same (last->lower, run->lower) && same (last->upper, run->upper))
    last->to = run->to;
  else
    g_array_append_val (runs, *run);
}

/* What cannot be below zero has no lower limit there. */
static double
drop_at_zero (double lower, double zero)
{
  return lower > zero ? lower : NAN;
}

void
tm_chart_fill_runs (TmChartPlot *plot)
{
  const TmChart *chart = &plot->batch->chart;
  const double zero = plot->band.limits.zero_bounded ? -(double)plot->batch->series.reference : -INFINITY;

  for (guint i = 0; i < chart->n_groups && chart->status == TM_CHART_OK; i++)
    {
      const TmChartGroup *group = &chart->groups[i];
      const TmChartItem *item = &plot->items[i];
      const double from = item->first;
      const double to = i + 1 < chart->n_groups ? chart->groups[i + 1].from : item->last + 1.0;
      const TmChartRun location
          = { from, to, drop_at_zero (group->location_lower, zero),
              (group->location_lower + group->location_upper) / 2.0, group->location_upper };
      const TmChartRun dispersion = { from, to, drop_at_zero (group->dispersion_lower, 0.0),
                                      group->dispersion_centre, group->dispersion_upper };

      add_run (plot->location_runs, &location);
      add_run (plot->dispersion_runs, &dispersion);
    }
}

/* -------- Drawing -------- */

/* Steps of one limit over the runs; runs narrower than a pixel are passed over. */
static void
trace_run (const TmFrame *frame, const GArray *runs, double base, gsize offset)
{
  double last = NAN, until = -INFINITY;

  for (guint i = 0; i < runs->len; i++)
    {
      const TmChartRun *run = &g_array_index (runs, TmChartRun, i);
      const double value = *(const double *)(gconstpointer)((const char *)run + offset);
      const double y = tm_frame_snap (frame, tm_frame_at (frame, base + value));
      const double from = tm_frame_snap (frame, tm_frame_piece (frame, run->from - 0.5));
      const double to = tm_frame_snap (frame, tm_frame_piece (frame, run->to - 0.5));

      if (to - until < 1.0 && i + 1 < runs->len)
        continue;
      if (!tm_frame_holds (frame, y))
        {
          last = NAN;
          until = to;
          continue;
        }
      if (isfinite (last) && from - until < 1.5)
        cairo_line_to (frame->pen.cr, from, y);
      else
        cairo_move_to (frame->pen.cr, from, y);
      cairo_line_to (frame->pen.cr, to, y);
      last = y;
      until = to;
    }
}

void
tm_chart_draw_runs (const TmFrame *frame, const GArray *runs, double base, gboolean centre)
{
  static const double dash[] = { 7.0, 4.0 }, dots[] = { 1.5, 3.0 };
  cairo_t *cr = frame->pen.cr;

  cairo_new_path (cr);
  trace_run (frame, runs, base, G_STRUCT_OFFSET (TmChartRun, lower));
  trace_run (frame, runs, base, G_STRUCT_OFFSET (TmChartRun, upper));
  cairo_set_line_width (cr, 1.0);
  cairo_set_dash (cr, dash, 2, 0.0);
  tm_pen_colour (&frame->pen, &frame->pen.theme->text, 0.75);
  cairo_stroke (cr);
  if (centre)
    {
      trace_run (frame, runs, base, G_STRUCT_OFFSET (TmChartRun, centre));
      cairo_set_dash (cr, dots, 2, 0.0);
      tm_pen_colour (&frame->pen, &frame->pen.theme->dim, 1.0);
      cairo_stroke (cr);
    }
  cairo_set_dash (cr, NULL, 0, 0.0);
}

static void
draw_control_number (TmChartDrawing *d, double relative)
{
  const double y = tm_chart_find_y (d, relative);
  g_autofree char *text = NULL;

  if (!tm_frame_holds (&d->frame, y))
    return;
  text = tm_chart_size_text (d->plot, relative);
  tm_frame_number (&d->frame, text, y, FALSE, TRUE);
}

/* The numbers are those of the last run: of the group size that goes on. */
void
tm_chart_draw_control (TmChartDrawing *d)
{
  const GArray *runs = d->plot->location_runs;
  const TmChartRun *last;

  if ((d->plot->show & TM_CHART_SHOW_CONTROL) == 0 || runs->len == 0)
    return;
  last = &g_array_index (runs, TmChartRun, runs->len - 1);
  tm_chart_draw_runs (&d->frame, runs, (double)d->plot->batch->series.reference, FALSE);
  draw_control_number (d, last->lower);
  draw_control_number (d, last->upper);
}
