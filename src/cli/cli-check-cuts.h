/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check-cuts: what is wrong with the tools, cuts, mates and presses of a job that loads.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Appends a line, owned by @faults, for each: the thing, the place, the mend. */
void tm_check_cuts (const TmJob *job, GPtrArray *faults);

G_END_DECLS
