/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-fit-mates: the measured mates of the feature at hand: choose one, add, change, remove.
 *
 * "chosen" (const char *serial): the person picks another.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_FIT_MATES (tm_fit_mates_get_type ())
G_DECLARE_FINAL_TYPE (TmFitMates, tm_fit_mates, TM, FIT_MATES, GtkBox)

GtkWidget *tm_fit_mates_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Lists the mates of the feature at hand (@document NULL: none), the one called @serial chosen. */
void tm_fit_mates_show (TmFitMates *self, TmDocument *document, const char *serial);

/* Opens the dialog for a new one. */
void tm_fit_mates_add (TmFitMates *self);

GtkListBox *tm_fit_mates_list (TmFitMates *self);

G_END_DECLS
