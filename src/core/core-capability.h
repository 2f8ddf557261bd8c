/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-capability: what a process can hold (ISO 22514), each figure with its 95 % interval and what stands
 * behind it.
 *
 * Values in any one unit.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  double lower, upper;   /* limits; -INFINITY, INFINITY: none */
  double target;         /* NAN: the middle of both limits */
  gboolean zero_bounded; /* the value cannot be below zero: only the upper index, by quantiles */
  double within;         /* σ within groups or from moving ranges; NAN: unknown, cp and cpk do not apply */
  double within_dof;     /* of the estimator used */
  double measuring;      /* standard deviation of repeated measuring, to be taken out; 0 or NAN: none */
  gboolean drifting;     /* a drift is shown: cm, cmk are refused */
} TmCapabilityInput;

typedef struct {
  double value;     /* NAN: does not apply, or the data cannot carry it */
  double low, high; /* 95 % */
} TmIndex;

typedef enum {
  TM_CAPABLE_OK,
  TM_CAPABLE_TOO_FEW,   /* fewer than TM_CAPABLE_LEAST values: no figure */
  TM_CAPABLE_NO_SPREAD, /* all equal */
  TM_CAPABLE_NO_LIMITS,
  TM_CAPABLE_MEASURING, /* measuring spreads as much as the pieces: nothing is left to divide by */
  TM_N_CAPABLE_STATUSES
} TmCapableStatus;

#define TM_CAPABLE_LEAST   5
#define TM_CAPABLE_MACHINE 50   /* values that cm and cmk need */
#define TM_CAPABLE_EMPIRIC 1000 /* values from which empirical quantiles stand (ISO 22514-2) */

/* What the quantiles come from. */
typedef enum {
  TM_SHAPE_NORMAL,
  TM_SHAPE_LOGNORMAL, /* with an origin where the values are not bounded by zero */
  TM_SHAPE_WEIBULL,
  TM_SHAPE_RAYLEIGH, /* positions */
  TM_SHAPE_EMPIRIC,
  TM_N_SHAPES
} TmShape;

typedef struct {
  TmCapableStatus status;
  gsize n;
  double mean, overall; /* overall standard deviation, measuring taken out where asked */
  TmIndex cp, cpk;      /* by σ within */
  TmIndex pp, ppk;      /* by the overall standard deviation, or by quantiles where the shape is not normal */
  TmIndex cpm;          /* R. A. Boyles, J. Quality Technology 23 (1991) */
  TmIndex cm, cmk;      /* machine */
  double expected_out;  /* share, by the shape */
  double a_squared, normality_p; /* NAN under 8 values */
  TmShape shape;
  double shape_p; /* of the shape's own fit; NAN: not tested */
  guint n_wanted; /* values that would bring the interval of ppk within a fifth; 0: there already */
} TmCapability;

/* Intervals by the effective degrees of freedom of the estimator; cpk, ppk ± z √(1/(9n) + C²/(2ν)). */
void tm_capability (const double *values, gsize n, const TmCapabilityInput *input, TmCapability *out);

const char *
tm_capable_status_word (TmCapableStatus status); /* marked for translation, context "capability" */
const char *tm_shape_word (TmShape shape);       /* likewise, context "shape" */

/* Quantile and distribution function of the shape as fitted to @values; NAN where it cannot be fitted. */
typedef struct {
  TmShape shape;
  double origin, a, b; /* parameters: see the .c file */
  double p;            /* of its Anderson-Darling test; NAN: not tested */
} TmFittedShape;
TmFittedShape tm_shape_fit (const double *values, gsize n, gboolean zero_bounded);
double tm_shape_quantile (const TmFittedShape *shape, double probability);
double tm_shape_below (const TmFittedShape *shape, double value);
double tm_shape_density (const TmFittedShape *shape, double value);

G_END_DECLS
