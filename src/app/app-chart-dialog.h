/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-chart-dialog: how the batch of a feature is watched: which run rules speak, and how often they do so
 * by chance; how pieces are grouped; which groups freeze the control limits.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

GtkWindow *tm_chart_dialog_present (GtkWidget *any_child, TmDocument *document, const TmFeature *feature);

/* "A false alarm about every 370 pieces (exact)…": how often a set of rules (TM_RULE_BIT) speaks where
 * nothing has changed, and how soon after a shift of one standard deviation, in groups of @group_size. */
typedef struct {
  double in_control, shifted; /* groups; INFINITY: never */
  gboolean exact;
} TmAlarmRate;
TmAlarmRate tm_alarm_rate (guint rules);
char *tm_words_alarm_rate (const TmAlarmRate *rate, guint group_size) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
