/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-frame.h"

#include <glib/gi18n-lib.h>
#include <math.h>

gboolean
tm_frame_begin (TmFrame *frame, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return FALSE;
  *frame = (TmFrame) { .width = width, .height = height, .slots = 1.0 };
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&frame->pen, cr, theme);
  frame->axis = tm_axis_new (0.0, 1.0, TM_UNIT_MM);
  frame->right = width;
  frame->bottom = height;
  return TRUE;
}

void
tm_frame_end (TmFrame *frame)
{
  cairo_t *cr = frame->pen.cr;

  tm_pen_clear (&frame->pen);
  cairo_restore (cr);
}

double
tm_frame_padding (const TmFrame *frame)
{
  return MIN (frame->pen.size * 0.7, MIN (frame->width, frame->height) / 10.0);
}

gboolean
tm_frame_is_tall (const TmFrame *frame)
{
  return frame->height >= frame->pen.line * 6.0;
}

void
tm_frame_place_columns (TmFrame *frame, double widest)
{
  const double padding = MIN (frame->pen.size * 0.7, frame->width / 10.0);

  frame->left
      = frame->width >= frame->pen.size * 14.0 ? padding * 2.0 + MIN (widest, frame->width * 0.25) : padding;
  frame->right = frame->width - padding;
}

static gboolean
is_on_screen (const TmFrame *frame)
{
  const cairo_surface_type_t type = cairo_surface_get_type (cairo_get_target (frame->pen.cr));

  return type == CAIRO_SURFACE_TYPE_IMAGE || type == CAIRO_SURFACE_TYPE_RECORDING;
}

double
tm_frame_snap (const TmFrame *frame, double at)
{
  return is_on_screen (frame) ? floor (at) + 0.5 : at;
}

/* Level and upright lines cover whole pixels of a screen: even in colour, and drawn many times faster than
 * across the edges of pixels. */
static double
snap_line (double *x1, double *y1, double *x2, double *y2, double width)
{
  const double whole = MAX (1.0, round (width)), shift = fmod (whole, 2.0) > 0 ? 0.5 : 0.0;
  const gboolean upright = fabs (*x1 - *x2) < 1e-6, level = fabs (*y1 - *y2) < 1e-6;

  if (upright == level)
    return width;
  *x1 = upright ? floor (*x1) + shift : round (*x1);
  *x2 = upright ? *x1 : round (*x2);
  *y1 = level ? floor (*y1) + shift : round (*y1);
  *y2 = level ? *y1 : round (*y2);
  return whole;
}

void
tm_frame_line (const TmFrame *frame, double x1, double y1, double x2, double y2, double width,
               const TmColour *colour, double opacity)
{
  cairo_t *cr = frame->pen.cr;

  if (is_on_screen (frame))
    width = snap_line (&x1, &y1, &x2, &y2, width);
  cairo_new_path (cr);
  cairo_move_to (cr, x1, y1);
  cairo_line_to (cr, x2, y2);
  cairo_set_line_width (cr, width);
  tm_pen_colour (&frame->pen, colour, opacity);
  cairo_stroke (cr);
}

void
tm_frame_dashed (const TmFrame *frame, double x1, double y1, double x2, double y2, double width,
                 const TmColour *colour, double opacity, double on, double off)
{
  const double dash[] = { on, off };

  cairo_set_dash (frame->pen.cr, dash, 2, 0.0);
  tm_frame_line (frame, x1, y1, x2, y2, width, colour, opacity);
  cairo_set_dash (frame->pen.cr, NULL, 0, 0.0);
}

void
tm_frame_fill (const TmFrame *frame, double x, double y, double width, double height, const TmColour *colour,
               double opacity)
{
  if (!(width > 0) || !(height > 0))
    return;
  if (is_on_screen (frame))
    {
      width = MAX (1.0, round (x + width) - round (x));
      height = MAX (1.0, round (y + height) - round (y));
      x = round (x);
      y = round (y);
    }
  cairo_new_path (frame->pen.cr);
  cairo_rectangle (frame->pen.cr, x, y, width, height);
  tm_pen_colour (&frame->pen, colour, opacity);
  cairo_fill (frame->pen.cr);
}

double
tm_frame_at (const TmFrame *frame, double count)
{
  const double fraction = CLAMP (tm_axis_fraction (&frame->axis, count), -2.0, 3.0);

  if (frame->sideways)
    return frame->left + fraction * (frame->right - frame->left);
  return frame->bottom - fraction * (frame->bottom - frame->top);
}

double
tm_frame_keep (const TmFrame *frame, double at)
{
  return frame->sideways ? CLAMP (at, frame->left, frame->right) : CLAMP (at, frame->top, frame->bottom);
}

gboolean
tm_frame_holds (const TmFrame *frame, double at)
{
  return fabs (at - tm_frame_keep (frame, at)) <= 0.5;
}

double
tm_frame_slot (const TmFrame *frame)
{
  return (frame->right - frame->left) / MAX (1.0, frame->slots);
}

double
tm_frame_piece (const TmFrame *frame, double piece)
{
  return frame->left + (piece + 0.5) * tm_frame_slot (frame);
}

/* -------- Words at the edges -------- */

static gboolean
is_edge_free (const TmFrameEdge *edge, double from, double to)
{
  for (guint i = 0; i < edge->n; i++)
    if (from < edge->to[i] && to > edge->from[i])
      return FALSE;
  return edge->n < TM_FRAME_MOST_LABELS;
}

gboolean
tm_frame_take (TmFrameEdge *edge, double from, double to)
{
  if (!is_edge_free (edge, from, to))
    return FALSE;
  edge->from[edge->n] = from;
  edge->to[edge->n] = to;
  edge->n++;
  return TRUE;
}

/* Where others stand in the way a little above or below its place, which still reads as its line's. */
static gboolean
take_near (TmFrame *frame, double *at)
{
  static const double shifts[] = { 0.0, -0.2, 0.2, -0.4, 0.4 };
  const double half = frame->pen.line * 0.45;

  for (gsize i = 0; i < G_N_ELEMENTS (shifts); i++)
    {
      const double shifted = *at + shifts[i] * frame->pen.line;
      const double y = CLAMP (shifted, half, MAX (half, frame->height - half));

      if (!tm_frame_take (&frame->side, y - half, y + half))
        continue;
      *at = y;
      return TRUE;
    }
  return FALSE;
}

static gboolean
write_beside (TmFrame *frame, const char *text, double at, TmTextStyle *style)
{
  style->align = TM_ALIGN_RIGHT;
  style->max_width = frame->left - frame->pen.size * 1.1;
  if (frame->left <= frame->pen.size * 2.0 || !take_near (frame, &at))
    return FALSE;
  tm_text_draw (&frame->pen, text, frame->left - frame->pen.size * 0.6, at, style);
  return TRUE;
}

static gboolean
write_under (TmFrame *frame, const char *text, double at, TmTextStyle *style)
{
  const double half = tm_text_width (&frame->pen, text, style) / 2.0;
  const double middle = CLAMP (at, half, MAX (half, frame->width - half));

  style->align = TM_ALIGN_CENTRE;
  if (!tm_frame_is_tall (frame)
      || !tm_frame_take (&frame->foot, middle - half - frame->pen.size * 0.4,
                         middle + half + frame->pen.size * 0.4))
    return FALSE;
  tm_text_draw_within (&frame->pen, text, at, frame->bottom + frame->pen.line * 0.75, 0.0, frame->width,
                       style, NULL);
  return TRUE;
}

gboolean
tm_frame_number (TmFrame *frame, const char *text, double at, gboolean bold, gboolean dim)
{
  TmTextStyle style = { .bold = bold, .dim = dim };

  if (text == NULL || *text == '\0')
    return FALSE;
  return frame->sideways ? write_under (frame, text, at, &style) : write_beside (frame, text, at, &style);
}

/* -------- Band -------- */

/* A rectangle over the whole area from one size to another; an endless one reaches to the edge. */
static void
find_zone (const TmFrame *frame, double low, double high, double *x, double *y, double *width, double *height)
{
  const double first = frame->sideways ? frame->left : frame->bottom;
  const double last = frame->sideways ? frame->right : frame->top;
  const double from = isfinite (low) ? tm_frame_keep (frame, tm_frame_at (frame, low)) : first;
  const double to = isfinite (high) ? tm_frame_keep (frame, tm_frame_at (frame, high)) : last;

  *x = frame->sideways ? from : frame->left;
  *y = frame->sideways ? frame->top : to;
  *width = MAX (0.0, frame->sideways ? to - from : frame->right - frame->left);
  *height = MAX (0.0, frame->sideways ? frame->bottom - frame->top : from - to);
}

static void
fill_zone (const TmFrame *frame, double low, double high)
{
  double x, y, width, height;

  find_zone (frame, low, high, &x, &y, &width, &height);
  tm_frame_fill (frame, x, y, width, height, &frame->pen.theme->band, 0.5);
}

#define TILE 6 /* pixels from one line of the hatch to the next */

/* Premultiplied, as cairo keeps it. */
static guint32
get_pixel (const TmColour *colour, double opacity)
{
  return (guint32)lround (opacity * 255.0) << 24 | (guint32)lround (colour->red * opacity * 255.0) << 16
         | (guint32)lround (colour->green * opacity * 255.0) << 8
         | (guint32)lround (colour->blue * opacity * 255.0);
}

/* A tile that repeats: on a screen many times cheaper than a hundred slanted lines. */
static void
hatch_with_tile (const TmFrame *frame, double x, double y, double width, double height,
                 const TmColour *colour)
{
  static const double shares[TILE] = { 1.0, 0.4, 0.0, 0.0, 0.0, 0.4 };
  guint32 pixels[TILE * TILE];
  cairo_t *cr = frame->pen.cr;
  cairo_surface_t *tile;

  for (guint i = 0; i < TILE; i++)
    for (guint k = 0; k < TILE; k++)
      pixels[i * TILE + k] = get_pixel (colour, colour->alpha * shares[(i + k) % TILE]);
  tile = cairo_image_surface_create_for_data ((unsigned char *)pixels, CAIRO_FORMAT_ARGB32, TILE, TILE,
                                              TILE * (int)sizeof (guint32));
  cairo_set_source_surface (cr, tile, floor (x), floor (y));
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_REPEAT);
  cairo_new_path (cr);
  cairo_rectangle (cr, round (x), round (y), round (x + width) - round (x), round (y + height) - round (y));
  cairo_fill (cr);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_surface_finish (tile); /* whoever replays the drawing later has a copy from here on */
  cairo_surface_destroy (tile);
}

static void
hatch_zone (const TmFrame *frame, double low, double high)
{
  TmColour thin = frame->pen.theme->close;
  double x, y, width, height;

  thin.alpha *= 0.6;
  find_zone (frame, low, high, &x, &y, &width, &height);
  if (is_on_screen (frame))
    hatch_with_tile (frame, x, y, width, height, &thin);
  else
    tm_hatch_draw (&frame->pen, x, y, width, height, frame->pen.size * 0.42, &thin);
}

void
tm_frame_draw_zones (const TmFrame *frame, const TmFrameBand *band)
{
  const TmLimits *limits = &band->limits;
  const double guard = band->guard;
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
    fill_zone (frame, low, high);
  if (!(guard > 0))
    return;
  if (limits->has_lower && !limits->zero_bounded)
    hatch_zone (frame, (double)limits->lower, MIN (low, isfinite (high) ? high + guard : low));
  if (limits->has_upper)
    hatch_zone (frame, MAX (high, isfinite (low) && low > high ? (low + high) / 2.0 : high),
                (double)limits->upper);
}

static void
draw_limit (TmFrame *frame, gint64 limit, const char *text)
{
  const double at = tm_frame_at (frame, (double)limit);

  if (!tm_frame_holds (frame, at))
    return;
  if (frame->sideways)
    tm_frame_line (frame, at, frame->top, at, frame->bottom, 2.0, &frame->pen.theme->text, 1.0);
  else
    tm_frame_line (frame, frame->left, at, frame->right, at, 2.0, &frame->pen.theme->text, 1.0);
  tm_frame_number (frame, text, at, TRUE, FALSE);
}

void
tm_frame_draw_limits (TmFrame *frame, const TmFrameBand *band)
{
  if (band->limits.has_lower)
    draw_limit (frame, band->limits.lower, band->lower_text);
  if (band->limits.has_upper)
    draw_limit (frame, band->limits.upper, band->upper_text);
}

void
tm_frame_draw_target (TmFrame *frame, const TmFrameBand *band)
{
  const TmColour *dim = &frame->pen.theme->dim;
  double at;

  if (!isfinite (band->target))
    return;
  at = tm_frame_at (frame, band->target);
  if (!tm_frame_holds (frame, at))
    return;
  if (frame->sideways)
    tm_frame_dashed (frame, at, frame->top, at, frame->bottom, 1.2, dim, 1.0, 1.5, 3.0);
  else
    tm_frame_dashed (frame, frame->left, at, frame->right, at, 1.2, dim, 1.0, 1.5, 3.0);
  tm_frame_number (frame, _ ("target"), at, FALSE, TRUE);
}

guint
tm_frame_most_ticks (const TmFrame *frame)
{
  const double room = frame->sideways ? (frame->right - frame->left) / (frame->pen.size * 6.0)
                                      : (frame->bottom - frame->top) / (frame->pen.line * 2.5);

  return (guint)CLAMP (room, 1.0, 6.0);
}

void
tm_frame_draw_ticks (TmFrame *frame, guint most, guint decimals)
{
  const TmTicks ticks = tm_axis_ticks (&frame->axis, most);
  const TmColour *colour = &frame->pen.theme->text;
  const double mark = frame->pen.size * 0.3;

  decimals = MIN (MAX (ticks.decimals, decimals), TM_MAX_DECIMALS);
  for (guint i = 0; i < ticks.n; i++)
    {
      const gint64 count = ticks.first + (gint64)i * ticks.step;
      const double at = tm_frame_at (frame, (double)count);
      g_autofree char *label = tm_count_format (count, frame->axis.unit, decimals);

      /* One of many is rather left out than moved. */
      if (!frame->sideways
          && !is_edge_free (&frame->side, at - frame->pen.line * 0.45, at + frame->pen.line * 0.45))
        continue;
      if (!tm_frame_number (frame, label, at, FALSE, TRUE))
        continue;
      if (frame->sideways)
        tm_frame_line (frame, at, frame->bottom, at, frame->bottom + mark, 1.0, colour, 0.8);
      else
        tm_frame_line (frame, frame->left - mark, at, frame->left, at, 1.0, colour, 0.8);
    }
}

void
tm_frame_draw_empty (TmFrame *frame, const char *text)
{
  const TmTextStyle style = { .dim = TRUE, .align = TM_ALIGN_CENTRE };

  tm_text_draw_within (&frame->pen, text, frame->width / 2.0, frame->height / 2.0, 0.0, frame->width, &style,
                       NULL);
}

void
tm_frame_draw_mark (const TmFrame *frame, const TmFrameMark *mark, double radius, gboolean whisker)
{
  const TmColour *colour = tm_mark_colour (frame->pen.theme, mark->verdict);
  const double y = tm_frame_at (frame, mark->mean);
  const double high = tm_frame_keep (frame, tm_frame_at (frame, mark->high));
  const double low = tm_frame_keep (frame, tm_frame_at (frame, mark->low));

  if (mark->verdict == TM_VERDICT_OUT)
    radius = MAX (radius * 1.3, 3.0);
  if (whisker && low - high > 0.5)
    tm_frame_line (frame, mark->x, high, mark->x, low, CLAMP (radius * 0.5, 1.0, 2.0), colour, 1.0);
  if (tm_frame_holds (frame, y))
    tm_mark_draw (&frame->pen, mark->x, y, radius, mark->verdict, mark->point);
  else
    tm_mark_draw (&frame->pen, mark->x, y < frame->top ? frame->top + radius : frame->bottom - radius,
                  radius * 1.15, TM_VERDICT_OUT, y < frame->top ? TM_POINT_UP : TM_POINT_DOWN);
}
