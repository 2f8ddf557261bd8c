/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-rework: which readings and pin trials were taken before their feature was reworked or repaired.
 * Private to core.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Each sets `before_rework` of one row by all nonconformances of @job. */
void tm_rework_mark_reading (const TmJob *job, TmReading *reading);
void tm_rework_mark_trial (const TmJob *job, TmPinTrial *trial);

G_END_DECLS
