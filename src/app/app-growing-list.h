/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-growing-list: a long list shown in a list view a few rows a frame: each row takes its time to be made
 * and measured, and a list view makes some two hundred before it shows the first.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TM_TYPE_GROWING_LIST (tm_growing_list_get_type ())
G_DECLARE_FINAL_TYPE (TmGrowingList, tm_growing_list, TM, GROWING_LIST, GObject)

/* A GListModel of the first items of @model, which it takes; whenever @model changes it starts again with
 * what fills a window. */
TmGrowingList *tm_growing_list_new (GListModel *model) G_GNUC_WARN_UNUSED_RESULT;

/* The others follow with the frames of @view, which shows the list. */
void tm_growing_list_follow (TmGrowingList *self, GtkWidget *view);

G_END_DECLS
