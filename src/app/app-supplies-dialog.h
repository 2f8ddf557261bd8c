/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-supplies-dialog: the materials, special processes and tests of a job, or the parts of an assembly, as a
 * list; one is added, changed or removed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* The row of @focus, of the job's list, has the focus; NULL: the button that adds one. */
GtkWindow *tm_supplies_dialog_present (GtkWidget *any_child, TmDocument *document, const TmSupply *focus);
GtkWindow *tm_sub_parts_dialog_present (GtkWidget *any_child, TmDocument *document, const TmSubPart *focus);

G_END_DECLS
