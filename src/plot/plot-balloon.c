/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-balloon.h"

#include <math.h>

/* Shares of the text size. */
#define RADIUS     0.95
#define CHARACTER  0.58 /* width that is reckoned for one more */
#define INSIDE     1.62 /* width for the first of them */
#define RING       0.13
#define RING_THICK 0.22 /* out: told apart without colour */
#define LEADER     0.085
#define TIP        0.46 /* length of the arrow head */
#define BADGE      0.30
#define HALO       0.20 /* white beside the leader line and about the ring */
#define FOCUS      0.26

#define FREE_CHARACTERS 3
#define MOST_CHARACTERS 12

/* -------- Words -------- */

char *
tm_balloon_text (const TmFeature *feature, guint place)
{
  g_return_val_if_fail (feature != NULL, NULL);
  if (place == 0 || feature->places <= 1)
    return g_strdup (feature->balloon);
  return (g_strdup_printf)("%s.%u", feature->balloon, place); /* a name, no number with a decimal mark */
}

char *
tm_balloon_words (const TmFeature *feature, guint place, TmVerdict verdict, gboolean plain)
{
  const char *word;

  g_return_val_if_fail (feature != NULL && (guint)verdict < TM_N_VERDICTS, NULL);
  word = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict));
  if (place == 0 || feature->places <= 1)
    /* Translators: balloon 4, in */
    return plain ? g_strdup_printf (_ ("balloon %s"), feature->balloon)
                 : g_strdup_printf (_ ("balloon %s, %s"), feature->balloon, word);
  /* Translators: balloon 4, place 2, in */
  return plain ? g_strdup_printf (_ ("balloon %s, place %u"), feature->balloon, place)
               : g_strdup_printf (_ ("balloon %s, place %u, %s"), feature->balloon, place, word);
}

/* -------- Size -------- */

static double
get_size (const TmTheme *theme)
{
  return theme->text_size > 0 ? theme->text_size : 13.0;
}

double
tm_balloon_radius (const TmTheme *theme)
{
  g_return_val_if_fail (theme != NULL, 0.0);
  return get_size (theme) * RADIUS;
}

double
tm_balloon_half_width (const char *text, const TmTheme *theme)
{
  glong more;

  g_return_val_if_fail (theme != NULL, 0.0);
  more = text != NULL ? g_utf8_strlen (text, 1024) - FREE_CHARACTERS : 0;
  return get_size (theme)
         * (RADIUS + CHARACTER / 2.0 * (double)CLAMP (more, 0, MOST_CHARACTERS - FREE_CHARACTERS));
}

/* -------- Drawing -------- */

static void
trace_disc (cairo_t *cr, const TmBalloon *balloon, double half, double radius)
{
  const double straight = MAX (0.0, half - radius);

  cairo_new_path (cr);
  cairo_arc (cr, balloon->x + straight, balloon->y, radius, -G_PI / 2.0, G_PI / 2.0);
  cairo_arc (cr, balloon->x - straight, balloon->y, radius, G_PI / 2.0, G_PI * 1.5);
  cairo_close_path (cr);
}

/* Where the way from the middle to the tip leaves the disc. */
static void
find_edge (const TmBalloon *balloon, double half, double radius, double *x, double *y)
{
  const double straight = MAX (0.0, half - radius);
  const double from_x = balloon->x + CLAMP (balloon->to_x - balloon->x, -straight, straight);
  const double away = hypot (balloon->to_x - from_x, balloon->to_y - balloon->y);

  *x = from_x + (balloon->to_x - from_x) / away * radius;
  *y = balloon->y + (balloon->to_y - balloon->y) / away * radius;
}

static gboolean
shows_leader (const TmBalloon *balloon, double half, double radius)
{
  const double straight = MAX (0.0, half - radius);
  const double out_x = MAX (0.0, fabs (balloon->to_x - balloon->x) - straight);

  return balloon->led && hypot (out_x, balloon->to_y - balloon->y) > radius * 1.05;
}

static void
draw_leader (const TmPen *pen, const TmBalloon *balloon, double half, double radius, const TmColour *colour)
{
  const double angle_size = pen->size * TIP;
  double x, y, angle;

  find_edge (balloon, half, radius, &x, &y);
  angle = atan2 (balloon->to_y - y, balloon->to_x - x);
  cairo_new_path (pen->cr);
  cairo_move_to (pen->cr, x, y);
  cairo_line_to (pen->cr, balloon->to_x, balloon->to_y);
  tm_pen_colour (pen, &pen->theme->surface, 0.8);
  cairo_set_line_width (pen->cr, pen->size * (LEADER + 2.0 * HALO));
  cairo_stroke_preserve (pen->cr);
  tm_pen_colour (pen, colour, 1.0);
  cairo_set_line_width (pen->cr, pen->size * LEADER * (balloon->chosen ? 1.8 : 1.0));
  cairo_stroke (pen->cr);
  cairo_move_to (pen->cr, balloon->to_x, balloon->to_y);
  cairo_line_to (pen->cr, balloon->to_x - angle_size * cos (angle - 0.32),
                 balloon->to_y - angle_size * sin (angle - 0.32));
  cairo_line_to (pen->cr, balloon->to_x - angle_size * cos (angle + 0.32),
                 balloon->to_y - angle_size * sin (angle + 0.32));
  cairo_close_path (pen->cr);
  cairo_fill (pen->cr);
}

/* In: a ring; too close: a broken one; out: a thick one; not measured: a thin one. */
static void
stroke_ring (const TmPen *pen, const TmBalloon *balloon, const TmColour *colour)
{
  const double dash[] = { pen->size * 0.34, pen->size * 0.2 };
  double width = RING;

  if (balloon->plain || balloon->verdict == TM_VERDICT_NOT_MEASURED)
    width = LEADER;
  else if (balloon->verdict == TM_VERDICT_OUT)
    width = RING_THICK;
  else if (balloon->verdict == TM_VERDICT_TOO_CLOSE)
    cairo_set_dash (pen->cr, dash, 2, 0.0);
  tm_pen_colour (pen, colour, 1.0);
  cairo_set_line_width (pen->cr, pen->size * width);
  cairo_stroke (pen->cr);
  cairo_set_dash (pen->cr, NULL, 0, 0.0);
}

static void
draw_disc (const TmPen *pen, const TmBalloon *balloon, double half, double radius, const TmColour *colour)
{
  trace_disc (pen->cr, balloon, half, radius);
  tm_pen_colour (pen, &pen->theme->surface, 1.0);
  cairo_set_line_width (pen->cr, pen->size * 2.0 * HALO);
  cairo_stroke_preserve (pen->cr);
  cairo_fill_preserve (pen->cr);
  if (balloon->chosen)
    {
      tm_pen_colour (pen, &pen->theme->band, 1.0);
      cairo_fill_preserve (pen->cr);
    }
  stroke_ring (pen, balloon, colour);
  if (!balloon->chosen && !balloon->focused)
    return;
  trace_disc (pen->cr, balloon, half + pen->size * FOCUS, radius + pen->size * FOCUS);
  tm_pen_colour (pen, &pen->theme->text, balloon->focused ? 1.0 : 0.55);
  cairo_set_line_width (pen->cr, pen->size * (balloon->focused ? 0.15 : 0.07));
  cairo_stroke (pen->cr);
}

/* The text, made smaller where it is wider than was reckoned. */
static void
draw_number (TmPen *pen, const TmBalloon *balloon, double half)
{
  const double room = MAX (pen->size * INSIDE, 2.0 * half - pen->size * 0.5);
  TmTextStyle style = { .scale = 0.96, .bold = TRUE, .align = TM_ALIGN_CENTRE };
  const double width = tm_text_width (pen, balloon->text, &style);

  if (width > room)
    style.scale = MAX (0.66, style.scale * room / width);
  style.max_width = room * 1.05;
  tm_text_draw (pen, balloon->text, balloon->x, balloon->y, &style);
}

static void
draw_badge (const TmPen *pen, const TmBalloon *balloon, double half, double radius)
{
  const double straight = MAX (0.0, half - radius);
  const double x = balloon->x + straight + radius * 0.78, y = balloon->y + radius * 0.78;
  const double size = pen->size * BADGE;

  if (balloon->plain || balloon->verdict == TM_VERDICT_NOT_MEASURED)
    return;
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, x, y, size * 1.4, 0.0, 2.0 * G_PI);
  tm_pen_colour (pen, &pen->theme->surface, 1.0);
  cairo_fill (pen->cr);
  tm_mark_draw (pen, x, y, size, balloon->verdict, balloon->point);
}

void
tm_balloon_draw (const TmBalloon *balloon, cairo_t *cr, const TmTheme *theme)
{
  g_auto (TmPen) pen = { 0 };
  const TmColour *colour;
  double radius, half;

  g_return_if_fail (balloon != NULL && balloon->text != NULL && cr != NULL && theme != NULL);
  if (!isfinite (balloon->x) || !isfinite (balloon->y)
      || (balloon->led && (!isfinite (balloon->to_x) || !isfinite (balloon->to_y))))
    return;
  tm_pen_init (&pen, cr, theme);
  radius = tm_balloon_radius (theme);
  half = tm_balloon_half_width (balloon->text, theme);
  colour = balloon->plain ? &theme->text : tm_mark_colour (theme, balloon->verdict);
  cairo_save (cr);
  if (shows_leader (balloon, half, radius))
    draw_leader (&pen, balloon, half, radius, colour);
  draw_disc (&pen, balloon, half, radius, colour);
  draw_number (&pen, balloon, half);
  draw_badge (&pen, balloon, half, radius);
  cairo_restore (cr);
  cairo_new_path (cr);
}

/* -------- Where a point lies -------- */

TmBalloonPart
tm_balloon_part_at (const TmBalloon *balloon, double x, double y, double reach, const TmTheme *theme)
{
  double radius, straight, out_x;

  g_return_val_if_fail (balloon != NULL && theme != NULL, TM_BALLOON_NOWHERE);
  radius = tm_balloon_radius (theme);
  straight = MAX (0.0, tm_balloon_half_width (balloon->text, theme) - radius);
  out_x = MAX (0.0, fabs (x - balloon->x) - straight);
  if (hypot (out_x, y - balloon->y) <= radius + MAX (0.0, reach))
    return TM_BALLOON_DISC;
  if (balloon->led
      && hypot (x - balloon->to_x, y - balloon->to_y) <= get_size (theme) * TIP + MAX (0.0, reach))
    return TM_BALLOON_TIP;
  return TM_BALLOON_NOWHERE;
}

int
tm_balloon_at (const TmBalloon *balloons, guint n, double x, double y, double reach, const TmTheme *theme,
               TmBalloonPart *part)
{
  int tip = -1;

  g_return_val_if_fail ((balloons != NULL || n == 0) && theme != NULL, -1);
  for (guint i = n; i-- > 0;)
    {
      const TmBalloonPart found = tm_balloon_part_at (&balloons[i], x, y, reach, theme);

      if (found == TM_BALLOON_DISC)
        {
          if (part != NULL)
            *part = found;
          return (int)i;
        }
      if (found == TM_BALLOON_TIP && tip < 0)
        tip = (int)i;
    }
  if (part != NULL)
    *part = tip >= 0 ? TM_BALLOON_TIP : TM_BALLOON_NOWHERE;
  return tip;
}
