/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-tools: what is done about a batch: a row of buttons, each of which opens its dialog: an advised
 * offset recorded, events, charts, pieces held back, how many to measure.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "core-batch.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_TOOLS (tm_batch_tools_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchTools, tm_batch_tools, TM, BATCH_TOOLS, GtkBox)

GtkWidget *tm_batch_tools_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* What the buttons are about; @feature and @batch may be NULL.  Nothing of @feature and @batch is kept:
 * set them again when they are worked out anew. */
void tm_batch_tools_set (TmBatchTools *self, TmDocument *document, const TmFeature *feature, guint place,
                         const TmBatch *batch);

G_END_DECLS
