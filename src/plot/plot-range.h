/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-range: how much of the size scale a plot shows, from its limits and its values.
 */

#pragma once

#include "core-station.h"
#include "plot-axis.h"

G_BEGIN_DECLS

/* Counts throughout; NAN: there is none. */
typedef struct {
  TmLimits limits;
  double guard;
  guint decimals; /* of the limits: how fine the feature is */
  TmUnit unit;
  double data_low, data_high; /* values and whiskers */
  double mate_low, mate_high; /* shown when it lies near enough */
  double margin;              /* share of the band shown beyond each limit in any case; 0: the usual */
  gboolean planned;           /* the next two hold; shown whole: whoever asks keeps them near enough */
  double plan_low, plan_high;
} TmRange;

/* Widens @low…@high to hold @at; a NAN range begins there, a NAN @at changes nothing. */
void tm_range_stretch (double *low, double *high, double at);

/* Shows all of the band and some way beyond it, and what lies farther only as far as the band
 * stays readable.  FALSE when there is neither limit nor value: nothing to show. */
gboolean tm_range_choose (const TmRange *range, TmAxis *axis);

G_END_DECLS
