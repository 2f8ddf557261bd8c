/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-row: one row of the Bench's feature list: balloon, callout, strip, state word.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-feature-item.h"

G_BEGIN_DECLS

#define TM_TYPE_FEATURE_ROW (tm_feature_row_get_type ())
G_DECLARE_FINAL_TYPE (TmFeatureRow, tm_feature_row, TM, FEATURE_ROW, GtkBox)

GtkWidget *tm_feature_row_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows what the drawing asks; the state waits for tm_feature_row_update(). NULL unbinds. */
void tm_feature_row_set_item (TmFeatureRow *self, TmFeatureItem *item);
TmFeatureItem *tm_feature_row_item (TmFeatureRow *self);

/* Shows the item's judgement as it now stands. */
void tm_feature_row_update (TmFeatureRow *self);

G_END_DECLS
