/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-recall: what a gauge found bad at calibration has touched in one job.
 */

#pragma once

#include "core-judge.h"

G_BEGIN_DECLS

typedef struct {
  const TmReading *reading; /* counts, and was taken with the gauge after the day it was known good */
  const TmPinTrial *trial;  /* instead, for a pin set */
  TmVerdict before;         /* of its place */
  TmVerdict after;          /* with the error taken out; as before when no error is given */
  TmSide side_before, side_after;
} TmRecallRow;

/* Rows that count of readings taken by @tag, alone or in a method, at or after the day after
 * @good_until (YYYY-MM-DD; rows without a time are taken in, since nobody can say).  @error: indicated -
 * true at calibration, not given: only the list.  In the order recorded. */
GArray *tm_recall (const TmJob *job, const char *tag, const char *good_until,
                   const TmQuantity *error) G_GNUC_WARN_UNUSED_RESULT;

/* TRUE when verdict or side of the row's place would be another. */
gboolean tm_recall_changes (const TmRecallRow *row);

/* How many verdicts of one job would be others: a place has one, however many of @rows it rests on. */
guint tm_recall_count_changes (const GArray *rows);

/* TRUE when @name (of a method or a gauge) takes readings with @tag. */
gboolean tm_method_uses_gauge (const TmJob *job, const char *name, const char *tag);

G_END_DECLS
