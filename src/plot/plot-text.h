/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-text: words and numbers on a plot, with numerals of one width, cut with an ellipsis rather
 * than by the edge.
 */

#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "plot-theme.h"

G_BEGIN_DECLS

/* One drawing's context, theme and reused text layout. */
typedef struct {
  cairo_t *cr;
  const TmTheme *theme;
  PangoLayout *layout;
  double size; /* of ordinary text */
  double line; /* height of one line of it */
} TmPen;

typedef enum { TM_ALIGN_LEFT, TM_ALIGN_CENTRE, TM_ALIGN_RIGHT } TmAlign;

typedef struct {
  double scale; /* of the ordinary text size; 0 is taken as 1 */
  gboolean bold;
  gboolean dim;
  gboolean halo;      /* an edge in the surface colour, for words on top of marks */
  TmAlign align;      /* of x: the left end, the centre or the right end */
  double max_width;   /* cut with an ellipsis beyond; 0: as wide as it is */
  gboolean cut_start; /* the ellipsis stands first: of serials it is the end that tells them apart */
} TmTextStyle;

void tm_pen_init (TmPen *pen, cairo_t *cr, const TmTheme *theme);
void tm_pen_clear (TmPen *pen);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmPen, tm_pen_clear)

void tm_pen_colour (const TmPen *pen, const TmColour *colour, double opacity);

/* Width of @text, never cut. */
double tm_text_width (TmPen *pen, const char *text, const TmTextStyle *style);

/* Draws @text with its middle at height @y. */
void tm_text_draw (TmPen *pen, const char *text, double x, double y, const TmTextStyle *style);

/* As tm_text_draw() but moved sideways as little as keeps it between @left and @right, and cut
 * when it is wider.  Returns: where its left end came to lie, and its width in @width. */
double tm_text_draw_within (TmPen *pen, const char *text, double x, double y, double left, double right,
                            const TmTextStyle *style, double *width);

G_END_DECLS
