/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-verdict: the decision rule of a job made concrete for one band and one uncertainty, and the
 * verdict it gives on a size.
 *
 * The uncertainty fixes the guards once, as whole counts rounded up; after that every comparison is
 * one of whole numbers.
 */

#pragma once

#include "core-judge.h"
#include "core-station.h"
#include "core-uncertainty.h"

G_BEGIN_DECLS

typedef struct {
  TmDecision decision;
  TmLimits limits;
  TmUncertainty uncertainty; /* u is NAN: compared plainly */
  gboolean radial;           /* sizes are distances from true position */
  gint64 guard;              /* g: inside the limits by this much is proven in */
  gint64 guard_out;          /* g1: outside by more than this much is proven out */
  gboolean can_prove_in;     /* guarded: some value can be proven in; simple: N:1 is met */
  TmSettles settles;
} TmRule;

/* Guarded (ISO 14253-1:2017, 95 %): g1 = max(1.65, t_0.95(dof))·u, and g the larger of g1 and the
 * guard at which P(in) at U - g is 0.95 with both tails counted.  Nothing can be proven in when the
 * band is under 3.92 u (twice t_0.975 u for few degrees of freedom).  A zero-bounded requirement has
 * no guard at zero and its density is cut there.
 * Simple (ASME B89.7.3.1, N:1): needs band >= @ratio · 2U, where there is a band; a maximum or
 * minimum alone has none. */
void tm_rule_init (TmRule *rule, TmDecision decision, double ratio, const TmLimits *limits,
                   const TmUncertainty *uncertainty, gboolean radial);

/* In, out or too close, by comparisons of whole counts; never NOT_MEASURED. */
TmVerdict tm_rule_verdict (const TmRule *rule, const TmLocalSize *size);

/* P(in) of one size; NAN when the uncertainty is unknown. */
double tm_rule_probability (const TmRule *rule, const TmLocalSize *size);

/* How far the size lies inside its nearest limit, in standard uncertainties (in counts when they
 * are unknown); negative outside.  Infinite when there is no limit. */
double tm_rule_room (const TmRule *rule, const TmLocalSize *size);

/* N of the job's N:1 rule. */
double tm_job_simple_ratio (const TmJob *job);

G_END_DECLS
