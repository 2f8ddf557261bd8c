/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-copy: the part of a job that one feature's batch, or the judgement of some pieces, is made of,
 * for a thread of its own.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* A job with all pieces, gauges, methods, tools and events of @job, and of its features and its record only
 * @feature, those that the same tool cuts, and those that give them a size.  Its rows are its own; its texts
 * are those of @job, which must outlive it. */
TmJob *tm_batch_copy (const TmJob *job, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* The same with all features of @job, and of its record only what counts of the pieces from index @from on:
 * as many pieces as make about @most_rows rows, at least one and none beyond @to, which gets the one after
 * the last. */
TmJob *tm_batch_copy_pieces (const TmJob *job, guint from, guint *to,
                             guint most_rows) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
