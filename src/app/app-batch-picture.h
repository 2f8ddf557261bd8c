/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-picture: one picture of a batch as a widget: an image with its words.
 *
 *   "piece" (uint)  on the run chart: the piece that was pointed at, or walked to by the arrow keys
 */

#pragma once

#include <gtk/gtk.h>

#include "plot-chart.h"

G_BEGIN_DECLS

typedef enum {
  TM_BATCH_RUN,
  TM_BATCH_DISPERSION,
  TM_BATCH_HISTOGRAM,
  TM_BATCH_PROBABILITY,
  TM_BATCH_SMALL_SHIFTS, /* of a plot made with them */
  TM_N_BATCH_PICTURES
} TmBatchPictureKind;

#define TM_TYPE_BATCH_PICTURE (tm_batch_picture_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchPicture, tm_batch_picture, TM, BATCH_PICTURE, GtkWidget)

GtkWidget *tm_batch_picture_new (TmBatchPictureKind kind) G_GNUC_WARN_UNUSED_RESULT;

/* Both are borrowed until the next call; NULL shows nothing. */
void tm_batch_picture_set (TmBatchPicture *self, const TmBatch *batch, const TmChartPlot *plot);

/* Marks a piece, by its index; -1: none. */
void tm_batch_picture_set_focus (TmBatchPicture *self, gint piece);

G_END_DECLS
