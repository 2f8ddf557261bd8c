/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-drift: what the verb drift is made of.
 */

#pragma once

#include "core-batch.h"
#include "core-tool-drift.h"

G_BEGIN_DECLS

/* How sure one wants to be of a run, and of a lot. */
typedef struct {
  double coverage, confidence; /* of a tolerance interval */
  double share, risk;          /* of a lot: this share bad is missed with this risk at most */
} TmHowSure;

/* One place of one feature. */
typedef struct {
  const TmJob *job;
  TmBatch *batch;
  const TmHowSure *sure;
  gboolean lists_held; /* every piece to hold back by its name */
} TmDriftCase;

/* "out", "steady"…: of files, stable. */
const char *tm_drift_state_word (TmBatchState state);

/* The group whose limits stand for the present stretch: its last full one, else its last; NULL: none. */
const TmChartGroup *tm_drift_present_group (const TmBatch *batch);
/* The last piece measured of group @index; NULL: none. */
const TmPiece *tm_drift_group_piece (const TmBatch *batch, guint index);

/* Mean and overall standard deviation of all sizes, relative to the series' reference; NAN where there is
 * none. */
void tm_drift_summary (const TmBatch *batch, double *mean, double *deviation);

/* FALSE where a change of level, a drift or a rule says that the pieces are not of one process. */
gboolean tm_drift_is_steady (const TmBatch *batch);

/* Lower control limit of the location, relative; at zero for what cannot be below. */
double tm_drift_lower_limit (const TmBatch *batch, const TmChartGroup *group);

/* mean ± k s that holds @coverage of the pieces with @confidence, relative; FALSE where a drift, a shift, a
 * shape that is not normal or too few pieces forbid it. */
typedef struct {
  double k, lower, upper;
} TmDriftInterval;
gboolean tm_drift_interval (const TmDriftCase *drift, TmDriftInterval *out);

/* TRUE: the answer is not good: something out, a shift, or a drift that is at its limit. */
gboolean tm_drift_is_bad (const TmBatch *batch);

/* An array of @n cases cut by the tool of @together, or with that NULL the one case. */
void tm_drift_print (const TmDriftCase *drifts, guint n, const TmToolDrift *together);
void tm_drift_print_json (const TmDriftCase *drifts, guint n, const TmToolDrift *together);

/* --sample-lot and --values: how many to measure.  Each returns the exit status. */
int tm_drift_sample_lot (guint lot, const TmHowSure *sure, gboolean json);
int tm_drift_values (guint n, const TmHowSure *sure, gboolean json);

G_END_DECLS
