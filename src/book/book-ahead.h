/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-ahead: the journal's facts of many rows, made on a thread of their own while SQLite still writes those
 * before.  A quarter of the work of a large job is the texts of its facts and their hashes, which need no
 * database.
 */

#pragma once

#include "book-field.h"
#include "book-hash.h"

G_BEGIN_DECLS

typedef struct {
  const char *payload; /* not ended by a zero */
  gsize length;
  guint8 hash[TM_HASH_BYTES]; /* of the fact itself, chained to the one before */
} TmFact;

typedef struct _TmAhead TmAhead;

/* Begins to make the facts of @rows, of a @kind without versions, in their order, the first one after @chain.
 * Until it is freed, the rows and all they point to must not change.
 * Returns: NULL when there is no thread to be had. */
TmAhead *tm_ahead_new (TmBookKind kind, gint64 job, const GPtrArray *rows,
                       const TmChain *chain) G_GNUC_WARN_UNUSED_RESULT;
/* Stops it, wherever it is. */
void tm_ahead_free (TmAhead *ahead);

/* The fact of the next row; to be called once for each.  Borrowed until the next call. */
const TmFact *tm_ahead_next (TmAhead *ahead);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmAhead, tm_ahead_free)

G_END_DECLS
