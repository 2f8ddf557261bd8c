/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-study-interval: confidence intervals of sums of mean squares.  Private to core.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A mean square and its degrees of freedom, with the factor that it enters a variance by. */
typedef struct {
  double factor;
  double ms;
  double dof;
} TmSquare;

/* Two-sided 95 % interval of Σ factor · E(ms) by the modified large-sample method: exact for one term;
 * for sums, Graybill and Wang (JASA 75, 1980); with one subtracted term, Ting, Burdick, Graybill,
 * Jeyaratnam and Lu (J. Statist. Comput. Simul. 35, 1990), as gathered for gauge studies by Burdick,
 * Borror and Montgomery (J. Quality Technology 35, 2003).  Formulas from memory; their coverage is
 * measured in the tests.  Bounds below 0 are 0. */
void tm_squares_interval (const TmSquare *squares, guint n, double *low, double *high);

/* Satterthwaite's degrees of freedom of the same sum, at least 1. */
double tm_squares_dof (const TmSquare *squares, guint n);

G_END_DECLS
