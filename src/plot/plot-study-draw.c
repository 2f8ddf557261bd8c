/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-mark.h"
#include "plot-study-private.h"

typedef struct {
  TmPen pen;
  const TmStudyPlot *plot;
  double width, height;
  double left, right, top, bottom;
  TmAxis axis;
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

static void
fill (const Drawing *d, double x, double y, double width, double height, const TmColour *colour,
      double opacity)
{
  cairo_new_path (d->pen.cr);
  cairo_rectangle (d->pen.cr, x, y, width, height);
  tm_pen_colour (&d->pen, colour, opacity);
  cairo_fill (d->pen.cr);
}

static double
find_counts (const Drawing *d, double value)
{
  return value * (double)tm_unit_counts (d->plot->unit);
}

static double
find_x (const Drawing *d, double value)
{
  return d->left + tm_axis_fraction (&d->axis, find_counts (d, value)) * (d->right - d->left);
}

/* -------- Parts -------- */

/* All bars and the band are seen whole; an interval may run on, as its upper end often does with few
 * people. */
static void
choose_parts_axis (Drawing *d)
{
  const TmStudyPlot *plot = d->plot;
  double most = plot->band;

  for (guint i = 0; i < TM_N_STUDY_PARTS; i++)
    if (isfinite (plot->bars[i].size))
      most = MAX (most, plot->bars[i].size);
  d->axis = tm_axis_new (0, find_counts (d, most * 1.25), plot->unit);
}

static double
find_value_width (Drawing *d)
{
  const TmTextStyle bold = { .bold = TRUE };
  double widest = 0.0;

  for (guint i = 0; i < TM_N_STUDY_PARTS; i++)
    {
      const double size = d->plot->bars[i].size;
      g_autofree char *text
          = isnan (size) ? g_strdup (_ ("not known")) : tm_study_number (size, d->plot->unit);

      widest = MAX (widest, tm_text_width (&d->pen, text, &bold));
    }
  return MIN (widest + d->pen.size * 1.5, d->width * 0.3);
}

static void
place_parts (Drawing *d)
{
  const TmTextStyle plain = { 0 };
  const double padding = MIN (d->pen.size * 0.7, d->width / 10.0);
  double widest = tm_text_width (&d->pen, _ ("the band"), &plain);

  for (guint i = 0; i < TM_N_STUDY_PARTS; i++)
    widest = MAX (widest, tm_text_width (&d->pen, d->plot->bars[i].label, &plain));
  d->left = d->width >= d->pen.size * 14.0 ? padding * 2.0 + MIN (widest, d->width * 0.35) : padding;
  d->right = d->width - (d->width >= d->pen.size * 14.0 ? find_value_width (d) : padding);
  d->top = padding + (d->height >= d->pen.line * 8.0 ? d->pen.line : 0.0);
  d->bottom = d->height - padding - (d->height >= d->pen.line * 8.0 ? d->pen.line * 1.2 : 0.0);
}

static void
draw_label (Drawing *d, const char *label, double y, gboolean bold)
{
  const TmTextStyle style
      = { .align = TM_ALIGN_RIGHT, .bold = bold, .max_width = d->left - d->pen.size * 1.4 };

  if (d->left > d->pen.size * 2.0)
    tm_text_draw (&d->pen, label, d->left - d->pen.size * 0.7, y, &style);
}

static void
draw_interval (const Drawing *d, const TmStudyBar *bar, double y, double tall)
{
  const double from = find_x (d, bar->low), to = MIN (find_x (d, bar->high), d->right + 2.0);

  if (bar->high - bar->low > 0)
    tm_whisker_draw (&d->pen, from, to, y, d->left - 1.0, d->right + 1.0, tall * 0.5, &d->pen.theme->text);
}

/* In a column of its own on the right, clear of the intervals. */
static void
draw_value (Drawing *d, double size, double y, gboolean bold)
{
  const TmTextStyle style = { .bold = bold, .align = TM_ALIGN_RIGHT };
  g_autofree char *text = isnan (size) ? g_strdup (_ ("not known")) : tm_study_number (size, d->plot->unit);

  if (d->width >= d->pen.size * 14.0)
    tm_text_draw (&d->pen, text, d->width - d->pen.size * 0.5, y, &style);
}

static void
draw_bar (Drawing *d, const TmStudyBar *bar, double y, double tall, gboolean in_all)
{
  const TmColour *colour = bar->of_pieces ? &d->pen.theme->dim : &d->pen.theme->in;

  draw_label (d, bar->label, y, in_all);
  if (isfinite (bar->size))
    {
      fill (d, d->left, y - tall / 2.0, MAX (1.5, find_x (d, bar->size) - d->left), tall, colour,
            in_all ? 1.0 : 0.62);
      draw_interval (d, bar, y, tall);
    }
  draw_value (d, bar->size, y, in_all);
}

static void
draw_band (Drawing *d, double y, double tall)
{
  const double x = find_x (d, d->plot->band);
  const double dash[] = { 4.0, 4.0 };

  draw_label (d, _ ("the band"), y, FALSE);
  fill (d, d->left, y - tall / 2.0, x - d->left, tall, &d->pen.theme->band, 1.0);
  cairo_set_dash (d->pen.cr, dash, 2, 0.0);
  draw_line (d, x, d->top, x, d->bottom, 1.5, &d->pen.theme->text, 0.8);
  cairo_set_dash (d->pen.cr, NULL, 0, 0.0);
  draw_value (d, d->plot->band, y, FALSE);
}

static void
draw_parts_axis (Drawing *d)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const TmTextStyle heading = { .dim = TRUE };
  const guint most = (guint)CLAMP ((d->right - d->left) / (d->pen.size * 4.5), 1.0, 8.0);
  const TmTicks ticks = tm_axis_ticks (&d->axis, most);
  g_autofree char *title
      = g_strdup_printf (_ ("six standard deviations of each part, %s"), tm_unit_symbol (d->plot->unit));

  draw_line (d, d->left, d->top, d->left, d->bottom, 1.5, &d->pen.theme->text, 0.6);
  if (d->height < d->pen.line * 8.0)
    return;
  for (guint i = 0; i < ticks.n; i++)
    {
      const gint64 count = ticks.first + (gint64)i * ticks.step;
      const double x = d->left + tm_axis_fraction (&d->axis, (double)count) * (d->right - d->left);
      g_autofree char *label = tm_count_format (count, d->plot->unit, MIN (ticks.decimals, TM_MAX_DECIMALS));

      draw_line (d, x, d->top, x, d->bottom, 1.0, &d->pen.theme->dim, 0.25);
      tm_text_draw (&d->pen, label, x, d->bottom + d->pen.line * 0.7, &style);
    }
  tm_text_draw_within (&d->pen, title, d->left, d->top - d->pen.line * 0.5, 0.0, d->width, &heading, NULL);
}

static void
draw_parts (Drawing *d)
{
  const guint n = TM_N_STUDY_PARTS + (d->plot->band > 0 ? 1 : 0);
  double row;

  choose_parts_axis (d);
  place_parts (d);
  row = (d->bottom - d->top) / n;
  draw_parts_axis (d);
  if (d->plot->band > 0)
    draw_band (d, d->bottom - row * 0.45, row * 0.42);
  for (guint i = 0; i < TM_N_STUDY_PARTS; i++)
    draw_bar (d, &d->plot->bars[i], d->top + row * (i + 0.6), row * 0.38, i == 3);
}

/* -------- Pieces -------- */

static double
find_slot (const Drawing *d)
{
  return (d->right - d->left) / MAX (1, d->plot->pieces);
}

static double
find_lane (const Drawing *d)
{
  return (d->bottom - d->top) / MAX (1, d->plot->people);
}

/* The middle of a lane is the mean of each piece. */
static double
find_y (const Drawing *d, guint person, double away)
{
  const double reach = d->plot->reach > 0 ? d->plot->reach : 1.0;

  return d->top + find_lane (d) * (person + 0.5) - away / reach * find_lane (d) * 0.4;
}

static void
place_lanes (Drawing *d)
{
  const TmTextStyle plain = { 0 };
  const double padding = MIN (d->pen.size * 0.7, d->width / 10.0);
  double widest = 0.0;

  for (guint i = 0; i < d->plot->people; i++)
    widest = MAX (widest, tm_text_width (&d->pen, g_ptr_array_index (d->plot->people_names, i), &plain));
  d->left = d->width >= d->pen.size * 14.0 ? padding * 2.0 + MIN (widest, d->width * 0.25) : padding;
  d->right = d->width - padding;
  d->top = padding + (d->height >= d->pen.line * 8.0 ? d->pen.line : 0.0);
  d->bottom = d->height - padding - (d->height >= d->pen.line * 8.0 ? d->pen.line * 1.2 : 0.0);
}

static void
draw_cell (const Drawing *d, guint piece, guint person)
{
  const TmStudyPlot *plot = d->plot;
  const double *away = plot->away + (piece * plot->people + person) * plot->repeats;
  const double x = d->left + (piece + 0.5) * find_slot (d);
  const double step = find_slot (d) * 0.5 / MAX (1, plot->repeats);
  const double radius = CLAMP (MIN (step * 0.5, find_lane (d) * 0.08), 1.5, d->pen.size * 0.3);
  double mean = 0;

  for (guint k = 0; k < plot->repeats; k++)
    mean += away[k] / plot->repeats;
  draw_line (d, x - find_slot (d) * 0.32, find_y (d, person, mean), x + find_slot (d) * 0.32,
             find_y (d, person, mean), 1.6, &d->pen.theme->text, 0.75);
  for (guint k = 0; k < plot->repeats; k++)
    tm_mark_draw (&d->pen, x + (k - (plot->repeats - 1.0) / 2.0) * step, find_y (d, person, away[k]), radius,
                  TM_VERDICT_IN, TM_POINT_NONE);
}

static void
draw_lane (Drawing *d, guint person)
{
  const double dots[] = { 1.5, 3.0 };
  const double zero = find_y (d, person, 0.0), edge = d->top + find_lane (d) * person;

  if (person % 2 == 1)
    fill (d, d->left, edge, d->right - d->left, find_lane (d), &d->pen.theme->dim, 0.08);
  cairo_set_dash (d->pen.cr, dots, 2, 0.0);
  draw_line (d, d->left, zero, d->right, zero, 1.2, &d->pen.theme->dim, 1.0);
  cairo_set_dash (d->pen.cr, NULL, 0, 0.0);
  draw_label (d, g_ptr_array_index (d->plot->people_names, person), zero, FALSE);
  for (guint i = 0; i < d->plot->pieces; i++)
    draw_cell (d, i, person);
}

#define LONG_NAME 6.0 /* text sizes: serial numbers are shorter */

/* Names that are long and would not stand side by side give way to numbers, in the order of the plan. */
static gboolean
are_numbered (Drawing *d, const TmTextStyle *style)
{
  for (guint i = 0; i < d->plot->pieces; i++)
    {
      const double width = tm_text_width (&d->pen, g_ptr_array_index (d->plot->piece_names, i), style);

      if (width > find_slot (d) && width > d->pen.size * LONG_NAME)
        return TRUE;
    }
  return FALSE;
}

static char *
name_piece (const Drawing *d, guint piece, gboolean numbered)
{
  return numbered ? g_strdup_printf ("%u", piece + 1)
                  : g_strdup (g_ptr_array_index (d->plot->piece_names, piece));
}

/* A name under each piece, or under every second, fifth, tenth… */
static guint
choose_every (Drawing *d, const TmTextStyle *style, gboolean numbered)
{
  static const guint steps[] = { 1, 2, 5, 10, 20, 50, 100 };
  double widest = 0.0;

  for (guint i = 0; i < d->plot->pieces; i++)
    {
      g_autofree char *name = name_piece (d, i, numbered);

      widest = MAX (widest, tm_text_width (&d->pen, name, style));
    }
  widest += d->pen.size * 0.6;
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * find_slot (d) >= widest)
      return steps[i];
  return MAX (1, d->plot->pieces);
}

static void
draw_piece_names (Drawing *d)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const gboolean numbered = are_numbered (d, &style);
  const guint every = choose_every (d, &style, numbered);

  for (guint i = 0; i < d->plot->pieces; i += every)
    {
      g_autofree char *name = name_piece (d, i, numbered);

      tm_text_draw_within (&d->pen, name, d->left + (i + 0.5) * find_slot (d), d->bottom + d->pen.line * 0.7,
                           0.0, d->width, &style, NULL);
    }
}

/* How much half a lane is, so that the height of a mark can be read. */
static void
draw_pieces_words (Drawing *d)
{
  const TmTextStyle heading = { .dim = TRUE };
  g_autofree char *reach = tm_study_number (d->plot->reach, d->plot->unit);
  g_autofree char *title = g_strdup_printf (_ ("readings less their piece’s mean, within ±%s %s"), reach,
                                            tm_unit_symbol (d->plot->unit));

  if (d->height < d->pen.line * 8.0)
    return;
  draw_piece_names (d);
  tm_text_draw_within (&d->pen, title, d->left, d->top - d->pen.line * 0.5, 0.0, d->width, &heading, NULL);
}

static void
draw_pieces (Drawing *d)
{
  place_lanes (d);
  for (guint i = 0; i < d->plot->people; i++)
    draw_lane (d, i);
  draw_line (d, d->left, d->bottom, d->right, d->bottom, 1.5, &d->pen.theme->text, 0.6);
  draw_pieces_words (d);
}

static void
draw_empty (Drawing *d)
{
  const TmTextStyle style = { .dim = TRUE, .align = TM_ALIGN_CENTRE };

  tm_text_draw_within (&d->pen, _ ("the study is not complete"), d->width / 2.0, d->height / 2.0, 0.0,
                       d->width, &style, NULL);
}

static void
draw (const TmStudyPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme,
      void (*draw_all) (Drawing *d))
{
  Drawing d = { .plot = plot, .width = width, .height = height };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  if (plot->away != NULL)
    draw_all (&d);
  else
    draw_empty (&d);
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}

void
tm_study_plot_draw_parts (const TmStudyPlot *plot, cairo_t *cr, double width, double height,
                          const TmTheme *theme)
{
  draw (plot, cr, width, height, theme, draw_parts);
}

void
tm_study_plot_draw_pieces (const TmStudyPlot *plot, cairo_t *cr, double width, double height,
                           const TmTheme *theme)
{
  draw (plot, cr, width, height, theme, draw_pieces);
}
