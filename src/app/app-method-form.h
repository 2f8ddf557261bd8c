/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-method-form: the fields of one method, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *name;
  AdwComboRow *first, *second;
  AdwEntryRow *repeatability, *dof;
} TmMethodForm;

void tm_method_form_build (TmMethodForm *form, GtkBox *into);
void tm_method_form_fill (TmMethodForm *form, const TmJob *job, const TmMethod *method);
TmMethod *tm_method_form_read (TmMethodForm *form, TmJob *job, const TmMethod *method,
                               char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
