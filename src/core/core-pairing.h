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
 * @column_of_row has @n_rows places; TM_ASSIGN_NONE: left over.  Returns: the total cost.
 *
 * H. W. Kuhn, The Hungarian method for the assignment problem, Naval Research Logistics Quarterly 2 (1955);
 * J. Munkres, J. SIAM 5 (1957); R. Jonker and A. Volgenant, A shortest augmenting path algorithm for dense
 * and sparse linear assignment problems, Computing 38 (1987). */
double tm_assign (const double *cost, guint n_rows, guint n_columns, guint *column_of_row);

typedef struct {
  guint bore;
  guint shaft;      /* TM_ASSIGN_NONE: no mate left for it */
  double outside;   /* P(fit outside the wanted range); NAN: no mate */
  TmFitCheck check; /* all NAN: no mate */
} TmPair;

typedef struct {
  TmPair *pairs; /* one a bore, in the order given; owned */
  guint n_pairs;
  double expected_outside; /* Σ P(outside the wanted range) over the pairs made */
  double first_come;       /* the same, were each bore given the next mate in the order given */
} TmPairing;

/* More of either are paired in batches (our own choice: the time grows with the third power). */
#define TM_PAIR_MOST 1000

/* Cost of a pair: P(fit outside the wanted range), 0 or 1 where both parts are exact; where that is the same,
 * the nearer to the middle of the range goes first, or, of a range that is open, the less beyond its end.
 * OK, or why not, with nothing in @out; @culprit (may be NULL) is then the first part that is bad: a bore by
 * its index, a shaft by @n_bores and its index, or TM_ASSIGN_NONE. */
TmFitStatus tm_pair_fits (const TmFitPart *bores, guint n_bores, const TmFitPart *shafts, guint n_shafts,
                          const TmFitWant *want, TmPairing *out, guint *culprit);
void tm_pairing_clear (TmPairing *pairing);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmPairing, tm_pairing_clear)

G_END_DECLS
