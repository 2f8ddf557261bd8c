/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-take: gauges, and the methods that use them, of the book's other jobs brought into this one.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_GAUGE_TAKE (tm_gauge_take_get_type ())
G_DECLARE_FINAL_TYPE (TmGaugeTake, tm_gauge_take, TM, GAUGE_TAKE, AdwWindow)

/* Looks through the book and shows the gauges that this job has not. */
TmGaugeTake *tm_gauge_take_present (GtkWidget *any_child, TmDocument *document);

/* TRUE when the book has been looked through.  For tests, as the next two. */
gboolean tm_gauge_take_is_ready (TmGaugeTake *self);
/* Marks the gauge @tag; FALSE when it is not offered. */
gboolean tm_gauge_take_mark (TmGaugeTake *self, const char *tag);
/* Takes what is marked, as the button does. */
void tm_gauge_take_confirm (TmGaugeTake *self);

G_END_DECLS
