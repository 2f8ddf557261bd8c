/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-form: the fields of a gauge study's plan, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *name;
  AdwComboRow *method;  /* methods, then gauges alone */
  AdwComboRow *feature; /* none, then those with a number */
  AdwEntryRow *band;
  AdwEntryRow *pieces, *people, *repeats;
  GPtrArray *methods;  /* const char *, as in the choice */
  GPtrArray *features; /* TmFeature *; NULL for none */
} TmStudyForm;

void tm_study_form_build (TmStudyForm *form, GtkBox *into);
void tm_study_form_clear (TmStudyForm *form);
/* The usual plan: ten pieces at most, everyone, three repeats. */
void tm_study_form_fill (TmStudyForm *form, const TmJob *job);
/* NULL with one line in @problem, and the row that is wrong marked. */
TmStudy *tm_study_form_read (TmStudyForm *form, TmJob *job, char **problem) G_GNUC_WARN_UNUSED_RESULT;
/* How much work the plan is, and what it cannot tell; "" while it does not read. */
char *tm_study_form_hint (TmStudyForm *form) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
