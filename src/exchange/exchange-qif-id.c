/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * UUIDs that follow from the job, so that the same record has the same identity in every export.
 * Name-based UUID, version 5: RFC 9562 section 5.5 (formerly RFC 4122 section 4.3).
 */

#include "exchange-qif-private.h"

#define UUID_BYTES 16

/* The namespace of a job whose id is no UUID: fixed, drawn once at random. */
static const guint8 fallback[UUID_BYTES]
    = { 0x5d, 0x0c, 0x0e, 0x6b, 0x83, 0x1f, 0x4e, 0x0a, 0x9b, 0x7a, 0x21, 0xc4, 0x6f, 0x3d, 0x90, 0x15 };

/* The bytes of a UUID as text; FALSE when it is none. */
static gboolean
read_uuid (const char *text, guint8 bytes[UUID_BYTES])
{
  guint n = 0;

  if (!g_uuid_string_is_valid (text))
    return FALSE;
  for (; *text != '\0'; text++)
    {
      if (*text == '-')
        continue;
      bytes[n / 2] = (guint8)(bytes[n / 2] << 4 | g_ascii_xdigit_value (*text));
      n++;
    }
  return TRUE;
}

static void
digest (const guint8 space[UUID_BYTES], const char *name, guint8 bytes[UUID_BYTES])
{
  GChecksum *sum = g_checksum_new (G_CHECKSUM_SHA1);
  guint8 full[20];
  gsize length = sizeof full;

  g_checksum_update (sum, space, UUID_BYTES);
  g_checksum_update (sum, (const guchar *)name, -1);
  g_checksum_get_digest (sum, full, &length);
  g_checksum_free (sum);
  memcpy (bytes, full, UUID_BYTES);
  bytes[6] = (guint8)((bytes[6] & 0x0f) | 0x50);
  bytes[8] = (guint8)((bytes[8] & 0x3f) | 0x80);
}

char *
tm_qif_uuid (const char *job_id, const char *name)
{
  guint8 space[UUID_BYTES] = { 0 };
  guint8 bytes[UUID_BYTES];
  GString *text = g_string_new (NULL);

  if (!read_uuid (job_id, space))
    digest (fallback, job_id, space);
  digest (space, name, bytes);
  for (guint i = 0; i < UUID_BYTES; i++)
    g_string_append_printf (text, "%s%02x", i == 4 || i == 6 || i == 8 || i == 10 ? "-" : "", bytes[i]);
  return g_string_free (text, FALSE);
}
