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
  TM_OFFSET_TOO_FEW,    /* nothing to go by */
  TM_OFFSET_ON_TARGET,  /* within two standard errors: noise, leave it alone */
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

/* @values of the present stretch in order, NAN: missing, relative to anything; @sigma within (NAN: by their
 * own); @trend of the same, its x rising by one a value; @lambda of the average, 0.2 usual.  @before: pieces
 * measured since the set-up and before this stretch, each stretch of which ended by a correction that was
 * meant to recentre (0: this one is the first, or what came before was another tool or lot); where the values
 * say that it did not, they count alone.  @step > 0 of the control as a change of size. */
void tm_offset_advise (const double *values, gsize n, double target, double sigma, const TmTrend *trend,
                       double lambda, guint before, double step, TmOffsetAdvice *out);

/* Standard deviation of @values (NAN: missing), and what it had been if each but the first of a stretch had
 * been corrected by all of the last one's deviation; NAN under three.  Of independent values that is √2 as
 * much. */
void tm_offset_spreads (const double *values, gsize n, const guint *breaks, guint n_breaks, double *as_is,
                        double *corrected);

G_END_DECLS
