/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-method-private: a method's budget in the making.  core-method puts it together: core-method-gauge
 * adds what its gauges give, core-method-temperature what temperature gives.
 */

#pragma once

#include "core-method.h"

G_BEGIN_DECLS

typedef struct {
  TmMethodUse *use;
  const TmJob *job;
  const TmFeature *feature;
  const TmUseWhen *when;
  gboolean own_feel;        /* the method has a line of its own for it */
  gboolean own_temperature; /* likewise */
} TmBudget;

/* Adds a line; where there is no room left the last one takes it in. */
void tm_budget_add_line (TmMethodUse *use, const TmComponent *line);

/* Adds @line for a @quantity that is given; FALSE when it measures something else than the feature. */
gboolean tm_budget_add (const TmBudget *self, const TmQuantity *quantity, const TmComponent *line);

/* A plain number of the model, or @otherwise. */
double tm_plain_number (const TmQuantity *quantity, double otherwise);

/* FALSE when the gauge measures something else. */
gboolean tm_budget_add_gauge (const TmBudget *self, const TmGauge *gauge);

void tm_budget_add_temperature (const TmBudget *self);

G_END_DECLS
