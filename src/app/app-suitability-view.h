/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-suitability-view: the features on the left, each with a plain word for its method; on the right
 * what each method of the shop would do for the one chosen.  Enter assigns a method.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_SUITABILITY_VIEW (tm_suitability_view_get_type ())
G_DECLARE_FINAL_TYPE (TmSuitabilityView, tm_suitability_view, TM, SUITABILITY_VIEW, GtkBox)

GtkWidget *tm_suitability_view_new (void);

/* @document may be NULL. */
void tm_suitability_view_set_document (TmSuitabilityView *self, TmDocument *document);

/* Puts the focus on the feature chosen. */
void tm_suitability_view_enter (TmSuitabilityView *self);

/* Chooses the feature called @balloon. */
void tm_suitability_view_choose (TmSuitabilityView *self, const char *balloon);

/* The features, and the methods for the one chosen; what stands above them. For tests. */
GtkListBox *tm_suitability_view_features (TmSuitabilityView *self);
GtkListBox *tm_suitability_view_methods (TmSuitabilityView *self);
const char *tm_suitability_view_summary (TmSuitabilityView *self);

G_END_DECLS
