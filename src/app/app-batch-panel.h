/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-panel: the right column of the Batch page: what the batch says of the chosen feature, in words.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-batch-work.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_PANEL (tm_batch_panel_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchPanel, tm_batch_panel, TM, BATCH_PANEL, GtkBox)

GtkWidget *tm_batch_panel_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Only looked at; NULL: nothing is known. */
void tm_batch_panel_show (TmBatchPanel *self, const TmBatchAnswer *answer);

/* While it is worked out what stood before stays, marked as such when that takes long. */
void tm_batch_panel_set_busy (TmBatchPanel *self, gboolean busy);

G_END_DECLS
