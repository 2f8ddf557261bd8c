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
  AdwEntryRow *repeatability, *dof, *source;
  AdwPreferencesGroup *spread; /* the group of those */
} TmMethodForm;

void tm_method_form_build (TmMethodForm *form, GtkBox *into);
/* @method NULL: a new one. */
void tm_method_form_fill (TmMethodForm *form, const TmJob *job, const TmMethod *method);
/* A new method on the ground of @method (NULL: none); NULL with one line in @problem. */
TmMethod *tm_method_form_read (TmMethodForm *form, TmJob *job, const TmMethod *method,
                               char **problem) G_GNUC_WARN_UNUSED_RESULT;

/* Puts a repeatability into the form, to be saved or not. */
void tm_method_form_propose (TmMethodForm *form, const TmQuantity *repeatability, guint dof,
                             const char *source);
/* The unit of the first gauge chosen. */
TmUnit tm_method_form_unit (TmMethodForm *form, const TmJob *job);

G_END_DECLS
