/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-evidence: what several methods and pins say of one bore, a line each, together, and which value
 * counts.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_EVIDENCE (tm_evidence_get_type ())
G_DECLARE_FINAL_TYPE (TmEvidence, tm_evidence, TM, EVIDENCE, GtkBox)

/* "counts-chosen" (gboolean combined): the person chose which value counts. */
GtkWidget *tm_evidence_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows what was read at the deciding station of @judgement (NULL: nothing) and the pins of its place;
 * hides itself while the method in force alone was used and no pin was tried. */
void tm_evidence_show (TmEvidence *self, TmDocument *document, const TmJudgement *judgement);

G_END_DECLS
