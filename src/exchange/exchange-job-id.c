/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-job-id.h"

#include "exchange-job-write.h"

#include <sodium.h>

static void
hash_text (const GString *text, guchar digest[crypto_hash_sha256_BYTES])
{
  crypto_hash_sha256 (digest, (const guchar *)text->str, text->len);
}

void
tm_job_derive_id (TmJob *job)
{
  g_autoptr (GString) content = NULL;
  guchar hash[crypto_hash_sha256_BYTES];
  char id[40];

  if (*job->id != '\0')
    return;
  content = tm_job_to_string (job);
  hash_text (content, hash);
  hash[6] = (guchar)((hash[6] & 0x0f) | 0x80); /* version 8 */
  hash[8] = (guchar)((hash[8] & 0x3f) | 0x80); /* variant of RFC 9562 */
  g_snprintf (id, sizeof id, "%02x%02x%02x%02x-%02x%02x-%02x%02x-%02x%02x-%02x%02x%02x%02x%02x%02x", hash[0],
              hash[1], hash[2], hash[3], hash[4], hash[5], hash[6], hash[7], hash[8], hash[9], hash[10],
              hash[11], hash[12], hash[13], hash[14], hash[15]);
  job->id = tm_job_intern (job, id);
}

char *
tm_job_digest (const TmJob *job)
{
  g_autoptr (GString) content = tm_job_write_unsigned (job);
  guchar hash[crypto_hash_sha256_BYTES];
  char hex[crypto_hash_sha256_BYTES * 2 + 1];

  hash_text (content, hash);
  sodium_bin2hex (hex, sizeof hex, hash, sizeof hash);
  return g_strdup (hex);
}
