/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-fit-view: fit and press of the feature that is at the bench: will its mate go in, which mate to which
 * piece, how it will press.  Stands in the place of the reading entry; Escape goes back to it.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_FIT_VIEW (tm_fit_view_get_type ())
G_DECLARE_FINAL_TYPE (TmFitView, tm_fit_view, TM, FIT_VIEW, GtkBox)

GtkWidget *tm_fit_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows what the bench of @document stands at; NULL: nothing.  To be called when it moves, when something was
 * recorded, and when definitions change. */
void tm_fit_view_show (TmFitView *self, TmDocument *document);

/* Puts the cursor where the part that is shown begins. */
void tm_fit_view_enter (TmFitView *self);

/* "fit", "pairing" or "press". */
const char *tm_fit_view_part (TmFitView *self);
void tm_fit_view_show_part (TmFitView *self, const char *name);

G_END_DECLS
