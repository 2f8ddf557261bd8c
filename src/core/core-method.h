/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-method: what a reading's method name stands for, and the uncertainty budget that follows.
 */

#pragma once

#include "core-model.h"
#include "core-station.h"
#include "core-uncertainty.h"

G_BEGIN_DECLS

#define TM_METHOD_MAX_COMPONENTS 6

typedef struct {
  const char *name;       /* "" when none was named */
  const TmMethod *method; /* NULL for a bare gauge and for an unknown name */
  const TmGauge *gauge;   /* the gauge that reads: the method's last; NULL when unknown */
  double resolution;      /* of that gauge, counts; NAN when not stated */
  gboolean known;         /* the budget has something in it and nothing named is missing */
  guint n_components;
  /* Of a single reading, in counts.  Repeatability stands last when there is any. */
  TmComponent components[TM_METHOD_MAX_COMPONENTS];
  gboolean has_repeatability;
} TmMethodUse;

/* Looks @name up as a method, else as the tag of a gauge used alone. */
TmMethodUse tm_method_use (const TmJob *job, const TmFeature *feature, const char *name);

/* The uncertainty of the size at one station: repeatability of the mean of its repeats, by the
 * method's pooled standard deviation where it has one, else by the repeats' own (with their few
 * degrees of freedom).  Two offsets from true position make a deviation of twice their length, so
 * a radial size has sensitivity 2.  @extra (may be NULL) joins the budget: a bonus's size. */
TmUncertainty tm_method_uncertainty (const TmMethodUse *use, const TmLocalSize *size,
                                     const TmComponent *extra);

G_END_DECLS
