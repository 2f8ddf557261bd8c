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

/* Writes @number before @cursor; numbers of facts and jobs are never negative. */
static char *
write_number (char *cursor, gint64 number)
{
  guint64 rest = (guint64)number;

  do
    *--cursor = (char)('0' + rest % 10);
  while ((rest /= 10) > 0);
  return cursor;
}

void
tm_hash_fact (const guint8 prev[TM_HASH_BYTES], gint64 seq, gint64 job, const char *kind, const char *payload,
              gsize length, guint8 out[TM_HASH_BYTES])
{
  crypto_hash_sha256_state state;
  char numbers[48];
  char *end = numbers + sizeof numbers;
  char *cursor = end;

  *--cursor = '\t';
  cursor = write_number (cursor, job);
  *--cursor = '\t';
  cursor = write_number (cursor, seq);
  crypto_hash_sha256_init (&state);
  crypto_hash_sha256_update (&state, prev, TM_HASH_BYTES);
  crypto_hash_sha256_update (&state, (const guint8 *)cursor, (gsize)(end - cursor));
  crypto_hash_sha256_update (&state, (const guint8 *)kind, strlen (kind));
  crypto_hash_sha256_update (&state, (const guint8 *)"\n", 1);
  crypto_hash_sha256_update (&state, (const guint8 *)payload, length);
  crypto_hash_sha256_final (&state, out);
}

char *
tm_hash_to_hex (const guint8 hash[TM_HASH_BYTES])
{
  char *hex = g_malloc (TM_HASH_BYTES * 2 + 1);
  return sodium_bin2hex (hex, TM_HASH_BYTES * 2 + 1, hash, TM_HASH_BYTES);
}
