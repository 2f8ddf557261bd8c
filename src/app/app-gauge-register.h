/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-register: the gauges of a job: the list, those that are overdue first, and beside it what the
 * chosen one says of itself, with its calibrations and its checks on the standard.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_GAUGE_REGISTER (tm_gauge_register_get_type ())
G_DECLARE_FINAL_TYPE (TmGaugeRegister, tm_gauge_register, TM, GAUGE_REGISTER, GtkBox)

GtkWidget *tm_gauge_register_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_gauge_register_set_document (TmGaugeRegister *self, TmDocument *document);

/* Puts the focus on the list, or on what adds the first gauge. */
void tm_gauge_register_enter (TmGaugeRegister *self);

/* Chooses the gauge with this tag, when there is one. */
void tm_gauge_register_choose (TmGaugeRegister *self, const char *tag);

G_END_DECLS
