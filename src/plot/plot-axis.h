/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-axis: maps values to 0..1 along a drawn axis, and chooses where its ticks stand.
 */

#pragma once

#include "core-quantity.h"

G_BEGIN_DECLS

/* low < high, both finite, whatever was asked for. */
typedef struct {
  double low;  /* counts at 0 */
  double high; /* counts at 1 */
  TmUnit unit;
} TmAxis;

/* Ticks at whole multiples of `step`. */
typedef struct {
  gint64 step;    /* counts, > 0 */
  gint64 first;   /* counts: the first tick on the axis */
  guint n;        /* ticks on the axis; may be 0 */
  guint decimals; /* digits that a tick's label needs in the axis's unit */
} TmTicks;

/* @low and @high in counts of @unit, in either order; an empty or endless range is widened or
 * replaced so that the axis can always be drawn. */
TmAxis tm_axis_new (double low, double high, TmUnit unit);

/* Where @count lies: 0 at the low end, 1 at the high end, beyond them outside. */
double tm_axis_fraction (const TmAxis *axis, double count);

/* Steps of 1, 2 or 5 times a power of ten of the unit, at most @most of them (at least 1). */
TmTicks tm_axis_ticks (const TmAxis *axis, guint most);

/* The step of the unlabelled ticks between: half or a fifth of a labelled step, or the step itself
 * where neither would be a round number. */
gint64 tm_ticks_minor_step (const TmTicks *ticks);

G_END_DECLS
