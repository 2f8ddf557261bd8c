/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-form: the fields of one feature, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *balloon, *callout, *name;
  AdwActionRow *reads;
  AdwComboRow *kind, *side;
  AdwEntryRow *nominal, *lower, *upper;
  AdwEntryRow *stations, *places, *size_feature;
  AdwComboRow *method, *tool, *check;
  AdwEntryRow *every;
  AdwComboRow *designator;
  AdwEntryRow *sheet, *zone, *comment, *tooling;
  AdwComboRow *affected;
  AdwComboRow *mate;
  AdwEntryRow *mate_lower, *mate_upper;
  AdwEntryRow *wanted_least, *wanted_most;
} TmFeatureForm;

/* Builds the rows into @into. */
void tm_feature_form_build (TmFeatureForm *form, GtkBox *into);

/* Shows @feature of @job. */
void tm_feature_form_fill (TmFeatureForm *form, const TmJob *job, const TmFeature *feature);

/* Says how the callout reads and shows the rows that apply. */
void tm_feature_form_follow (TmFeatureForm *form, const TmJob *job, const TmFeature *feature);

/* A new feature as the rows say, on the ground of @feature; NULL with one line in @problem (to be
 * freed), the row marked. */
TmFeature *tm_feature_form_read (TmFeatureForm *form, TmJob *job, const TmFeature *feature,
                                 char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
