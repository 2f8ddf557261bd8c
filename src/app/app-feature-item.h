/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-item: one feature in a list model, with what its readings on the present piece prove,
 * judged only when somebody looks.
 */

#pragma once

#include <glib-object.h>

#include "core-judge.h"

G_BEGIN_DECLS

#define TM_TYPE_FEATURE_ITEM (tm_feature_item_get_type ())
G_DECLARE_FINAL_TYPE (TmFeatureItem, tm_feature_item, TM, FEATURE_ITEM, GObject)

/* @feature is borrowed. */
TmFeatureItem *tm_feature_item_new (TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

TmFeature *tm_feature_item_feature (TmFeatureItem *self);

/* Forgets what was judged. */
void tm_feature_item_invalidate (TmFeatureItem *self);

/* TRUE when it is judged for @piece and nothing has changed since. */
gboolean tm_feature_item_is_fresh (TmFeatureItem *self, const TmPiece *piece);

/* Judges every place on @piece (NULL: the job has none) and keeps the worst; @piece_index from 0. */
void tm_feature_item_judge (TmFeatureItem *self, const TmJob *job, const TmPiece *piece, guint piece_index);

/* The worst place's judgement, or NULL before the first tm_feature_item_judge(). */
const TmJudgement *tm_feature_item_judgement (TmFeatureItem *self);

/* The state word of the list. */
char *tm_feature_item_state (TmFeatureItem *self) G_GNUC_WARN_UNUSED_RESULT;

/* TRUE when each place of @feature on @piece has a reading that counts. */
gboolean tm_feature_is_measured (const TmJob *job, const TmPiece *piece, const TmFeature *feature);

G_END_DECLS
