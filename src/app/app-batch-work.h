/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-work: what is said of one feature over the batch, worked out on a thread of its own from a copy
 * of its part of the job (app-batch-copy).
 */

#pragma once

#include <gio/gio.h>

#include "app-document.h"
#include "app-sample-words.h"
#include "core-batch.h"
#include "core-tool-drift.h"
#include "plot-chart.h"

G_BEGIN_DECLS

/* Borrows from its own copy of the job: feature and pieces are found in the document by balloon and serial.
 */
typedef struct {
  TmJob *job;
  TmBatch batch;
  TmChartPlot *plot; /* of the batch; owned; NULL: nothing is measured */
  /* From here on only what was not asked for in brief. */
  TmChartPlot *small_shifts; /* likewise, with the charts that remember */
  TmSpread spread;
  GArray *same_tool;    /* TmBatch, of the other features that the same tool cuts; owned */
  TmToolDrift together; /* what they and this one show of its wear; its tool NULL: nothing */
  TmDocument *document; /* whose texts the copy uses */
} TmBatchAnswer;

void tm_batch_answer_free (TmBatchAnswer *answer);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmBatchAnswer, tm_batch_answer_free)

/* On the main loop, unless it was cancelled; the answer is the callee's. */
typedef void (*TmBatchAnswered) (TmBatchAnswer *answer, gpointer data);

/* @brief: only what moves with each reading, without capability and without what else the tool cuts.  @data
 * must live until it has answered or was cancelled. */
void tm_batch_work (TmDocument *document, const TmFeature *feature, guint place, gboolean brief,
                    GCancellable *cancellable, TmBatchAnswered done, gpointer data);

G_END_DECLS
