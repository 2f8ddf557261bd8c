/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-rules-view: the rules that the shop sets for a job: temperatures, expansion, pins, drift, checks.
 * Each row says in a line what it is for, and what is assumed while it is empty.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_RULES_VIEW (tm_rules_view_get_type ())
G_DECLARE_FINAL_TYPE (TmRulesView, tm_rules_view, TM, RULES_VIEW, GtkBox)

GtkWidget *tm_rules_view_new (void);

/* @document may be NULL. */
void tm_rules_view_set_document (TmRulesView *self, TmDocument *document);
void tm_rules_view_enter (TmRulesView *self);

/* The entry of the rule with this name in the job file ("part_temp_limit"…), or NULL. */
GtkEditable *tm_rules_view_entry (TmRulesView *self, const char *rule);
/* The line that says what is wrong with what was typed last; "" for nothing. */
const char *tm_rules_view_problem (TmRulesView *self);

G_END_DECLS
