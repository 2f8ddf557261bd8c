/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-material-dialog: one of the shop's own materials, to be added, changed or removed.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Tells @any_child, while it is still there, which material was saved. */
typedef void (*TmMaterialSaved) (GtkWidget *any_child, const char *name);

/* Opens over the window of @any_child, to change the material @name, or for a new one where it is NULL, which
 * starts with the name @like (may be NULL).  @saved may be NULL. */
GtkWindow *tm_material_dialog_present (GtkWidget *any_child, TmDocument *document, const char *name,
                                       const char *like, TmMaterialSaved saved);

G_END_DECLS
