/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-words: what a batch says of a feature, put into sentences for the Batch page. No widgets.
 *
 * Every function returns a text of the caller's own, translated, "" when there is nothing to say.
 */

#pragma once

#include "core-batch.h"
#include "core-tool-drift.h"
#include "plot-grid.h"

G_BEGIN_DECLS

/* "Piece 006, 6 · Ø12 H8 bore: out, metal left".  @piece or @feature may be NULL: of a head of the grid;
 * @cell NULL: not judged yet. */
char *tm_words_batch_cell (const TmPiece *piece, const TmFeature *feature,
                           const TmGridCell *cell) G_GNUC_WARN_UNUSED_RESULT;

/* In very large type: "Drifting larger", "Steady", "Shifted smaller", "Out", "Too few to tell"… */
char *tm_words_batch_headline (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/* Under it, since what: "since piece 013: new insert". */
char *tm_words_batch_since (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/* "About 18 more pieces", and under it "(13 to 27) until the mean meets the guard"; "No drift shown". */
char *tm_words_batch_forecast (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
char *tm_words_batch_forecast_range (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/* The rest, a heading each. */
typedef enum {
  TM_BATCH_SAYS_SLOPE,
  TM_BATCH_SAYS_OFFSET,
  TM_BATCH_SAYS_HOLD,
  TM_BATCH_SAYS_CAPABILITY,
  TM_BATCH_SAYS_RULES,
  TM_N_BATCH_SAYS
} TmBatchSays;
const char *tm_words_batch_heading (TmBatchSays says); /* translated, static */
char *tm_words_batch_says (const TmBatch *batch, TmBatchSays says) G_GNUC_WARN_UNUSED_RESULT;

/* Of another feature that the same tool cuts: "3 · Ø40 N7: drifting larger, +0.3 µm a piece". */
char *tm_words_batch_same_tool (const TmBatch *other) G_GNUC_WARN_UNUSED_RESULT;

/* One piece of the chart: "Piece 034: 25.0107 (25.0101 to 25.0113) mm, in". */
char *tm_words_batch_piece (const TmBatch *batch, guint at) G_GNUC_WARN_UNUSED_RESULT;

/* The rules that speak at a piece: "one point beyond 3 sigma; scatter: one point beyond 3 sigma". */
char *tm_words_batch_hits (const TmBatch *batch, guint at) G_GNUC_WARN_UNUSED_RESULT;

/* What all features that a tool cuts show together of its wear; "" where they are not two. */
char *tm_words_tool_drift (const TmToolDrift *drift) G_GNUC_WARN_UNUSED_RESULT;

/* "1.18 (0.88 to 1.48)", "" where there is none. */
char *tm_words_batch_index (const TmIndex *index) G_GNUC_WARN_UNUSED_RESULT;

/* "34 of 60 pieces measured". */
char *tm_words_batch_count (guint n_measured, guint n_pieces) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
