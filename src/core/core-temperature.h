/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-temperature: a length read away from 20 °C (ISO 1) brought to it, and what that leaves
 * uncertain.
 *
 * Of a part at θp above 20 °C and a gauge at θg, with coefficients αp and αg:
 * L20 = L (1 + αg θg) / (1 + αp θp).
 */

#pragma once

#include "core-material.h"
#include "core-uncertainty.h"

G_BEGIN_DECLS

/* L20 - @length, in the unit of @length; coefficients 1e-6 / °C, temperatures °C. */
double tm_temperature_correction (double length, double part_alpha, double gauge_alpha, double part_temp,
                                  double gauge_temp);

/* One side of the comparison: the part, or the gauge. */
typedef struct {
  double alpha;            /* 1e-6 / °C */
  double alpha_half_width; /* rectangular; 0: taken as known */
  double away;             /* θ: how far from 20 °C, °C; 0 where no temperature was taken */
  double half_width;       /* of θ, rectangular; 0: taken as known */
} TmWarmth;

/* The two parts of u that one side gives a @length, as half-widths of rectangular distributions:
 * of its temperature, L α a; of its coefficient, L aα √(θ² + a²/3), which has the second-order term of
 * JCGM 100, 5.1.2 note, so that it does not vanish at 20 °C. */
double tm_warmth_temperature (const TmWarmth *warmth, double length);
double tm_warmth_expansion (const TmWarmth *warmth, double length);

/* Lengths are taken between these, °C: what lies beyond is a slip, or degrees Fahrenheit (our own choice). */
#define TM_TEMPERATURE_LEAST (-20)
#define TM_TEMPERATURE_MOST  60
gboolean tm_temperature_may_be (const TmQuantity *temperature); /* TRUE where none is given */

/* TRUE for features that grow with temperature as their own size: diameters, lengths and depths.
 * Form, position and roughness are too small to. */
gboolean tm_feature_grows_warm (const TmFeature *feature);

/* The length that temperature acts on where nothing is read yet: nominal, else the middle of the
 * limits, else the limit there is; counts, 0 when there is none. */
gint64 tm_feature_length (const TmFeature *feature);

/* TRUE when both temperatures were entered with @reading, and the part's coefficient is known: the
 * reading is corrected, by @correction counts. */
gboolean tm_reading_temperature (const TmJob *job, const TmGauge *gauge, const TmReading *reading,
                                 double *correction);

G_END_DECLS
