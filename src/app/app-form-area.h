/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-form-area: a row of a form for several lines of text.  Tab leaves it.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* Adds the row to @group; @lines of text are seen at least. */
GtkTextView *tm_form_area_new (AdwPreferencesGroup *group, const char *title, guint lines);

/* What was typed, without spaces and empty lines around it. */
char *tm_form_area_text (GtkTextView *area) G_GNUC_WARN_UNUSED_RESULT;
void tm_form_area_set_text (GtkTextView *area, const char *text);

G_END_DECLS
