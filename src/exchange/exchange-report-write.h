/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-report-write: what a report says besides sizes, as members and rows of the job file; private to
 * this folder.
 */

#pragma once

#include "core-model.h"
#include "exchange-put.h"

G_BEGIN_DECLS

/* The member "report" of the job, where it says anything. */
void tm_write_report (TmJsonObject *object, const TmJob *job);

void tm_write_supply (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_sub_part (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_report_field (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_drawing (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_drawing_digest (TmJsonObject *object, const TmJob *job, gconstpointer row); /* not its bytes */
void tm_write_balloon_mark (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_nonconformance (TmJsonObject *object, const TmJob *job, gconstpointer row);
void tm_write_signature (TmJsonObject *object, const TmJob *job, gconstpointer row);

G_END_DECLS
