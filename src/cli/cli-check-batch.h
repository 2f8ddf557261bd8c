/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check-batch: what is wrong with the events and the pieces held back of a job that loads.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Appends a line for each fault. */
void tm_check_batch (const TmJob *job, GPtrArray *faults);

G_END_DECLS
