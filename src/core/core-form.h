/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-form: taper and out-of-round from the local sizes of one place.
 */

#pragma once

#include "core-station.h"

G_BEGIN_DECLS

/* Mean over the stations at the mouth - mean over those at the bottom, counts.  Where no station
 * is called mouth (bottom), the shallowest (deepest) length stands in.  FALSE when there are not two
 * depths to compare, or the feature is zero-bounded or pass/fail. */
gboolean tm_form_taper (const TmFeature *feature, const TmSizes *sizes, double *taper);

/* Largest - smallest diameter over the directions at one depth, and of that the largest over the
 * depths, counts.  Readings of one diameter (hours 6 apart) are averaged first.  FALSE unless some
 * depth was read in two directions distinct modulo 180°, or the feature is no diameter.  For an oval
 * the circularity deviation is half of it. */
gboolean tm_form_out_of_round (const TmFeature *feature, const TmSizes *sizes, double *out_of_round);

G_END_DECLS
