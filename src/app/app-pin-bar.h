/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-pin-bar: under the entry while pins are tried: which set the pin is from, and two buttons for what
 * it did.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_PIN_BAR (tm_pin_bar_get_type ())
G_DECLARE_FINAL_TYPE (TmPinBar, tm_pin_bar, TM, PIN_BAR, GtkBox)

/* "tried" (gboolean went): one of the buttons; "set-chosen" (): another set is chosen in the session. */
GtkWidget *tm_pin_bar_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Lists the pin sets of the document's job and shows the one that the session has. */
void tm_pin_bar_show (TmPinBar *self, TmDocument *document);

/* The list of sets; for tests. */
GtkWidget *tm_pin_bar_sets (TmPinBar *self);

G_END_DECLS
