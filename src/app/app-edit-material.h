/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-material: changes to the shop's own materials of a job, as app-edit makes changes: in the model
 * and in the book, or in neither; a struct handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* @name of the material to be replaced; NULL adds.  One that a press names keeps its name, and stays. */
gboolean tm_edit_put_material (TmDocument *document, const char *name, TmShopMaterial *material,
                               GError **error);
gboolean tm_edit_remove_material (TmDocument *document, const char *name, GError **error);

G_END_DECLS
