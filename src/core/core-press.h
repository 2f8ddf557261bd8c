/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-press: a press fit of two rings or of a hub and a shaft (Lamé's thick cylinders in plane stress;
 * S. Timoshenko, Strength of Materials; DIN 7190 for roughness).  Elastic, at rest, equal length, no friction
 * heat: an estimate for planning.
 *
 * Lengths in millimetres, moduli GPa, stresses MPa, forces N, torque N·m, expansion 1e-6 / °C.
 */

#pragma once

#include "core-elastic.h"
#include "core-fit-check.h"
#include "core-model.h"

G_BEGIN_DECLS

/* A ring under pressure, in plane stress: at inside, and at outside.  Diameters; inside 0: a solid disc. */
typedef struct {
  double inside, outside;
  double modulus; /* GPa */
  double poisson;
  double inner_pressure, outer_pressure; /* MPa */
} TmRing;

/* Stresses at @diameter of the wall (Lamé; Timoshenko, Strength of Materials, part II), tension positive. */
void tm_ring_stress (const TmRing *ring, double diameter, double *radial, double *hoop);
/* What @diameter of the wall grows by; negative: it closes. */
double tm_ring_growth (const TmRing *ring, double diameter);

typedef struct {
  double modulus; /* GPa */
  double poisson;
  double yield;     /* MPa; NAN: unknown */
  double expansion; /* NAN: unknown */
  double cold;      /* for cooling; NAN: `expansion` is used and it is said */
} TmPressBody;

typedef struct {
  double interference;       /* diametral, before roughness is lost; <= 0 is a clearance */
  double interference_least; /* of the range; NAN: the same */
  double interference_most;
  double diameter; /* common */
  double length;   /* of contact; NAN: no forces */
  double hub_outside;
  double shaft_inside; /* 0: solid */
  TmPressBody hub;
  TmPressBody shaft;
  double friction_least, friction_most;  /* NAN: no forces */
  double hub_roughness, shaft_roughness; /* Rz; 0: none is lost */
  double gap;     /* wanted clearance on diameter when dropping in; NAN: no temperatures */
  double ambient; /* °C: what heating and cooling start from; 20 */
} TmPressInput;

typedef enum {
  TM_PRESS_OK,
  TM_PRESS_NO_INTERFERENCE,  /* a clearance, or roughness takes all of it: `state` is 0 and nothing holds;
                              * `least`, `most` and the temperatures stand for themselves */
  TM_PRESS_BAD_DIAMETER,     /* not above zero, or not a number */
  TM_PRESS_BAD_INTERFERENCE, /* not a number, or outside its own range */
  TM_PRESS_TOO_MUCH,     /* an interference of more than a tenth of the diameter: a slip, or no press fit */
  TM_PRESS_HUB_TOO_THIN, /* hub outside not larger than the common diameter, or unknown */
  TM_PRESS_SHAFT_BORE,   /* shaft bore below zero, or not smaller than the common diameter */
  TM_PRESS_BAD_LENGTH,   /* not above zero */
  TM_PRESS_HUB_MODULUS,  /* not above zero, or unknown */
  TM_PRESS_SHAFT_MODULUS,
  TM_PRESS_HUB_POISSON, /* not within -1 .. 0.5, or unknown */
  TM_PRESS_SHAFT_POISSON,
  TM_PRESS_BAD_YIELD,       /* not above zero */
  TM_PRESS_BAD_EXPANSION,   /* not above zero: of the hub or the shaft */
  TM_PRESS_BAD_FRICTION,    /* below zero, or least above most */
  TM_PRESS_BAD_ROUGHNESS,   /* below zero */
  TM_PRESS_BAD_GAP,         /* below zero */
  TM_PRESS_BAD_TEMPERATURE, /* ambient below absolute zero, or above TM_FIT_TEMPERATURE_MOST */
  TM_N_PRESS_STATUSES
} TmPressStatus;

/* At one interference.  Tension positive.  Lengths on diameter. */
typedef struct {
  double effective; /* interference after roughness; 0 where nothing is left */
  double pressure;
  double hub_hoop, hub_radial; /* at the contact */
  double hub_outside_hoop;
  double shaft_hoop_outer;        /* at the contact */
  double shaft_hoop_inner;        /* at its bore; NAN for a solid shaft */
  double hub_mises, shaft_mises;  /* the largest in each */
  double hub_use, shaft_use;      /* share of yield; NAN: unknown */
  double hub_growth;              /* of the outside */
  double bore_closure;            /* 0 for a solid shaft */
  double axial_least, axial_most; /* holds, and takes to press in; NAN: length or friction unknown */
  double torque_least, torque_most;
} TmPressState;

typedef struct {
  TmPressStatus status;
  double roughness_loss;
  TmPressState state; /* at `interference` */
  TmPressState least; /* at the ends of the range */
  TmPressState most;
  /* To drop in with `gap` at interference_most, before roughness: °C; ambient where there is room already;
   * NAN: expansion or gap unknown. */
  double heat_hub_to;   /* NAN also where TM_FIT_TEMPERATURE_MOST would not do */
  double cool_shaft_to; /* NAN also where even absolute zero would not do */
  gboolean hot_enough;  /* FALSE: it would not */
  gboolean cold_enough;
  gboolean cold_assumed; /* no figure for cooling: that near 20 °C was used */
  gboolean thin_hub;     /* wall under a tenth of the diameter: can burst */
} TmPressAnswer;

/* The interference of @check: the middle of its range, and the ends widened by the expanded uncertainty where
 * it is known (by limits there is none).  A check with no range leaves all three NAN. */
void tm_press_take_fit (TmPressInput *input, const TmFitCheck *check);

/* Every input up to 1e9 in magnitude.  On any status but OK and NO_INTERFERENCE all figures are NAN; they are
 * never infinite. */
void tm_press (const TmPressInput *input, TmPressAnswer *out);

/* The interference of no fit, and nothing known: every figure NAN but the shaft bore (solid), the roughness
 * (0) and the ambient (20 °C). */
void tm_press_input_init (TmPressInput *out);

/* The figures of @material. */
TmPressBody tm_press_body (const TmElastic *material);

/* Of the hub, or of the shaft, of @feature's press: as the press names it, else the job's own where the
 * feature is that part.  FALSE when nobody names one that is known. */
gboolean tm_press_material (const TmJob *job, const TmFeature *feature, gboolean hub, TmElastic *out);

/* TRUE when the hub or the shaft of @feature's press is named, and known, as a plastic. */
gboolean tm_press_has_plastic (const TmJob *job, const TmFeature *feature);

/* An input with what the feature's press facts, the job's materials and the tables say; what nobody says is
 * NAN, but no stated roughness is none and no stated shaft bore a solid shaft.  A part with no material is
 * the job's own where the feature is that part.  The common diameter is the nominal, else the middle of the
 * limits.  The interference is left to the caller. */
void tm_press_input_of (const TmJob *job, const TmFeature *feature, TmPressInput *out);

/* Marked for translation, context "press status": names the figure and the mend. */
const char *tm_press_status_word (TmPressStatus status);

/* What has to be minded; in the order to show. */
typedef enum {
  TM_PRESS_CAUTION_MAY_BE_LOOSE, /* at the least interference */
  TM_PRESS_CAUTION_OVER_YIELD,
  TM_PRESS_CAUTION_YIELD_UNKNOWN,
  TM_PRESS_CAUTION_THIN,
  TM_PRESS_CAUTION_RELAXES, /* plastics: what elastic figures leave out */
  TM_PRESS_CAUTION_MOISTURE,
  TM_PRESS_CAUTION_COLD_ASSUMED,
  TM_PRESS_CAUTION_NOT_HOT_ENOUGH,
  TM_PRESS_CAUTION_NOT_COLD_ENOUGH,
  TM_PRESS_CAUTION_TEMPER,
  TM_PRESS_CAUTION_GUARD,    /* always */
  TM_PRESS_CAUTION_ESTIMATE, /* always */
  TM_N_PRESS_CAUTIONS
} TmPressCaution;

/* TRUE when @caution belongs beside @answer; @plastic: the hub or the shaft is one. */
gboolean tm_press_caution_applies (TmPressCaution caution, const TmPressAnswer *answer, gboolean plastic);

/* A sentence, marked for translation, context "press caution". */
const char *tm_press_caution_word (TmPressCaution caution);

G_END_DECLS
