/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sizes against the quantiles of the normal distribution.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

#define MOST_QUANTILES 400

/* -------- Ahead of drawing -------- */

const TmFittedShape tm_chart_normal = { TM_SHAPE_NORMAL, 0.0, 0.0, 1.0, 0.0 };

/* G. Blom (1958): the median of the i-th of n lies near (i - 3/8) / (n + 1/4). */
static double
find_normal_quantile (guint rank, guint n)
{
  return tm_shape_quantile (&tm_chart_normal, (rank + 1.0 - 0.375) / (n + 0.25));
}

/* All of a few; of many those that stand apart on the picture: even in the quantile, both ends among them. */
void
tm_chart_fill_quantiles (TmChartPlot *plot)
{
  const guint n = plot->n_sorted;
  const double most = n > 0 ? find_normal_quantile (n - 1, n) : 0.0;
  double last = -INFINITY;

  for (guint i = 0; i < n;)
    {
      const double z = find_normal_quantile (i, n);
      const TmQuantilePoint point = { plot->sorted[i], z };
      guint next = i + 1;

      g_array_append_val (plot->quantiles, point);
      last = z + 2.0 * most / MOST_QUANTILES;
      if (n > MOST_QUANTILES)
        next = MAX (next, (guint)CLAMP (floor (tm_shape_below (&tm_chart_normal, last) * (n + 0.25) - 0.625),
                                        0.0, n));
      i = i + 1 < n ? MIN (next, n - 1) : n;
    }
}

/* -------- Drawing -------- */

static const struct {
  double share;
  const char *text;
} probabilities[] = {
  { 0.000001, "0.0001 %" },  { 0.0001, "0.01 %" }, { 0.001, "0.1 %" },  { 0.01, "1 %" },
  { 0.05, "5 %" },           { 0.25, "25 %" },     { 0.5, "50 %" },     { 0.75, "75 %" },
  { 0.95, "95 %" },          { 0.99, "99 %" },     { 0.999, "99.9 %" }, { 0.9999, "99.99 %" },
  { 0.999999, "99.9999 %" },
};

static double
find_z_reach (const TmChartPlot *plot)
{
  const double last = g_array_index (plot->quantiles, TmQuantilePoint, plot->quantiles->len - 1).z;

  return MAX (2.0, last * 1.12);
}

static double
find_z_y (const TmFrame *frame, double z, double reach)
{
  return (frame->top + frame->bottom) / 2.0 - z / reach * (frame->bottom - frame->top) / 2.0;
}

static void
draw_probabilities (TmFrame *frame, double reach)
{
  /* Those in the middle last would be left out first: from the middle outwards. */
  static const guint order[] = { 6, 4, 8, 3, 9, 2, 10, 1, 11, 0, 12, 5, 7 };
  const TmTextStyle style = { .dim = TRUE, .scale = 0.9, .align = TM_ALIGN_RIGHT };
  double taken[G_N_ELEMENTS (order)];
  guint n_taken = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    {
      const double z = tm_shape_quantile (&tm_chart_normal, probabilities[order[i]].share);
      const double y = find_z_y (frame, z, reach);
      gboolean free = fabs (z) < reach;

      for (guint k = 0; k < n_taken; k++)
        free = free && fabs (taken[k] - y) >= frame->pen.line * 0.95;
      if (!free)
        continue;
      taken[n_taken++] = y;
      tm_frame_line (frame, frame->left, y, frame->right, y, 1.0, &frame->pen.theme->dim, 0.22);
      if (frame->left > frame->pen.size * 2.0)
        tm_text_draw (&frame->pen, probabilities[order[i]].text, frame->left - frame->pen.size * 0.6, y,
                      &style);
    }
}

/* Mean and deviation as a line: where points of a normal distribution lie. */
static void
draw_normal_line (const TmFrame *frame, const TmChartPlot *plot, double reach)
{
  if (!(plot->deviation > 0))
    return;
  cairo_save (frame->pen.cr);
  cairo_rectangle (frame->pen.cr, frame->left, frame->top, frame->right - frame->left,
                   frame->bottom - frame->top);
  cairo_clip (frame->pen.cr);
  tm_frame_line (frame, tm_frame_at (frame, tm_chart_count (plot, plot->mean - reach * plot->deviation)),
                 frame->bottom,
                 tm_frame_at (frame, tm_chart_count (plot, plot->mean + reach * plot->deviation)), frame->top,
                 1.4, &frame->pen.theme->text, 0.8);
  cairo_restore (frame->pen.cr);
}

static void
draw_quantiles (const TmFrame *frame, const TmChartPlot *plot, double reach)
{
  const double most = plot->quantiles->len > 100 ? frame->pen.size * 0.14 : frame->pen.size * 0.22;
  const double radius = CLAMP ((frame->bottom - frame->top) / 60.0, 1.2, most);

  cairo_new_path (frame->pen.cr);
  for (guint i = 0; i < plot->quantiles->len; i++)
    {
      const TmQuantilePoint *point = &g_array_index (plot->quantiles, TmQuantilePoint, i);

      cairo_new_sub_path (frame->pen.cr);
      cairo_arc (frame->pen.cr,
                 tm_frame_keep (frame, tm_frame_at (frame, tm_chart_count (plot, point->value))),
                 find_z_y (frame, point->z, reach), radius, 0.0, 2.0 * G_PI);
    }
  tm_pen_colour (&frame->pen, &frame->pen.theme->in, 1.0);
  cairo_fill (frame->pen.cr);
}

void
tm_chart_plot_draw_probability (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                                const TmTheme *theme)
{
  const TmTextStyle style = { .scale = 0.9 };
  TmFrame frame;
  double reach;

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!tm_frame_begin (&frame, cr, width, height, theme))
    return;
  if (plot->n_sorted == 0 || !plot->has_axis)
    tm_frame_draw_empty (&frame, _ ("no sizes yet"));
  else
    {
      reach = find_z_reach (plot);
      tm_chart_place_sizes (&frame, plot,
                            tm_text_width (&frame.pen, reach > 3.75 ? "99.9999 %" : "99.99 %", &style));
      tm_chart_draw_heading (&frame, _ ("share of pieces that are smaller; normal ones lie along the line"));
      tm_chart_draw_ground (&frame, plot);
      draw_probabilities (&frame, reach);
      draw_normal_line (&frame, plot, reach);
      draw_quantiles (&frame, plot, reach);
      tm_chart_draw_foot_line (&frame);
    }
  tm_frame_end (&frame);
}
