/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-pin-trials: pins that were tried, as they are written on the command line:
 * "12.006-Z+ go, 12.018-Z- nogo".
 */

#pragma once

#include "core-pins.h"

G_BEGIN_DECLS

typedef struct {
  TmQuantity size; /* as marked */
  const char *pin_class;
  TmPinSign sign;
} TmWrittenPin;

typedef struct {
  GArray *pins;    /* TmPin */
  GArray *written; /* TmWrittenPin, one for each */
} TmPinTrials;

/* Reads every trial of @text, sizes without a unit of their own in @unit.  FALSE after an error line
 * that names the trial; free @out in either case. */
gboolean tm_pin_trials_read (const char *text, TmUnit unit, TmPinTrials *out);
void tm_pin_trials_clear (TmPinTrials *trials);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmPinTrials, tm_pin_trials_clear)

G_END_DECLS
