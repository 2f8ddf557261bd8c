/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-fit-draw: a fit on its axis of clearance: press to the left of zero, clearance to the right.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-fit-private.h"
#include "plot-mark.h"

/* In sizes of the text. */
#define PADDING    0.7
#define ROW_WORDS  2.6 /* from here on a row has its words over its bar */
#define ROW_MOST   4.4
#define LABEL_MOST 0.28 /* of the width */

typedef struct {
  TmPen pen;
  const TmFitSight *sight;
  double width, height;
  double label_right; /* 0: no room for any */
  double left, right, top, bottom;
  double row_height;
  double want_y, ticks_y, sides_y; /* NAN: no room */
} Drawing;

/* -------- Layout -------- */

static void
place_columns (Drawing *d)
{
  const TmTextStyle style = { 0 };
  const double padding = MIN (d->pen.size * PADDING, d->width / 8.0);
  double widest = 0.0;

  for (guint i = 0; i < d->sight->n_rows; i++)
    widest = MAX (widest, tm_text_width (&d->pen, d->sight->rows[i].label, &style));
  widest = MIN (widest, d->width * LABEL_MOST);
  d->label_right = d->width >= d->pen.size * 14.0 && widest > 0 ? padding + widest : 0.0;
  d->left = d->label_right > 0 ? d->label_right + d->pen.size : padding;
  d->right = d->width - padding;
}

/* Words make way from the least needed on until each row has a line. */
static void
place_lines (Drawing *d)
{
  const double padding = MIN (d->pen.size * PADDING, d->height / 8.0), line = d->pen.line;
  const gboolean wanted = d->sight->want_words != NULL;
  const guint n = MAX (1, d->sight->n_rows);
  double heights[] = { line * 1.1, wanted ? line : 0.0, line + d->pen.size * 0.5 }; /* sides, want, ticks */
  double room = d->height - 2.0 * padding, rows;

  for (gsize i = 0; i < G_N_ELEMENTS (heights); i++)
    {
      double sum = 0.0;
      for (gsize k = 0; k < G_N_ELEMENTS (heights); k++)
        sum += heights[k];
      if (room - sum < n * d->pen.size * 1.2)
        heights[i] = 0.0;
    }
  room -= heights[0] + heights[1] + heights[2];
  rows = MIN (MAX (0.0, room), n * ROW_MOST * d->pen.size);
  d->top = padding + (room - rows) / 2.0 + heights[1];
  d->bottom = d->top + rows;
  d->row_height = rows / n;
  d->want_y = heights[1] > 0 ? d->top - heights[1] / 2.0 - d->pen.size * 0.2 : (double)NAN;
  d->ticks_y = heights[2] > 0 ? d->bottom + heights[2] / 2.0 + d->pen.size * 0.2 : (double)NAN;
  d->sides_y = heights[0] > 0 ? d->bottom + heights[2] + heights[0] / 2.0 : (double)NAN;
}

static double
find_x (const Drawing *d, double count)
{
  return d->left + CLAMP (tm_axis_fraction (&d->sight->axis, count), -0.5, 1.5) * (d->right - d->left);
}

static double
find_inside (const Drawing *d, double count)
{
  return CLAMP (find_x (d, count), d->left, d->right);
}

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

/* A row's name, right-aligned before the axis, where there is room for any; @y NAN: none. */
static void
draw_label (Drawing *d, const char *label, double y, gboolean dim)
{
  const TmTextStyle style
      = { .align = TM_ALIGN_RIGHT, .dim = dim, .max_width = d->label_right - d->pen.size * 0.3 };

  if (d->label_right > d->pen.size && !isnan (y))
    tm_text_draw (&d->pen, label, d->label_right, y, &style);
}

/* -------- What is wanted -------- */

/* An end, with its number unless both are one. */
static void
draw_want_end (Drawing *d, gint64 at, const char *number, double from, double to, TmAlign align)
{
  const TmTextStyle style = { .bold = TRUE, .align = align };
  const double x = find_x (d, (double)at), rise = isnan (d->want_y) ? 0.0 : d->pen.size * 0.35;

  draw_line (d, x, d->top - rise, x, d->bottom, 2.0, &d->pen.theme->text, 1.0);
  if (!isnan (d->want_y) && number != NULL)
    tm_text_draw_within (&d->pen, number, x, d->want_y, from, to, &style, NULL);
}

static void
draw_want (Drawing *d)
{
  const TmFitSight *sight = d->sight;
  const TmFitWant *want = &sight->want;
  const TmTextStyle bold = { .bold = TRUE };
  const double from = want->has_least ? find_x (d, (double)want->least) : d->left;
  const double to = want->has_most ? find_x (d, (double)want->most) : d->right;
  const double middle = (from + to) / 2.0;
  gboolean apart = TRUE;

  if (sight->want_words == NULL)
    return;
  cairo_rectangle (d->pen.cr, from, d->top, MAX (0.0, to - from), d->bottom - d->top);
  tm_pen_colour (&d->pen, &d->pen.theme->band, 1.0);
  cairo_fill (d->pen.cr);
  if (want->has_least && want->has_most)
    apart = to - from >= (tm_text_width (&d->pen, sight->want_least, &bold)
                          + tm_text_width (&d->pen, sight->want_most, &bold))
                                 / 2.0
                             + d->pen.size * 0.6;
  draw_label (d, C_ ("fit", "wanted"), d->want_y, TRUE);
  if (want->has_least)
    draw_want_end (d, want->least, sight->want_least, 0.0, apart ? d->width : middle - 2.0,
                   apart ? TM_ALIGN_CENTRE : TM_ALIGN_RIGHT);
  if (want->has_most)
    draw_want_end (d, want->most, sight->want_most, apart ? 0.0 : middle + 2.0, d->width,
                   apart ? TM_ALIGN_CENTRE : TM_ALIGN_LEFT);
}

/* -------- The axis -------- */

static TmTicks
choose_ticks (Drawing *d, guint *decimals)
{
  const TmTextStyle style = { .scale = 0.95 };
  TmTicks ticks = tm_axis_ticks (&d->sight->axis, 1);

  for (guint most = 8; most >= 1; most--)
    {
      g_autofree char *label = NULL;
      ticks = tm_axis_ticks (&d->sight->axis, most);
      *decimals = MIN (ticks.decimals, TM_MAX_DECIMALS);
      label = tm_count_format (ABS (ticks.first), d->sight->axis.unit, *decimals);
      if (ticks.n * (tm_text_width (&d->pen, label, &style) + d->pen.size * 1.2) <= d->right - d->left)
        break;
    }
  return ticks;
}

/* Both ways from zero the numbers grow: the words under them say which is press. */
static void
draw_axis (Drawing *d)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  guint decimals;
  TmTicks ticks;

  draw_line (d, d->left, d->bottom, d->right, d->bottom, 1.5, &d->pen.theme->text, 0.6);
  if (d->sight->has_zero)
    draw_line (d, find_x (d, 0.0), d->top, find_x (d, 0.0), d->bottom, 1.2, &d->pen.theme->text, 0.7);
  if (isnan (d->ticks_y))
    return;
  ticks = choose_ticks (d, &decimals);
  for (guint i = 0; i < ticks.n; i++)
    {
      const gint64 count = ticks.first + (gint64)i * ticks.step;
      const double x = find_x (d, (double)count);
      g_autofree char *label
          = count == 0 ? g_strdup ("0") : tm_count_format (ABS (count), d->sight->axis.unit, decimals);

      draw_line (d, x, d->bottom, x, d->bottom + d->pen.size * 0.5, 1.0, &d->pen.theme->text, 0.9);
      tm_text_draw_within (&d->pen, label, x, d->ticks_y, 0.0, d->width, &style, NULL);
    }
}

/* A small triangle and a word beside it that say which way is which. */
static void
draw_side (Drawing *d, double x, gboolean press)
{
  const TmTextStyle style = { .align = press ? TM_ALIGN_RIGHT : TM_ALIGN_LEFT };
  const char *word = press ? C_ ("fit", "press") : C_ ("fit", "clearance");
  const double way = press ? -1.0 : 1.0, half = d->pen.size * 0.28;
  const double width = tm_text_width (&d->pen, word, &style);
  double tip, start = x + way * d->pen.size * 0.7;

  tip = start + way * (width + d->pen.size * 1.2);
  if (tip < 0.0 || tip > d->width)
    return;
  tm_text_draw (&d->pen, word, start, d->sides_y, &style);
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, tip, d->sides_y);
  cairo_line_to (d->pen.cr, tip - way * half * 1.8, d->sides_y - half);
  cairo_line_to (d->pen.cr, tip - way * half * 1.8, d->sides_y + half);
  cairo_close_path (d->pen.cr);
  tm_pen_colour (&d->pen, &d->pen.theme->text, 1.0);
  cairo_fill (d->pen.cr);
}

static void
draw_sides (Drawing *d)
{
  const double middle = (d->left + d->right) / 2.0;

  if (isnan (d->sides_y))
    return;
  if (d->sight->has_zero)
    {
      draw_side (d, find_x (d, 0.0), TRUE);
      draw_side (d, find_x (d, 0.0), FALSE);
    }
  else
    draw_side (d, middle, d->sight->axis.high < 0);
}

/* -------- Rows -------- */

static const TmColour *
choose_colour (const Drawing *d, const TmFitRow *row)
{
  switch (row->stands)
    {
    case TM_FIT_STANDS_IN:
      return &d->pen.theme->in;
    case TM_FIT_STANDS_CLOSE:
      return &d->pen.theme->close;
    case TM_FIT_STANDS_OUT:
      return &d->pen.theme->out;
    case TM_FIT_STANDS_FREE:
    default:
      return &d->pen.theme->mate;
    }
}

/* Filled when it is within what is wanted, or none is; hatched when it is only partly; open when none of it
 * is, and by limits, which nobody has measured. */
static void
draw_bar (const Drawing *d, const TmFitRow *row, double y, double half)
{
  const TmColour *colour = row->by_limits ? &d->pen.theme->dim : choose_colour (d, row);
  const double from = find_inside (d, row->least), to = MAX (find_inside (d, row->most), from + 3.0);

  if (row->by_limits || row->stands == TM_FIT_STANDS_OUT || row->stands == TM_FIT_STANDS_CLOSE)
    {
      cairo_rectangle (d->pen.cr, from, y - half, to - from, 2.0 * half);
      tm_pen_colour (&d->pen, &d->pen.theme->surface, 1.0);
      cairo_fill (d->pen.cr);
      if (!row->by_limits && row->stands == TM_FIT_STANDS_CLOSE)
        tm_hatch_draw (&d->pen, from, y - half, to - from, 2.0 * half, d->pen.size * 0.35, colour);
      cairo_rectangle (d->pen.cr, from, y - half, to - from, 2.0 * half);
      cairo_set_line_width (d->pen.cr, 2.0);
      tm_pen_colour (&d->pen, colour, 1.0);
      cairo_stroke (d->pen.cr);
    }
  else
    {
      cairo_rectangle (d->pen.cr, from, y - half, to - from, 2.0 * half);
      tm_pen_colour (&d->pen, colour, 1.0);
      cairo_fill (d->pen.cr);
    }
}

/* The ends are uncertain: a whisker through each, from inside it to outside. */
static void
draw_ends (const Drawing *d, const TmFitRow *row, double y, double half)
{
  const double ends[] = { row->least, row->most };

  if (row->expanded <= 0)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    tm_whisker_draw (&d->pen, find_x (d, ends[i] - row->expanded), find_x (d, ends[i] + row->expanded), y,
                     d->left, d->right, half * 0.8, &d->pen.theme->text);
}

/* The range and its chance over the bar, as much of it as there is room for. */
static void
draw_row_words (Drawing *d, const TmFitRow *row, double y)
{
  const TmTextStyle style = { .scale = 0.95, .halo = TRUE, .align = TM_ALIGN_CENTRE };
  const double middle = (find_inside (d, row->least) + find_inside (d, row->most)) / 2.0;
  g_autofree char *both = row->chance != NULL ? g_strdup_printf ("%s  ·  %s", row->words, row->chance) : NULL;
  const gboolean fits = both != NULL && tm_text_width (&d->pen, both, &style) <= d->width - d->left;

  tm_text_draw_within (&d->pen, fits ? both : row->words, middle, y, d->left, d->width, &style, NULL);
}

static void
draw_row (Drawing *d, const TmFitRow *row, double top)
{
  const gboolean words = d->row_height >= d->pen.size * ROW_WORDS;
  const double y = top + d->row_height * (words ? 0.68 : 0.5);
  const double half = CLAMP (d->row_height * 0.2, 1.5, d->pen.size * 0.45);

  draw_line (d, d->left, y, d->right, y, 1.0, &d->pen.theme->dim, 0.28);
  draw_bar (d, row, y, half);
  draw_ends (d, row, y, half);
  if (d->row_height >= d->pen.size)
    draw_label (d, row->label, y, FALSE);
  if (words)
    draw_row_words (d, row, y - half - d->pen.size * 0.75);
}

void
tm_fit_plot_draw (const TmFitPicture *picture, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  g_auto (TmFitSight) sight = { 0 };
  Drawing d = { .sight = &sight, .width = width, .height = height };

  g_return_if_fail (picture != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  tm_fit_sight_fill (&sight, picture);
  if (!sight.has_axis)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  place_columns (&d);
  place_lines (&d);
  draw_want (&d);
  draw_axis (&d);
  draw_sides (&d);
  for (guint i = 0; i < sight.n_rows; i++)
    draw_row (&d, &sight.rows[i], d.top + i * d.row_height);
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
