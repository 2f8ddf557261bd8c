/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-material-view: the materials on the left, the shop's own before those of the tables; on the right the
 * figures of the one chosen, each with its source.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_MATERIAL_VIEW (tm_material_view_get_type ())
G_DECLARE_FINAL_TYPE (TmMaterialView, tm_material_view, TM, MATERIAL_VIEW, GtkBox)

GtkWidget *tm_material_view_new (void);

/* @document may be NULL. */
void tm_material_view_set_document (TmMaterialView *self, TmDocument *document);

/* Chooses the shop's entry called @name, else the material that the tables know by that name. */
void tm_material_view_choose (TmMaterialView *self, const char *name);

/* Puts the focus on the material chosen. */
void tm_material_view_enter (TmMaterialView *self);

/* The materials, and the rows of figures; for tests. */
GtkListBox *tm_material_view_materials (TmMaterialView *self);
GtkListBox *tm_material_view_figures (TmMaterialView *self);

G_END_DECLS
