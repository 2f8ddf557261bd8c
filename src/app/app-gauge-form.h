/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-form: the fields of one gauge, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *tag, *kind;
  AdwComboRow *unit;
  AdwEntryRow *resolution, *error_limit, *calibrated, *due, *certificate;
} TmGaugeForm;

void tm_gauge_form_build (TmGaugeForm *form, GtkBox *into);
/* @gauge NULL: a new one, in @unit. */
void tm_gauge_form_fill (TmGaugeForm *form, const TmGauge *gauge, TmUnit unit);
/* A new gauge on the ground of @gauge (NULL: none); NULL with one line in @problem. */
TmGauge *tm_gauge_form_read (TmGaugeForm *form, TmJob *job, const TmGauge *gauge,
                             char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
