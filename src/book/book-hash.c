/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-hash.h"

#include <sodium.h>
#include <string.h>

G_STATIC_ASSERT (TM_HASH_BYTES == crypto_hash_sha256_BYTES);

gboolean
tm_hash_init (void)
{
  return sodium_init () >= 0;
}

void
tm_hash_fact (const guint8 prev[TM_HASH_BYTES], gint64 seq, gint64 job, const char *kind, const char *payload,
              gsize length, guint8 out[TM_HASH_BYTES])
{
  crypto_hash_sha256_state state;
  char head[96];
  int n = g_snprintf (head, sizeof head, "%" G_GINT64_FORMAT "\t%" G_GINT64_FORMAT "\t%s\n", seq, job, kind);

  crypto_hash_sha256_init (&state);
  crypto_hash_sha256_update (&state, prev, TM_HASH_BYTES);
  crypto_hash_sha256_update (&state, (const guint8 *)head, MIN ((gsize)n, sizeof head - 1));
  crypto_hash_sha256_update (&state, (const guint8 *)payload, length);
  crypto_hash_sha256_final (&state, out);
}

char *
tm_hash_to_hex (const guint8 hash[TM_HASH_BYTES])
{
  char *hex = g_malloc (TM_HASH_BYTES * 2 + 1);
  return sodium_bin2hex (hex, TM_HASH_BYTES * 2 + 1, hash, TM_HASH_BYTES);
}
