/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-material-form: the fields of one of the shop's own materials, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *name;
  AdwComboRow *kind;
  AdwEntryRow *modulus, *poisson, *yield, *expansion, *cold, *source;
} TmMaterialForm;

void tm_material_form_build (TmMaterialForm *form, GtkBox *into);
/* @material NULL: a new one, of the name @like, which may be NULL, and of its kind. */
void tm_material_form_fill (TmMaterialForm *form, const TmShopMaterial *material, const char *like);
/* A new material on the ground of @material (NULL: none); NULL with one line in @problem. */
TmShopMaterial *tm_material_form_read (TmMaterialForm *form, TmJob *job, const TmShopMaterial *material,
                                       char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
