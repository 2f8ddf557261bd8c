/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures with the sizes along the bottom: histogram and probability plot.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

#define MOST_BINS      200
#define MOST_QUANTILES 400
#define CURVE_STEPS    160

/* -------- Ahead of drawing -------- */

static const TmFittedShape standard_normal = { TM_SHAPE_NORMAL, 0.0, 0.0, 1.0, 0.0 };

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

static double
find_quantile (const TmChartPlot *plot, double share)
{
  const double at = share * (plot->n_sorted - 1);
  const guint below = (guint)floor (at), above = MIN (below + 1, plot->n_sorted - 1);

  return plot->sorted[below] + (at - below) * (plot->sorted[above] - plot->sorted[below]);
}

/* The smallest step between sizes that differ: how fine they were read.  0: too fine to matter. */
static double
find_grain (const TmChartPlot *plot, double width)
{
  double grain = INFINITY;

  for (guint i = 1; i < plot->n_sorted; i++)
    {
      const double step = plot->sorted[i] - plot->sorted[i - 1];
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
choose_width (TmChartBins *bins, const TmChartPlot *plot, double span)
{
  const double middle = find_quantile (plot, 0.75) - find_quantile (plot, 0.25);

  bins->rule = middle > 0 ? TM_BINS_SPREAD : TM_BINS_COUNT;
  if (middle > 0)
    return 2.0 * middle / cbrt (plot->n_sorted);
  return span / (1.0 + log2 (plot->n_sorted));
}

/* Bars hold whole steps of reading, else some would hold more steps than others and stand out. */
static void
choose_bins (TmChartBins *bins, const TmChartPlot *plot)
{
  const double low = plot->sorted[0], high = plot->sorted[plot->n_sorted - 1], span = high - low;
  double grain;

  if (!(span > 0))
    {
      *bins
          = (TmChartBins) { .rule = TM_BINS_ONE, .n = 1, .width = (plot->axis.high - plot->axis.low) / 60.0 };
      bins->from = low - bins->width / 2.0;
      return;
    }
  bins->width = MAX (choose_width (bins, plot, span), span / (MOST_BINS - 2));
  grain = find_grain (plot, bins->width);
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
  choose_bins (bins, plot);
  bins->counts = g_new0 (guint, bins->n);
  for (guint i = 0; i < plot->n_sorted; i++)
    {
      const double at = floor ((plot->sorted[i] - bins->from) / bins->width);
      bins->counts[(guint)CLAMP (at, 0.0, bins->n - 1.0)]++;
    }
  for (guint i = 0; i < bins->n; i++)
    bins->most = MAX (bins->most, bins->counts[i]);
}

/* G. Blom (1958): the median of the i-th of n lies near (i - 3/8) / (n + 1/4). */
static double
find_normal_quantile (guint rank, guint n)
{
  return tm_shape_quantile (&standard_normal, (rank + 1.0 - 0.375) / (n + 0.25));
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
        next = MAX (next, (guint)CLAMP (floor (tm_shape_below (&standard_normal, last) * (n + 0.25) - 0.625),
                                        0.0, n));
      i = i + 1 < n ? MIN (next, n - 1) : n;
    }
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

/* -------- The ground -------- */

static void
place_sizes (TmFrame *frame, const TmChartPlot *plot, double widest)
{
  const double padding = tm_frame_padding (frame);
  const gboolean tall = tm_frame_is_tall (frame);

  frame->sideways = TRUE;
  frame->axis = plot->axis;
  tm_frame_place_columns (frame, widest);
  frame->top = padding + (tall ? frame->pen.line * 1.2 : 0.0);
  frame->bottom = frame->height - padding - (tall ? frame->pen.line * 1.2 : 0.0);
}

static void
draw_ground (TmFrame *frame, const TmChartPlot *plot)
{
  tm_frame_draw_zones (frame, &plot->band);
  tm_frame_draw_limits (frame, &plot->band);
  tm_frame_draw_target (frame, &plot->band);
  tm_frame_draw_ticks (frame, tm_frame_most_ticks (frame), plot->decimals);
}

static void
draw_heading (TmFrame *frame, const char *text)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE };

  if (tm_frame_is_tall (frame))
    tm_text_draw_within (&frame->pen, text, frame->left, frame->top - frame->pen.line * 0.6, 0.0,
                         frame->width, &style, NULL);
}

static void
draw_foot_line (const TmFrame *frame)
{
  tm_frame_line (frame, frame->left, frame->bottom, frame->right, frame->bottom, 1.5, &frame->pen.theme->text,
                 0.6);
}

/* -------- Histogram -------- */

static char *
write_bins (const TmChartPlot *plot)
{
  g_autofree char *width = tm_chart_length_text (plot, plot->bins.width);

  switch (plot->bins.rule)
    {
    case TM_BINS_SPREAD:
      /* Translators: heading of a histogram: number of pieces, width of a bar, and the rule it comes from. */
      return g_strdup_printf (ngettext ("%u piece; bars %s wide (Freedman and Diaconis)",
                                        "%u pieces; bars %s wide (Freedman and Diaconis)", plot->n_sorted),
                              plot->n_sorted, width);
    case TM_BINS_COUNT:
      return g_strdup_printf (
          ngettext ("%u piece; bars %s wide (Sturges)", "%u pieces; bars %s wide (Sturges)", plot->n_sorted),
          plot->n_sorted, width);
    case TM_BINS_ONE:
    case TM_BINS_NONE:
    default:
      return g_strdup_printf (ngettext ("%u piece", "%u pieces, all of one size", plot->n_sorted),
                              plot->n_sorted);
    }
}

static double
find_bar_y (const TmFrame *frame, double count, double most)
{
  return frame->bottom - count / most * (frame->bottom - frame->top) * 0.88;
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
      place_sizes (&frame, plot, 0.0);
      heading = write_bins (plot);
      draw_heading (&frame, heading);
      draw_ground (&frame, plot);
      most = find_tallest (&frame, plot);
      draw_bars (&frame, plot, most);
      draw_curve (&frame, plot, most);
      write_fullest (&frame, plot, most);
      draw_foot_line (&frame);
    }
  tm_frame_end (&frame);
}

/* -------- Probability plot -------- */

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
      const double z = tm_shape_quantile (&standard_normal, probabilities[order[i]].share);
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
  const double radius = plot->quantiles->len > 100 ? frame->pen.size * 0.14 : frame->pen.size * 0.22;

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
      place_sizes (&frame, plot, tm_text_width (&frame.pen, reach > 3.75 ? "99.9999 %" : "99.99 %", &style));
      draw_heading (&frame, _ ("share of pieces that are smaller; normal ones lie along the line"));
      draw_ground (&frame, plot);
      draw_probabilities (&frame, reach);
      draw_normal_line (&frame, plot, reach);
      draw_quantiles (&frame, plot, reach);
      draw_foot_line (&frame);
    }
  tm_frame_end (&frame);
}
