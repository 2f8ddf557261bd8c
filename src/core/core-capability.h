/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-capability: what a process can hold (ISO 22514), each figure with its 95 % interval and what stands
 * behind it.
 *
 * Values in any one unit.
 */

#pragma once

#include "core-shape.h"

G_BEGIN_DECLS

typedef struct {
  double lower, upper;   /* limits; -INFINITY, INFINITY: none */
  double target;         /* NAN: the middle of both limits */
  gboolean zero_bounded; /* the value cannot be below zero: only the upper index, by quantiles */
  double within;         /* σ within groups or from moving ranges; NAN: unknown, cp and cpk do not apply */
  double within_dof;     /* of the estimator used */
  double measuring;      /* standard deviation of repeated measuring, to be taken out; 0 or NAN: none */
  gboolean drifting;     /* a drift is shown: cm, cmk are refused */
  gboolean position;     /* zero-bounded: a distance in a plane, whose shape is Rayleigh */
  gboolean gaps;         /* not of one stretch of consecutive pieces: cm, cmk are refused */
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
  TM_CAPABLE_MEASURING, /* measuring spreads about as much as the pieces: what is left carries less than one
                         * degree of freedom */
  TM_N_CAPABLE_STATUSES
} TmCapableStatus;

#define TM_CAPABLE_LEAST   5
#define TM_CAPABLE_MACHINE 50   /* values of consecutive pieces that cm and cmk need */
#define TM_CAPABLE_EMPIRIC 1000 /* values from which empirical quantiles stand (ISO 22514-2) */

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
  TmFittedShape fit; /* that the quantiles came from, measuring taken out; a, b NAN: none, as of the empirical
                        shape; also where no shape fits (@unshaped): the best that was tried */
  double shape_p;    /* of the shape's own fit; NAN: not tested */
  gboolean unshaped; /* not normal, no shape fits and too few for empirical quantiles: pp, ppk, cm, cmk and
                        expected_out are refused */
  gboolean within_lost; /* measuring spreads about as much as the pieces within groups: cp, cpk are refused */
  guint n_wanted;       /* values that would bring the interval of ppk within a fifth; 0: there already */
} TmCapability;

/* NANs and infinities among the values are left out.
 *
 * Intervals by the effective degrees of freedom ν of the estimator: cp, pp by χ², cpk, ppk ± z √(1/(9n) +
 * C²/(2ν)); by quantiles ± z times the standard deviation of fits to drawn samples, by χ² for a Rayleigh
 * shape, or of the two empirical quantiles by the mean excess of the tails.  Taking out measuring u leaves ν
 * ((σ² - u²)/σ²)².
 *
 * Both limits: all indexes.  One limit, or bounded by zero: ppk alone, which is then Ppu or Ppl.  Cp, cpk
 * and cpm stand on a normal distribution also where @shape is another: show them with that reason. */
void tm_capability (const double *values, gsize n, const TmCapabilityInput *input, TmCapability *out);

const char *
tm_capable_status_word (TmCapableStatus status); /* marked for translation, context "capability" */
G_END_DECLS
