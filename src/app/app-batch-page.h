/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-page: the Batch: all pieces and features as a grid, and of the chosen feature its charts and what
 * they say.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_BATCH_PAGE (tm_batch_page_get_type ())
G_DECLARE_FINAL_TYPE (TmBatchPage, tm_batch_page, TM, BATCH_PAGE, GtkBox)

GtkWidget *tm_batch_page_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_batch_page_set_document (TmBatchPage *self, TmDocument *document);

/* The grid, from where the arrows walk. */
void tm_batch_page_enter (TmBatchPage *self);

G_END_DECLS
