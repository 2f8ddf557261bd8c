/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-supply-dialog: a material, special process or test of the job is added, changed or removed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @supply, of the job, is changed; NULL adds one. */
GtkWindow *tm_supply_dialog_present (GtkWidget *any_child, TmDocument *document, TmSupply *supply);

G_END_DECLS
