/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-sign-dialog: what is signed, what it lacks, who signs and in which role.  It stays open until the
 * signature is in the record or is given up.
 */

#pragma once

#include <adwaita.h>

#include "app-signing.h"

G_BEGIN_DECLS

/* Reads the record, on a thread, and then presents the dialog over the window of @any_child. */
void tm_sign_dialog_begin (GtkWidget *any_child, TmDocument *document);

/* The dialog alone, for what was read already. */
GtkWindow *tm_sign_dialog_present (GtkWidget *any_child, TmDocument *document, TmSigning *signing);

/* Fills in and signs as the person would; for tests. @by: the initials; "": as preselected.  Returns: FALSE
 * when the dialog does not let it begin. */
gboolean tm_sign_dialog_answer (GtkWindow *window, const char *by, const char *role, gboolean although);

G_END_DECLS
