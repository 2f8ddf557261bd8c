/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-draw.h"

void
tm_band_draw_line (const TmBandDrawing *d, double x1, double y1, double x2, double y2, double width,
                   const TmColour *colour, double opacity)
{
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, x1, y1);
  cairo_line_to (d->pen.cr, x2, y2);
  cairo_set_line_width (d->pen.cr, width);
  tm_pen_colour (&d->pen, colour, opacity);
  cairo_stroke (d->pen.cr);
}

double
tm_band_draw_x (const TmBandDrawing *d, double count)
{
  return tm_band_layout_x (&d->at, d->plot, count);
}

double
tm_band_draw_inside (const TmBandDrawing *d, double x)
{
  return CLAMP (x, d->at.left, d->at.right);
}

static gboolean
is_inside (const TmBandDrawing *d, double x)
{
  return x >= d->at.left - 0.5 && x <= d->at.right + 0.5;
}

/* A guard zone from a limit inward, hatched. */
static void
draw_guard (const TmBandDrawing *d, double from, double to)
{
  const double left = tm_band_draw_inside (d, tm_band_draw_x (d, MIN (from, to)));
  const double right = tm_band_draw_inside (d, tm_band_draw_x (d, MAX (from, to)));

  tm_hatch_draw (&d->pen, left, d->at.top, right - left, d->at.bottom - d->at.top, d->pen.size * 0.42,
                 &d->pen.theme->close);
}

static void
draw_guards (const TmBandDrawing *d, double low, double high, gboolean provable)
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
draw_proven_words (TmBandDrawing *d, double left, double right)
{
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const char *words = d->plot->guarded ? _ ("proven in") : _ ("within limits");

  if (!isnan (d->at.proven_y) && tm_text_width (&d->pen, words, &style) + d->pen.size * 0.5 <= right - left)
    tm_text_draw (&d->pen, words, (left + right) / 2.0, d->at.proven_y, &style);
}

static void
draw_zones (TmBandDrawing *d)
{
  double low, high, left, right;
  const gboolean provable = tm_band_plot_proven (d->plot, &low, &high);

  if (!d->plot->limits.has_lower && !d->plot->limits.has_upper)
    return;
  if (d->plot->guarded || !provable)
    draw_guards (d, low, high, provable);
  if (!provable)
    {
      left = d->at.left;
      right = d->at.right;
      tm_band_draw_plan_numbers (d, &left, &right);
      return;
    }
  left = tm_band_draw_inside (d, isfinite (low) ? tm_band_draw_x (d, low) : d->at.left);
  right = tm_band_draw_inside (d, isfinite (high) ? tm_band_draw_x (d, high) : d->at.right);
  cairo_rectangle (d->pen.cr, left, d->at.top, right - left, d->at.bottom - d->at.top);
  tm_pen_colour (&d->pen, &d->pen.theme->band, 1.0);
  cairo_fill (d->pen.cr);
  tm_band_draw_plan_numbers (d, &left, &right);
  draw_proven_words (d, left, right);
}

/* How far down its row a mark stands: with room for its number above it, or half way. */
static double
find_lift (const TmBandDrawing *d, double height)
{
  return d->plot->has_axis && height >= d->pen.size * 2.5 ? 0.62 : 0.5;
}

static double
get_row_height (const TmBandDrawing *d, const TmBandRow *row)
{
  return row->part ? d->at.part_height : d->at.row_height;
}

static void
draw_row_lines (const TmBandDrawing *d)
{
  double top = d->at.rows_top;

  for (guint i = 0; i < d->plot->rows->len; i++)
    {
      const TmBandRow *row = &g_array_index (d->plot->rows, TmBandRow, i);
      const double height = get_row_height (d, row), y = top + find_lift (d, height) * height;

      if (!row->part)
        tm_band_draw_line (d, d->at.left, y, d->at.right, y, 1.0, &d->pen.theme->dim, 0.28);
      top += height;
    }
  for (guint i = 0; i < d->at.n_pin_rows; i++)
    {
      const double y = d->at.pins_top + (i + 0.5) * d->at.row_height;
      tm_band_draw_line (d, d->at.left, y, d->at.right, y, 1.0, &d->pen.theme->dim, 0.14);
    }
}

static void
draw_limit_line (const TmBandDrawing *d, gint64 limit)
{
  const double x = tm_band_draw_x (d, (double)limit);
  const double rise = isnan (d->at.limits_y) ? 0.0 : d->pen.size * 0.4;

  if (is_inside (d, x))
    tm_band_draw_line (d, x, d->at.top - rise, x, d->at.bottom, 2.0, &d->pen.theme->text, 1.0);
}

/* The two numbers stand over their lines; where they would touch they step aside, outward. */
static void
draw_limit_numbers (TmBandDrawing *d)
{
  const TmLimits *limits = &d->plot->limits;
  TmTextStyle style = { .bold = TRUE, .align = TM_ALIGN_CENTRE };
  const double lower = tm_band_draw_x (d, (double)limits->lower),
               upper = tm_band_draw_x (d, (double)limits->upper);
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
draw_limits (TmBandDrawing *d)
{
  if (d->plot->limits.has_lower)
    draw_limit_line (d, d->plot->limits.lower);
  if (d->plot->limits.has_upper)
    draw_limit_line (d, d->plot->limits.upper);
  draw_limit_numbers (d);
}

/* How many labelled ticks the axis has room for, going by the width of a label. */
static TmTicks
choose_ticks (TmBandDrawing *d, guint *decimals)
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
draw_minor_ticks (const TmBandDrawing *d, const TmTicks *ticks)
{
  const gint64 step = tm_ticks_minor_step (ticks);
  const gint64 first = (gint64)ceil (d->plot->axis.low / (double)step) * step;

  for (guint i = 0; i < 64 && (double)(first + (gint64)i * step) <= d->plot->axis.high; i++)
    {
      const double x = tm_band_draw_x (d, (double)(first + (gint64)i * step));
      tm_band_draw_line (d, x, d->at.bottom, x, d->at.bottom + d->pen.size * 0.35, 1.0, &d->pen.theme->text,
                         0.7);
    }
}

static void
draw_axis (TmBandDrawing *d)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  guint decimals;
  TmTicks ticks;

  tm_band_draw_line (d, d->at.left, d->at.bottom, d->at.right, d->at.bottom, 1.5, &d->pen.theme->text, 0.6);
  if (isnan (d->at.ticks_y))
    return;
  ticks = choose_ticks (d, &decimals);
  draw_minor_ticks (d, &ticks);
  for (guint i = 0; i < ticks.n; i++)
    {
      const gint64 count = ticks.first + (gint64)i * ticks.step;
      const double x = tm_band_draw_x (d, (double)count);
      g_autofree char *label = tm_count_format (count, d->plot->unit, decimals);

      tm_band_draw_line (d, x, d->at.bottom, x, d->at.bottom + d->pen.size * 0.5, 1.0, &d->pen.theme->text,
                         0.9);
      tm_text_draw_within (&d->pen, label, x, d->at.ticks_y, 0.0, d->at.width, &style, NULL);
    }
}

/* Where a row's mark stands. */
typedef struct {
  double y;
  double height;
  double radius;
} Spot;

/* A value that finds no room beside its whisker stands on it, next to its mark, on a ground of its own. */
static void
draw_value_on (TmBandDrawing *d, const char *value, const Spot *spot, double x, const TmTextStyle *style)
{
  const double width = tm_text_width (&d->pen, value, style), gap = d->pen.size * 0.3;
  const double beside = spot->radius + gap * 2;
  const double left = x + beside + width + gap <= d->at.right ? x + beside : x - beside - width;
  TmTextStyle plain = *style;

  if (left < d->at.left)
    return;
  plain.halo = FALSE;
  plain.align = TM_ALIGN_LEFT;
  cairo_rectangle (d->pen.cr, left - gap, spot->y - d->pen.size * 0.55, width + 2 * gap, d->pen.size * 1.1);
  tm_pen_colour (&d->pen, &d->pen.theme->surface, 0.9);
  cairo_fill (d->pen.cr);
  tm_text_draw (&d->pen, value, left, spot->y, &plain);
}

/* A value's number: above its mark when the row is high enough, else beside its whisker. */
static void
draw_value (TmBandDrawing *d, const char *value, const Spot *spot, double x, double left, double right,
            gboolean part)
{
  TmTextStyle style = { .scale = part ? TM_BAND_PART_TEXT : 0.95, .dim = part, .halo = TRUE };
  const double gap = d->pen.size * 0.7;
  const double width = tm_text_width (&d->pen, value, &style);

  if (spot->height >= d->pen.size * 2.5)
    {
      style.align = TM_ALIGN_CENTRE;
      tm_text_draw_within (&d->pen, value, x, spot->y - d->pen.size * 1.15, d->at.left, d->at.width, &style,
                           NULL);
    }
  else if (spot->height < d->pen.size * 1.1)
    return;
  else if (right + gap + width <= d->at.width)
    tm_text_draw (&d->pen, value, right + gap, spot->y, &style);
  else if (left - gap - width >= d->at.left)
    tm_text_draw (&d->pen, value, left - gap - width, spot->y, &style);
  else
    draw_value_on (d, value, spot, x, &style);
}

/* A method by itself is no verdict: a dim whisker, fainter where many crowd together. */
static TmColour
choose_colour (const TmBandDrawing *d, const TmBandRow *row, const Spot *spot)
{
  const TmTheme *theme = d->pen.theme;
  TmColour colour = row->apart                   ? theme->out
                    : row->part && row->together ? theme->text
                    : row->part                  ? theme->dim
                                                 : *tm_mark_colour (theme, row->verdict);

  if (row->part && spot->height < d->pen.size * 1.1)
    colour.alpha *= 0.6;
  return colour;
}

/* A small dot, and an open diamond where it stands apart. */
static void
draw_part_mark (const TmBandDrawing *d, const TmBandRow *row, const Spot *spot, double x)
{
  if (row->apart)
    {
      tm_mark_draw_hollow (&d->pen, x, spot->y, spot->radius * 1.2, TM_VERDICT_OUT, TM_POINT_NONE);
      return;
    }
  cairo_new_path (d->pen.cr);
  cairo_arc (d->pen.cr, x, spot->y, spot->radius * 0.75, 0, 2 * G_PI);
  tm_pen_colour (&d->pen, row->together ? &d->pen.theme->text : &d->pen.theme->dim, 1.0);
  cairo_fill (d->pen.cr);
}

static void
draw_mark (const TmBandDrawing *d, const TmBandRow *row, const Spot *spot, double x, double shown)
{
  if (!is_inside (d, x))
    tm_mark_draw (&d->pen, shown, spot->y, spot->radius * 1.15, TM_VERDICT_OUT,
                  x < d->at.left ? TM_POINT_LEFT : TM_POINT_RIGHT);
  else if (row->part)
    draw_part_mark (d, row, spot, shown);
  else
    tm_mark_draw (&d->pen, shown, spot->y, spot->radius, row->verdict, row->point);
}

/* The words beside a method's own value. */
static char *
make_value (const TmBandRow *row)
{
  if (row->apart)
    return g_strdup_printf ("%s · %s", row->value, _ ("stands apart"));
  if (row->cannot)
    return g_strdup_printf ("%s · %s", row->value, _ ("cannot settle it"));
  return g_strdup (row->value);
}

/* A value off the scale is an arrow at the edge that points to where it lies. */
static void
draw_reading (TmBandDrawing *d, const TmBandRow *row, const Spot *spot)
{
  const gboolean whisker = isfinite (row->low) && isfinite (row->high) && row->high > row->low;
  const double x = tm_band_draw_x (d, row->at);
  const double from = whisker ? tm_band_draw_x (d, row->low) : x;
  const double to = whisker ? tm_band_draw_x (d, row->high) : x;
  const double shown = CLAMP (x, d->at.left + spot->radius, d->at.right - spot->radius);
  const TmColour colour = choose_colour (d, row, spot);
  g_autofree char *value = make_value (row);

  if (whisker)
    tm_whisker_draw (&d->pen, from, to, spot->y, d->at.left, d->at.right, spot->radius * 0.8, &colour);
  draw_mark (d, row, spot, x, shown);
  draw_value (d, value, spot, shown, MIN (shown - spot->radius, tm_band_draw_inside (d, from)),
              MAX (shown + spot->radius, tm_band_draw_inside (d, to)), row->part);
}

static void
draw_typed (TmBandDrawing *d, const TmBandRow *row, const Spot *spot)
{
  const double x = tm_band_draw_x (d, row->typed_at);
  const double shown = CLAMP (x, d->at.left + spot->radius, d->at.right - spot->radius);
  const gboolean inside = is_inside (d, x);

  tm_mark_draw_hollow (&d->pen, shown, spot->y, spot->radius, inside ? row->typed_verdict : TM_VERDICT_OUT,
                       inside           ? row->typed_point
                       : x < d->at.left ? TM_POINT_LEFT
                                        : TM_POINT_RIGHT);
  if (!row->read)
    draw_value (d, row->typed_value, spot, shown, shown - spot->radius, shown + spot->radius, FALSE);
}

/* Pass or fail: the mark and the word, with no scale. */
static void
draw_outcome (TmBandDrawing *d, const TmBandRow *row, const Spot *spot)
{
  const TmTextStyle style = { 0 };
  const double x = d->at.left + d->pen.size;

  tm_mark_draw (&d->pen, x, spot->y, MIN (spot->radius * 1.1, d->pen.size * 0.5), row->verdict, row->point);
  tm_text_draw_within (&d->pen, row->value, x + d->pen.size * 1.2, spot->y, 0.0, d->at.width, &style, NULL);
}

void
tm_band_draw_label (TmBandDrawing *d, const char *label, double y, double scale, gboolean dim)
{
  const TmTextStyle style = {
    .scale = scale, .align = TM_ALIGN_RIGHT, .dim = dim, .max_width = d->at.label_right - d->pen.size * 0.3
  };

  if (d->at.label_right > 0)
    tm_text_draw (&d->pen, label, d->at.label_right, y, &style);
}

static void
draw_row (TmBandDrawing *d, const TmBandRow *row, double top, double height)
{
  Spot spot = { .height = height, .y = top + find_lift (d, height) * height };

  spot.radius = CLAMP (height * 0.3, row->part ? 1.2 : 2.0, d->pen.size * (row->part ? 0.36 : 0.46));
  if (row->read && d->plot->attribute)
    draw_outcome (d, row, &spot);
  else if (row->read && d->plot->has_axis && isfinite (row->at))
    draw_reading (d, row, &spot);
  if (row->typed && d->plot->has_axis)
    draw_typed (d, row, &spot);
}

/* Labels thin out when rows are lower than a line of text. */
static void
draw_labels (TmBandDrawing *d)
{
  double top = d->at.rows_top, last = -INFINITY;

  for (guint i = 0; i < d->plot->rows->len; i++)
    {
      const TmBandRow *row = &g_array_index (d->plot->rows, TmBandRow, i);
      const double height = get_row_height (d, row), y = top + find_lift (d, height) * height;

      top += height;
      if (y - last < d->pen.size * 1.1 || (row->part && height < d->pen.size * 1.1))
        continue;
      tm_band_draw_label (d, row->label, y, row->part ? TM_BAND_PART_TEXT : 1.0,
                          row->part || (!row->read && !row->typed));
      last = y;
    }
}

static void
draw_rows (TmBandDrawing *d)
{
  double top = d->at.rows_top;

  draw_labels (d);
  for (guint i = 0; i < d->plot->rows->len; i++)
    {
      const TmBandRow *row = &g_array_index (d->plot->rows, TmBandRow, i);
      const double height = get_row_height (d, row);

      draw_row (d, row, top, height);
      top += height;
    }
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
draw_mate_text (TmBandDrawing *d, double left, double right)
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
draw_mate_bar (const TmBandDrawing *d, double left, double right)
{
  const double height = d->pen.size * 0.9;

  trace_rounded (d->pen.cr, left, d->at.mate_y - height / 2.0, right - left, height);
  tm_pen_colour (&d->pen, &d->pen.theme->mate, 1.0);
  cairo_fill (d->pen.cr);
}

static void
draw_mate_arrow (const TmBandDrawing *d, gboolean to_left)
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
draw_mate (TmBandDrawing *d)
{
  const double from = d->plot->mate_has_lower ? tm_band_draw_x (d, d->plot->mate_lower) : d->at.left;
  const double to = d->plot->mate_has_upper ? tm_band_draw_x (d, d->plot->mate_upper) : d->at.right;
  const double left = tm_band_draw_inside (d, from), right = MAX (left + 3.0, tm_band_draw_inside (d, to));
  const double half = d->pen.size * 0.8;

  if (!d->plot->has_mate || isnan (d->at.mate_y))
    return;
  tm_band_draw_label (d, _ ("mate"), d->at.mate_y, 1.0, FALSE);
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
draw_fit (TmBandDrawing *d)
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
  TmBandDrawing d = { .plot = plot };

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
      tm_band_draw_plan_lines (&d);
    }
  draw_rows (&d);
  tm_band_draw_pins (&d);
  tm_band_draw_plan (&d);
  if (plot->has_axis)
    {
      draw_mate (&d);
      draw_fit (&d);
    }
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
