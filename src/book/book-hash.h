/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-hash: the chain over the journal.
 *
 * The hash of a fact is SHA-256 (FIPS 180-4) over, in this order: the 32 bytes of the hash of the
 * fact before it (zero for the first), the text "SEQ\tJOB\tKIND\n" with decimal numbers, and the
 * payload.  A journal row carries the hash of the row before; a seal carries the hash of its own row.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TM_HASH_BYTES 32

typedef struct {
  gint64 seq;                 /* number of the newest fact; 0: none yet */
  guint8 hash[TM_HASH_BYTES]; /* its hash */
} TmChain;

/* @out may be @prev. */
void tm_hash_fact (const guint8 prev[TM_HASH_BYTES], gint64 seq, gint64 job, const char *kind,
                   const char *payload, gsize length, guint8 out[TM_HASH_BYTES]);

/* Must have been called, and returned TRUE, before the first hash. */
gboolean tm_hash_init (void);

char *tm_hash_to_hex (const guint8 hash[TM_HASH_BYTES]) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
