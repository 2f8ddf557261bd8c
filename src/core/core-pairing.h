/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pairing: which bush to which bore: the assignment of least total cost.
 */

#pragma once

#include "core-fit-check.h"

G_BEGIN_DECLS

#define TM_ASSIGN_NONE G_MAXUINT

/* The assignment of each row to a column of its own (or, with more rows than columns, of each column to a
 * row) of least total cost: shortest augmenting paths, O(n³).  @cost is row by row, all finite.
 * @column_of_row has
 * @n_rows places; TM_ASSIGN_NONE: left over.  Returns: the total cost. */
double tm_assign (const double *cost, guint n_rows, guint n_columns, guint *column_of_row);

typedef struct {
  guint bore;
  guint shaft; /* TM_ASSIGN_NONE: no mate left for it */
  TmFitCheck check;
} TmPair;

typedef struct {
  TmPair *pairs; /* one a bore, in the order given; owned */
  guint n_pairs;
  double expected_outside; /* Σ P(outside the wanted range) over the pairs made */
  double first_come;       /* the same, were each bore given the next mate in the order given */
} TmPairing;

/* Cost of a pair: P(fit outside the wanted range); where that is the same, the nearer to the middle of the
 * range goes first.  OK, or why not (the first part that is bad, by index, in @culprit, may be NULL). */
TmFitStatus tm_pair_fits (const TmFitPart *bores, guint n_bores, const TmFitPart *shafts, guint n_shafts,
                          const TmFitWant *want, TmPairing *out, guint *culprit);
void tm_pairing_clear (TmPairing *pairing);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmPairing, tm_pairing_clear)

G_END_DECLS
