/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pins: what pins that went and did not go prove about the mating size of a bore, and which
 * pins to pull.  Classes and their tolerances: ASME B89.1.5 as published (tests name the tables).
 */

#pragma once

#include "core-model.h"
#include "core-station.h"

G_BEGIN_DECLS

#define TM_PIN_ENTRY_CLEARANCE G_GINT64_CONSTANT (1000000) /* c: 1 µm, assumed; the job may state its own */

/* A clearance larger than this, 1 m, is taken as this. */
#define TM_PIN_CLEARANCE_MOST G_GINT64_CONSTANT (1000000000000)

/* Total tolerance of @pin_class at @size, counts; 0 for a class or size outside the tables. */
gint64 tm_pin_class_tolerance (const char *pin_class, gint64 size);

/* Whether @pin_class is one of the classes, in any letter case; and their names, the finest first, NULL
 * after the last. */
gboolean tm_pin_class_known (const char *pin_class);
const char *tm_pin_class_nth (guint n);

/* One pin as it truly is: somewhere in low…high, both included, rectangular. */
typedef struct {
  gint64 low;
  gint64 high;
  gboolean went;
  const TmPinTrial *trial; /* or NULL */
} TmPin;

/* FALSE when class, sign or size give no extent. */
gboolean tm_pin_extent (gint64 size, const char *pin_class, TmPinSign sign, const TmQuantity *measured,
                        TmPin *out);

/* What pins, and a size from readings, say of the mating size D.  Counts. */
typedef struct {
  guint n_pins;
  gboolean has_low, has_high; /* certain bounds: low <= D < high */
  gint64 low, high;
  const TmPin *low_pin, *high_pin; /* which pins give them; borrowed from the caller's array */
  gboolean proves_band;            /* both bounds lie inside the limits */
  gint64 open_below; /* how far below the lower limit D may still lie; 0: closed; -1: no bound */
  gint64 open_above;
  gboolean contradiction;        /* a larger pin went where a smaller did not; or the size lies far outside */
  const TmPin *contradicting[2]; /* NULL where it is the size that stands against them */
  gboolean has_estimate;
  double estimate; /* mean of the density, relative to `reference` */
  double u;        /* its standard deviation */
  double low95, high95;
  double probability_in;                       /* P(L <= D <= U); NAN without an estimate */
  double probability_below, probability_above; /* P(D < L), P(D > U); likewise */
  gint64 reference;
} TmPinResult;

/* A size from readings, two-point; f, by which it may exceed the mating size, is rectangular 0…form. */
typedef struct {
  gboolean given;
  gint64 reference;
  double size; /* relative to reference */
  double u;    /* standard */
  double dof;
  double form; /* F >= 0 */
} TmPinSizeInput;

/* @limits may have a side only; @clearance c >= 0. */
void tm_pins_judge (const TmPin *pins, guint n, const TmLimits *limits, gint64 clearance,
                    const TmPinSizeInput *size, TmPinResult *out);

/* The pins of the shop's sets that prove most of a band.  Sizes are marked sizes. */
typedef struct {
  gboolean has_go, has_nogo;
  const TmGauge *go_set, *nogo_set;
  gint64 go_size, nogo_size; /* as marked */
  TmPin go, nogo;            /* as they truly may be */
  gboolean proves_band;
  gint64 low, high;              /* what the pair proves: low <= D < high */
  gint64 open_below, open_above; /* as above */
} TmPinPlan;
void tm_pins_to_pull (const TmJob *job, const TmFeature *feature, TmPinPlan *out);

/* TRUE where a pin that goes in proves something: an inside size.  A shaft is not bounded by pins. */
gboolean tm_pins_measure (const TmFeature *feature);

/* c of the job. */
gint64 tm_job_entry_clearance (const TmJob *job);

G_END_DECLS
