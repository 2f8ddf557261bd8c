/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-order: which readings and pin trials of a place were taken before a cut there.  Private to core.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* The row that @cut corrects, through all its corrections; @cut itself where it corrects none.  A correction
 * stands in the order of the record where the first of them was made. */
const TmCutRow *tm_cut_order_first (const TmJob *job, const TmCutRow *cut);

/* The reading that @reading corrects, likewise: a correction is about the size as it was when that one was
 * taken. */
const TmReading *tm_cut_order_first_reading (const TmJob *job, const TmReading *reading);

/* Where a cut stands among the readings of its place: found once, so that many readings can be held against
 * it. */
typedef struct {
  gboolean before_all; /* it was made before any reading */
  gboolean placed;     /* it names the newest reading: `newest` is its number in the list of the place */
  guint newest;
  const char *at; /* else only the time tells */
} TmCutStand;

TmCutStand tm_cut_order_stand (const TmJob *job, const TmCutRow *cut);
/* TRUE when @reading, number @number in the list of its place, was taken before that cut. */
gboolean tm_cut_order_follows (const TmJob *job, const TmCutStand *stand, const TmReading *reading,
                               guint number);

/* Marks the row just added by the cuts of its place. */
void tm_cut_order_mark_reading (const TmJob *job, TmReading *reading);
void tm_cut_order_mark_trial (const TmJob *job, TmPinTrial *trial);

/* Marks what was taken before @cut, which was just added. */
void tm_cut_order_mark_cut (const TmJob *job, const TmCutRow *cut);

/* Marks all rows of a place anew: after a cut there was corrected or withdrawn. */
void tm_cut_order_mark_place (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place);

G_END_DECLS
