/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-pair-pane: which measured mate to which measured piece, so that most fit as wanted.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_PAIR_PANE (tm_pair_pane_get_type ())
G_DECLARE_FINAL_TYPE (TmPairPane, tm_pair_pane, TM, PAIR_PANE, GtkBox)

GtkWidget *tm_pair_pane_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Pairs all that was measured of the feature at hand; NULL: nothing. */
void tm_pair_pane_show (TmPairPane *self, TmDocument *document);

/* Writes the pairs into the mates: each is then meant for its piece. */
void tm_pair_pane_use (TmPairPane *self);

void tm_pair_pane_enter (TmPairPane *self);

G_END_DECLS
