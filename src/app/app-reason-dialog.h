/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-reason-dialog: asks why a reading, pin trial or cut is withdrawn, or what it should have been and why.
 * It stays open, with what was typed, until the change is kept or given up.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_REASON_DIALOG (tm_reason_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TmReasonDialog, tm_reason_dialog, TM, REASON_DIALOG, AdwWindow)

/* Present over the window of @parent. @reading is borrowed from the document's job. */
GtkWidget *tm_reason_dialog_present_withdraw (GtkWidget *parent, TmDocument *document,
                                              const TmReading *reading);
GtkWidget *tm_reason_dialog_present_withdraw_pin (GtkWidget *parent, TmDocument *document,
                                                  const TmPinTrial *trial);
GtkWidget *tm_reason_dialog_present_withdraw_cut (GtkWidget *parent, TmDocument *document,
                                                  const TmCutRow *cut);
GtkWidget *tm_reason_dialog_present_correct_cut (GtkWidget *parent, TmDocument *document,
                                                 const TmCutRow *cut);
GtkWidget *tm_reason_dialog_present_correct (GtkWidget *parent, TmDocument *document,
                                             const TmReading *reading);

/* Fills in and confirms as the person would; @value is NULL when withdrawing, "dx; dy"
 * for a reading of offsets. For tests.
 * Returns: FALSE when the change was not kept and the dialog is still open. */
gboolean tm_reason_dialog_answer (TmReasonDialog *self, const char *value, const char *reason);

G_END_DECLS
