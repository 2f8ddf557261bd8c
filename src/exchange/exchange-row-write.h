/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-row-write: rows of the sections about gauges, methods, tools, mates and studies; private to this
 * folder.
 */

#pragma once

#include "core-model.h"
#include "exchange-put.h"

G_BEGIN_DECLS

/* Puts the members of @row, a struct of the section's kind, into @object. */
typedef void (*TmWriteRow) (TmJsonObject *object, const TmJob *job, gconstpointer row);

void tm_write_gauge (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_calibration (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_check (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_pin_size (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_method (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_budget_line (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_tool (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_material (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_mate_size (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_study (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_study_reading (TmJsonObject *object, const TmJob *job, gconstpointer row);

G_END_DECLS
