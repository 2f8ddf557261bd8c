/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-weighted: one value from several that measure the same thing, each with its own uncertainty.
 *
 * Weights are the inverse variances; values that share an error are weighted by their whole covariance
 * (generalised least squares, as in the evaluation of comparisons).  y = Σ w_i y_i / Σ w_i,
 * u = (Σ w_i)^-1/2; in matrices, with V the covariance, w = V⁻¹1 / (1ᵀV⁻¹1), u² = 1 / (1ᵀV⁻¹1).
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  double value;
  double u;   /* standard, > 0 */
  double dof; /* of u, > 0; INFINITY when it is taken as known */
} TmWeightedValue;

typedef struct {
  double mean;
  double u_known; /* as if the weights were known and the values consistent */
  double u;       /* with Meier's correction where a u_i has under 10 degrees of freedom, times the Birge
                   * ratio where the values disagree */
  double dof;     /* Welch-Satterthwaite over the weights */
  double coverage;
  double expanded; /* 95 % */
  double chi2;     /* Σ w_i (y_i - y)², n - 1 degrees of freedom; NAN for one value, as are p and birge */
  double p;        /* of that χ² by chance, as if each u_i were known: with few degrees of freedom they are
                    * said to disagree too soon rather than too late, and u widened */
  double birge;    /* √(χ² / (n - 1)) */
  gboolean disagree;   /* birge > 1 and p < 0.05 */
  int apart;           /* of three or more that disagree, the one furthest from the mean; else -1 */
  gboolean best_alone; /* a weight would be negative: the value with the least u counts alone */
  guint best;
} TmWeighted;

/* @n >= 1 values.  @covariance: n × n, row by row, its diagonal the u_i²; NULL: independent.  @weights
 * gets n weights that sum to 1; @apart (may be NULL) gets |y_i - y| / √(u_i² - u²) for each, NAN where
 * that is not a number.  Meier: Biometrics 9 (1953) 59-73: u² (1 + 4 Σ w_i (1 - w_i) / ν_i). */
void tm_weighted_mean (const TmWeightedValue *values, guint n, const double *covariance, double *weights,
                       double *apart, TmWeighted *out);

/* Sets dof, coverage and expanded of @weighted, for a caller who knows the parts of each u_i. */
void tm_weighted_set_dof (TmWeighted *weighted, double dof);

G_END_DECLS
