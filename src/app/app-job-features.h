/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-features: the features of a job, with the line that adds one by typing its callout.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-feature-dialog.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_FEATURES (tm_job_features_get_type ())
G_DECLARE_FINAL_TYPE (TmJobFeatures, tm_job_features, TM, JOB_FEATURES, GtkBox)

void tm_job_features_set_document (TmJobFeatures *self, TmDocument *document);

/* Puts the cursor into the callout entry. */
void tm_job_features_focus_entry (TmJobFeatures *self);

/* Selects @feature and opens it for change, with the cursor in @row. */
void tm_job_features_change (TmJobFeatures *self, const TmFeature *feature, TmFeatureRow row);

G_END_DECLS
