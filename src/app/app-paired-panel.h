/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-paired-panel: method against method on the same pieces: mean difference and limits of agreement.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_PAIRED_PANEL (tm_paired_panel_get_type ())
G_DECLARE_FINAL_TYPE (TmPairedPanel, tm_paired_panel, TM, PAIRED_PANEL, GtkBox)

GtkWidget *tm_paired_panel_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Borrowed until another, or NULL, is set; the same again shows what has changed. */
void tm_paired_panel_set_document (TmPairedPanel *self, TmDocument *document);

void tm_paired_panel_focus (TmPairedPanel *self);

/* What it says; for tests. */
const char *tm_paired_panel_words (TmPairedPanel *self);

G_END_DECLS
