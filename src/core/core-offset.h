/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-offset: whether to correct the machine, by how much, and what correcting every piece would have cost.
 */

#pragma once

#include <glib.h>

#include "core-trend.h"

G_BEGIN_DECLS

typedef enum {
  TM_OFFSET_ADVISED,
  TM_OFFSET_TOO_FEW,    /* nothing to go by yet */
  TM_OFFSET_ON_TARGET,  /* within two standard errors, or more where those are ill known: leave it alone */
  TM_OFFSET_UNDER_STEP, /* less than the control can do */
  TM_OFFSET_NO_TARGET,
} TmOffsetStatus;

typedef struct {
  TmOffsetStatus status;
  double level, level_se; /* where the process is now: by a moving average, or by the end of the trend */
  gboolean drifting;
  double size_change; /* that would recentre, rounded toward zero to the step; 0 unless advised */
  gint64 steps;       /* the same in steps of the control */
  double lag;         /* that a moving average stays behind the drift: slope (1 - λ)/λ; 0: no drift */
  gboolean harmonic; /* start-up: each piece counts by one over the number of pieces since the set-up, so that
                        the j-th correction is 1/j of the deviation (F. E. Grubbs 1954; J. Quality Technology
                        15, 1983); false once the average's own weight is more */
  /* Of the pieces so far: standard deviation as they are, and had each been corrected by all of its
   * deviation. */
  double spread, spread_corrected;
} TmOffsetAdvice;

typedef struct {
  const double *values; /* of the present stretch in order, NAN: missing; relative to anything */
  gsize n;
  double target;           /* NAN: none */
  double sigma, sigma_dof; /* within, and the degrees of freedom of that estimate; NAN: by the values' own */
  const TmTrend *trend;    /* of the same, its x rising by one a value; NULL: none */
  double lambda;           /* of the average, 0.2 usual */
  guint before; /* pieces measured since the set-up and before this stretch, each stretch of which ended by a
                 * correction that was meant to recentre (0: this one is the first, or what came before was
                 * another tool or lot); where the values say that it did not, they count alone */
  gboolean
      chosen;  /* a test for a change chose where the values begin: one piece alone is then no level yet */
  double step; /* > 0, of the control as a change of size */
} TmOffsetInput;

/* Correct where |level - target| > 2 se, or as many as Student's t wants for 95 % where they rest on few
 * pieces.  A drift counts where it is shown with p <= 0.05, of fewer than ten pieces with p <= 0.01. */
void tm_offset_advise (const TmOffsetInput *input, TmOffsetAdvice *out);

/* A test that is made at every piece corrects a steady process on target now and then for nothing: the mean
 * number of pieces from one such correction to the next, of a moving average of weight @lambda held against
 * two of its standard errors (integral equation; 45 with 0.2).  By the benchmark of batches, start-up, drift
 * and shifts taken in, it is one in about 60 pieces, which scatter by 4 % more than left alone. */
double tm_offset_needless (double lambda);

/* Standard deviation of @values (NAN: missing), and what it had been if each but the first of a stretch had
 * been corrected by all of the last one's deviation; NAN under three.  Of independent values that is √2 as
 * much. */
void tm_offset_spreads (const double *values, gsize n, const guint *breaks, guint n_breaks, double *as_is,
                        double *corrected);

G_END_DECLS
