/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-dependents: rows that hang on a gauge, a method, a feature or a study by its name.  Private to core.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* What hangs on the gauge (its calibrations, checks, pin sizes) or the method (its budget lines)
 * called @name is renamed @to, or removed for NULL.  @name may be owned by what is being removed. */
void tm_follow_gauge (TmJob *job, const char *name, const char *to);
void tm_follow_method (TmJob *job, const char *name, const char *to);
/* The measured mates of the feature @balloon; likewise. */
void tm_follow_feature (TmJob *job, const char *balloon, const char *to);
/* Balloons of places that @feature no longer has are taken off. */
void tm_follow_places (TmJob *job, const TmFeature *feature);

G_END_DECLS
