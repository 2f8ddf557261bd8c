/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-draw.h"

#define LEAST_THICKNESS 2.5

static void
draw_bracket_lines (const TmBandDrawing *d, double x, double y, double arm, double half)
{
  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, x + arm, y - half);
  cairo_line_to (d->pen.cr, x, y - half);
  cairo_line_to (d->pen.cr, x, y + half);
  cairo_line_to (d->pen.cr, x + arm, y + half);
}

/* As thick as the pin's true size is uncertain, its opening towards the side that it bounds. */
static void
draw_bracket (const TmBandDrawing *d, const TmBandPin *pin, double y, double half)
{
  const double from = tm_band_draw_inside (d, tm_band_draw_x (d, pin->low));
  const double to = tm_band_draw_inside (d, tm_band_draw_x (d, pin->high));
  const double thickness = MAX (LEAST_THICKNESS, to - from);
  const double dashes[] = { 3, 2 };
  const double arm = d->pen.size * 0.6;

  cairo_save (d->pen.cr);
  tm_pen_colour (&d->pen, &d->pen.theme->text, 1.0);
  if (pin->planned)
    {
      cairo_set_dash (d->pen.cr, dashes, G_N_ELEMENTS (dashes), 0);
      cairo_set_line_width (d->pen.cr, 1.5);
    }
  else
    {
      cairo_rectangle (d->pen.cr, (from + to - thickness) / 2, y - half, thickness, 2 * half);
      cairo_fill (d->pen.cr);
      cairo_set_line_width (d->pen.cr, LEAST_THICKNESS);
    }
  draw_bracket_lines (d, pin->went ? from : to, y, pin->went ? -arm : arm, half);
  cairo_stroke (d->pen.cr);
  cairo_restore (d->pen.cr);
}

static void
draw_pin (TmBandDrawing *d, const TmBandPinPlace *place)
{
  const TmTextStyle style = {
    .scale = 0.9, .dim = TRUE, .halo = TRUE, .align = place->align, .max_width = d->at.right - d->at.left
  };
  const double y = d->at.pins_top + (place->row + 0.5) * d->at.row_height;

  draw_bracket (d, place->pin, y, CLAMP (d->at.row_height * 0.3, 2.0, d->pen.size * 0.7));
  if (d->at.row_height >= d->pen.size * 1.1)
    tm_text_draw (&d->pen, place->pin->label, place->text_x, y, &style);
}

/* -------- What they leave open -------- */

static gboolean
is_row_free (const TmBandDrawing *d, guint row, double from, double to)
{
  for (guint i = 0; i < d->at.n_pins; i++)
    if (d->at.pins[i].row == row && from < d->at.pins[i].to && to > d->at.pins[i].from)
      return FALSE;
  return TRUE;
}

/* The word stands in what is open, or just beyond it, where no pin's words do. */
static void
draw_open_word (TmBandDrawing *d, double left, double right, gboolean below)
{
  const TmTextStyle style = { .scale = 0.85, .dim = TRUE, .align = TM_ALIGN_CENTRE };
  /* Translators: a range of sizes that the pins have not closed. */
  const char *word = C_ ("pin", "open");
  const double half = tm_text_width (&d->pen, word, &style) / 2 + 2;
  const gboolean fits = right - left >= 2 * half;
  const double inside[] = { (left + right) / 2, left + half, right - half };
  const double beyond[] = { below ? left - half : right + half };
  const double *places = fits ? inside : beyond;
  const gsize n = fits ? G_N_ELEMENTS (inside) : G_N_ELEMENTS (beyond);

  if (d->at.row_height < d->pen.size * 1.1)
    return;
  for (guint row = 0; row < d->at.n_pin_rows; row++)
    for (gsize i = 0; i < n; i++)
      if (places[i] - half >= d->at.left && places[i] + half <= d->at.width
          && is_row_free (d, row, places[i] - half, places[i] + half))
        {
          tm_text_draw (&d->pen, word, places[i], d->at.pins_top + (row + 0.5) * d->at.row_height, &style);
          return;
        }
}

static void
draw_open (TmBandDrawing *d, double from, double to, gboolean below)
{
  double left, right;

  if (isnan (from) || isnan (to))
    return;
  left = isinf (from) ? d->at.left : tm_band_draw_inside (d, tm_band_draw_x (d, from));
  right = isinf (to) ? d->at.right : tm_band_draw_inside (d, tm_band_draw_x (d, to));
  cairo_rectangle (d->pen.cr, left, d->at.pins_top, right - left, d->at.n_pin_rows * d->at.row_height);
  tm_pen_colour (&d->pen, &d->pen.theme->close, 0.22);
  cairo_fill (d->pen.cr);
  draw_open_word (d, left, right, below);
}

void
tm_band_draw_pins (TmBandDrawing *d)
{
  if (d->at.n_pins == 0)
    return;
  draw_open (d, d->plot->open_low_from, d->plot->open_low_to, TRUE);
  draw_open (d, d->plot->open_high_from, d->plot->open_high_to, FALSE);
  if (d->plot->rows->len == 0 || d->at.row_height >= d->pen.size * 0.95)
    tm_band_draw_label (d, _ ("pins"), d->at.pins_top + 0.5 * d->at.row_height, 1.0, FALSE);
  for (guint i = 0; i < d->at.n_pins; i++)
    draw_pin (d, &d->at.pins[i]);
}
