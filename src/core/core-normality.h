/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-normality: whether values may come from a normal distribution.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Anderson and Darling's A² with mean and standard deviation estimated, adjusted by 1 + 0.75/n + 2.25/n², and
 * its p (R. B. D'Agostino, M. A. Stephens, Goodness-of-Fit Techniques, 1986, table 4.9).  Both NAN under 8
 * values or where all are equal. */
void tm_normality (const double *values, gsize n, double *a_squared, double *p);

G_END_DECLS
