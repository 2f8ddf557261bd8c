/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-signed-dialog: one signature: what was signed, what became of it, and its files to be handed out again.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "report-signed.h"

G_BEGIN_DECLS

/* @signature is the document's; @state as the record is now. */
GtkWindow *tm_signed_dialog_present (GtkWidget *any_child, TmDocument *document, const TmSignature *signature,
                                     TmSignedState state);

/* "Holds", "Superseded: the record has changed since", "not known yet". */
const char *tm_words_signed_state (TmSignedState state);

G_END_DECLS
