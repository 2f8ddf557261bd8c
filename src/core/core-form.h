/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-form: taper and out-of-round from the local sizes of one place.
 */

#pragma once

#include "core-station.h"

G_BEGIN_DECLS

/* A bore, a shaft, or a diameter not yet said to be either. */
gboolean tm_feature_is_diameter (const TmFeature *feature);

/* Mean over the stations at the mouth - mean over those at the bottom, counts.  Where no station
 * is called mouth (bottom), the shallowest (deepest) length stands in.  FALSE when there are not two
 * depths to compare, or the feature is zero-bounded or pass/fail. */
gboolean tm_form_taper (const TmFeature *feature, const TmSizes *sizes, double *taper);

/* Largest - smallest diameter over the directions at one depth, and of that the largest over the
 * depths, counts.  Readings of one diameter (hours 6 apart) are averaged first.  FALSE unless some
 * depth was read in two directions distinct modulo 180°, or the feature is no diameter.  For an oval
 * the circularity deviation is half of it. */
gboolean tm_form_out_of_round (const TmFeature *feature, const TmSizes *sizes, double *out_of_round);

/* Best-fit oval of one depth, D(θ) = D0 + a cos 2θ + b sin 2θ, by least squares over two-point
 * readings in three or more directions distinct modulo 180°.  Counts, relative to `reference`;
 * θ from 12 o'clock clockwise. */
typedef struct {
  char *depth;       /* text of the depth as recorded, "" when stations have none; owned */
  TmStation station; /* the same; its hour is 0 */
  guint n_directions;
  gint64 reference;
  double mean; /* D0 */
  double a, b;
  double ovality;   /* largest - smallest of the oval: 2 sqrt (a² + b²) */
  double direction; /* of the largest diameter, degrees 0..180 from 12 o'clock clockwise */
  double residual;  /* largest |reading - oval| */
} TmOval;

/* Every depth that has one, mouth first, lengths last and the shallowest of them first; free with
 * g_array_unref().  Readings by three-point gauges stay out, and so do sizes taken by a full form. */
GArray *tm_form_ovals (const TmJob *job, const TmFeature *feature,
                       const TmSizes *sizes) G_GNUC_WARN_UNUSED_RESULT;

/* What form the gauges used at this place cannot see. */
typedef enum {
  TM_BLIND_NONE,
  TM_BLIND_ODD_LOBES, /* only two-point gauges: an odd number of lobes */
  TM_BLIND_OVAL,      /* only three-point gauges: an oval */
} TmBlind;

/* Of a diameter, by all readings that count at the place of @sizes; NONE where gauges of both kinds were
 * used and where one is of no known kind.  A full-form go pin that passed at the maximum material size or
 * beyond answers for the lobes, not for an oval. */
TmBlind tm_form_blind (const TmJob *job, const TmFeature *feature, const TmSizes *sizes);

/* One line for @blind, marked for translation; "" for NONE. */
const char *tm_blind_text (TmBlind blind);

/* TRUE when perfect form at the maximum material size is asked (the envelope, or the ASME standard's
 * rule for a feature of size) and no full-form go pin has shown it at this place: one that went and that
 * cannot be smaller than a bore's lower limit (a ring not larger than a shaft's upper limit). */
gboolean tm_form_asks_pin (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place);

/* Taper per unit of length (dimensionless), of the same sign, where both depths are lengths; FALSE else. */
gboolean tm_form_taper_slope (const TmFeature *feature, const TmSizes *sizes, double *slope);

G_END_DECLS
