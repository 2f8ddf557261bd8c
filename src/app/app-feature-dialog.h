/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-dialog: one feature, all of it, for change.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Where the cursor is at first. */
typedef enum {
  TM_FEATURE_ROW_CALLOUT,
  TM_FEATURE_ROW_METHOD,
  TM_FEATURE_ROW_TOOLING,
  TM_FEATURE_ROW_MATE,
  TM_N_FEATURE_ROWS
} TmFeatureRow;

void tm_feature_dialog_present (GtkWidget *any_child, TmDocument *document, TmFeature *feature,
                                TmFeatureRow row);

G_END_DECLS
