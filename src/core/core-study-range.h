/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-study-range: the range method of a gauge study, and the factors that it rests on.
 */

#pragma once

#include "core-study.h"

G_BEGIN_DECLS

/* Mean and standard deviation of the range of @n (>= 2) independent values of the normal distribution
 * with standard deviation 1, by quadrature (Tippett, Biometrika 17, 1925). */
void tm_range_moments (guint n, double *d2, double *d3);

/* What the average of @groups ranges of @n values is divided by: √(d2² + d3²/g), which makes its square
 * unbiased (Patnaik, Biometrika 37, 1950; Duncan's table of d2*).  Above 15 groups d2, as the published
 * tables do. */
double tm_range_divisor (guint n, guint groups);

/* Mean of the ranges and mean of the values of one person. */
void tm_study_person (const double *values, guint pieces, guint people, guint repeats, guint person,
                      double *mean_range, double *mean);

/* As tm_study_analyse() lays the values out; no cell is empty. */
void tm_study_range (const double *values, guint pieces, guint people, guint repeats, TmStudyRange *out);

G_END_DECLS
