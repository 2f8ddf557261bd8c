/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-temperatures: a button that says which temperatures go with the readings taken from now on, and
 * the small window behind it where they are typed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_TEMPERATURES (tm_temperatures_get_type ())
G_DECLARE_FINAL_TYPE (TmTemperatures, tm_temperatures, TM, TEMPERATURES, GtkBox)

/* "changed" (): others are in force in the session. */
GtkWidget *tm_temperatures_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows those of the session. */
void tm_temperatures_show (TmTemperatures *self, TmDocument *document);

/* Opens the window, with the cursor in it. */
void tm_temperatures_open (TmTemperatures *self);

G_END_DECLS
