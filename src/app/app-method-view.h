/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-method-view: the shop's methods on the left, each with its expanded uncertainty; on the right the
 * budget of the one chosen, for the feature chosen.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_METHOD_VIEW (tm_method_view_get_type ())
G_DECLARE_FINAL_TYPE (TmMethodView, tm_method_view, TM, METHOD_VIEW, GtkBox)

GtkWidget *tm_method_view_new (void);

/* @document may be NULL. */
void tm_method_view_set_document (TmMethodView *self, TmDocument *document);

/* Shows the budget of a method, or of a gauge used alone, for the feature called @balloon. */
void tm_method_view_choose (TmMethodView *self, const char *name, const char *balloon);

/* Puts the focus on the method chosen. */
void tm_method_view_enter (TmMethodView *self);

/* The methods, and the rows of the budget; for tests. */
GtkListBox *tm_method_view_methods (TmMethodView *self);
GtkListBox *tm_method_view_budget (TmMethodView *self);

G_END_DECLS
