/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-section-private.h"
#include "plot-text.h"

#define PADDING      0.7 /* in sizes of the text */
#define CELL_LEAST   15.0
#define LABELS_FROM  4.5  /* the ring's radius from which on it has hours */
#define NUMBERS_FROM 7.0  /* and each reading its number */
#define WORDS_FROM   10.0 /* the height from which on there are words about each ring */
#define MOST_CELLS   4
#define OVAL_STEPS   120

typedef struct {
  TmPen pen;
  const TmClockPlot *plot;
  double width, height;
  double bottom;  /* of the rings */
  double words_y; /* NAN: no room */
} Drawing;

/* One ring's place. */
typedef struct {
  double left, right;
  double x, y, radius;
  gboolean numbered; /* there is room for each reading's number */
  double label_y;    /* NAN: no room */
  double words_y[2];
} Cell;

/* -------- Geometry of a ring -------- */

static double
find_radius (const Drawing *d, const Cell *cell, double count)
{
  const double fraction = CLAMP (tm_axis_fraction (&d->plot->scale.axis, count), -0.5, 1.3);

  return cell->radius * (TM_CLOCK_WALL + (fraction - 0.5) * TM_CLOCK_ROOM);
}

/* 12 o'clock is up, and hours go clockwise. */
static void
find_point (const Cell *cell, double degrees, double radius, double *x, double *y)
{
  *x = cell->x + radius * sin (degrees * G_PI / 180);
  *y = cell->y - radius * cos (degrees * G_PI / 180);
}

static void
stroke_ring (const Drawing *d, const Cell *cell, double radius, double width, const TmColour *colour,
             double opacity)
{
  cairo_new_path (d->pen.cr);
  cairo_arc (d->pen.cr, cell->x, cell->y, MAX (0.1, radius), 0, 2 * G_PI);
  cairo_set_line_width (d->pen.cr, width);
  tm_pen_colour (&d->pen, colour, opacity);
  cairo_stroke (d->pen.cr);
}

/* -------- Parts -------- */

static void
draw_between (const Drawing *d, const Cell *cell)
{
  const TmLimits *limits = &d->plot->scale.limits;

  if (limits->has_lower && limits->has_upper)
    {
      cairo_new_path (d->pen.cr);
      cairo_arc (d->pen.cr, cell->x, cell->y, find_radius (d, cell, (double)limits->upper), 0, 2 * G_PI);
      cairo_new_sub_path (d->pen.cr);
      cairo_arc_negative (d->pen.cr, cell->x, cell->y, find_radius (d, cell, (double)limits->lower), 2 * G_PI,
                          0);
      tm_pen_colour (&d->pen, &d->pen.theme->band, 1.0);
      cairo_fill (d->pen.cr);
    }
  if (limits->has_lower)
    stroke_ring (d, cell, find_radius (d, cell, (double)limits->lower), 1.5, &d->pen.theme->text, 0.8);
  if (limits->has_upper)
    stroke_ring (d, cell, find_radius (d, cell, (double)limits->upper), 1.5, &d->pen.theme->text, 0.8);
}

static void
draw_hours (Drawing *d, const Cell *cell)
{
  const TmTextStyle style = { .scale = 0.85, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const double numbers = cell->radius - d->pen.size * 0.55;

  for (guint hour = 1; hour <= 12; hour++)
    {
      double x1, y1, x2, y2;

      find_point (cell, hour * 30.0, cell->radius * 0.06, &x1, &y1);
      find_point (cell, hour * 30.0, cell->radius * 0.14, &x2, &y2);
      cairo_new_path (d->pen.cr);
      cairo_move_to (d->pen.cr, x1, y1);
      cairo_line_to (d->pen.cr, x2, y2);
      cairo_set_line_width (d->pen.cr, 1.0);
      tm_pen_colour (&d->pen, &d->pen.theme->dim, 0.6);
      cairo_stroke (d->pen.cr);
      if (hour % 3 == 0 && cell->radius >= d->pen.size * LABELS_FROM)
        {
          g_autofree char *text = g_strdup_printf ("%u", hour);
          find_point (cell, hour * 30.0, numbers, &x1, &y1);
          tm_text_draw (&d->pen, text, x1, y1, &style);
        }
    }
}

/* The oval's long axis: a dashed line across with a head at each end. */
static void
draw_major_axis (const Drawing *d, const Cell *cell, const TmDial *dial)
{
  const double reach = cell->radius * 0.34, head = MIN (d->pen.size * 0.5, cell->radius * 0.1);
  const double dashes[] = { 4, 3 };

  cairo_save (d->pen.cr);
  cairo_translate (d->pen.cr, cell->x, cell->y);
  cairo_rotate (d->pen.cr, (dial->major - 90) * G_PI / 180);
  tm_pen_colour (&d->pen, &d->pen.theme->text, 0.8);
  cairo_set_line_width (d->pen.cr, 1.5);
  cairo_set_dash (d->pen.cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, -reach, 0);
  cairo_line_to (d->pen.cr, reach, 0);
  cairo_stroke (d->pen.cr);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (d->pen.cr, side * reach, 0);
      cairo_line_to (d->pen.cr, side * (reach - head * 1.4), -head * 0.7);
      cairo_line_to (d->pen.cr, side * (reach - head * 1.4), head * 0.7);
      cairo_close_path (d->pen.cr);
      cairo_fill (d->pen.cr);
    }
  cairo_restore (d->pen.cr);
}

static void
draw_oval (const Drawing *d, const Cell *cell, const TmDial *dial)
{
  if (!dial->has_oval)
    return;
  cairo_new_path (d->pen.cr);
  for (int i = 0; i < OVAL_STEPS; i++)
    {
      const double degrees = i * 360.0 / OVAL_STEPS, twice = degrees * G_PI / 90;
      const double size = dial->mean + dial->a * cos (twice) + dial->b * sin (twice);
      double x, y;

      find_point (cell, degrees, find_radius (d, cell, size), &x, &y);
      cairo_line_to (d->pen.cr, x, y);
    }
  cairo_close_path (d->pen.cr);
  cairo_set_line_width (d->pen.cr, 2.0);
  tm_pen_colour (&d->pen, &d->pen.theme->text, 0.75);
  cairo_stroke (d->pen.cr);
  if (hypot (dial->a, dial->b) >= 0.5)
    draw_major_axis (d, cell, dial);
}

/* A diameter is one size at both ends: a mark where it was read, a small ring opposite. */
static void
draw_direction (const Drawing *d, const Cell *cell, const TmDirection *direction)
{
  const TmFormSize *size = &direction->size;
  const double reach = isfinite (size->uncertainty) ? size->uncertainty : 0;
  const double degrees = direction->hour * 30.0, radius = find_radius (d, cell, size->at);
  const double mark = CLAMP (cell->radius * 0.055, 2.0, d->pen.size * 0.42);
  const double fraction = tm_axis_fraction (&d->plot->scale.axis, size->at);
  double x, y;

  cairo_save (d->pen.cr);
  cairo_translate (d->pen.cr, cell->x, cell->y);
  cairo_rotate (d->pen.cr, (degrees - 90) * G_PI / 180);
  if (reach > 0)
    tm_whisker_draw (&d->pen, find_radius (d, cell, size->at - reach),
                     find_radius (d, cell, size->at + reach), 0, 0, cell->radius, mark * 0.7,
                     tm_mark_colour (d->pen.theme, size->verdict));
  tm_mark_draw (&d->pen, radius, 0, mark, size->verdict, fraction < 0.5 ? TM_POINT_LEFT : TM_POINT_RIGHT);
  cairo_restore (d->pen.cr);
  find_point (cell, degrees + 180, radius, &x, &y);
  tm_mark_draw_hollow (&d->pen, x, y, mark * 0.5, size->verdict, TM_POINT_NONE);
}

/* Which side of its point a number stands: away from the middle, above and below centred. */
static TmAlign
choose_align (guint hour)
{
  if (hour % 6 == 0)
    return TM_ALIGN_CENTRE;
  return hour < 6 ? TM_ALIGN_LEFT : TM_ALIGN_RIGHT;
}

static void
draw_number (Drawing *d, const Cell *cell, const TmDirection *direction)
{
  const TmTextStyle style = { .scale = 0.9, .halo = TRUE, .align = choose_align (direction->hour) };
  double x, y;

  find_point (cell, direction->hour * 30.0, cell->radius + d->pen.size * 0.35, &x, &y);
  if (direction->hour % 6 == 0)
    y += direction->hour == 12 ? -d->pen.size * 0.2 : d->pen.size * 0.2;
  tm_text_draw_within (&d->pen, direction->size.number, x, y, cell->left, cell->right, &style, NULL);
}

static void
draw_dial (Drawing *d, const Cell *cell, const TmDial *dial)
{
  const TmTextStyle label = { .bold = TRUE, .align = TM_ALIGN_CENTRE };
  const TmTextStyle words = { .scale = 0.95, .align = TM_ALIGN_CENTRE };

  if (!isnan (cell->label_y) && *dial->label != '\0')
    tm_text_draw_within (&d->pen, dial->label, cell->x, cell->label_y, cell->left, cell->right, &label, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (dial->lines); i++)
    if (!isnan (cell->words_y[i]))
      tm_text_draw_within (&d->pen, dial->lines[i], cell->x, cell->words_y[i], cell->left, cell->right,
                           &words, NULL);
  if (cell->radius < 4.0)
    return;
  draw_between (d, cell);
  draw_hours (d, cell);
  draw_oval (d, cell, dial);
  for (guint i = 0; i < dial->directions->len; i++)
    draw_direction (d, cell, &g_array_index (dial->directions, TmDirection, i));
  for (guint i = 0; cell->numbered && i < dial->directions->len; i++)
    draw_number (d, cell, &g_array_index (dial->directions, TmDirection, i));
}

/* -------- Where the rings go -------- */

static void
place_ring (const Drawing *d, Cell *cell, double top, double bottom)
{
  const double width = cell->right - cell->left, height = bottom - top;
  const double above = d->pen.size * 1.2, beside = d->pen.size * 3.6;
  const double numbered = MIN (width / 2 - beside, height / 2 - above);

  cell->numbered = numbered >= d->pen.size * NUMBERS_FROM;
  cell->radius = MAX (0, cell->numbered ? numbered : MIN (width, height) / 2 - d->pen.size * 0.2);
  cell->x = (cell->left + cell->right) / 2;
  cell->y = (top + bottom) / 2;
}

static Cell
place_cell (const Drawing *d, guint column, guint n, gboolean labelled)
{
  const double padding = MIN (d->pen.size * PADDING, MIN (d->width, d->height) / 8);
  const double width = (d->width - 2 * padding) / n;
  double top = padding, bottom = d->bottom;
  Cell cell = { .left = padding + column * width, .label_y = NAN, .words_y = { NAN, NAN } };

  cell.right = cell.left + width - (column + 1 < n ? d->pen.size * 0.4 : 0);
  if (d->bottom >= d->pen.size * WORDS_FROM)
    {
      bottom -= d->pen.line * 2;
      cell.words_y[0] = bottom + d->pen.line / 2;
      cell.words_y[1] = cell.words_y[0] + d->pen.line;
      if (labelled)
        {
          cell.label_y = top + d->pen.line / 2;
          top += d->pen.line;
        }
    }
  place_ring (d, &cell, top, bottom);
  return cell;
}

/* The dials that are shown, where not all find room: those that spread most.  @shown gets them in the
 * order of their depth. */
static guint
choose_dials (const Drawing *d, const TmDial *shown[MOST_CELLS])
{
  const GArray *dials = d->plot->dials;
  const double room = floor (d->width / (d->pen.size * CELL_LEAST));
  const guint n = (guint)CLAMP (room, 1, MIN (dials->len, MOST_CELLS));
  guint found = 0;

  for (guint i = 0; i < dials->len; i++)
    {
      const TmDial *dial = &g_array_index (dials, TmDial, i);
      guint wider = 0;

      for (guint k = 0; k < dials->len; k++)
        {
          const double other = g_array_index (dials, TmDial, k).spread;
          wider += other > dial->spread || (other >= dial->spread && k < i);
        }
      if (wider < n)
        shown[found++] = dial;
    }
  return found;
}

/* Which sizes the circles are; NULL where there is no limit. */
static char *
make_ring_words (const TmFormScale *scale)
{
  if (scale->limits.has_lower && scale->limits.has_upper)
    return g_strdup_printf (_ ("rings at %s and %s"), scale->lower_text, scale->upper_text);
  if (scale->limits.has_lower || scale->limits.has_upper)
    return g_strdup_printf (_ ("ring at %s"),
                            scale->limits.has_lower ? scale->lower_text : scale->upper_text);
  return NULL;
}

static void
add_words (GString *out, char *words)
{
  if (words != NULL && out->len > 0)
    g_string_append (out, "  ·  ");
  g_string_append (out, words != NULL ? words : "");
  g_free (words);
}

static void
draw_words (Drawing *d, guint hidden)
{
  const TmTextStyle style = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  const double padding = MIN (d->pen.size * PADDING, d->width / 8);
  g_autoptr (GString) words = g_string_new (NULL);

  if (isnan (d->words_y))
    return;
  add_words (words, make_ring_words (&d->plot->scale));
  add_words (words, tm_form_enlarged_words (&d->plot->scale));
  if (hidden > 0)
    add_words (words, g_strdup_printf (
                          ngettext ("%u more depth spreads no more", "%u more depths spread no more", hidden),
                          hidden));
  tm_text_draw_within (&d->pen, words->str, d->width / 2, d->words_y, padding, d->width - padding, &style,
                       NULL);
}

void
tm_clock_plot_draw (const TmClockPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  Drawing d = { .plot = plot, .width = width, .height = height };
  const TmDial *shown[MOST_CELLS];
  double padding;
  guint n;

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  padding = MIN (d.pen.size * PADDING, height / 8);
  d.bottom = height - padding;
  d.words_y = NAN;
  if (height >= d.pen.size * 8)
    {
      d.words_y = d.bottom - d.pen.line / 2;
      d.bottom -= d.pen.line * 1.3;
    }
  n = choose_dials (&d, shown);
  for (guint i = 0; i < n; i++)
    {
      const Cell cell = place_cell (&d, i, n, *shown[i]->label != '\0');
      draw_dial (&d, &cell, shown[i]);
    }
  draw_words (&d, plot->dials->len - n);
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
