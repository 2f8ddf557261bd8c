/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-tip: tooltips that show the whole of what a cell or a line may cut off.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Gives @widget, a GtkLabel or a GtkInscription, its own text as a tooltip, whatever it is then.
 *
 * The text is asked for when the pointer rests there.  Setting a tooltip asks the display server where
 * the pointer is, and waits for the answer: too long for each cell of a table. */
void tm_tip_own_text (GtkWidget *widget);

G_END_DECLS
