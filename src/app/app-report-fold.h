/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-fold: what is missing, beside the pages where both have room; else it lies over them when it is
 * asked for.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *tm_report_fold_new (GtkWidget *side, GtkWidget *content) G_GNUC_WARN_UNUSED_RESULT;

/* Whether @side can be seen. */
gboolean tm_report_fold_is_open (GtkWidget *fold);

/* Whether there is room for both. */
gboolean tm_report_fold_has_room (GtkWidget *fold);

/* Shows @side over the content, or takes it away; where there is room it is there always. */
void tm_report_fold_open (GtkWidget *fold, gboolean open);

/* A button that activates @action and is there while there is no room; it says what @words says. */
GtkWidget *tm_report_fold_button_new (GtkWidget *fold, GtkLabel *words, const char *action,
                                      const char *tip) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
