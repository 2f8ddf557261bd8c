/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-item: one feature of the Job page's list, as an object for GListModel; and the list.
 */

#pragma once

#include <gio/gio.h>

#include "core-model.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_ITEM (tm_job_item_get_type ())
G_DECLARE_FINAL_TYPE (TmJobItem, tm_job_item, TM, JOB_ITEM, GObject)

/* Borrowed from the job.  Signal "changed" (): its definition is another one now. */
TmFeature *tm_job_item_feature (TmJobItem *self);

/* Brings @store (of TM_TYPE_JOB_ITEM) in step with the features of @job (NULL: none): rows that
 * stay keep their object, so that focus, selection and scrolling stay too. */
void tm_job_items_refresh (GListStore *store, const TmJob *job);

G_END_DECLS
