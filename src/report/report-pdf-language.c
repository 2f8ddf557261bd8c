/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-pdf-language.h"

#include <string.h>

#define CATALOG "<< /Type /Catalog\n"
#define TABLE   "\nxref\n"
#define START   "\nstartxref\n"

/* The last place of @what; @length: there is none. */
static gsize
find_last (const guint8 *bytes, gsize length, const char *what)
{
  const gsize n = strlen (what);

  for (gsize at = length >= n ? length - n + 1 : 0; at > 0; at--)
    if (memcmp (bytes + at - 1, what, n) == 0)
      return at - 1;
  return length;
}

gsize
tm_pdf_before_catalog (const guint8 *bytes, gsize length)
{
  const gsize at = find_last (bytes, length, CATALOG);

  /* The beginning of it may stand at the end. */
  return at < length ? at : length - MIN (length, strlen (CATALOG) - 1);
}

/* A tag of BCP 47 has hyphens; NULL: it is none. */
static char *
make_tag (const char *language)
{
  g_autofree char *tag = g_strdelimit (g_strdup (language), "_", '-');

  if (*tag == '\0'
      || strspn (tag, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") != strlen (tag))
    return NULL;
  return g_steal_pointer (&tag);
}

static void
insert (GByteArray *into, gsize at, const char *text)
{
  const guint n = (guint)strlen (text);

  g_byte_array_set_size (into, into->len + n);
  memmove (into->data + at + n, into->data + at, into->len - n - at);
  memcpy (into->data + at, text, n);
}

/* Where the table of objects begins stands at the end of the file; it begins later now.  FALSE: there is no
 * such number. */
static gboolean
move_table (GByteArray *end, gsize start, guint64 by)
{
  const gsize at = start + strlen (START);
  g_autofree char *tail = g_strndup ((const char *)end->data + at, end->len - at);
  char *rest = NULL;
  const guint64 table = g_ascii_strtoull (tail, &rest, 10);
  g_autofree char *moved = NULL;

  if (rest == tail)
    return FALSE;
  moved = g_strdup_printf ("%" G_GUINT64_FORMAT "%s", table + by, rest);
  g_byte_array_set_size (end, (guint)at);
  g_byte_array_append (end, (const guint8 *)moved, (guint)strlen (moved));
  return TRUE;
}

void
tm_pdf_set_language (GByteArray *end, const char *language)
{
  g_autofree char *tag = make_tag (language);
  g_autofree char *entry = tag != NULL ? g_strdup_printf ("   /Lang (%s)\n", tag) : NULL;
  const gsize catalog = find_last (end->data, end->len, CATALOG);
  const gsize table = find_last (end->data, end->len, TABLE);
  const gsize start = find_last (end->data, end->len, START);

  if (entry == NULL || catalog >= table || table >= start || start >= end->len)
    return;
  if (move_table (end, start, strlen (entry)))
    insert (end, catalog + strlen (CATALOG), entry);
}
