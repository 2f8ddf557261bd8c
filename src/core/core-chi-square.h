/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-chi-square: the χ² distribution where the library's own inverse cannot be relied on.
 *
 * GSL 2.7 gives a wrong inverse without a word at many of more than about 2,000 degrees of freedom, and ends
 * the program under 0.2 or over 700,000 of them.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* P(χ² > @x) with @dof > 0; 0 and 1 far from the middle, where GSL would give up. */
double tm_chi_square_above (double x, double dof);

/* The value that χ² with @dof stays under with @probability: relative error under 1e-8.  NAN unless 0 <
 * @probability < 1 and @dof > 0. */
double tm_chi_square_quantile (double probability, double dof);

G_END_DECLS
