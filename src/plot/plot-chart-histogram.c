/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How many pieces have which size, with the band and the curve of the fitted shape.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

#define MOST_BINS   200
#define CURVE_STEPS 160

/* -------- Bins -------- */

/* Those on the axis; all where none is. */
static void
find_shown (TmChartBins *bins, const TmChartPlot *plot)
{
  const double base = tm_chart_count (plot, 0.0);
  guint end = plot->n_sorted;

  while (bins->first < end && base + plot->sorted[bins->first] < plot->axis.low)
    bins->first++;
  while (end > bins->first && base + plot->sorted[end - 1] > plot->axis.high)
    end--;
  bins->n_shown = end - bins->first;
  if (bins->n_shown > 0)
    return;
  bins->first = 0;
  bins->n_shown = plot->n_sorted;
}

static double
find_quantile (const double *sorted, guint n, double share)
{
  const double at = share * (n - 1);
  const guint below = (guint)floor (at), above = MIN (below + 1, n - 1);

  return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
}

/* The smallest step between sizes that differ: how fine they were read.  0: too fine to matter. */
static double
find_grain (const double *sorted, guint n, double width)
{
  double grain = INFINITY;

  for (guint i = 1; i < n; i++)
    {
      const double step = sorted[i] - sorted[i - 1];
      if (step > 0)
        grain = MIN (grain, step);
      if (grain < width * 0.05)
        return 0.0;
    }
  return isfinite (grain) ? grain : 0.0;
}

/* D. Freedman, P. Diaconis, Z. Wahrscheinlichkeitstheorie 57 (1981): two interquartile ranges by the cube
 * root of n.  H. A. Sturges, J. American Statistical Association 21 (1926): 1 + log2 n bars. */
static double
choose_width (TmChartBins *bins, const double *sorted, double span)
{
  const double middle
      = find_quantile (sorted, bins->n_shown, 0.75) - find_quantile (sorted, bins->n_shown, 0.25);

  bins->rule = middle > 0 ? TM_BINS_SPREAD : TM_BINS_COUNT;
  if (middle > 0)
    return 2.0 * middle / cbrt (bins->n_shown);
  return span / (1.0 + log2 (bins->n_shown));
}

/* Bars hold whole steps of reading, else some would hold more steps than others and stand out. */
static void
choose_bins (TmChartBins *bins, const TmChartPlot *plot)
{
  const double *sorted = &plot->sorted[bins->first];
  const double low = sorted[0], high = sorted[bins->n_shown - 1], span = high - low;
  double grain;

  if (!(span > 0))
    {
      bins->rule = TM_BINS_ONE;
      bins->n = 1;
      bins->width = (plot->axis.high - plot->axis.low) / 60.0;
      bins->from = low - bins->width / 2.0;
      return;
    }
  bins->width = MAX (choose_width (bins, sorted, span), span / (MOST_BINS - 2));
  grain = find_grain (sorted, bins->n_shown, bins->width);
  if (grain > 0)
    bins->width = MAX (1.0, round (bins->width / grain)) * grain;
  bins->width = MAX (bins->width, span / (MOST_BINS - 2));
  bins->from = low - (grain > 0 ? grain / 2.0 : 0.0);
  bins->n = (guint)CLAMP (floor ((high - bins->from) / bins->width) + 1.0, 1.0, MOST_BINS);
}

void
tm_chart_fill_bins (TmChartPlot *plot)
{
  TmChartBins *bins = &plot->bins;

  if (plot->n_sorted == 0)
    return;
  find_shown (bins, plot);
  choose_bins (bins, plot);
  bins->counts = g_new0 (guint, bins->n);
  for (guint i = bins->first; i < bins->first + bins->n_shown; i++)
    {
      const double at = floor ((plot->sorted[i] - bins->from) / bins->width);
      bins->counts[(guint)CLAMP (at, 0.0, bins->n - 1.0)]++;
    }
  for (guint i = 0; i < bins->n; i++)
    bins->most = MAX (bins->most, bins->counts[i]);
}

/* -------- Drawing -------- */

static char *
write_shown (const TmChartPlot *plot)
{
  g_autofree char *width = tm_chart_length_text (plot, plot->bins.width);

  switch (plot->bins.rule)
    {
    case TM_BINS_SPREAD:
      /* Translators: heading of a histogram: number of pieces, width of a bar, and the rule it comes from. */
      return g_strdup_printf (ngettext ("%u piece; bars %s wide (Freedman and Diaconis)",
                                        "%u pieces; bars %s wide (Freedman and Diaconis)",
                                        plot->bins.n_shown),
                              plot->bins.n_shown, width);
    case TM_BINS_COUNT:
      return g_strdup_printf (ngettext ("%u piece; bars %s wide (Sturges)",
                                        "%u pieces; bars %s wide (Sturges)", plot->bins.n_shown),
                              plot->bins.n_shown, width);
    case TM_BINS_ONE:
    case TM_BINS_NONE:
    default:
      return g_strdup_printf (ngettext ("%u piece", "%u pieces, all of one size", plot->bins.n_shown),
                              plot->bins.n_shown);
    }
}

static char *
write_bins (const TmChartPlot *plot)
{
  const guint beyond = plot->n_sorted - plot->bins.n_shown;
  g_autofree char *shown = write_shown (plot);

  if (beyond == 0)
    return g_steal_pointer (&shown);
  /* Translators: heading of a histogram, then how many pieces lie far off its axis. */
  return g_strdup_printf (ngettext ("%s; %u more lies beyond", "%s; %u more lie beyond", beyond), shown,
                          beyond);
}

/* Over the fullest is room for its number. */
static double
find_bar_y (const TmFrame *frame, double count, double most)
{
  const double height = frame->bottom - frame->top;
  const double free = tm_frame_is_tall (frame) ? MAX (height * 0.12, frame->pen.line) : height * 0.12;

  return frame->bottom - count / most * (height - free);
}

static void
draw_bars (const TmFrame *frame, const TmChartPlot *plot, double most)
{
  const TmChartBins *bins = &plot->bins;

  cairo_new_path (frame->pen.cr);
  for (guint i = 0; i < bins->n; i++)
    {
      const double low = bins->from + i * bins->width;
      const double left = tm_frame_keep (frame, tm_frame_at (frame, tm_chart_count (plot, low)));
      const double right
          = tm_frame_keep (frame, tm_frame_at (frame, tm_chart_count (plot, low + bins->width)));
      const double y = find_bar_y (frame, bins->counts[i], most);
      const double gap = right - left > 5.0 ? 1.0 : 0.0;

      if (bins->counts[i] > 0 && right > left)
        cairo_rectangle (frame->pen.cr, left + gap / 2.0, y, MAX (0.8, right - left - gap),
                         frame->bottom - y);
    }
  tm_pen_colour (&frame->pen, &frame->pen.theme->in, 0.75);
  cairo_fill (frame->pen.cr);
}

/* How many the fullest holds gives the scale of the rest. */
static void
write_fullest (TmFrame *frame, const TmChartPlot *plot, double most)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE, .halo = TRUE, .align = TM_ALIGN_CENTRE };
  const TmChartBins *bins = &plot->bins;
  g_autofree char *text = g_strdup_printf ("%u", bins->most);
  guint fullest = 0;
  double x;

  while (bins->counts[fullest] != bins->most)
    fullest++;
  x = tm_frame_at (frame, tm_chart_count (plot, bins->from + (fullest + 0.5) * bins->width));
  if (tm_frame_is_tall (frame) && tm_frame_holds (frame, x))
    tm_text_draw_within (&frame->pen, text, x, find_bar_y (frame, bins->most, most) - frame->pen.line * 0.5,
                         frame->left, frame->right, &style, NULL);
}

/* Pieces to a bar that the fitted shape expects about a size. */
static double
find_expected (const TmChartPlot *plot, double relative)
{
  const double density = tm_shape_density (&plot->shape, relative);

  return isfinite (density) && density > 0 ? density * plot->bins.width * plot->n_sorted : 0.0;
}

static double
find_tallest (const TmFrame *frame, const TmChartPlot *plot)
{
  double most = plot->bins.most;

  for (int i = 0; i <= CURVE_STEPS && plot->has_curve; i++)
    most = MAX (most, find_expected (plot, frame->axis.low - tm_chart_count (plot, 0.0)
                                               + (frame->axis.high - frame->axis.low) * i / CURVE_STEPS));
  return MIN (most, plot->bins.most * 2.0); /* a spike of a curve leaves the bars to be seen */
}

static void
draw_curve (const TmFrame *frame, const TmChartPlot *plot, double most)
{
  cairo_t *cr = frame->pen.cr;

  if (!plot->has_curve)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, frame->left, frame->top, frame->right - frame->left, frame->bottom - frame->top);
  cairo_clip (cr);
  cairo_new_path (cr);
  for (int i = 0; i <= CURVE_STEPS; i++)
    {
      const double x = frame->left + (frame->right - frame->left) * i / CURVE_STEPS;
      const double count = frame->axis.low + (frame->axis.high - frame->axis.low) * i / CURVE_STEPS;

      cairo_line_to (cr, x,
                     MAX (find_bar_y (frame, find_expected (plot, count - tm_chart_count (plot, 0.0)), most),
                          frame->top - 10.0));
    }
  cairo_set_line_width (cr, 1.6);
  tm_pen_colour (&frame->pen, &frame->pen.theme->text, 0.9);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
tm_chart_plot_draw_histogram (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                              const TmTheme *theme)
{
  TmFrame frame;
  g_autofree char *heading = NULL;
  double most;

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!tm_frame_begin (&frame, cr, width, height, theme))
    return;
  if (plot->n_sorted == 0 || !plot->has_axis)
    tm_frame_draw_empty (&frame, _ ("no sizes yet"));
  else
    {
      tm_chart_place_sizes (&frame, plot, 0.0);
      heading = write_bins (plot);
      tm_chart_draw_heading (&frame, heading);
      tm_chart_draw_ground (&frame, plot);
      most = find_tallest (&frame, plot);
      draw_bars (&frame, plot, most);
      draw_curve (&frame, plot, most);
      write_fullest (&frame, plot, most);
      tm_chart_draw_foot_line (&frame);
    }
  tm_frame_end (&frame);
}
