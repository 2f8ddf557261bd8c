/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-recorder: how the bench hands a fact to whatever keeps the record (the book, or a job in
 * memory).
 *
 * Each function makes its fact durable before it returns TRUE.  On FALSE nothing was kept and
 * @error says why.  The recorder does not change the TmJob: its caller does, after TRUE.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct _TmRecorder TmRecorder;

struct _TmRecorder {
  gpointer self;
  gboolean (*record_reading) (gpointer self, const TmReading *reading, GError **error);
  gboolean (*record_pin_trial) (gpointer self, const TmPinTrial *trial, GError **error);
  gboolean (*record_cut) (gpointer self, const TmCutRow *cut, GError **error);
  gboolean (*withdraw_reading) (gpointer self, const char *id, const TmWithdrawal *withdrawal,
                                GError **error);
  gboolean (*withdraw_pin_trial) (gpointer self, const char *id, const TmWithdrawal *withdrawal,
                                  GError **error);
  gboolean (*withdraw_cut) (gpointer self, const char *id, const TmWithdrawal *withdrawal, GError **error);
};

/* A recorder that keeps nothing beyond the job itself: for a job file that the caller saves. */
TmRecorder tm_recorder_memory (void);

G_END_DECLS
