/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-item: one gauge of the register as it stands today, as an object for GListModel.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-gauge.h"

G_BEGIN_DECLS

#define TM_TYPE_GAUGE_ITEM (tm_gauge_item_get_type ())
G_DECLARE_FINAL_TYPE (TmGaugeItem, tm_gauge_item, TM, GAUGE_ITEM, GObject)

/* Copies what is shown: it outlives the gauge. */
TmGaugeItem *tm_gauge_item_new (const TmJob *job, const TmGauge *gauge, const char *today);

/* Shows the gauges of @job in @store, which keeps the rows that say what they said before. */
void tm_gauge_items_refresh (GListStore *store, const TmJob *job, const char *today);

const char *tm_gauge_item_tag (TmGaugeItem *self);
TmDue tm_gauge_item_due (TmGaugeItem *self);

/* TRUE when each word of @search is somewhere in what the row shows, or in its serial, owner or place. */
gboolean tm_gauge_item_matches (TmGaugeItem *self, const char *search);

/* Overdue before soon before the others, then by tag. */
int tm_gauge_item_compare (gconstpointer a, gconstpointer b, gpointer data);

/* Tag, kind, range, resolution, limit of error, state. */
void tm_gauge_add_columns (GtkColumnView *view);

G_END_DECLS
