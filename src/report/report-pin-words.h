/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pin-words: what workbook and pages say of one pin trial.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* The certain bound: the smallest that a pin which went may be, or the largest that one which did not go
 * may be, with what a pin needs to enter; free it. */
char *tm_report_pin_proof (const TmJob *job, const TmPinTrial *trial) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
