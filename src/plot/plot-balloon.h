/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-balloon: the numbered circle beside a requirement on the drawing, with a leader line to what it
 * numbers.  It tells its feature's verdict by ring and mark as well as by colour.
 *
 * Everything here is in the units of the context that is drawn on (pixels, or points on paper), so that a
 * balloon stays as large however far the drawing is zoomed: the caller works out where its middle is.
 */

#pragma once

#include "core-judge.h"
#include "plot-mark.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct {
  double x, y; /* its middle */
  gboolean led;
  double to_x, to_y; /* the tip of its leader line, when led */
  const char *text;  /* what stands in it, borrowed: tm_balloon_text() */
  TmVerdict verdict;
  TmPoint point;    /* UP or DOWN when out above or below the band; else NONE */
  gboolean plain;   /* no verdict is told: ring in the text's colour, no mark */
  gboolean chosen;  /* the one that is worked on */
  gboolean focused; /* and has the keyboard */
} TmBalloon;

typedef enum { TM_BALLOON_NOWHERE, TM_BALLOON_DISC, TM_BALLOON_TIP } TmBalloonPart;

/* What stands in the balloon of a place of a feature: "4", or "4.2" for one place of several. */
char *tm_balloon_text (const TmFeature *feature, guint place) G_GNUC_WARN_UNUSED_RESULT;

/* "balloon 4, place 2, in".  Translated.  @plain: without the verdict. */
char *tm_balloon_words (const TmFeature *feature, guint place, TmVerdict verdict,
                        gboolean plain) G_GNUC_WARN_UNUSED_RESULT;

/* Half the height of a balloon, and half the width of one with @text in it, which is wider for more than
 * three characters.  By the theme's text size alone. */
double tm_balloon_radius (const TmTheme *theme);
double tm_balloon_half_width (const char *text, const TmTheme *theme);

/* The theme is that of what the balloon lies on: a drawing is white paper, in a dark window too. */
void tm_balloon_draw (const TmBalloon *balloon, cairo_t *cr, const TmTheme *theme);

/* The part of it that lies at @x, @y, with @reach more for a finger. */
TmBalloonPart tm_balloon_part_at (const TmBalloon *balloon, double x, double y, double reach,
                                  const TmTheme *theme);

/* The last of @balloons, the one drawn on top, with a part at @x, @y, discs before tips; -1: none. */
int tm_balloon_at (const TmBalloon *balloons, guint n, double x, double y, double reach, const TmTheme *theme,
                   TmBalloonPart *part);

/* Where a new balloon with a tip at @balloon->to_x, to_y is best put inside a page of @width by @height: near
 * the tip, clear of the others and of their leader lines.  Sets x and y.  Not led: beside the last of
 * @others, or in the upper left corner. */
void tm_balloon_place (TmBalloon *balloon, double width, double height, const TmBalloon *others, guint n,
                       const TmTheme *theme);

G_END_DECLS
