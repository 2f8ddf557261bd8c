/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-chart: how the batch of a feature is watched: which run rules speak, how pieces are grouped,
 * which groups freeze the limits, and which pieces are measured.
 *
 * As in app-edit.h: in the model and in the book, or in neither.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

typedef struct {
  guint rules; /* TM_RULE_BIT; 0: the usual set */
  guint group_size;
  guint baseline; /* groups; 0: all */
} TmChartChoice;

/* What the feature has. */
TmChartChoice tm_chart_choice_of (const TmFeature *feature);
gboolean tm_edit_chart_choice (TmDocument *document, TmFeature *feature, const TmChartChoice *choice,
                               GError **error);

/* Words of the rules with blanks between, as a feature keeps them; "" for the usual set alone or none. */
char *tm_chart_rules_to_words (guint rules) G_GNUC_WARN_UNUSED_RESULT;
/* Words that are none of ours are left out; 0 where none is left. */
guint tm_chart_rules_from_words (const char *words);

/* @check: "each", "first", "every N". */
gboolean tm_edit_check_plan (TmDocument *document, TmFeature *feature, const char *check, GError **error);

G_END_DECLS
