/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-readings-dialog: every reading, pin trial and cut of one feature on one piece, those that were
 * corrected or withdrawn too, each with Correct… and Withdraw….
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_READINGS_DIALOG (tm_readings_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TmReadingsDialog, tm_readings_dialog, TM, READINGS_DIALOG, AdwWindow)

/* Presented over the window of @parent, for the present piece and feature of the bench session. */
GtkWidget *tm_readings_dialog_present (GtkWidget *parent, TmDocument *document);

G_END_DECLS
