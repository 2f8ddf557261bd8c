/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-stamp: a balloon drawn once and kept while it looks the same: to move a drawing with hundreds
 * of them is then to move pictures.
 */

#pragma once

#include "plot-balloon.h"

G_BEGIN_DECLS

/* Begin with zeroes. */
typedef struct {
  cairo_surface_t *surface; /* NULL: none yet */
  TmBalloon of;             /* what it shows; `text` is only compared, by address */
  int device;
  double left, top; /* of the picture, from the balloon's middle */
} TmDrawingStamp;

/* As tm_balloon_draw() on a pixel of the screen.  @device: pixels of the screen to a unit of @cr. */
void tm_drawing_stamp_draw (TmDrawingStamp *stamp, const TmBalloon *balloon, cairo_t *cr, int device,
                            const TmTheme *theme);
void tm_drawing_stamp_clear (TmDrawingStamp *stamp);

G_END_DECLS
