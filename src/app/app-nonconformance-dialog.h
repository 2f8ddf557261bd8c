/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-nonconformance-dialog: the nonconformance of one feature on one piece: its number, what is
 * wrong, what was decided.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_NONCONFORMANCE_DIALOG (tm_nonconformance_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TmNonconformanceDialog, tm_nonconformance_dialog, TM, NONCONFORMANCE_DIALOG, AdwWindow)

/* Presented over the window of @parent, for the present piece and feature of the bench session. */
GtkWidget *tm_nonconformance_dialog_present (GtkWidget *parent, TmDocument *document);

/* Fills in and saves as the person would; @disposition counts from 0 = not decided. For tests.
 * Returns: FALSE when it was not kept and the dialog is still open. */
gboolean tm_nonconformance_dialog_answer (TmNonconformanceDialog *self, const char *number, const char *note,
                                          guint disposition);

G_END_DECLS
