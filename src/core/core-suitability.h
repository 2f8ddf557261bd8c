/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-suitability: how well each method of the shop would settle a feature, before anything is read.
 */

#pragma once

#include "core-gauge.h"
#include "core-judge.h"

G_BEGIN_DECLS

typedef struct {
  const char *name;       /* a method, or the tag of a gauge used alone */
  const TmMethod *method; /* or NULL */
  const TmGauge *gauge;   /* the one that reads */
  gboolean known;         /* FALSE: its uncertainty is not known */
  TmOutlook outlook;      /* expanded, guard, settles… */
  double share;           /* of the band that the guards eat: 2 g / T, 1 where the method cannot settle it;
                           * under the simple rule 2 U / T; NAN without a two-sided band */
  gboolean reaches;       /* the feature lies within its range */
  gboolean fits;          /* inside gauges for bores, outside ones for shafts; TRUE where unknown */
  gboolean assumed;       /* rests on a starting value that nobody measured here */
  TmDue due;              /* the worst of its gauges' */
} TmSuitability;

/* The share of the band of @feature that the guards of @outlook eat: on both sides, one where zero needs
 * none; at least 1 where nothing can be proven in; NAN without a two-sided band.  The simple rule has no
 * guards: there it is the width of the interval that N:1 is about, 2 U / T. */
double tm_outlook_share (const TmFeature *feature, const TmOutlook *outlook);

/* Each method, each gauge that reads by itself and is in no method, and the gauge assigned to @feature, best
 * first (by expanded uncertainty; those that do not fit or reach last).  @at: today, for `due`. */
GArray *tm_suitability (const TmJob *job, const TmFeature *feature, const char *at) G_GNUC_WARN_UNUSED_RESULT;

/* The method or gauge called @name by itself; FALSE when the job has none. */
gboolean tm_suitability_of (const TmJob *job, const TmFeature *feature, const char *name, const char *at,
                            TmSuitability *out);

G_END_DECLS
