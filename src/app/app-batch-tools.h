/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-tools: what is done about a batch: a row of buttons, each of which opens its dialog: an advised
 * offset recorded, events, charts, pieces held back, how many to measure.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-sample-words.h"
#include "core-batch.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_TOOLS (tm_batch_tools_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchTools, tm_batch_tools, TM, BATCH_TOOLS, GtkBox)

GtkWidget *tm_batch_tools_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* What the buttons are about; @feature, @batch and its @spread may be NULL.  @batch is borrowed until the
 * next call, of @feature and @spread nothing is kept. */
void tm_batch_tools_set (TmBatchTools *self, TmDocument *document, const TmFeature *feature,
                         const TmBatch *batch, const TmSpread *spread);

G_END_DECLS
