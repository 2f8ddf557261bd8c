/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-verdict-panel: the Bench's right column: what the readings prove, in words.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_VERDICT_PANEL (tm_verdict_panel_get_type ())
G_DECLARE_FINAL_TYPE (TmVerdictPanel, tm_verdict_panel, TM, VERDICT_PANEL, GtkBox)

/* Its buttons activate "bench.record", "bench.plan-cut", "bench.pin-trial", "bench.readings" and
 * "bench.nonconformance".
 * "method-chosen" (const char *name): the person picks a gauge; "" = the feature's.
 * "counts-chosen" (gboolean combined): which value counts.
 * "temperatures-changed" (): others go with the readings from now on. */
GtkWidget *tm_verdict_panel_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* The methods and gauges to choose from, for the present feature. */
void tm_verdict_panel_list_methods (TmVerdictPanel *self, TmDocument *document);

/* Opens the small window where temperatures are typed. */
void tm_verdict_panel_open_temperatures (TmVerdictPanel *self);

/* Shows @judgement (NULL: nowhere to measure) and what to do. */
void tm_verdict_panel_show (TmVerdictPanel *self, TmDocument *document, const TmJudgement *judgement);

/* While a cut is planned it is what the large button records. */
void tm_verdict_panel_set_planning (TmVerdictPanel *self, gboolean planning);

/* The verdict as shown; for tests. */
const char *tm_verdict_panel_title (TmVerdictPanel *self);

G_END_DECLS
