/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-slope: the slope that several stretches of a series have in common, each with a level of its own: a
 * correction moves the level of what a tool cuts, not the rate at which it wears.
 */

#pragma once

#include "core-series.h"

G_BEGIN_DECLS

typedef struct {
  guint n, levels;        /* pieces measured, stretches that have any */
  double slope, slope_se; /* counts a piece; NAN: too few */
  double residual;        /* standard deviation about the lines */
  double dof;             /* n - levels - 1 */
  double sxx;
  double p; /* of no slope, two-sided; NAN: too few */
} TmSlope;

/* Of the pieces from @from on. */
void tm_series_slope (const TmSeries *series, guint from, TmSlope *out);

G_END_DECLS
