/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-fit: a bore and its mate on one axis of clearance: the range by limits and as measured, with its
 * spread, against what is wanted.
 */

#pragma once

#include <cairo.h>

#include "core-fit-check.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct {
  TmUnit unit;
  TmFitWant want;
  gboolean has_limits;
  TmFitCheck limits; /* by limits */
  gboolean has_measured;
  TmFitCheck measured; /* as measured, at 20 °C */
  gboolean has_warm;
  TmFitCheck warm; /* the same at other temperatures */
} TmFitPicture;

void tm_fit_plot_draw (const TmFitPicture *picture, cairo_t *cr, double width, double height,
                       const TmTheme *theme);
/* In words, translated. */
char *tm_fit_plot_describe (const TmFitPicture *picture) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
