/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-shape: the shape of a distribution that is not normal, by name, and its quantiles.
 *
 * Values in any one unit.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the quantiles come from. */
typedef enum {
  TM_SHAPE_NORMAL,    /* mean a, standard deviation b */
  TM_SHAPE_LOGNORMAL, /* with an origin where the values are not bounded by zero: origin + exp(a + b z); with
                         b < 0 the long tail is the lower one: origin - exp(a + b z) */
  TM_SHAPE_WEIBULL,   /* origin + a (-ln(1 - P))^(1/b) */
  TM_SHAPE_RAYLEIGH,  /* positions: a sqrt(-2 ln(1 - P)) */
  TM_SHAPE_EMPIRIC,   /* the values themselves: never of tm_shape_fit() */
  TM_N_SHAPES
} TmShape;

typedef struct {
  TmShape shape;
  double origin, a, b; /* NAN: it cannot be fitted */
  double p;            /* of its Anderson-Darling test; NAN: not tested, under 8 values */
} TmFittedShape;

/* What bounds the values. */
typedef enum {
  TM_BOUND_NONE,
  TM_BOUND_ZERO,     /* not below zero: roughness, roundness */
  TM_BOUND_POSITION, /* likewise, a distance in a plane from where it should be */
} TmBound;

/* The p under which values are not taken for normal. */
#define TM_SHAPE_NORMAL_DOUBT 0.05
/* TRUE where p is under 0.05; for Rayleigh under 0.01: a position has a reason for that shape beyond its
 * values, and where it is doubted without cause another shape is fitted, whose far quantiles mislead. */
gboolean tm_shape_is_doubted (const TmFittedShape *shape);

/* The shape that the values have.  Not bounded: the normal one unless Anderson and Darling's test doubts it
 * or under 8 values; then lognormal or Weibull, both with an origin, by L-moments (J. R. M. Hosking, J. Royal
 * Statistical Society B 52, 1990).  Bounded by zero: Weibull or lognormal from zero, by maximum likelihood;
 * of a position Rayleigh unless it is doubted.  A value that is not above zero counts there as half the least
 * that is.  Of two the one with the greater p, Weibull of fewer than 8 values: by a parametric bootstrap of
 * Anderson and Darling's A² with a fixed seed, so that the same values always give the same p.  Values that
 * are not finite are left out; fewer than three, or all equal: a, b NAN. */
TmFittedShape tm_shape_fit (const double *values, gsize n, TmBound bound);

/* Of lognormal and Weibull the one that @fit, as tm_shape_fit() gave it, is not; FALSE where that is doubted
 * or
 * @fit is neither: the values tell both apart. */
gboolean tm_shape_rival (const double *values, gsize n, TmBound bound, const TmFittedShape *fit,
                         TmFittedShape *rival);

/* Quantile, distribution function and density of the shape as fitted; NAN where it cannot be fitted. */
double tm_shape_quantile (const TmFittedShape *shape, double probability);
double tm_shape_below (const TmFittedShape *shape, double value);
double tm_shape_density (const TmFittedShape *shape, double value);

/* What fitting again to @n values drawn from @shape gives, TM_SHAPE_TRIALS times with a fixed seed: how far
 * chance moves the fit. */
#define TM_SHAPE_TRIALS 199
typedef struct {
  TmFittedShape fit;
  double a_squared; /* of the drawn values about their own fit */
} TmShapeTrial;
void tm_shape_try (const TmFittedShape *shape, gsize n, TmBound bound, TmShapeTrial *trials);

const char *tm_shape_word (TmShape shape); /* marked for translation, context "shape" */

G_END_DECLS
