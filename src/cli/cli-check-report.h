/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check-report: what contradicts itself in what a job's report says besides the sizes: nonconformances
 * and reworks, what a partial first article asks for, the parts of an assembly, balloons on drawings,
 * signatures over another record.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Appends a line, owned by @faults, for each: the thing, the place, the mend. */
void tm_check_report (const TmJob *job, GPtrArray *faults);

G_END_DECLS
