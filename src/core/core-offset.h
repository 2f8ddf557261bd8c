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
  gboolean harmonic;  /* start-up rule: one over the number of pieces (F. E. Grubbs, J. Quality Technology 15,
                         1983; 1954) */
  /* Of the pieces so far: standard deviation as they are, and had each been corrected by all of its
   * deviation. */
  double spread, spread_corrected;
} TmOffsetAdvice;

/* @values of the present stretch in order, NAN: missing, relative to anything; @sigma within (NAN: by their
 * own); @trend of the same; @lambda of the average, 0.2 usual.  @step > 0 of the control as a change of size.
 */
void tm_offset_advise (const double *values, gsize n, double target, double sigma, const TmTrend *trend,
                       double lambda, double step, TmOffsetAdvice *out);

G_END_DECLS
