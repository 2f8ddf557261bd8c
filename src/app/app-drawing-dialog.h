/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-dialog: name and sheet of a drawing; and whether it stays.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @drawing: of the job. */
void tm_drawing_dialog_present (GtkWidget *any_child, TmDocument *document, const TmDrawing *drawing);

G_END_DECLS
