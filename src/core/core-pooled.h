/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pooled: the repeatability of a method, pooled over every station that it read more than once.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  double sd;        /* pooled standard deviation of one reading, counts */
  guint dof;        /* its degrees of freedom: repeats less one, summed over the stations */
  guint n_stations; /* with repeats */
  guint n_readings; /* at those */
} TmPooled;

/* Pools squared deviations within groups: s² = Σ SS_i / Σ ν_i (NIST/SEMATECH e-Handbook 2.4.4; the
 * pooled estimate of JCGM 100, 4.2.4).  @sums of squares with their @dofs; FALSE without a
 * degree of freedom. */
gboolean tm_pool_squares (const double *sums, const guint *dofs, gsize n, double *sd, guint *dof);

/* From the readings of @job that count and were taken by @method_name, as recorded or as assigned to
 * the feature, on features measured in @dimension.  Each offset of a position is a reading of its own.
 * FALSE when no station was read twice by it. */
gboolean tm_pooled_repeatability (const TmJob *job, const char *method_name, TmDimension dimension,
                                  TmPooled *out);

/* Its standard deviation in @unit, a length, rounded to three significant digits. */
TmQuantity tm_pooled_quantity (const TmPooled *pooled, TmUnit unit);

G_END_DECLS
