/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-small-shift: charts that remember: the exponentially weighted moving average and the tabular
 * cumulative sum, and the point at which a level most likely changed.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* z_i = λ x_i + (1 - λ) z_(i-1), z_0 = @centre.  Limits widen with i to ± L σ √(λ/(2-λ)) (S. W. Roberts,
 * Technometrics 1, 1959; J. M. Lucas, M. S. Saccucci, Technometrics 32, 1990). */
typedef struct {
  double value, lower, upper;
} TmEwmaPoint;
/* A NAN keeps z where it was. */
void tm_ewma (const double *values, gsize n, double centre, double sigma, double lambda, double reach,
              TmEwmaPoint *out);

/* E. S. Page, Biometrika 41 (1954): C+ = max(0, x - (μ + k σ) + C+), C- likewise, each with the number of
 * points since it last was zero.  In the unit of the values. */
typedef struct {
  double high, low;
  guint n_high, n_low;
} TmCusumPoint;
void tm_cusum (const double *values, gsize n, double centre, double sigma, double k, TmCusumPoint *out);

/* Average run lengths of both charts with known parameters and fixed limits, by the integral equation
 * (Gauss-Legendre), two-sided, starting from zero. */
double tm_ewma_length (double lambda, double reach, double shift);
double tm_cusum_length (double k, double h, double shift);

typedef struct {
  gboolean found;  /* the likelihood ratio says so: p < 0.05, for the number of places looked at */
  guint at;        /* index of the first value after the change */
  guint low, high; /* all places within 1.92 of the best log-likelihood */
  double before, after;
  double p;
} TmLevelChange;
/* One change of level of independent normal values of one spread; NANs are left out. */
void tm_level_change (const double *values, gsize n, TmLevelChange *out);

G_END_DECLS
