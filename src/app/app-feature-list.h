/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-list: the Bench's left column: the features of the present piece in balloon order.
 *
 * Only the rows in sight are judged at once; the rest of the rows that exist follow when idle, and
 * features without a row are never judged here.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_FEATURE_LIST (tm_feature_list_get_type ())
G_DECLARE_FINAL_TYPE (TmFeatureList, tm_feature_list, TM, FEATURE_LIST, GtkBox)

GtkWidget *tm_feature_list_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* "chosen" (gpointer TmFeature) is emitted when the person selects another feature. */
void tm_feature_list_set_document (TmFeatureList *self, TmDocument *document);

/* Puts a menu button at the end of the heading. */
void tm_feature_list_set_menu (TmFeatureList *self, GtkWidget *button);

/* Whether the heading has its title; without it there is room for a question on the menu button. */
void tm_feature_list_set_titled (TmFeatureList *self, gboolean titled);

/* The features have changed. */
void tm_feature_list_reload (TmFeatureList *self);

/* Follows the bench session to its present piece and feature. */
void tm_feature_list_follow (TmFeatureList *self);

/* Scrolls to the present feature, once the list has its size. */
void tm_feature_list_reveal (TmFeatureList *self);

/* The readings of @feature on the present piece have changed. */
void tm_feature_list_touch (TmFeatureList *self, const TmFeature *feature);

/* How many rows are judged now; for tests. */
guint tm_feature_list_count_judged (TmFeatureList *self);

G_END_DECLS
