/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-text.h"

#define LINE_HEIGHT 1.4

void
tm_pen_init (TmPen *pen, cairo_t *cr, const TmTheme *theme)
{
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pen->cr = cr;
  pen->theme = theme;
  pen->size = theme->text_size > 0 ? theme->text_size : 13.0;
  pen->line = pen->size * LINE_HEIGHT;
  pen->layout = pango_cairo_create_layout (cr);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (pen->layout, attributes);
  pango_layout_set_single_paragraph_mode (pen->layout, TRUE);
}

void
tm_pen_clear (TmPen *pen)
{
  g_clear_object (&pen->layout);
}

void
tm_pen_colour (const TmPen *pen, const TmColour *colour, double opacity)
{
  cairo_set_source_rgba (pen->cr, colour->red, colour->green, colour->blue, colour->alpha * opacity);
}

/* What the layout has already is left: setting it anew would have it shaped anew. */
static void
set_font (TmPen *pen, int size, PangoWeight weight)
{
  const PangoFontDescription *has = pango_layout_get_font_description (pen->layout);
  g_autoptr (PangoFontDescription) font = NULL;

  if (has != NULL && pango_font_description_get_size (has) == size
      && pango_font_description_get_weight (has) == weight)
    return;
  font = has != NULL ? pango_font_description_copy (has)
                     : pango_font_description_from_string (pen->theme->font);
  pango_font_description_set_absolute_size (font, size);
  pango_font_description_set_weight (font, weight);
  pango_layout_set_font_description (pen->layout, font);
}

static void
set_layout (TmPen *pen, const char *text, const TmTextStyle *style)
{
  g_autofree char *valid = g_utf8_make_valid (text != NULL ? text : "", -1);
  const double scale = style->scale > 0 ? style->scale : 1.0;

  set_font (pen, (int)(pen->size * scale * PANGO_SCALE),
            style->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  if (!g_str_equal (pango_layout_get_text (pen->layout), valid))
    pango_layout_set_text (pen->layout, valid, -1);
  pango_layout_set_ellipsize (pen->layout, PANGO_ELLIPSIZE_NONE);
  pango_layout_set_width (pen->layout, -1);
}

static double
measure_layout (TmPen *pen)
{
  PangoRectangle logical;

  pango_layout_get_extents (pen->layout, NULL, &logical);
  return (double)logical.width / PANGO_SCALE;
}

/* Cuts the layout at @width; a width too small for anything leaves nothing. */
static double
fit_layout (TmPen *pen, double width, const TmTextStyle *style)
{
  const double natural = measure_layout (pen);

  if (natural <= width + 0.5)
    return natural;
  pango_layout_set_ellipsize (pen->layout, style->cut_start ? PANGO_ELLIPSIZE_START : PANGO_ELLIPSIZE_END);
  pango_layout_set_width (pen->layout, (int)(MAX (width, 0.0) * PANGO_SCALE));
  return measure_layout (pen);
}

static void
show_layout (TmPen *pen, double left, double y, const TmTextStyle *style)
{
  PangoRectangle logical;

  pango_layout_get_extents (pen->layout, NULL, &logical);
  cairo_save (pen->cr);
  cairo_move_to (pen->cr, left - (double)logical.x / PANGO_SCALE,
                 y - (double)logical.height / PANGO_SCALE / 2.0);
  if (style->halo)
    {
      pango_cairo_layout_path (pen->cr, pen->layout);
      tm_pen_colour (pen, &pen->theme->surface, 0.85);
      cairo_set_line_join (pen->cr, CAIRO_LINE_JOIN_ROUND);
      cairo_set_line_width (pen->cr, pen->size * 0.3);
      cairo_stroke (pen->cr);
      cairo_move_to (pen->cr, left - (double)logical.x / PANGO_SCALE,
                     y - (double)logical.height / PANGO_SCALE / 2.0);
    }
  tm_pen_colour (pen, style->dim ? &pen->theme->dim : &pen->theme->text, 1.0);
  pango_cairo_show_layout (pen->cr, pen->layout);
  cairo_new_path (pen->cr);
  cairo_restore (pen->cr);
}

static double
align_left (double x, double width, TmAlign align)
{
  switch (align)
    {
    case TM_ALIGN_CENTRE:
      return x - width / 2.0;
    case TM_ALIGN_RIGHT:
      return x - width;
    case TM_ALIGN_LEFT:
    default:
      return x;
    }
}

double
tm_text_width (TmPen *pen, const char *text, const TmTextStyle *style)
{
  set_layout (pen, text, style);
  return measure_layout (pen);
}

void
tm_text_draw (TmPen *pen, const char *text, double x, double y, const TmTextStyle *style)
{
  double width;

  if (text == NULL || *text == '\0' || style->max_width < 0)
    return;
  set_layout (pen, text, style);
  width = style->max_width > 0 ? fit_layout (pen, style->max_width, style) : measure_layout (pen);
  show_layout (pen, align_left (x, width, style->align), y, style);
}

double
tm_text_draw_within (TmPen *pen, const char *text, double x, double y, double left, double right,
                     const TmTextStyle *style, double *width)
{
  double start, used;

  set_layout (pen, text, style);
  used = fit_layout (pen, right - left, style);
  start = align_left (x, used, style->align);
  start = MAX (left, MIN (start, right - used));
  if (right - left > pen->size && used > 0)
    show_layout (pen, start, y, style);
  if (width != NULL)
    *width = used;
  return start;
}
