/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-actions: what the Report page does on a key, a button or a menu item.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void tm_report_actions_install (GtkWidgetClass *klass);

/* Form, print, export. */
GtkWidget *tm_report_actions_buttons (void) G_GNUC_WARN_UNUSED_RESULT;

/* A toggle button whose state whoever shows it sets. */
GtkWidget *tm_report_actions_toggle (const char *label, const char *tip,
                                     const char *action) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
