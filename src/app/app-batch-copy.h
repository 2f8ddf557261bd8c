/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-copy: the part of a job that one feature's batch is made of, for a thread of its own.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* A job with all pieces, gauges, methods, tools and events of @job, and of its features and its record only
 * @feature, those that the same tool cuts, and those that give them a size.  Its rows are its own; its texts
 * are those of @job, which must outlive it. */
TmJob *tm_batch_copy (const TmJob *job, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
