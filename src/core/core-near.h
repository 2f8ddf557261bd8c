/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-near: where the readings of a feature may be expected, before any is made.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* All in counts of the feature's dimension; every interval includes its ends.
 *
 * R is the nominal, else the middle of the limits, else the one limit there is.
 * Near R: from the smallest to the largest of R and the limits, widened on both sides by R / 20.
 * About R: from half of near's low end to twice its high end.  Two meanings of bare digits are at
 * least 2.54 : 1 apart (tenths and micrometres), so that with ordinary limits only one is about R.
 * Plausible: near, or R / 4 .. 4 R; for a greatest value alone 0 .. 4 R; for a least one R / 4 .. 20 R.
 * The shares are our own choice. */
typedef struct {
  gboolean known; /* FALSE: no nominal and no limit above zero; nothing else is then set */
  gint64 reference;
  gint64 near_low, near_high;
  gint64 plausible_low, plausible_high;
} TmNear;

/* The intervals of @feature; not known for one without a size. */
TmNear tm_near_of_feature (const TmFeature *feature);

/* Whether @count lies near, about R, or is plausible; FALSE when nothing is known. */
gboolean tm_near_contains (const TmNear *near, gint64 count);
gboolean tm_near_is_about (const TmNear *near, gint64 count);
gboolean tm_near_is_plausible (const TmNear *near, gint64 count);

G_END_DECLS
