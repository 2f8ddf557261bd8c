/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-run-private.h"

typedef struct {
  TmPen pen;
  const TmRunPlot *plot;
  double width, height;
  double left, right, top, bottom;
  double event_y;      /* middle of the upper line of event labels; NAN: no room */
  guint n_event_lines; /* 2 when events stand too close for their words */
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
find_y (const Drawing *d, double count)
{
  const double fraction = CLAMP (tm_axis_fraction (&d->plot->axis, count), -2.0, 3.0);

  return d->bottom - fraction * (d->bottom - d->top);
}

static double
keep_inside (const Drawing *d, double y)
{
  return CLAMP (y, d->top, d->bottom);
}

static gboolean
is_inside (const Drawing *d, double y)
{
  return y >= d->top - 0.5 && y <= d->bottom + 0.5;
}

static double
find_slot (const Drawing *d)
{
  return (d->right - d->left) / MAX (1, d->plot->serials->len);
}

/* The places of one piece stand side by side in its slot. */
static double
find_x (const Drawing *d, const TmRunPoint *point)
{
  const double places = MAX (1, d->plot->places);

  return d->left + (point->piece + (point->place - 0.5) / places) * find_slot (d);
}

static void
place_columns (Drawing *d)
{
  const TmTextStyle bold = { .bold = TRUE }, plain = { 0 };
  const double padding = MIN (d->pen.size * 0.7, d->width / 10.0);
  double widest = tm_text_width (&d->pen, _ ("target"), &plain);

  widest = MAX (widest, tm_text_width (&d->pen, d->plot->lower_text, &bold));
  widest = MAX (widest, tm_text_width (&d->pen, d->plot->upper_text, &bold));
  d->left = d->width >= d->pen.size * 14.0 ? padding * 2.0 + MIN (widest, d->width * 0.25) : padding;
  d->right = d->width - padding;
}

static double
find_event_x (const Drawing *d, guint index)
{
  if (index >= d->plot->events->len)
    return d->right;
  return d->left + g_array_index (d->plot->events, TmRunEvent, index).before * find_slot (d);
}

static guint
count_event_lines (Drawing *d)
{
  const TmTextStyle style = { .scale = 0.9 };

  for (guint i = 0; i + 1 < d->plot->events->len; i++)
    {
      const char *label = g_array_index (d->plot->events, TmRunEvent, i).label;
      if (tm_text_width (&d->pen, label, &style) + d->pen.size
          > find_event_x (d, i + 1) - find_event_x (d, i))
        return 2;
    }
  return 1;
}

static void
place_parts (Drawing *d)
{
  const double padding = MIN (d->pen.size * 0.7, d->height / 10.0);
  const gboolean tall = d->height >= d->pen.line * 6.0;

  place_columns (d);
  d->top = padding;
  d->event_y = NAN;
  if (tall && d->plot->events->len > 0)
    {
      d->event_y = d->top + d->pen.line / 2.0;
      d->n_event_lines = count_event_lines (d);
      d->top += d->pen.line * (d->n_event_lines + 0.2);
    }
  d->bottom = d->height - padding - (tall ? d->pen.line + d->pen.size * 0.3 : 0.0);
}

static void
fill_zone (const Drawing *d, double low, double high, const TmColour *colour, double opacity)
{
  const double top = isfinite (high) ? keep_inside (d, find_y (d, high)) : d->top;
  const double bottom = isfinite (low) ? keep_inside (d, find_y (d, low)) : d->bottom;

  cairo_new_path (d->pen.cr);
  cairo_rectangle (d->pen.cr, d->left, top, d->right - d->left, MAX (0.0, bottom - top));
  tm_pen_colour (&d->pen, colour, opacity);
  cairo_fill (d->pen.cr);
}

static void
hatch_zone (const Drawing *d, double low, double high)
{
  const double top = keep_inside (d, find_y (d, high)), bottom = keep_inside (d, find_y (d, low));
  TmColour thin = d->pen.theme->close;

  thin.alpha *= 0.6;
  tm_hatch_draw (&d->pen, d->left, top, d->right - d->left, bottom - top, d->pen.size * 0.42, &thin);
}

static void
draw_zones (const Drawing *d)
{
  const TmLimits *limits = &d->plot->limits;
  const double guard = d->plot->guard;
  double low = -INFINITY, high = INFINITY;

  if (limits->has_lower)
    low = (double)limits->lower + guard;
  if (limits->has_upper)
    high = (double)limits->upper - guard;
  if (limits->zero_bounded && limits->has_upper)
    low = 0.0;
  if (!limits->has_lower && !limits->has_upper)
    return;
  if (low <= high)
    fill_zone (d, low, high, &d->pen.theme->band, 0.5);
  if (guard <= 0)
    return;
  if (limits->has_lower && !limits->zero_bounded)
    hatch_zone (d, (double)limits->lower, MIN (low, isfinite (high) ? high + guard : low));
  if (limits->has_upper)
    hatch_zone (d, MAX (high, isfinite (low) && low > high ? (low + high) / 2.0 : high),
                (double)limits->upper);
}

static void
draw_side_text (Drawing *d, const char *text, double y, gboolean bold, gboolean dim)
{
  const TmTextStyle style
      = { .bold = bold, .dim = dim, .align = TM_ALIGN_RIGHT, .max_width = d->left - d->pen.size * 1.1 };

  if (d->left > d->pen.size * 2.0)
    tm_text_draw (&d->pen, text, d->left - d->pen.size * 0.6, y, &style);
}

static void
draw_limit (Drawing *d, gint64 limit, const char *text)
{
  const double y = find_y (d, (double)limit);

  if (!is_inside (d, y))
    return;
  draw_line (d, d->left, y, d->right, y, 2.0, &d->pen.theme->text, 1.0);
  draw_side_text (d, text, y, TRUE, FALSE);
}

static void
draw_target (Drawing *d)
{
  const double dots[] = { 1.5, 3.0 };
  const double y = find_y (d, d->plot->target);
  const double apart = fabs (find_y (d, (double)d->plot->limits.upper) - y);

  if (!d->plot->has_target)
    return;
  cairo_set_dash (d->pen.cr, dots, 2, 0.0);
  draw_line (d, d->left, y, d->right, y, 1.2, &d->pen.theme->dim, 1.0);
  cairo_set_dash (d->pen.cr, NULL, 0, 0.0);
  if (apart >= d->pen.line)
    draw_side_text (d, _ ("target"), y, FALSE, TRUE);
}

/* Numbers along the side, where the limits alone do not give the scale. */
static void
draw_side_ticks (Drawing *d)
{
  const TmLimits *limits = &d->plot->limits;
  const guint most = (guint)CLAMP ((d->bottom - d->top) / (d->pen.line * 2.5), 1.0, 6.0);
  const TmTicks ticks = tm_axis_ticks (&d->plot->axis, most);
  const guint decimals = MIN (MAX (ticks.decimals, d->plot->decimals), TM_MAX_DECIMALS);

  if (limits->has_lower && limits->has_upper)
    return;
  for (guint i = 0; i < ticks.n; i++)
    {
      const gint64 count = ticks.first + (gint64)i * ticks.step;
      const double y = find_y (d, (double)count);
      g_autofree char *label = tm_count_format (count, d->plot->unit, decimals);

      if ((limits->has_lower && fabs (y - find_y (d, (double)limits->lower)) < d->pen.line)
          || (limits->has_upper && fabs (y - find_y (d, (double)limits->upper)) < d->pen.line))
        continue;
      draw_line (d, d->left - d->pen.size * 0.3, y, d->left, y, 1.0, &d->pen.theme->text, 0.8);
      draw_side_text (d, label, y, FALSE, TRUE);
    }
}

/* Every how many pieces a serial number fits under the axis: 1, 2, 5, 10, 20… */
static guint
choose_every (Drawing *d, const TmTextStyle *style)
{
  static const guint factors[] = { 1, 2, 5 };
  double widest = 0.0;

  for (guint i = 0; i < d->plot->serials->len; i += MAX (1, d->plot->serials->len / 50))
    widest = MAX (widest, tm_text_width (&d->pen, g_ptr_array_index (d->plot->serials, i), style));
  widest = MIN (widest, d->width * 0.3) + d->pen.size;
  for (guint power = 1; power <= 100000000; power *= 10)
    for (gsize i = 0; i < G_N_ELEMENTS (factors); i++)
      if (factors[i] * power * find_slot (d) >= widest)
        return factors[i] * power;
  return G_MAXUINT;
}

static void
draw_piece_axis (Drawing *d)
{
  const TmTextStyle style
      = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE, .max_width = d->width * 0.3 };
  const double y = d->height - MIN (d->pen.size * 0.7, d->height / 10.0) - d->pen.line / 2.0;
  guint every;

  draw_line (d, d->left, d->bottom, d->right, d->bottom, 1.5, &d->pen.theme->text, 0.6);
  if (d->height < d->pen.line * 6.0)
    return;
  every = choose_every (d, &style);
  for (guint i = 0; i < d->plot->serials->len;)
    {
      const double x = d->left + (i + 0.5) * find_slot (d);
      draw_line (d, x, d->bottom, x, d->bottom + d->pen.size * 0.35, 1.0, &d->pen.theme->text, 0.8);
      tm_text_draw (&d->pen, g_ptr_array_index (d->plot->serials, i), x, y, &style);
      if (every >= d->plot->serials->len)
        break;
      /* The first, then the fifth, tenth, fifteenth… */
      i += i == 0 && every >= 5 ? every - 1 : every;
    }
}

/* The pieces' events lie in piece order; those that stand close put their words on two lines in
 * turn.  An upper label may run on over the next event, whose line begins below it. */
static void
draw_event (Drawing *d, const TmRunEvent *event, guint line, double until)
{
  const double dash[] = { 5.0, 4.0 };
  const double x = d->left + event->before * find_slot (d);
  const double y = d->event_y + line * d->pen.line;
  const TmTextStyle style = { .scale = 0.9, .max_width = until - x - d->pen.size * 0.8 };

  cairo_set_dash (d->pen.cr, dash, 2, 0.0);
  draw_line (d, x, isnan (y) ? d->top : y - d->pen.line * 0.4, x, d->bottom, 1.4, &d->pen.theme->text, 0.8);
  cairo_set_dash (d->pen.cr, NULL, 0, 0.0);
  if (!isnan (y) && style.max_width > d->pen.size * 1.5)
    tm_text_draw (&d->pen, event->label, x + d->pen.size * 0.4, y, &style);
}

static void
draw_events (Drawing *d)
{
  for (guint i = 0; i < d->plot->events->len; i++)
    {
      const guint line = d->n_event_lines > 1 ? i % 2 : 0;
      const guint next = d->n_event_lines > 1 && line == 0 ? i + 2 : i + 1;

      draw_event (d, &g_array_index (d->plot->events, TmRunEvent, i), line, find_event_x (d, next));
    }
}

static void
draw_thread (const Drawing *d)
{
  guint last = G_MAXUINT;

  if (d->plot->places > 1)
    return;
  cairo_new_path (d->pen.cr);
  for (guint i = 0; i < d->plot->points->len; i++)
    {
      const TmRunPoint *point = &g_array_index (d->plot->points, TmRunPoint, i);
      const double y = keep_inside (d, find_y (d, point->mean));
      if (last != G_MAXUINT && point->piece == last + 1)
        cairo_line_to (d->pen.cr, find_x (d, point), y);
      else
        cairo_move_to (d->pen.cr, find_x (d, point), y);
      last = point->piece;
    }
  cairo_set_line_width (d->pen.cr, 1.0);
  tm_pen_colour (&d->pen, &d->pen.theme->in, 0.6);
  cairo_stroke (d->pen.cr);
}

static void
draw_point (const Drawing *d, const TmRunPoint *point, double radius)
{
  const TmColour *colour = tm_mark_colour (d->pen.theme, point->verdict);
  const double x = find_x (d, point), y = find_y (d, point->mean);
  const double high = keep_inside (d, find_y (d, point->largest));
  const double low = keep_inside (d, find_y (d, point->smallest));

  if (low - high > 0.5)
    draw_line (d, x, high, x, low, CLAMP (radius * 0.5, 1.0, 2.0), colour, 1.0);
  if (is_inside (d, y))
    tm_mark_draw (&d->pen, x, y, radius, point->verdict, point->point);
  else
    tm_mark_draw (&d->pen, x, y < d->top ? d->top + radius : d->bottom - radius, radius * 1.15,
                  TM_VERDICT_OUT, y < d->top ? TM_POINT_UP : TM_POINT_DOWN);
}

static void
draw_points (const Drawing *d)
{
  const double room = find_slot (d) / MAX (1, d->plot->places);
  const double radius = CLAMP (room * 0.35, 1.5, d->pen.size * 0.33);

  draw_thread (d);
  for (guint i = 0; i < d->plot->points->len; i++)
    {
      const TmRunPoint *point = &g_array_index (d->plot->points, TmRunPoint, i);
      draw_point (d, point, point->verdict == TM_VERDICT_OUT ? MAX (radius * 1.3, 3.0) : radius);
    }
}

static void
draw_empty (Drawing *d)
{
  const TmTextStyle style = { .dim = TRUE, .align = TM_ALIGN_CENTRE };

  tm_text_draw_within (&d->pen, _ ("no sizes yet"), d->width / 2.0, d->height / 2.0, 0.0, d->width, &style,
                       NULL);
}

static void
draw_all (Drawing *d)
{
  draw_zones (d);
  draw_target (d);
  if (d->plot->limits.has_lower)
    draw_limit (d, d->plot->limits.lower, d->plot->lower_text);
  if (d->plot->limits.has_upper)
    draw_limit (d, d->plot->limits.upper, d->plot->upper_text);
  draw_side_ticks (d);
  draw_piece_axis (d);
  draw_events (d);
  draw_points (d);
}

void
tm_run_plot_draw (const TmRunPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  Drawing d = { .plot = plot, .width = width, .height = height };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  place_parts (&d);
  if (plot->has_axis)
    draw_all (&d);
  else
    draw_empty (&d);
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
