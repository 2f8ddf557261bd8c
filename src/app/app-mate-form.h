/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-mate-form: the fields of one measured mate.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *serial, *smallest, *largest, *uncertainty;
  AdwComboRow *piece;
  AdwEntryRow *place, *note;
  const TmFeature *feature;
} TmMateForm;

void tm_mate_form_build (TmMateForm *form, GtkBox *into, const TmFeature *feature);
/* @mate NULL: a new one. */
void tm_mate_form_fill (TmMateForm *form, const TmJob *job, const TmMateSize *mate);
/* A new mate of the feature on the ground of @mate (NULL: none), without who measured it and when; NULL with
 * one line in @problem. */
TmMateSize *tm_mate_form_read (TmMateForm *form, TmJob *job, const TmMateSize *mate,
                               char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
