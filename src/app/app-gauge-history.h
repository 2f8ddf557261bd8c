/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-history: what hangs on the chosen gauge: its calibrations, its checks on the standard, and the
 * measured pins of a set.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_GAUGE_HISTORY (tm_gauge_history_get_type ())
G_DECLARE_FINAL_TYPE (TmGaugeHistory, tm_gauge_history, TM, GAUGE_HISTORY, GtkBox)

GtkWidget *tm_gauge_history_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows what the job now says of @tag; what is being typed stays while it is the same gauge. @document may
 * be NULL. */
void tm_gauge_history_show (TmGaugeHistory *self, TmDocument *document, const char *tag);

/* Puts the cursor where the next check on the standard is typed. */
void tm_gauge_history_focus_check (TmGaugeHistory *self);

/* Types into the fields of the check, or of the measured pin, and presses Enter.  For tests. */
void tm_gauge_history_enter_check (TmGaugeHistory *self, const char *standard, const char *reading);
void tm_gauge_history_enter_pin (TmGaugeHistory *self, const char *size, const char *measured);
/* What the line under the check, or under the pin, says. */
const char *tm_gauge_history_check_says (TmGaugeHistory *self);
const char *tm_gauge_history_pin_says (TmGaugeHistory *self);

G_END_DECLS
