/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-rework: which readings and pin trials were taken before their feature was reworked or repaired.
 * Private to core.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* A rework that was done, of @feature on @piece, at @place. */
gboolean tm_rework_is_about (const TmNonconformance *rework, const TmPiece *piece, const TmFeature *feature,
                             guint place);

/* TRUE when the rework, which is about its place, was done after the row was recorded. */
gboolean tm_rework_follows_reading (const TmJob *job, const TmNonconformance *rework,
                                    const TmReading *reading);
gboolean tm_rework_follows_trial (const TmNonconformance *rework, const TmPinTrial *trial);

/* Each sets `before_rework` of one row by all nonconformances of @job. */
void tm_rework_mark_reading (const TmJob *job, TmReading *reading);
void tm_rework_mark_trial (const TmJob *job, TmPinTrial *trial);

G_END_DECLS
