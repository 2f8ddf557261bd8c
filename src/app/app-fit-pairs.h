/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-fit-pairs: all measured places of the feature at hand with all its measured mates, paired so that most
 * fit as wanted.  No widgets.
 */

#pragma once

#include "app-document.h"
#include "core-pairing.h"

G_BEGIN_DECLS

/* A place of a piece, and what it gets. */
typedef struct {
  TmPiece *piece;
  guint place;
  TmMateSize *mate; /* NULL: none is left for it */
  TmFitCheck check; /* where there is one */
} TmFitPlace;

typedef struct {
  TmFitStatus status;
  const char *culprit;   /* serial of the piece or mate that the status is about, or NULL; borrowed */
  GArray *places;        /* TmFitPlace: those that were measured and whose uncertainty is known */
  GPtrArray *mates;      /* TmMateSize, borrowed: likewise */
  GPtrArray *mates_over; /* TmMateSize, borrowed: those that no place gets */
  guint n_places_out;    /* places that take no part: not measured, or no uncertainty */
  guint n_mates_out;     /* mates likewise */
  guint n_pairs;
  TmPairing pairing; /* by bore, whichever side the feature is */
} TmFitPairs;

void tm_fit_pairs_of (TmDocument *document, TmFitPairs *out);
void tm_fit_pairs_clear (TmFitPairs *pairs);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmFitPairs, tm_fit_pairs_clear)

G_END_DECLS
