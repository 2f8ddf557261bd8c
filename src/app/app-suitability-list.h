/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-suitability-list: each method of the shop beside one feature, best first.  Each row is read out as
 * one sentence; its key (app-list-row) is the method's name.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_SUITABILITY_LIST (tm_suitability_list_get_type ())
G_DECLARE_FINAL_TYPE (TmSuitabilityList, tm_suitability_list, TM, SUITABILITY_LIST, GtkBox)

GtkWidget *tm_suitability_list_new (void);

/* Fills it; @feature NULL empties it. */
void tm_suitability_list_show (TmSuitabilityList *self, const TmJob *job, const TmFeature *feature);

GtkListBox *tm_suitability_list_rows (TmSuitabilityList *self);

G_END_DECLS
