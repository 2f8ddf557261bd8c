/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-drift-print: the parts of drift's answer in words, each printed to standard output; nothing where there
 * is nothing to say.
 */

#pragma once

#include "cli-drift.h"

G_BEGIN_DECLS

/* -------- Lengths -------- */

/* Counts, in the feature's unit; a size lies @counts beside the series' reference. */
char *tm_drift_format_spread (const TmSeries *series, double counts) G_GNUC_WARN_UNUSED_RESULT;
char *tm_drift_format_size (const TmSeries *series, double counts) G_GNUC_WARN_UNUSED_RESULT;
const char *tm_drift_unit (const TmSeries *series);
/* Counts a piece, in the shop's small unit with its sign. */
char *tm_drift_format_rate (const TmSeries *series, double counts) G_GNUC_WARN_UNUSED_RESULT;
const char *tm_drift_serial (const TmBatch *batch, guint point);

/* -------- Charts -------- */

void tm_drift_print_summary (const TmBatch *batch);
void tm_drift_print_limits (const TmBatch *batch);
void tm_drift_print_rules (const TmBatch *batch);

/* -------- Course -------- */

void tm_drift_print_trend (const TmBatch *batch);
void tm_drift_print_forecast (const TmBatch *batch);
void tm_drift_print_change (const TmBatch *batch);
void tm_drift_print_hold (const TmDriftCase *drift);
void tm_drift_print_advice (const TmBatch *batch);
void tm_drift_print_over_correction (const TmBatch *batch);

/* -------- Capability -------- */

void tm_drift_print_capability (const TmBatch *batch, const TmCapability *c);
void tm_drift_print_interval (const TmDriftCase *drift);

G_END_DECLS
