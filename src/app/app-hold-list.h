/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-hold-list: the pieces to hold back, as a list that outlives the batch that it was found in: on the
 * screen, on paper and as a table for a spreadsheet.  No widgets.
 */

#pragma once

#include "core-batch.h"

G_BEGIN_DECLS

typedef struct {
  char *serial;
  gboolean held; /* by what was found; else only something was decided of it before */
  gboolean measured;
  double out; /* chance; NAN: unknown */
} TmHoldLine;

typedef struct {
  GPtrArray *lines; /* TmHoldLine, in the order of pieces */
  guint n_held;
  guint n_unmeasured; /* of those held */
  double expected;    /* how many of those held are out, by their chances */
  char *feature;      /* in one line of running text, or "" */
  char *job;          /* likewise */
} TmHoldList;

/* Those of @batch (may be NULL), and every other piece of @job that something was decided of. */
TmHoldList *tm_hold_list_new (const TmJob *job, const TmFeature *feature,
                              const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
TmHoldList *tm_hold_list_ref (TmHoldList *list);
void tm_hold_list_unref (TmHoldList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmHoldList, tm_hold_list_unref)

/* "12 pieces from 041 on, 9 of them not measured; about 3 of them are out.", or that there is none. */
char *tm_hold_list_summary (const TmHoldList *list) G_GNUC_WARN_UNUSED_RESULT;

/* "12 %", "under 0.1 %", "unknown" */
char *tm_words_chance_out (double out) G_GNUC_WARN_UNUSED_RESULT;
/* "not measured, 12 % likely to be out" */
char *tm_words_hold_line (const TmHoldLine *line) G_GNUC_WARN_UNUSED_RESULT;

/* What was decided of a piece, as the screen says it: "measure", or a file's own word; "" for nothing. */
const char *tm_words_disposition (const TmPiece *piece);

/* One line a piece, with what @job says was decided of it; no text of it can start a formula. */
GString *tm_hold_list_table (const TmHoldList *list, const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
