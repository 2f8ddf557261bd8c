/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-chart: the pictures of the chosen feature: its run chart with the dispersion under it, its
 * histogram or its probability plot, chosen by small buttons; and where it has several places, which one.
 *
 *   "piece" (uint)  a piece of the run chart was pointed at
 *   "place" (uint)  another place was chosen
 */

#pragma once

#include <gtk/gtk.h>

#include "core-batch.h"
#include "plot-chart.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_CHART (tm_batch_chart_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchChart, tm_batch_chart, TM, BATCH_CHART, GtkBox)

GtkWidget *tm_batch_chart_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Names the feature while its batch is worked out, and offers its places; NULL: none. */
void tm_batch_chart_set_feature (TmBatchChart *self, const TmFeature *feature, guint place);

/* Borrowed until the next call; NULL shows nothing. */
void tm_batch_chart_set_batch (TmBatchChart *self, const TmBatch *batch, const TmChartPlot *plot,
                               const TmChartPlot *small_shifts);

/* Marks a piece and says its size; -1: none. */
void tm_batch_chart_set_piece (TmBatchChart *self, gint piece);

G_END_DECLS
