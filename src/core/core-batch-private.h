/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-batch-private: the parts that core-batch puts together.
 */

#pragma once

#include "core-batch.h"

G_BEGIN_DECLS

/* So few pieces of the present stretch, or fewer, carry no claim. */
#define TM_BATCH_FEW 3

/* Chart, hits, run length and the charts that remember, from series and options. */
void tm_batch_fill_charts (TmBatch *batch);

/* Present stretch, change of level, trend and forecast.  *@from gets the piece that the trend begins with:
 * the first of the stretch, or of what came after the change. */
void tm_batch_fill_drift (TmBatch *batch, guint *from);

/* Whether a rule speaks now that the drift does not account for. */
void tm_batch_fill_signal (TmBatch *batch);

G_END_DECLS
