/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-size: one station's size as pictures show it: its verdict, its uncertainty, its number; and the
 * form of a place in words.
 */

#pragma once

#include "core-judge.h"
#include "core-verdict.h"

G_BEGIN_DECLS

typedef struct {
  TmVerdict verdict;
  double uncertainty; /* expanded, counts; NAN when unknown */
  gboolean combined;  /* of all methods that read it */
} TmSizeMark;

/* A size of @method held against @limits by the job's rule. */
TmSizeMark tm_size_mark (const TmJob *job, const TmFeature *feature, const TmLimits *limits,
                         const TmLocalSize *size, const char *method);

/* Of the station @index, by the method or the methods that count there: the deciding one as it was judged, a
 * bonus's uncertainty included; the others each on its own, and each where pins joined the verdict. */
TmSizeMark tm_station_mark (const TmJob *job, const TmJudgement *judgement, guint index);

/* The station's number in the feature's unit, without the unit; at least @decimals digits. */
char *tm_station_number (const TmJudgement *judgement, guint index, guint decimals) G_GNUC_WARN_UNUSED_RESULT;

/* A length of form with its unit, as fine as the readings and their means are. */
char *tm_form_number (const TmJudgement *judgement, double counts) G_GNUC_WARN_UNUSED_RESULT;

/* "taper 0.006 mm, opens to the bottom"; NULL when the judgement has none.  Translated. */
char *tm_taper_words (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* How many times a picture of @wished enlarges differences, brought down to a round number that can be
 * said; 0 when it does not enlarge. */
guint tm_round_enlargement (double wished);

G_END_DECLS
