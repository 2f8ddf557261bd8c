/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-overdue-dialog: asks why a gauge past its due date is used.  What was typed at the bench stays
 * there, whatever is answered.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define TM_TYPE_OVERDUE_DIALOG (tm_overdue_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TmOverdueDialog, tm_overdue_dialog, TM, OVERDUE_DIALOG, AdwWindow)

/* @about: the refusal, which names the gauge and its date.  "stated" (const char *reason) is emitted
 * once a reason is given, before the dialog closes. */
GtkWidget *tm_overdue_dialog_present (GtkWidget *parent, const char *about);

/* Answers as the person would; for tests. */
void tm_overdue_dialog_answer (TmOverdueDialog *self, const char *reason);

G_END_DECLS
