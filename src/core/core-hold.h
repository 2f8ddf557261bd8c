/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-hold: which pieces to hold back once a shift is found, those not measured among them.
 */

#pragma once

#include "core-series.h"
#include "core-small-shift.h"
#include "core-trend.h"

G_BEGIN_DECLS

typedef struct {
  guint point; /* index in the series */
  gboolean measured;
  double out; /* chance that it is out */
} TmHoldRow;

/* The pieces from the earliest at which the change may have begun, those between the last piece measured
 * before it and it among them, to the last made, with the chance of each: of a measured one by its verdict,
 * of another by the sizes after the change about it (two on each side), the scatter @sigma and the limits; it
 * is taken to be made after the change, the worse of both.  Of an event that resets after the change, no
 * further than it.  Rows with a chance of @least_chance or more (0: all) in order, TmHoldRow; empty when
 * @change is not found. */
GArray *tm_hold_back (const TmSeries *series, const TmLevelChange *change, double sigma,
                      double least_chance) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
