/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-probability: the chance that the true sizes are within their limits (JCGM 106:2012, clause 7).
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Where a size lies among its limits, all in one unit.  A bound that is not there is INFINITY. */
typedef struct {
  double below;          /* size - lower limit, or size - 0 when zero-bounded */
  double above;          /* upper limit - size */
  gboolean zero_bounded; /* the true value cannot be below zero: the density is cut there */
  double own;            /* standard uncertainty that this size has by itself */
} TmMargin;

/* P(in) = F((U - y)/u) - F((L - y)/u), F normal or Student's t by @dof; with the density cut at zero
 * when zero-bounded. */
double tm_probability_in (const TmMargin *margin, double u, double dof);

/* P(all in) of @n sizes that share a normal error of standard deviation @shared:
 * ∫ Π [Φ((U - y_i - s)/r_i) - Φ((L - y_i - s)/r_i)] dN(s; 0, shared), r_i the own parts, by
 * quadrature. */
double tm_probability_all_in (const TmMargin *margins, gsize n, double shared);

G_END_DECLS
