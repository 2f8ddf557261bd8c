/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-draw-plan: the cut being planned: the size now, an arrow for the cut, the spread after it with
 * what of it is metal gone, and the aim with its grip.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-draw.h"
#include "plot-chance.h"

#define TAIL 3.2 /* standard deviations of the spread that are drawn */

static gboolean
is_shown (const TmBandDrawing *d)
{
  return d->plot->plan.shown && d->plot->has_axis && d->at.plan_height > 0;
}

/* There is a line of text's height. */
static gboolean
has_words (const TmBandDrawing *d)
{
  return d->at.plan_height >= d->pen.size * 1.6;
}

static gboolean
has_two_lanes (const TmBandDrawing *d)
{
  return d->at.plan_now_y < d->at.plan_peak;
}

static gboolean
is_on_axis (const TmBandDrawing *d, double x)
{
  return x >= d->at.left - 0.5 && x <= d->at.right + 0.5;
}

/* -------- Lines through all rows -------- */

static void
draw_dashed (const TmBandDrawing *d, double x, double top, double bottom, double width,
             const TmColour *colour)
{
  const double dashes[] = { 5.0, 3.0 };

  if (!is_on_axis (d, x))
    return;
  cairo_save (d->pen.cr);
  cairo_set_dash (d->pen.cr, dashes, G_N_ELEMENTS (dashes), 0.0);
  tm_band_draw_line (d, x, top, x, bottom, width, colour, 1.0);
  cairo_restore (d->pen.cr);
}

/* A limit that the mate narrows: dashed, with a foot that points to the side where it fits. */
static void
draw_mate_limit (const TmBandDrawing *d, double count, double inward)
{
  const double x = tm_band_draw_x (d, count), foot = d->pen.size * 0.5;

  if (isnan (count) || !is_on_axis (d, x))
    return;
  draw_dashed (d, x, d->at.top, d->at.bottom, 2.0, &d->pen.theme->mate);
  tm_band_draw_line (d, x, d->at.top + 1.0, x + inward * foot, d->at.top + 1.0, 2.0, &d->pen.theme->mate,
                     1.0);
  tm_band_draw_line (d, x, d->at.bottom - 1.0, x + inward * foot, d->at.bottom - 1.0, 2.0,
                     &d->pen.theme->mate, 1.0);
}

void
tm_band_draw_plan_lines (TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const double x = tm_band_draw_x (d, plan->after);

  if (!is_shown (d))
    return;
  draw_mate_limit (d, plan->mate_lower, 1.0);
  draw_mate_limit (d, plan->mate_upper, -1.0);
  if (is_on_axis (d, x))
    tm_band_draw_line (d, x, isnan (d->at.proven_y) ? d->at.top : d->at.proven_y + d->pen.line / 2.0, x,
                       d->at.bottom, 1.5, &d->pen.theme->planned, 0.75);
}

/* -------- Numbers of the mate's limits -------- */

static void
draw_mate_number (TmBandDrawing *d, const char *text, double count, double from, double to, double *end,
                  gboolean lower)
{
  const TmTextStyle style = { .scale = 0.9, .halo = TRUE, .align = TM_ALIGN_CENTRE };
  double width, start;

  if (text == NULL || !is_on_axis (d, tm_band_draw_x (d, count)))
    return;
  start = tm_text_draw_within (&d->pen, text, tm_band_draw_x (d, count), d->at.proven_y, from, to, &style,
                               &width);
  *end = lower ? MAX (*end, start + width) : MIN (*end, start);
}

void
tm_band_draw_plan_numbers (TmBandDrawing *d, double *left, double *right)
{
  const TmBandPlan *plan = &d->plot->plan;
  const gboolean both = plan->mate_lower_text != NULL && plan->mate_upper_text != NULL;
  const double middle = (tm_band_draw_x (d, plan->mate_lower) + tm_band_draw_x (d, plan->mate_upper)) / 2.0;

  if (!is_shown (d) || isnan (d->at.proven_y))
    return;
  draw_mate_number (d, plan->mate_lower_text, plan->mate_lower, 0.0, both ? middle - 2.0 : d->at.width, left,
                    TRUE);
  draw_mate_number (d, plan->mate_upper_text, plan->mate_upper, both ? middle + 2.0 : 0.0, d->at.width, right,
                    FALSE);
}

/* -------- The spread after the cut -------- */

/* Its height at @count, 0..1: level over the reach of the stations, normal tails beyond. */
static double
find_height (double count, double low, double high, double u)
{
  const double beyond = count < low ? low - count : count > high ? count - high : 0.0;

  if (u <= 0)
    return beyond > 0 ? 0.0 : 1.0;
  return exp (-0.5 * (beyond / u) * (beyond / u));
}

/* Traces the spread over @low…@high as far as the axis shows it; FALSE when it does not. */
static gboolean
trace_spread (const TmBandDrawing *d, double low, double high, double u)
{
  const TmAxis *axis = &d->plot->axis;
  const double counts = (axis->high - axis->low) / MAX (1.0, d->at.right - d->at.left);
  const double from = MAX (d->at.left, tm_band_draw_x (d, low - TAIL * u) - 1.0);
  const double to = MIN (d->at.right, tm_band_draw_x (d, high + TAIL * u) + 1.0);
  const double rise = d->at.plan_base - d->at.plan_peak;

  if (!(to > from) || !(rise > 0))
    return FALSE;
  u = MAX (u, counts * 0.7); /* so that a size known exactly is seen */
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, from, d->at.plan_base);
  for (double x = from; x < to; x += 1.0)
    cairo_line_to (d->pen.cr, x,
                   d->at.plan_base
                       - rise * find_height (axis->low + (x - d->at.left) * counts, low, high, u));
  cairo_line_to (d->pen.cr, to, d->at.plan_base);
  return TRUE;
}

/* Fills what of the traced spread lies between two places across. */
static void
fill_between (const TmBandDrawing *d, cairo_path_t *spread, double from, double to, double opacity)
{
  if (!(to > from))
    return;
  cairo_save (d->pen.cr);
  cairo_new_path (d->pen.cr);
  cairo_rectangle (d->pen.cr, from, d->at.plan_top, to - from, d->at.plan_height);
  cairo_clip (d->pen.cr);
  cairo_append_path (d->pen.cr, spread);
  tm_pen_colour (&d->pen, &d->pen.theme->planned, opacity);
  cairo_fill (d->pen.cr);
  cairo_restore (d->pen.cr);
}

/* What of it is metal gone: on the ground of the picture, hatched, in the colour of what is out. */
static void
fill_gone (const TmBandDrawing *d, cairo_path_t *spread, double from, double to)
{
  if (!(to > from))
    return;
  cairo_save (d->pen.cr);
  cairo_new_path (d->pen.cr);
  cairo_rectangle (d->pen.cr, from, d->at.plan_top, to - from, d->at.plan_height);
  cairo_clip (d->pen.cr);
  cairo_append_path (d->pen.cr, spread);
  cairo_clip_preserve (d->pen.cr);
  tm_pen_colour (&d->pen, &d->pen.theme->surface, 1.0);
  cairo_fill (d->pen.cr);
  tm_hatch_draw (&d->pen, from, d->at.plan_top, to - from, d->at.plan_height, d->pen.size * 0.3,
                 &d->pen.theme->out);
  cairo_append_path (d->pen.cr, spread);
  cairo_set_line_width (d->pen.cr, 3.0); /* half of it is clipped away */
  tm_pen_colour (&d->pen, &d->pen.theme->out, 1.0);
  cairo_stroke (d->pen.cr);
  cairo_restore (d->pen.cr);
}

/* Solid inside the limits, pale where metal is left, hatched where it is gone. */
static void
draw_spread (const TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const double left = isfinite (plan->left) ? tm_band_draw_inside (d, tm_band_draw_x (d, plan->left))
                      : plan->grows         ? d->at.left
                                            : d->at.right;
  const double gone = isfinite (plan->gone) ? tm_band_draw_inside (d, tm_band_draw_x (d, plan->gone))
                      : plan->grows         ? d->at.right
                                            : d->at.left;
  cairo_path_t *spread;

  if (!trace_spread (d, plan->reach_low, plan->reach_high, plan->after_u))
    return;
  spread = cairo_copy_path (d->pen.cr);
  fill_between (d, spread, MIN (left, gone), MAX (left, gone), 0.75);
  fill_between (d, spread, plan->grows ? d->at.left : left, plan->grows ? left : d->at.right, 0.3);
  cairo_append_path (d->pen.cr, spread);
  cairo_set_line_width (d->pen.cr, 1.5);
  tm_pen_colour (&d->pen, &d->pen.theme->planned, 1.0);
  cairo_stroke (d->pen.cr);
  fill_gone (d, spread, plan->grows ? gone : d->at.left, plan->grows ? d->at.right : gone);
  cairo_path_destroy (spread);
}

/* A second cut: where it would then be, as an outline only. */
static void
draw_second (const TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const double dashes[] = { 3.0, 2.5 };

  if (isnan (plan->second)
      || !trace_spread (d, plan->second + plan->reach_low - plan->after,
                        plan->second + plan->reach_high - plan->after, plan->second_u))
    return;
  cairo_save (d->pen.cr);
  cairo_set_dash (d->pen.cr, dashes, G_N_ELEMENTS (dashes), 0.0);
  cairo_set_line_width (d->pen.cr, 1.3);
  tm_pen_colour (&d->pen, &d->pen.theme->planned, 1.0);
  cairo_stroke (d->pen.cr);
  cairo_restore (d->pen.cr);
}

/* -------- Where it is, and the cut -------- */

static void
trace_head (cairo_t *cr, double x, double y, double length, double half)
{
  cairo_new_path (cr);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - length, y - half);
  cairo_line_to (cr, x - length, y + half);
  cairo_close_path (cr);
}

/* A filled head whose tip stands at @x; @way: 1 to the right, -1 to the left. */
static void
draw_head (const TmBandDrawing *d, double x, double y, double way, double half, const TmColour *colour)
{
  trace_head (d->pen.cr, x, y, way * half * 1.7, half);
  tm_pen_colour (&d->pen, colour, 1.0);
  cairo_fill (d->pen.cr);
}

/* Two strokes across a line: the axis is not long enough to show where it begins. */
static void
draw_break (const TmBandDrawing *d, double x, double y)
{
  const double half = d->pen.size * 0.35, lean = d->pen.size * 0.18;

  for (int i = 0; i < 2; i++)
    {
      const double at = x + i * d->pen.size * 0.35;
      tm_band_draw_line (d, at - lean, y + half, at + lean, y - half, 1.5, &d->pen.theme->text, 0.9);
    }
}

static double
find_radius (const TmBandDrawing *d)
{
  return CLAMP (d->at.plan_height * 0.1, 2.0, d->pen.size * 0.4);
}

/* The size now: a square on the text colour's whisker, so that no reading is taken for it. */
static void
draw_now (const TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const TmColour *colour = &d->pen.theme->text;
  const double x = tm_band_draw_x (d, plan->now), y = d->at.plan_now_y, half = find_radius (d) * 0.85;

  if (!is_on_axis (d, x))
    {
      draw_head (d, x < d->at.left ? d->at.left : d->at.right, y, x < d->at.left ? -1.0 : 1.0, half * 1.2,
                 colour);
      return;
    }
  if (plan->now_u > 0)
    tm_whisker_draw (&d->pen, tm_band_draw_x (d, plan->now - 2 * plan->now_u),
                     tm_band_draw_x (d, plan->now + 2 * plan->now_u), y, d->at.left, d->at.right, half * 1.1,
                     colour);
  cairo_new_path (d->pen.cr);
  cairo_rectangle (d->pen.cr, x - half, y - half, 2 * half, 2 * half);
  tm_pen_colour (&d->pen, colour, 1.0);
  cairo_fill (d->pen.cr);
}

/* From where it is to where it will be; nothing when both lie off the same end of the axis. */
static void
draw_cut (const TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const double from = tm_band_draw_x (d, plan->now), to = tm_band_draw_x (d, plan->after);
  const double start = tm_band_draw_inside (d, from), end = tm_band_draw_inside (d, to);
  const double way = plan->grows ? 1.0 : -1.0, half = find_radius (d), length = half * 1.7;
  const double y = d->at.plan_now_y;

  if (plan->change <= 0 || !has_two_lanes (d) || fabs (end - start) < 2.0)
    return;
  if (fabs (end - start) > length)
    tm_band_draw_line (d, start, y, end - way * length * 0.8, y, 2.5, &d->pen.theme->planned, 1.0);
  if (!is_on_axis (d, from) && fabs (end - start) > d->pen.size * 3.0)
    draw_break (d, start + way * d->pen.size * 1.4, y);
  draw_head (d, end, y, way, half, &d->pen.theme->planned);
}

/* -------- The aim -------- */

/* A round grip with a mark to either side, or at the edge an arrow to where it lies. */
static void
draw_grip (const TmBandDrawing *d)
{
  const double x = tm_band_draw_x (d, d->plot->plan.after), r = d->at.plan_grip;
  const double at = CLAMP (x, d->at.left + r, MAX (d->at.left + r, d->at.right - r)), y = d->at.plan_base;
  const TmColour *purple = &d->pen.theme->planned;

  cairo_new_path (d->pen.cr);
  cairo_arc (d->pen.cr, at, y, r, 0.0, 2.0 * G_PI);
  tm_pen_colour (&d->pen, purple, 1.0);
  cairo_fill_preserve (d->pen.cr);
  cairo_set_line_width (d->pen.cr, MAX (1.0, r * 0.25));
  tm_pen_colour (&d->pen, &d->pen.theme->text, 1.0);
  cairo_stroke (d->pen.cr);
  if (r < 5.0)
    return;
  if (x >= d->at.left - 0.5)
    draw_head (d, at + r * 0.72, y, 1.0, r * 0.34, &d->pen.theme->text);
  if (x <= d->at.right + 0.5)
    draw_head (d, at - r * 0.72, y, -1.0, r * 0.34, &d->pen.theme->text);
}

/* -------- Words -------- */

/* The words of the cut over its arrow: what is cut, and from where when that is off the axis. */
static void
draw_cut_words (TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const TmTextStyle style = { .scale = 0.95, .halo = TRUE, .align = TM_ALIGN_CENTRE };
  const double from = tm_band_draw_x (d, plan->now), to = tm_band_draw_x (d, plan->after);
  const double middle = (tm_band_draw_inside (d, from) + tm_band_draw_inside (d, to)) / 2.0;
  g_autofree char *words = NULL;

  if (!has_two_lanes (d) || d->at.plan_now_y - d->at.plan_top < d->pen.size)
    return;
  if (plan->change_text == NULL)
    words = g_strdup (plan->now_text);
  else if (is_on_axis (d, from))
    /* Translators: what a planned cut takes off the size. */
    words = g_strdup_printf (_ ("cut %s"), plan->change_text);
  else
    /* Translators: a size that is off the picture, and what a planned cut takes off it. */
    words = g_strdup_printf (_ ("from %s, cut %s"), plan->now_short, plan->change_text);
  tm_text_draw_within (&d->pen, words, middle, d->at.plan_now_y - d->pen.size * 0.95, d->at.left, d->at.width,
                       &style, NULL);
}

/* Words of @width at @x that a limit's line would run through go on beyond it. */
static double
step_over (const TmBandDrawing *d, double limit, double width, gboolean left, double x)
{
  const double line = isfinite (limit) ? tm_band_draw_x (d, limit) : -INFINITY, gap = d->pen.size * 0.4;

  if (line <= x - gap || line >= x + width + gap)
    return x;
  return left ? line - gap - width : line + gap;
}

/* Where words of @width go beside what takes up @from…@to: to its left, or to its right; FALSE when there
 * is no room. */
static gboolean
place_beside (const TmBandDrawing *d, double width, double from, double to, gboolean left, double *x)
{
  const TmBandPlan *plan = &d->plot->plan;
  const double gap = d->pen.size * 0.6;
  const gboolean gone_first = plan->grows == left; /* the limit that is met first */

  *x = left ? from - gap - width : to + gap;
  *x = step_over (d, gone_first ? plan->gone : plan->left, width, left, *x);
  *x = step_over (d, gone_first ? plan->left : plan->gone, width, left, *x);
  return *x >= d->at.left && *x + width <= d->at.width;
}

/* What the marks of the lower lane take up: the spread, its grip and, in one lane with it, the size now. */
static void
find_taken (const TmBandDrawing *d, double *from, double *to)
{
  const TmBandPlan *plan = &d->plot->plan;
  const double at = tm_band_draw_inside (d, tm_band_draw_x (d, plan->after));

  *from = MIN (at - d->at.plan_grip, tm_band_draw_x (d, plan->reach_low - 2.2 * plan->after_u));
  *to = MAX (at + d->at.plan_grip, tm_band_draw_x (d, plan->reach_high + 2.2 * plan->after_u));
  if (!has_two_lanes (d))
    {
      *from = MIN (*from, tm_band_draw_x (d, plan->now - 2.0 * plan->now_u));
      *to = MAX (*to, tm_band_draw_x (d, plan->now + 2.0 * plan->now_u));
    }
  *from = tm_band_draw_inside (d, *from);
  *to = tm_band_draw_inside (d, *to);
}

/* The chance that it is gone, beyond that limit and the spread. */
static void
draw_gone_words (TmBandDrawing *d, double from, double to, double y)
{
  const TmBandPlan *plan = &d->plot->plan;
  const TmTextStyle style = { .scale = 0.95, .halo = TRUE };
  const double gone = tm_band_draw_x (d, plan->gone);
  g_autofree char *chance = tm_chance_text (plan->chances.gone), *words = NULL;
  double x;

  if (chance == NULL || !isfinite (plan->gone))
    return;
  /* Translators: the chance that a planned cut takes the metal over. */
  words = g_strdup_printf (_ ("%s gone"), chance);
  if (place_beside (d, tm_text_width (&d->pen, words, &style), MIN (from, gone), MAX (to, gone), !plan->grows,
                    &x))
    tm_text_draw (&d->pen, words, x, y, &style);
}

/* The size after the cut on the side where metal is left, or where there is room; short of room without
 * its spread, which is drawn. */
static void
draw_after_words (TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const TmTextStyle style = { .scale = 0.95, .halo = TRUE };
  const char *texts[] = { plan->after_text, plan->after_short };
  const double y = d->at.plan_base - MIN (d->pen.size * 0.75, d->at.plan_height * 0.5);
  double from, to, x;

  if (!has_words (d))
    return;
  find_taken (d, &from, &to);
  /* With nothing to cut it is the size now, which stands over its mark. */
  if (plan->change_text == NULL && has_two_lanes (d))
    {
      draw_gone_words (d, from, to, y);
      return;
    }
  for (guint i = 0; i < 2 * G_N_ELEMENTS (texts); i++)
    {
      const gboolean left = plan->grows == (i % 2 == 0);

      /* Beyond its spread it would be taken for the size after a second cut that is outlined there. */
      if (left != plan->grows && !isnan (plan->second))
        continue;
      if (!place_beside (d, tm_text_width (&d->pen, texts[i / 2], &style), from, to, left, &x))
        continue;
      tm_text_draw (&d->pen, texts[i / 2], x, y, &style);
      if (left == plan->grows)
        draw_gone_words (d, from, to, y);
      return;
    }
}

/* The cut that would follow, over its outline. */
static void
draw_second_words (TmBandDrawing *d)
{
  const TmBandPlan *plan = &d->plot->plan;
  const TmTextStyle style = { .scale = 0.9, .dim = TRUE, .halo = TRUE };
  g_autofree char *words = NULL;
  const double x = tm_band_draw_x (d, plan->second);
  double left;

  if (isnan (plan->second) || plan->next_text == NULL || !has_two_lanes (d) || !is_on_axis (d, x))
    return;
  /* Translators: over the outline of a second cut: what it would take off the size. */
  words = g_strdup_printf (_ ("then %s"), plan->next_text);
  left = x - tm_text_width (&d->pen, words, &style) / 2.0;
  if (fabs (x - tm_band_draw_x (d, plan->after)) > x - left + d->pen.size && left >= d->at.left
      && 2.0 * x - left <= d->at.width)
    tm_text_draw (&d->pen, words, left, d->at.plan_now_y, &style);
}

/* Names of the lanes; of one lane, what it is for. */
static void
draw_labels (TmBandDrawing *d)
{
  double y = d->at.plan_base - MIN (d->pen.size * 0.75, d->at.plan_height * 0.5);

  if (!has_words (d))
    return;
  if (has_two_lanes (d))
    {
      tm_band_draw_label (d, C_ ("cut", "now"), d->at.plan_now_y, 1.0, FALSE);
      y = MAX (y, d->at.plan_now_y + d->pen.size * 1.1);
    }
  tm_band_draw_label (d, _ ("after cut"), y, 1.0, FALSE);
}

void
tm_band_draw_plan (TmBandDrawing *d)
{
  if (!is_shown (d))
    return;
  tm_band_draw_line (d, d->at.left, d->at.plan_base, d->at.right, d->at.plan_base, 1.0, &d->pen.theme->dim,
                     0.28);
  draw_second (d);
  draw_spread (d);
  draw_now (d);
  draw_cut (d);
  draw_grip (d);
  draw_cut_words (d);
  draw_after_words (d);
  draw_second_words (d);
  if (d->at.label_right > 0)
    draw_labels (d);
}

/* -------- For dragging -------- */

/* The layout that the plot has at that size on the screen. */
static gboolean
lay_out (const TmBandPlot *plot, double width, double height, TmBandLayout *layout)
{
  cairo_surface_t *surface;
  cairo_t *cr;
  TmPen pen;

  if (!plot->plan.shown || !plot->has_axis || !(width >= 8.0) || !(height >= 8.0) || !isfinite (width)
      || !isfinite (height))
    return FALSE;
  surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cr = cairo_create (surface);
  tm_pen_init (&pen, cr, tm_theme_light ());
  tm_band_layout_fill (layout, plot, &pen, width, height);
  tm_pen_clear (&pen);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return TRUE;
}

gboolean
tm_band_plot_aim_at (const TmBandPlot *plot, double width, double height, double *x, double *y)
{
  TmBandLayout layout;

  g_return_val_if_fail (plot != NULL && x != NULL && y != NULL, FALSE);
  if (!lay_out (plot, width, height, &layout) || !(layout.plan_height > 0))
    return FALSE;
  *x = CLAMP (tm_band_layout_x (&layout, plot, plot->plan.after), layout.left, layout.right);
  *y = layout.plan_base;
  return TRUE;
}

gint64
tm_band_plot_size_at (const TmBandPlot *plot, double width, double height, double x, double y)
{
  TmBandLayout layout;
  double fraction;

  g_return_val_if_fail (plot != NULL, 0);
  if (!lay_out (plot, width, height, &layout) || !(layout.right > layout.left) || isnan (x))
    return (gint64)llround (plot->plan.after);
  fraction = CLAMP ((x - layout.left) / (layout.right - layout.left), 0.0, 1.0);
  return (gint64)llround (plot->axis.low + fraction * (plot->axis.high - plot->axis.low));
}
