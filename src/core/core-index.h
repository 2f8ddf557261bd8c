/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-index: finding the rows of a job by name and by place in constant time.  Private to core.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_INDEX_PERSON,
  TM_INDEX_GAUGE,
  TM_INDEX_METHOD,
  TM_INDEX_FEATURE,
  TM_INDEX_PIECE,
  TM_INDEX_READING,
  TM_INDEX_PIN_TRIAL,
  TM_INDEX_CUT,
  TM_INDEX_STUDY,
  TM_INDEX_TOOL,
  TM_INDEX_MATERIAL,
  TM_N_INDEXES
} TmIndexKind;

TmJobIndex *tm_index_new (void);
void tm_index_free (TmJobIndex *index);

/* Names are borrowed and must live as long as the entry. */
void tm_index_insert (TmJobIndex *index, TmIndexKind kind, const char *name, gpointer row);
void tm_index_remove (TmJobIndex *index, TmIndexKind kind, const char *name);
gpointer tm_index_find (const TmJobIndex *index, TmIndexKind kind, const char *name);

/* The next free whole-number id of rows of @kind: one more than the largest ever inserted. */
guint64 tm_index_next_id (const TmJobIndex *index, TmIndexKind kind);

/* Readings by piece, feature and place. */
void tm_index_add_reading (TmJobIndex *index, TmReading *reading);
const GPtrArray *tm_index_readings_at (const TmJobIndex *index, const TmPiece *piece,
                                       const TmFeature *feature, guint place);

/* Pin trials likewise. */
void tm_index_add_pin_trial (TmJobIndex *index, TmPinTrial *trial);
const GPtrArray *tm_index_pin_trials_at (const TmJobIndex *index, const TmPiece *piece,
                                         const TmFeature *feature, guint place);

/* Cuts likewise. */
void tm_index_add_cut (TmJobIndex *index, TmCutRow *cut);
const GPtrArray *tm_index_cuts_at (const TmJobIndex *index, const TmPiece *piece, const TmFeature *feature,
                                   guint place);

/* The same index, but with other rows at one place: NULL for none.  Takes its own references; @index must
 * outlive it, and nothing is to be added to either meanwhile. */
TmJobIndex *tm_index_view (const TmJobIndex *index, const TmPiece *piece, const TmFeature *feature,
                           guint place, GPtrArray *readings, GPtrArray *trials);

/* How many readings, trials and cuts hang on a feature or a piece. */
void tm_index_use (TmJobIndex *index, gconstpointer feature_or_piece);
guint tm_index_uses (const TmJobIndex *index, gconstpointer feature_or_piece);

G_END_DECLS
