/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-order: which readings and pin trials of a place were taken before a cut there.  Private to core.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Marks the row just added by the cuts of its place. */
void tm_cut_order_mark_reading (const TmJob *job, TmReading *reading);
void tm_cut_order_mark_trial (const TmJob *job, TmPinTrial *trial);

/* Marks what was taken before @cut, which was just added. */
void tm_cut_order_mark_cut (const TmJob *job, const TmCutRow *cut);

/* Marks all rows of a place anew: after a cut there was corrected or withdrawn. */
void tm_cut_order_mark_place (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place);

G_END_DECLS
