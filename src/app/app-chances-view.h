/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-chances-view: the three chances of a cut in words, and one bar that says them by shape too: metal left
 * hollow, in solid, metal gone hatched with an arrow.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-cut.h"

G_BEGIN_DECLS

#define TM_TYPE_CHANCES_VIEW (tm_chances_view_get_type ())
G_DECLARE_FINAL_TYPE (TmChancesView, tm_chances_view, TM, CHANCES_VIEW, GtkBox)

GtkWidget *tm_chances_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Copies @chances; NULL, or chances that are none: shows nothing. */
void tm_chances_view_show (TmChancesView *self, const TmCutChances *chances);

G_END_DECLS
