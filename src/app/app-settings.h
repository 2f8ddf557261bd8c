/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-settings: the few things remembered between starts.  When the schema is not installed they
 * are held for this start only, so that the program also runs from where it was built.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Keys: "style" ("system", "light", "dark"), "initials" (who measured last), "order"
 * ("piece-first", "feature-first"), "gauges-view" (the view of the Gauges page shown last); "report-paper",
 * "report-decimal", "report-dates": see app-report-form.h. */
char *tm_settings_get_text (const char *key) G_GNUC_WARN_UNUSED_RESULT;
void tm_settings_set_text (const char *key, const char *text);

/* Keys: "maximized", "report-landscape". */
gboolean tm_settings_get_flag (const char *key);
void tm_settings_set_flag (const char *key, gboolean flag);

/* Keys: "width", "height", in pixels. */
int tm_settings_get_number (const char *key);
void tm_settings_set_number (const char *key, int number);

G_END_DECLS
