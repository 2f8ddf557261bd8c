/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-fit-pane: whether the feature at hand and its mate fit: the wanted clearance, the temperatures, the
 * measured mates on the left; what that comes to, in words and as a picture, on the right.
 *
 * "changed" (): another mate or temperature; ask for them again.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-fit-state.h"

G_BEGIN_DECLS

#define TM_TYPE_FIT_PANE (tm_fit_pane_get_type ())
G_DECLARE_FINAL_TYPE (TmFitPane, tm_fit_pane, TM, FIT_PANE, GtkBox)

GtkWidget *tm_fit_pane_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows @state of @document; both are only read. */
void tm_fit_pane_show (TmFitPane *self, TmDocument *document, const TmFitState *state);

/* Another job or feature: what was typed for the one before goes. */
void tm_fit_pane_reset (TmFitPane *self);

/* Serial of the mate that the person picked, or NULL; the temperatures of both parts, °C. */
const char *tm_fit_pane_serial (TmFitPane *self);
double tm_fit_pane_part_temperature (TmFitPane *self);
double tm_fit_pane_mate_temperature (TmFitPane *self);

/* Another mate is to be looked at. */
void tm_fit_pane_choose (TmFitPane *self, const char *serial);
/* The one that is meant for the place again, else the first. */
void tm_fit_pane_forget_mate (TmFitPane *self);

void tm_fit_pane_add_mate (TmFitPane *self);
void tm_fit_pane_enter (TmFitPane *self);

G_END_DECLS
