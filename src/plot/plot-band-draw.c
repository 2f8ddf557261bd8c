/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-layout.h"

/* All that one drawing of one plot needs. */
typedef struct {
  TmPen pen;
  const TmBandPlot *plot;
  TmBandLayout at;
} Drawing;

static void
draw_line (const Drawing *d, double x1, double y1, double x2, double y2, double width, const TmColour *colour,
           double opacity)
{
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, x1, y1);
  cairo_line_to (d->pen.cr, x2, y2);
  cairo_set_line_width (d->pen.cr, width);
  tm_pen_colour (&d->pen, colour, opacity);
  cairo_stroke (d->pen.cr);
}

static double
find_x (const Drawing *d, double count)
{
  return tm_band_layout_x (&d->at, d->plot, count);
}

static double
keep_inside (const Drawing *d, double x)
{
  return CLAMP (x, d->at.left, d->at.right);
}

static gboolean
is_inside (const Drawing *d, double x)
{
  return x >= d->at.left - 0.5 && x <= d->at.right + 0.5;
}

/* A guard zone from a limit inward, hatched. */
static void
draw_guard (const Drawing *d, double from, double to)
{
  const double left = keep_inside (d, find_x (d, MIN (from, to)));
  const double right = keep_inside (d, find_x (d, MAX (from, to)));

  tm_hatch_draw (&d->pen, left, d->at.top, right - left, d->at.bottom - d->at.top, d->pen.size * 0.42,
                 &d->pen.theme->close);
}

static void
draw_guards (const Drawing *d, double low, double high, gboolean provable)
{
  const TmLimits *limits = &d->plot->limits;

  if (!provable)
    {
      draw_guard (d, limits->has_lower ? (double)limits->lower : MIN (0.0, d->plot->axis.low),
                  limits->has_upper ? (double)limits->upper : d->plot->axis.high);
      return;
    }
  if (limits->has_lower && !limits->zero_bounded)
    draw_guard (d, (double)limits->lower, low);
  if (limits->has_upper)
    draw_guard (d, high, (double)limits->upper);
}

/* What the solid zone means, where there is room for it. */
static void
draw_proven_words (Drawing *d, double left, double right)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const char *words = d->plot->guarded ? _ ("proven in") : _ ("within limits");

  if (!isnan (d->at.proven_y) && tm_text_width (&d->pen, words, &style) + d->pen.size * 0.5 <= right - left)
    tm_text_draw (&d->pen, words, (left + right) / 2.0, d->at.proven_y, &style);
}

static void
draw_zones (Drawing *d)
{
  double low, high, left, right;
  const gboolean provable = tm_band_plot_proven (d->plot, &low, &high);

  if (!d->plot->limits.has_lower && !d->plot->limits.has_upper)
    return;
  if (d->plot->guarded || !provable)
    draw_guards (d, low, high, provable);
  if (!provable)
    return;
  left = keep_inside (d, isfinite (low) ? find_x (d, low) : d->at.left);
  right = keep_inside (d, isfinite (high) ? find_x (d, high) : d->at.right);
  cairo_rectangle (d->pen.cr, left, d->at.top, right - left, d->at.bottom - d->at.top);
  tm_pen_colour (&d->pen, &d->pen.theme->band, 1.0);
  cairo_fill (d->pen.cr);
  draw_proven_words (d, left, right);
}

static void
draw_row_lines (const Drawing *d)
{
  const guint n = d->plot->rows->len;
  const double lift = d->at.row_height >= d->pen.size * 2.5 ? 0.62 : 0.5;

  for (guint i = 0; i < n; i++)
    {
      const double y = d->at.rows_top + (i + lift) * d->at.row_height;
      draw_line (d, d->at.left, y, d->at.right, y, 1.0, &d->pen.theme->dim, 0.28);
    }
}

static void
draw_limit_line (const Drawing *d, gint64 limit)
{
  const double x = find_x (d, (double)limit);
  const double rise = isnan (d->at.limits_y) ? 0.0 : d->pen.size * 0.4;

  if (is_inside (d, x))
    draw_line (d, x, d->at.top - rise, x, d->at.bottom, 2.0, &d->pen.theme->text, 1.0);
}

/* The two numbers stand over their lines; where they would touch they step aside, outward. */
static void
draw_limit_numbers (Drawing *d)
{
  const TmLimits *limits = &d->plot->limits;
  TmTextStyle style = { .bold = TRUE, .align = TM_ALIGN_CENTRE };
  const double lower = find_x (d, (double)limits->lower), upper = find_x (d, (double)limits->upper);
  const double y = d->at.limits_y - d->pen.size * 0.3;
  gboolean apart = TRUE;

  if (isnan (d->at.limits_y))
    return;
  if (limits->has_lower && limits->has_upper)
    {
      const double half = tm_text_width (&d->pen, d->plot->lower_text, &style) / 2.0
                          + tm_text_width (&d->pen, d->plot->upper_text, &style) / 2.0;
      apart = upper - lower >= half + d->pen.size * 0.6;
    }
  if (limits->has_lower)
    {
      style.align = apart ? TM_ALIGN_CENTRE : TM_ALIGN_RIGHT;
      tm_text_draw_within (&d->pen, d->plot->lower_text, apart ? lower : lower + d->pen.size * 0.2, y, 0.0,
                           limits->has_upper && !apart ? (lower + upper) / 2.0 - 1.0 : d->at.width, &style,
                           NULL);
    }
  if (limits->has_upper)
    {
      style.align = apart ? TM_ALIGN_CENTRE : TM_ALIGN_LEFT;
      tm_text_draw_within (&d->pen, d->plot->upper_text, apart ? upper : upper - d->pen.size * 0.2, y,
                           limits->has_lower && !apart ? (lower + upper) / 2.0 + 1.0 : 0.0, d->at.width,
                           &style, NULL);
    }
}

static void
draw_limits (Drawing *d)
{
  if (d->plot->limits.has_lower)
    draw_limit_line (d, d->plot->limits.lower);
  if (d->plot->limits.has_upper)
    draw_limit_line (d, d->plot->limits.upper);
  draw_limit_numbers (d);
}

/* How many labelled ticks the axis has room for, going by the width of a label. */
static TmTicks
choose_ticks (Drawing *d, guint *decimals)
{
  const TmTextStyle style = { .scale = 0.95 };
  const double width = d->at.right - d->at.left;
  guint most = 8;
  TmTicks ticks = tm_axis_ticks (&d->plot->axis, most);

  for (; most >= 1; most--)
    {
      g_autofree char *label = NULL;
      ticks = tm_axis_ticks (&d->plot->axis, most);
      *decimals = MIN (MAX (ticks.decimals, d->plot->decimals), TM_MAX_DECIMALS);
      label = tm_count_format (ticks.first, d->plot->unit, *decimals);
      if (ticks.n * (tm_text_width (&d->pen, label, &style) + d->pen.size * 1.2) <= width)
        break;
    }
  return ticks;
}

static void
draw_minor_ticks (const Drawing *d, const TmTicks *ticks)
{
  const gint64 step = tm_ticks_minor_step (ticks);
  const gint64 first = (gint64)ceil (d->plot->axis.low / (double)step) * step;

  for (guint i = 0; i < 64 && (double)(first + (gint64)i * step) <= d->plot->axis.high; i++)
    {
      const double x = find_x (d, (double)(first + (gint64)i * step));
      draw_line (d, x, d->at.bottom, x, d->at.bottom + d->pen.size * 0.35, 1.0, &d->pen.theme->text, 0.7);
    }
}

static void
draw_axis (Drawing *d)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  guint decimals;
  TmTicks ticks;

  draw_line (d, d->at.left, d->at.bottom, d->at.right, d->at.bottom, 1.5, &d->pen.theme->text, 0.6);
  if (isnan (d->at.ticks_y))
    return;
  ticks = choose_ticks (d, &decimals);
  draw_minor_ticks (d, &ticks);
  for (guint i = 0; i < ticks.n; i++)
    {
      const gint64 count = ticks.first + (gint64)i * ticks.step;
      const double x = find_x (d, (double)count);
      g_autofree char *label = tm_count_format (count, d->plot->unit, decimals);

      draw_line (d, x, d->at.bottom, x, d->at.bottom + d->pen.size * 0.5, 1.0, &d->pen.theme->text, 0.9);
      tm_text_draw_within (&d->pen, label, x, d->at.ticks_y, 0.0, d->at.width, &style, NULL);
    }
}

/* A value's number: above its mark when the row is high enough, else beside its whisker. */
static void
draw_value (Drawing *d, const char *value, double x, double y, double left, double right)
{
  TmTextStyle style = { .scale = 0.95, .halo = TRUE, .align = TM_ALIGN_CENTRE };
  const double gap = d->pen.size * 0.7;

  if (d->at.row_height >= d->pen.size * 2.5)
    {
      tm_text_draw_within (&d->pen, value, x, y - d->pen.size * 1.15, d->at.left, d->at.width, &style, NULL);
      return;
    }
  if (d->at.row_height < d->pen.size * 1.1)
    return;
  style.align
      = right + gap + tm_text_width (&d->pen, value, &style) <= d->at.width ? TM_ALIGN_LEFT : TM_ALIGN_RIGHT;
  tm_text_draw_within (&d->pen, value, style.align == TM_ALIGN_LEFT ? right + gap : left - gap, y, d->at.left,
                       d->at.width, &style, NULL);
}

/* A value off the scale is an arrow at the edge that points to where it lies. */
static void
draw_reading (Drawing *d, const TmBandRow *row, double y)
{
  const double reach = isfinite (row->uncertainty) ? row->uncertainty : 0.0;
  const double radius = CLAMP (d->at.row_height * 0.3, 2.0, d->pen.size * 0.46);
  const double x = find_x (d, row->at), from = find_x (d, row->at - reach), to = find_x (d, row->at + reach);
  const double shown = CLAMP (x, d->at.left + radius, d->at.right - radius);

  if (reach > 0)
    tm_whisker_draw (&d->pen, from, to, y, d->at.left, d->at.right, radius * 0.8,
                     tm_mark_colour (d->pen.theme, row->verdict));
  if (is_inside (d, x))
    tm_mark_draw (&d->pen, shown, y, radius, row->verdict, row->point);
  else
    tm_mark_draw (&d->pen, shown, y, radius * 1.15, TM_VERDICT_OUT,
                  x < d->at.left ? TM_POINT_LEFT : TM_POINT_RIGHT);
  draw_value (d, row->value, shown, y, MIN (shown - radius, keep_inside (d, from)),
              MAX (shown + radius, keep_inside (d, to)));
}

static void
draw_typed (Drawing *d, const TmBandRow *row, double y)
{
  const double radius = CLAMP (d->at.row_height * 0.3, 2.0, d->pen.size * 0.46);
  const double x = find_x (d, row->typed_at);
  const double shown = CLAMP (x, d->at.left + radius, d->at.right - radius);
  const gboolean inside = is_inside (d, x);

  tm_mark_draw_hollow (&d->pen, shown, y, radius, inside ? row->typed_verdict : TM_VERDICT_OUT,
                       inside           ? row->typed_point
                       : x < d->at.left ? TM_POINT_LEFT
                                        : TM_POINT_RIGHT);
  if (!row->read)
    draw_value (d, row->typed_value, shown, y, shown - radius, shown + radius);
}

/* Pass or fail: the mark and the word, with no scale. */
static void
draw_outcome (Drawing *d, const TmBandRow *row, double y)
{
  const TmTextStyle style = { 0 };
  const double radius = CLAMP (d->at.row_height * 0.3, 2.0, d->pen.size * 0.5);
  const double x = d->at.left + d->pen.size;

  tm_mark_draw (&d->pen, x, y, radius, row->verdict, row->point);
  tm_text_draw_within (&d->pen, row->value, x + d->pen.size * 1.2, y, 0.0, d->at.width, &style, NULL);
}

/* Row labels thin out when rows are lower than a line of text. */
static void
draw_row_label (Drawing *d, const char *label, guint index, double y, gboolean dim)
{
  const guint every = (guint)ceil (d->pen.size * 1.1 / MAX (0.1, d->at.row_height));
  const TmTextStyle style
      = { .align = TM_ALIGN_RIGHT, .dim = dim, .max_width = d->at.label_right - d->pen.size * 0.3 };

  if (d->at.label_right > 0 && index % MAX (1, every) == 0)
    tm_text_draw (&d->pen, label, d->at.label_right, y, &style);
}

static void
draw_rows (Drawing *d)
{
  const double lift = d->at.row_height >= d->pen.size * 2.5 ? 0.62 : 0.5;

  for (guint i = 0; i < d->plot->rows->len; i++)
    {
      const TmBandRow *row = &g_array_index (d->plot->rows, TmBandRow, i);
      const double y = d->at.rows_top + (i + (d->plot->has_axis ? lift : 0.5)) * d->at.row_height;

      draw_row_label (d, row->label, i, y, !row->read && !row->typed);
      if (row->read && d->plot->attribute)
        draw_outcome (d, row, y);
      else if (row->read && d->plot->has_axis && isfinite (row->at))
        draw_reading (d, row, y);
      if (row->typed && d->plot->has_axis)
        draw_typed (d, row, y);
    }
}

static void
draw_bracket (const Drawing *d, double x, double y, double arm, double half)
{
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, x + arm, y - half);
  cairo_line_to (d->pen.cr, x, y - half);
  cairo_line_to (d->pen.cr, x, y + half);
  cairo_line_to (d->pen.cr, x + arm, y + half);
  cairo_set_line_width (d->pen.cr, 2.5);
  tm_pen_colour (&d->pen, &d->pen.theme->text, 1.0);
  cairo_stroke (d->pen.cr);
}

static void
draw_pin (Drawing *d, const TmBandPin *pin, double y)
{
  const double half = CLAMP (d->at.row_height * 0.3, 2.0, d->pen.size * 0.7);
  const double arm = (pin->went ? -1.0 : 1.0) * d->pen.size * 0.6;
  const double x = keep_inside (d, find_x (d, pin->at));
  TmTextStyle style
      = { .scale = 0.9, .dim = TRUE, .halo = TRUE, .align = pin->went ? TM_ALIGN_RIGHT : TM_ALIGN_LEFT };
  const double width = tm_text_width (&d->pen, pin->label, &style);
  const double gap = arm + (pin->went ? -1.0 : 1.0) * d->pen.size * 0.4;

  draw_bracket (d, x, y, arm, half);
  if (d->at.row_height < d->pen.size * 1.1)
    return;
  /* On a narrow plot the words may have to stand on the bracket's other side. */
  if (pin->went && x + gap - width < d->at.left)
    style.align = TM_ALIGN_LEFT;
  else if (!pin->went && x + gap + width > d->at.width)
    style.align = TM_ALIGN_RIGHT;
  else
    {
      tm_text_draw (&d->pen, pin->label, x + gap, y, &style);
      return;
    }
  tm_text_draw_within (&d->pen, pin->label, x + (pin->went ? 0.4 : -0.4) * d->pen.size, y, d->at.left,
                       d->at.width, &style, NULL);
}

static void
draw_pins (Drawing *d)
{
  const TmBandPin *went = tm_band_tightest_pin (d->plot, TRUE),
                  *stopped = tm_band_tightest_pin (d->plot, FALSE);
  double y = d->at.rows_top + (d->plot->rows->len + 0.5) * d->at.row_height;

  if (d->plot->pins->len == 0 || !d->plot->has_axis)
    return;
  draw_row_label (d, _ ("pins"), 0, y, FALSE);
  if (went != NULL)
    draw_pin (d, went, y);
  if (d->at.n_pin_rows == 2)
    y += d->at.row_height;
  if (stopped != NULL)
    draw_pin (d, stopped, y);
}

static void
trace_rounded (cairo_t *cr, double x, double y, double width, double height)
{
  const double radius = MIN (4.0, MIN (width, height) / 2.0);

  cairo_new_path (cr);
  cairo_arc (cr, x + width - radius, y + radius, radius, -G_PI / 2.0, 0.0);
  cairo_arc (cr, x + width - radius, y + height - radius, radius, 0.0, G_PI / 2.0);
  cairo_arc (cr, x + radius, y + height - radius, radius, G_PI / 2.0, G_PI);
  cairo_arc (cr, x + radius, y + radius, radius, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

/* The mate's limits as numbers: beside the bar, on the side with more room. */
static void
draw_mate_text (Drawing *d, double left, double right)
{
  TmTextStyle style = { .scale = 0.95 };
  const double gap = d->pen.size * 0.5;
  const double width = tm_text_width (&d->pen, d->plot->mate_text, &style);

  if (left - gap - width >= d->at.left)
    {
      style.align = TM_ALIGN_RIGHT;
      tm_text_draw (&d->pen, d->plot->mate_text, left - gap, d->at.mate_y, &style);
    }
  else
    tm_text_draw_within (&d->pen, d->plot->mate_text, right + gap, d->at.mate_y, d->at.left, d->at.width,
                         &style, NULL);
}

static void
draw_mate_bar (const Drawing *d, double left, double right)
{
  const double height = d->pen.size * 0.9;

  trace_rounded (d->pen.cr, left, d->at.mate_y - height / 2.0, right - left, height);
  tm_pen_colour (&d->pen, &d->pen.theme->mate, 1.0);
  cairo_fill (d->pen.cr);
}

static void
draw_mate_arrow (const Drawing *d, gboolean to_left)
{
  const double half = d->pen.size * 0.5;
  const double tip = to_left ? d->at.left : d->at.right;
  const double back = to_left ? tip + half * 1.6 : tip - half * 1.6;

  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, tip, d->at.mate_y);
  cairo_line_to (d->pen.cr, back, d->at.mate_y - half);
  cairo_line_to (d->pen.cr, back, d->at.mate_y + half);
  cairo_close_path (d->pen.cr);
  tm_pen_colour (&d->pen, &d->pen.theme->mate, 1.0);
  cairo_fill (d->pen.cr);
}

static void
draw_mate (Drawing *d)
{
  const double from = d->plot->mate_has_lower ? find_x (d, d->plot->mate_lower) : d->at.left;
  const double to = d->plot->mate_has_upper ? find_x (d, d->plot->mate_upper) : d->at.right;
  const double left = keep_inside (d, from), right = MAX (left + 3.0, keep_inside (d, to));
  const double half = d->pen.size * 0.8;

  if (!d->plot->has_mate || isnan (d->at.mate_y))
    return;
  draw_row_label (d, _ ("mate"), 0, d->at.mate_y, FALSE);
  if (to < d->at.left || from > d->at.right)
    {
      const gboolean to_left = to < d->at.left;
      draw_mate_arrow (d, to_left);
      draw_mate_text (d, to_left ? d->at.left : d->at.right - half,
                      to_left ? d->at.left + half : d->at.right);
      return;
    }
  draw_mate_bar (d, left, right);
  draw_mate_text (d, left, right);
}

static void
draw_fit (Drawing *d)
{
  TmTextStyle style = { .scale = 0.95, .dim = TRUE };
  const double edge = MIN (d->at.left, d->pen.size * 0.7);
  const double left = isnan (d->at.fit_second_y) ? d->at.left : edge;

  if (isnan (d->at.fit_y))
    return;
  if (isnan (d->at.fit_second_y))
    {
      g_autofree char *line = tm_band_fit_line (d->plot);
      tm_text_draw_within (&d->pen, line, left, d->at.fit_y, edge, d->at.width - edge, &style, NULL);
      return;
    }
  tm_text_draw_within (&d->pen, d->plot->fit_by_limits, left, d->at.fit_y, edge, d->at.width - edge, &style,
                       NULL);
  tm_text_draw_within (&d->pen, d->plot->fit_measured, left, d->at.fit_second_y, edge, d->at.width - edge,
                       &style, NULL);
}

void
tm_band_plot_draw (const TmBandPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  Drawing d = { .plot = plot };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  tm_band_layout_fill (&d.at, plot, &d.pen, width, height);
  if (plot->has_axis)
    {
      draw_zones (&d);
      draw_row_lines (&d);
      draw_limits (&d);
      draw_axis (&d);
    }
  draw_rows (&d);
  draw_pins (&d);
  if (plot->has_axis)
    {
      draw_mate (&d);
      draw_fit (&d);
    }
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
