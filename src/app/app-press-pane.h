/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-press-pane: what the feature at hand and its mate come to when they are pressed together: the facts on
 * the left, pressure, stresses, forces and cautions on the right.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-fit-state.h"

G_BEGIN_DECLS

#define TM_TYPE_PRESS_PANE (tm_press_pane_get_type ())
G_DECLARE_FINAL_TYPE (TmPressPane, tm_press_pane, TM, PRESS_PANE, GtkBox)

GtkWidget *tm_press_pane_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows @state of @document; both are only read. */
void tm_press_pane_show (TmPressPane *self, TmDocument *document, const TmFitState *state);

/* Another job or feature: what was typed for the one before goes. */
void tm_press_pane_reset (TmPressPane *self);

void tm_press_pane_enter (TmPressPane *self);

G_END_DECLS
