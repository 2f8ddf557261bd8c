/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-budget-view: the uncertainty budget of a method for a feature, line by line; under it what the
 * lines come to, and what was left out.  Each row is read out as one sentence; Enter changes a line that
 * a person wrote.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_BUDGET_VIEW (tm_budget_view_get_type ())
G_DECLARE_FINAL_TYPE (TmBudgetView, tm_budget_view, TM, BUDGET_VIEW, GtkBox)

GtkWidget *tm_budget_view_new (void);

/* @document NULL or @feature NULL empties it. */
void tm_budget_view_show (TmBudgetView *self, TmDocument *document, const TmFeature *feature,
                          const char *method_name);

/* The rows, as they are read out: for tests and for whoever speaks them. */
GtkListBox *tm_budget_view_list (TmBudgetView *self);

G_END_DECLS
