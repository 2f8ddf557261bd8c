/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-tally: how many spots are due and unread, per piece and feature, kept up to date so that no
 * step of the bench walks the whole record.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct _TmTally TmTally;

TmTally *tm_tally_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_tally_free (TmTally *tally);

/* Follows @job: new readings one by one, changed lists by a fresh count.  TRUE when the lists of
 * pieces or features had changed. */
gboolean tm_tally_follow (TmTally *tally, const TmJob *job);
/* Forces a fresh count at the next tm_tally_follow(). */
void tm_tally_forget (TmTally *tally);
/* Counts one piece and feature again, after a row there was withdrawn. */
void tm_tally_recount (TmTally *tally, const TmJob *job, const TmPiece *piece, const TmFeature *feature);

/* Positions in job->pieces and job->features; G_MAXUINT for one that is not there. */
guint tm_tally_piece_index (const TmTally *tally, const TmPiece *piece);
guint tm_tally_feature_index (const TmTally *tally, const TmFeature *feature);

guint tm_tally_due (const TmTally *tally, guint piece, guint feature);
guint tm_tally_unread (const TmTally *tally, guint piece, guint feature);
guint tm_tally_piece_due (const TmTally *tally, guint piece);
guint tm_tally_piece_unread (const TmTally *tally, guint piece);
guint tm_tally_feature_unread (const TmTally *tally, guint feature);

/* A whole-number id for the next reading: one more than the largest so far. */
guint64 tm_tally_next_id (const TmTally *tally);
/* The same for the next pin trial, and for the next cut. */
guint64 tm_tally_next_trial_id (const TmTally *tally);
guint64 tm_tally_next_cut_id (const TmTally *tally);

/* Stations of a feature, counting "no station" as one. */
guint tm_spot_n_stations (const TmFeature *feature);
const char *tm_spot_station (const TmFeature *feature, guint index);
/* Position of @station in the feature's list, or the length of the list for one that is not in it. */
guint tm_spot_station_index (const TmFeature *feature, const char *station);
/* Whether a reading that counts stands there; for a feature without stations, pins that were tried from
 * each side that has a limit do as well. */
gboolean tm_spot_is_read (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                          const char *station);

G_END_DECLS
