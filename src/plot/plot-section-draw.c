/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-section-private.h"
#include "plot-text.h"

#define PADDING    0.7  /* in sizes of the text, as all that follow but the last two */
#define ENDS       1.6  /* of metal beyond the first and the last depth */
#define LABEL_FROM 16.0 /* the width from which on there are depth labels */
#define VALUE_FROM 30.0 /* and values beside the marks */
#define LABEL_MOST 0.22 /* of the width */
#define VALUE_MOST 0.30

typedef struct {
  TmPen pen;
  const TmSectionPlot *plot;
  double width, height;
  double label_right; /* 0: no labels */
  double values_left; /* 0: no values */
  double left, right; /* of the cut piece */
  double top, bottom; /* of the cut piece */
  double first, last; /* where the shallowest and the deepest size stand */
  double limits_y;    /* NAN: no room, as for the next */
  double words_y;
} Drawing;

/* -------- Where things go -------- */

static char *
make_values (const TmLevel *level)
{
  if (level->smallest.at < level->largest.at)
    return g_strdup_printf ("%s … %s", level->smallest.number, level->largest.number);
  return g_strdup (level->smallest.number);
}

static void
place_columns (Drawing *d)
{
  const double padding = MIN (d->pen.size * PADDING, d->width / 8);
  const TmTextStyle style = { .scale = 0.95 };
  double labels = 0, values = 0;

  for (guint i = 0; i < d->plot->levels->len; i++)
    {
      const TmLevel *level = &g_array_index (d->plot->levels, TmLevel, i);
      g_autofree char *text = make_values (level);

      labels = MAX (labels, tm_text_width (&d->pen, level->label, &style));
      values = MAX (values, tm_text_width (&d->pen, text, &style));
    }
  labels = MIN (labels, d->width * LABEL_MOST);
  values = MIN (values, d->width * VALUE_MOST);
  d->label_right = d->width >= d->pen.size * LABEL_FROM ? padding + labels : 0;
  d->values_left = d->width >= d->pen.size * VALUE_FROM ? d->width - padding - values : 0;
  d->left = d->label_right > 0 ? d->label_right + d->pen.size : padding;
  d->right = d->values_left > 0 ? d->values_left - d->pen.size : d->width - padding;
}

static void
place_rows (Drawing *d)
{
  const double padding = MIN (d->pen.size * PADDING, d->height / 8);
  const double numbers = d->height >= d->pen.size * 9 ? d->pen.line * 1.2 : 0;
  const double words = d->height >= d->pen.size * 7 ? d->pen.line * 1.3 : 0;
  double ends;

  d->limits_y = numbers > 0 ? padding + numbers / 2 : NAN;
  d->top = padding + numbers;
  d->bottom = d->height - padding - words;
  d->words_y = words > 0 ? d->height - padding - words / 2 : NAN;
  ends = MIN (d->pen.size * ENDS, (d->bottom - d->top) / 5);
  d->first = d->top + ends;
  d->last = d->bottom - ends;
}

static double
find_y (const Drawing *d, const TmLevel *level)
{
  return d->first + level->down * (d->last - d->first);
}

static double
find_middle (const Drawing *d)
{
  return (d->left + d->right) / 2;
}

/* Of a wall at size @count, from the middle of the picture outward. */
static double
find_wall (const Drawing *d, double count)
{
  const double fraction = CLAMP (tm_axis_fraction (&d->plot->scale.axis, count), -0.3, 1.25);

  return (d->right - d->left) * (TM_SECTION_WALL + (fraction - 0.5) * TM_SECTION_ROOM);
}

/* -------- The metal -------- */

/* Half way between the smallest and the largest size of a depth; the ends go straight on. */
static double
find_level_wall (const Drawing *d, const TmLevel *level)
{
  return find_wall (d, (level->smallest.at + level->largest.at) / 2);
}

/* The wall from top to bottom on one side, on from the present point. */
static void
trace_wall (const Drawing *d, double side, gboolean upward)
{
  const GArray *levels = d->plot->levels;
  const double middle = find_middle (d);

  for (guint i = 0; i < levels->len; i++)
    {
      const guint at = upward ? levels->len - 1 - i : i;
      const TmLevel *level = &g_array_index (levels, TmLevel, at);
      const double x = middle + side * find_level_wall (d, level);

      if (at == 0 && !upward)
        cairo_line_to (d->pen.cr, x, d->top);
      if (at == levels->len - 1 && upward)
        cairo_line_to (d->pen.cr, x, d->bottom);
      cairo_line_to (d->pen.cr, x, find_y (d, level));
      if (at == 0 && upward)
        cairo_line_to (d->pen.cr, x, d->top);
      if (at == levels->len - 1 && !upward)
        cairo_line_to (d->pen.cr, x, d->bottom);
    }
}

static void
trace_metal (const Drawing *d)
{
  cairo_new_path (d->pen.cr);
  if (d->plot->scale.outside)
    {
      trace_wall (d, -1, FALSE);
      trace_wall (d, 1, TRUE);
      cairo_close_path (d->pen.cr);
      return;
    }
  for (int side = -1; side <= 1; side += 2)
    {
      const double edge = side < 0 ? d->left : d->right;

      cairo_move_to (d->pen.cr, edge, d->bottom);
      cairo_line_to (d->pen.cr, edge, d->top);
      trace_wall (d, side, FALSE);
      cairo_close_path (d->pen.cr);
    }
}

static void
draw_metal (const Drawing *d)
{
  TmColour thin = d->pen.theme->dim;

  thin.alpha *= 0.45;
  cairo_save (d->pen.cr);
  trace_metal (d);
  cairo_clip (d->pen.cr);
  tm_hatch_draw (&d->pen, d->left, d->top, d->right - d->left, d->bottom - d->top, d->pen.size * 0.8, &thin);
  cairo_restore (d->pen.cr);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_new_path (d->pen.cr);
      trace_wall (d, side, FALSE);
      cairo_set_line_width (d->pen.cr, 2.0);
      tm_pen_colour (&d->pen, &d->pen.theme->text, 0.85);
      cairo_stroke (d->pen.cr);
    }
}

static void
draw_centre_line (const Drawing *d)
{
  const double dashes[] = { d->pen.size * 1.2, d->pen.size * 0.3, d->pen.size * 0.3, d->pen.size * 0.3 };

  cairo_save (d->pen.cr);
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, find_middle (d), d->top);
  cairo_line_to (d->pen.cr, find_middle (d), d->bottom);
  cairo_set_dash (d->pen.cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_set_line_width (d->pen.cr, 1.0);
  tm_pen_colour (&d->pen, &d->pen.theme->dim, 0.7);
  cairo_stroke (d->pen.cr);
  cairo_restore (d->pen.cr);
}

/* -------- Limits -------- */

static void
draw_limit_line (const Drawing *d, gint64 limit, int side)
{
  const double x = find_middle (d) + side * find_wall (d, (double)limit);
  const double rise = isnan (d->limits_y) || side < 0 ? 0.0 : d->pen.size * 0.4;

  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, x, d->top - rise);
  cairo_line_to (d->pen.cr, x, d->bottom);
  cairo_set_line_width (d->pen.cr, 1.5);
  tm_pen_colour (&d->pen, &d->pen.theme->text, side < 0 ? 0.4 : 0.8);
  cairo_stroke (d->pen.cr);
}

/* What lies between the limits, on the side where the marks are. */
static void
draw_between (const Drawing *d)
{
  const TmLimits *limits = &d->plot->scale.limits;
  const double middle = find_middle (d);
  double from, to;

  if (!limits->has_lower || !limits->has_upper)
    return;
  from = middle + find_wall (d, (double)limits->lower);
  to = middle + find_wall (d, (double)limits->upper);
  cairo_rectangle (d->pen.cr, from, d->top, to - from, d->bottom - d->top);
  tm_pen_colour (&d->pen, &d->pen.theme->band, 1.0);
  cairo_fill (d->pen.cr);
}

/* The two numbers stand over their lines; where they would touch they step aside, outward. */
static void
draw_limit_numbers (Drawing *d)
{
  const TmFormScale *scale = &d->plot->scale;
  TmTextStyle style = { .bold = TRUE, .align = TM_ALIGN_CENTRE };
  const double middle = find_middle (d);
  const double lower = middle + find_wall (d, (double)scale->limits.lower);
  const double upper = middle + find_wall (d, (double)scale->limits.upper);
  const double y = d->limits_y - d->pen.size * 0.2;
  gboolean apart = TRUE;

  if (isnan (d->limits_y))
    return;
  if (scale->limits.has_lower && scale->limits.has_upper)
    apart = upper - lower >= d->pen.size * 0.6 + tm_text_width (&d->pen, scale->lower_text, &style) / 2
                                 + tm_text_width (&d->pen, scale->upper_text, &style) / 2;
  if (scale->limits.has_lower)
    {
      style.align = apart ? TM_ALIGN_CENTRE : TM_ALIGN_RIGHT;
      tm_text_draw_within (&d->pen, scale->lower_text, lower + (apart ? 0 : d->pen.size * 0.2), y, 0,
                           d->width, &style, NULL);
    }
  if (scale->limits.has_upper)
    {
      style.align = apart ? TM_ALIGN_CENTRE : TM_ALIGN_LEFT;
      tm_text_draw_within (&d->pen, scale->upper_text, upper - (apart ? 0 : d->pen.size * 0.2), y, 0,
                           d->width, &style, NULL);
    }
}

static void
draw_limits (Drawing *d)
{
  const TmLimits *limits = &d->plot->scale.limits;

  for (int side = -1; side <= 1; side += 2)
    {
      if (limits->has_lower)
        draw_limit_line (d, limits->lower, side);
      if (limits->has_upper)
        draw_limit_line (d, limits->upper, side);
    }
  draw_limit_numbers (d);
}

/* -------- Sizes -------- */

static void
draw_size (const Drawing *d, const TmFormSize *size, double y, double radius, double room)
{
  const double middle = find_middle (d);
  const double reach = isfinite (size->uncertainty) ? size->uncertainty : 0;
  const double fraction = tm_axis_fraction (&d->plot->scale.axis, size->at);
  const double x = middle + find_wall (d, size->at);

  if (reach > 0)
    tm_whisker_draw (&d->pen, middle + find_wall (d, size->at - reach),
                     middle + find_wall (d, size->at + reach), y, middle, d->right,
                     MIN (radius * 0.8, room / 4), tm_mark_colour (d->pen.theme, size->verdict));
  tm_mark_draw (&d->pen, x, y, radius, size->verdict, fraction < 0.5 ? TM_POINT_LEFT : TM_POINT_RIGHT);
}

/* The smallest size a little above its depth and the largest a little below, so that both are seen. */
static void
draw_level (Drawing *d, const TmLevel *level, double room)
{
  const TmTextStyle label = { .align = TM_ALIGN_RIGHT, .max_width = d->label_right - d->pen.size * 0.3 };
  const TmTextStyle value = { .scale = 0.95, .max_width = d->width - d->values_left };
  const double y = find_y (d, level);
  const double radius = CLAMP (room * 0.22, 2.0, d->pen.size * 0.42);
  const gboolean two = level->smallest.at < level->largest.at;
  const double step = two ? radius * 1.1 : 0;
  g_autofree char *text = make_values (level);

  draw_size (d, &level->smallest, y - step, radius, room);
  if (two)
    draw_size (d, &level->largest, y + step, radius, room);
  if (room < d->pen.size * 1.1)
    return;
  if (d->label_right > 0)
    tm_text_draw (&d->pen, level->label, d->label_right, y, &label);
  if (d->values_left > 0)
    tm_text_draw (&d->pen, text, d->values_left, y, &value);
}

static void
draw_levels (Drawing *d)
{
  const GArray *levels = d->plot->levels;
  double last = -INFINITY;

  for (guint i = 0; i < levels->len; i++)
    {
      const TmLevel *level = &g_array_index (levels, TmLevel, i);
      const double y = find_y (d, level);
      double room = d->pen.size * 3;

      if (i > 0)
        room = MIN (room, y - last);
      if (i + 1 < levels->len)
        room = MIN (room, find_y (d, level + 1) - y);
      draw_level (d, level, room);
      last = y;
    }
}

/* -------- Taper -------- */

/* An arrow on the middle line that points to the wider end (a shaft's thicker one). */
static void
draw_arrow (const Drawing *d)
{
  const double x = find_middle (d), half = d->pen.size * 0.5;
  const double from = d->first + (d->last - d->first) * 0.35, to = d->last - (d->last - d->first) * 0.35;
  const double tip = d->plot->opens > 0 ? to : from, tail = d->plot->opens > 0 ? from : to;
  const double back = tip - d->plot->opens * half * 1.8;

  if (d->plot->opens == 0 || to - from < d->pen.size * 2 || d->right - d->left < d->pen.size * 8)
    return;
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, x, tail);
  cairo_line_to (d->pen.cr, x, back);
  cairo_set_line_width (d->pen.cr, 2.5);
  tm_pen_colour (&d->pen, &d->pen.theme->text, 0.9);
  cairo_stroke (d->pen.cr);
  cairo_move_to (d->pen.cr, x, tip);
  cairo_line_to (d->pen.cr, x - half, back);
  cairo_line_to (d->pen.cr, x + half, back);
  cairo_close_path (d->pen.cr);
  cairo_fill (d->pen.cr);
}

static void
draw_words (Drawing *d)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const double padding = MIN (d->pen.size * PADDING, d->width / 8);
  g_autofree char *enlarged = tm_form_enlarged_words (&d->plot->scale);
  g_autofree char *words = NULL;

  if (isnan (d->words_y))
    return;
  if (d->plot->taper != NULL && enlarged != NULL)
    words = g_strdup_printf ("%s  ·  %s", d->plot->taper, enlarged);
  else
    words = g_strdup (d->plot->taper != NULL ? d->plot->taper : enlarged);
  tm_text_draw_within (&d->pen, words, d->width / 2, d->words_y, padding, d->width - padding, &style, NULL);
}

void
tm_section_plot_draw (const TmSectionPlot *plot, cairo_t *cr, double width, double height,
                      const TmTheme *theme)
{
  Drawing d = { .plot = plot, .width = width, .height = height };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  place_columns (&d);
  place_rows (&d);
  if (d.right - d.left >= 4.0 && d.bottom - d.top >= 4.0)
    {
      draw_between (&d);
      draw_metal (&d);
      draw_centre_line (&d);
      draw_limits (&d);
      draw_levels (&d);
      draw_arrow (&d);
    }
  draw_words (&d);
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
