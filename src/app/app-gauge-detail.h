/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-detail: beside the register: what the chosen gauge says of itself, and its history.  Its buttons
 * are the register's actions.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-gauge-history.h"

G_BEGIN_DECLS

#define TM_TYPE_GAUGE_DETAIL (tm_gauge_detail_get_type ())
G_DECLARE_FINAL_TYPE (TmGaugeDetail, tm_gauge_detail, TM, GAUGE_DETAIL, GtkBox)

GtkWidget *tm_gauge_detail_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows what the job now says of @tag; "" shows nothing.  @document may be NULL. */
void tm_gauge_detail_show (TmGaugeDetail *self, TmDocument *document, const char *tag);

TmGaugeHistory *tm_gauge_detail_history (TmGaugeDetail *self);

G_END_DECLS
