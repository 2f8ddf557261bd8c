/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-capability: every figure of what the process can hold, a row each with its interval and what it
 * compares, or why it is not given.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-batch.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_CAPABILITY (tm_batch_capability_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchCapability, tm_batch_capability, TM, BATCH_CAPABILITY, GtkBox)

GtkWidget *tm_batch_capability_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* NULL shows nothing; @batch is not kept. */
void tm_batch_capability_show (TmBatchCapability *self, const TmBatch *batch);

/* The list of its rows. */
GtkListBox *tm_batch_capability_list (TmBatchCapability *self);

G_END_DECLS
