/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-button: a text button with a mnemonic whose name for a screen reader is its text, once.
 *
 * GTK 4.8 names its own mnemonic buttons twice, the first time with the underscore.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @label: "_Record". */
GtkWidget *tm_button_new (const char *label) G_GNUC_WARN_UNUSED_RESULT;

void tm_button_set_label (GtkWidget *button, const char *label);

/* What the button says, without the underscore. */
const char *tm_button_text (GtkWidget *button);

G_END_DECLS
