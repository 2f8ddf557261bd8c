/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-form: the fields of one gauge, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "app-form-dialog.h"
#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *tag;
  AdwComboRow *kind; /* the kinds that the program knows, and "another" */
  AdwEntryRow *word; /* a kind in other words */
  AdwComboRow *unit;
  AdwEntryRow *range_from, *range_to, *resolution, *error_limit, *feel, *source;
  GtkWidget *pins; /* the group of the next rows */
  AdwComboRow *pin_class, *pin_sign;
  AdwEntryRow *pin_step;
  AdwEntryRow *blocks; /* the sizes of a set of gauge blocks */
  AdwEntryRow *calibrated, *due, *certificate;
  AdwEntryRow *serial, *owner, *place, *expansion;
  GtkLabel *says;                                /* where the starting figures come from */
  char *put_error_limit, *put_feel, *put_source; /* as they were put in: what differs is a person's */
} TmGaugeForm;

void tm_gauge_form_build (TmGaugeForm *form, GtkBox *into);
/* Frees what the form holds beside its widgets. */
void tm_gauge_form_clear (TmGaugeForm *form);

/* @gauge NULL: a new one, in @unit.  @copy: its tag is left for the person to write. */
void tm_gauge_form_fill (TmGaugeForm *form, const TmGauge *gauge, TmUnit unit, gboolean copy);

/* A new gauge on the ground of @gauge (NULL: none); NULL with one line in @problem, and the row that it is
 * about marked. */
TmGauge *tm_gauge_form_read (TmGaugeForm *form, TmJob *job, const TmGauge *gauge,
                             char **problem) G_GNUC_WARN_UNUSED_RESULT;

/* Enter in a row saves what @dialog shows. */
void tm_gauge_form_connect (TmGaugeForm *form, TmFormDialog *dialog);

G_END_DECLS
