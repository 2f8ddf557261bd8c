/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-portion: the cells of some pieces judged on a thread, from a copy of their record
 * (app-batch-copy): the main loop copies a few milliseconds' worth at a time, and may change the job
 * meanwhile.
 */

#pragma once

#include <glib.h>

#include "core-model.h"
#include "plot-grid.h"

G_BEGIN_DECLS

typedef struct _TmBatchPortion TmBatchPortion;

/* On the main loop: @cells are those of the pieces @from to @to, the last one not included, each with all its
 * features, as the record was when the portion was begun.  Borrowed; the portion is gone afterwards. */
typedef void (*TmBatchJudged) (guint from, guint to, const TmGridCell *cells, gpointer data);

/* Takes the pieces of @job from index @from on that a moment suffices for, at least one and none beyond @to,
 * the last one not included.  @job must live until it has answered or was stopped; so must @data. */
TmBatchPortion *tm_batch_portion_start (const TmJob *job, guint from, guint to, TmBatchJudged judged,
                                        gpointer data) G_GNUC_WARN_UNUSED_RESULT;

/* Lets go of a portion that has not answered: it never will.  Afterwards no thread looks at the job's texts;
 * that takes as long as one cell does. */
void tm_batch_portion_stop (TmBatchPortion *portion);

/* The worst place of @feature on the piece; @place (may be NULL) gets which it is. */
TmGridCell tm_batch_judge_cell (const TmJob *job, guint piece_index, const TmFeature *feature, guint *place);

/* A larger one is worse: out, then too close, then not measured, then in: the order of tm_judge_feature().
 */
int tm_batch_rank_verdict (guint8 verdict);

G_END_DECLS
