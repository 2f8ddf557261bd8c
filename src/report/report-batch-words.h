/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-batch-words: what the batch sheet says of one feature, in sentences.
 */

#pragma once

#include "core-batch.h"

G_BEGIN_DECLS

typedef enum {
  TM_BATCH_CP,
  TM_BATCH_CPK,
  TM_BATCH_PP,
  TM_BATCH_PPK,
  TM_BATCH_CPM,
  TM_BATCH_CM,
  TM_BATCH_CMK,
  TM_N_BATCH_INDEXES
} TmBatchIndex;

const char *tm_batch_index_name (TmBatchIndex index);
const TmIndex *tm_batch_index (const TmCapability *capability, TmBatchIndex index);

/* Why the figure is refused, or what it stands on; "" when there is nothing to say. */
char *tm_batch_index_reason (const TmBatch *batch, TmBatchIndex index) G_GNUC_WARN_UNUSED_RESULT;

/* Why the figures of capability promise nothing, or what they take together; "" for a steady run. */
const char *tm_batch_unsteady_words (const TmBatch *batch);

/* Limits within which a share @coverage of all pieces lies with @confidence (ISO 16269-6, two-sided, normal,
 * both parameters unknown); sizes in counts beside @reference. */
typedef struct {
  guint n;
  double coverage, confidence;
  gint64 reference;
  double mean, deviation;
  gboolean tested; /* for normality */
} TmBatchInterval;

/* The interval in words; NULL where @n is too few for one. */
char *tm_batch_interval_words (const TmFeature *feature,
                               const TmBatchInterval *interval) G_GNUC_WARN_UNUSED_RESULT;

/* Of 99 % of the pieces, 95 % sure; NULL unless the pieces are those of one steady process with a normal
 * shape: no drift or change, no rule that ever spoke, and no event among or after them. */
char *tm_batch_interval_line (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/* Decimals for figures that are reckoned from sizes. */
guint tm_batch_decimals (const TmBatch *batch);

/* In the feature's unit; NAN and infinities stay what they are. */
double tm_batch_size (const TmBatch *batch, double counts);
double tm_batch_spread (const TmBatch *batch, double counts);

/* Each a list of sentences, char *. */
GPtrArray *tm_batch_drift_lines (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *tm_batch_chart_lines (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/* The wear that all features cut by @tool show together; NULL where fewer than two show any. */
char *tm_batch_tool_line (const TmJob *job, const char *tool, TmUnit unit,
                          gboolean (*cancelled) (gpointer data), gpointer data) G_GNUC_WARN_UNUSED_RESULT;

/* The lower control limit of a group, counts beside the reference; NAN where it is at or below zero of what
 * cannot be below. */
double tm_batch_lower_limit (const TmBatch *batch, guint group);

/* The serial of the first piece of a group. */
const char *tm_batch_group_serial (const TmBatch *batch, guint group);

/* "Tool changed before piece 031: new insert"; free it. */
char *tm_batch_event_words (const TmEvent *event) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
