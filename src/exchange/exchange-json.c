/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-json-parser.h"

#include <glib/gi18n-lib.h>

/* By section; what is of one section, or unknown, keeps its order. */
static int
compare_ranges_cb (gconstpointer a, gconstpointer b)
{
  const TmJsonRange *left = a;
  const TmJsonRange *right = b;

  if (left->section != right->section)
    return left->section < right->section ? -1 : 1;
  return (left->from > right->from) - (left->from < right->from);
}

/* The same document with its sections in order; NULL with @error when it is not JSON. */
static GString *
sort_sections (const TmJsonReader *reader, const char *data, gsize length, const char *source, GError **error)
{
  g_autoptr (GArray) ranges = g_array_new (FALSE, FALSE, sizeof (TmJsonRange));
  GString *sorted = NULL;
  TmJsonParser parser;

  tm_json_parser_init (&parser, reader, source, data, length);
  parser.ranges = ranges;
  if (tm_json_parser_run (&parser, error))
    {
      g_array_sort (ranges, compare_ranges_cb);
      sorted = g_string_sized_new (length + 16);
      g_string_append_c (sorted, '{');
      for (guint i = 0; i < ranges->len; i++)
        {
          const TmJsonRange *range = &g_array_index (ranges, TmJsonRange, i);

          g_string_append (sorted, i == 0 ? "" : ",");
          g_string_append_len (sorted, data + range->from, (gssize)(range->to - range->from));
        }
      g_string_append_c (sorted, '}');
    }
  tm_json_parser_clear (&parser);
  return sorted;
}

/* Whether @data is ASCII without U+0000, eight bytes at a time. */
static gboolean
is_plain (const char *data, gsize length)
{
  const guint64 ones = G_GUINT64_CONSTANT (0x0101010101010101);
  guint64 seen = 0;
  gsize i = 0;

  for (; i + sizeof (guint64) <= length; i += sizeof (guint64))
    {
      guint64 bytes;

      memcpy (&bytes, data + i, sizeof bytes);
      /* The high bit of a byte is set where it was, and where taking one away borrows: at a zero. */
      seen |= bytes | (bytes - ones);
    }
  for (; i < length; i++)
    seen |= (guint8)data[i] == 0 ? 0x80 : (guint8)data[i];
  return (seen & (ones << 7)) == 0;
}

/* As g_utf8_validate_len(), a line at a time: nearly all lines of a job are ASCII. */
static gboolean
is_valid (const char *data, gsize length, const char **end)
{
  const char *line = data;

  while (line < data + length)
    {
      gsize rest = (gsize)(data + length - line);
      const char *stop = memchr (line, '\n', rest);
      gsize n = stop != NULL ? (gsize)(stop + 1 - line) : rest;

      if (!is_plain (line, n) && !g_utf8_validate_len (line, n, end))
        return FALSE;
      line += n;
    }
  return TRUE;
}

static gboolean
check_encoding (const char *data, gsize length, const char *source, GError **error)
{
  const char *end;
  g_autofree char *line = NULL;

  if (length >= 3 && memcmp (data, "\xef\xbb\xbf", 3) == 0)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_JSON, source, NULL,
                        _ ("starts with a byte order mark; save it as UTF-8 without one"));
      return FALSE;
    }
  if (is_valid (data, length, &end))
    return TRUE;
  line = g_strdup_printf (_ ("line %u"), tm_json_line_at (data, (gsize)(end - data)));
  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_JSON, source, line,
                    _ ("the byte 0x%02X is not UTF-8 text; save the file as UTF-8"), (guint)(guchar)*end);
  return FALSE;
}

static gboolean
is_blank (const char *data, gsize length)
{
  gsize i = 0;

  while (i < length && g_ascii_isspace (data[i]))
    i++;
  return i == length;
}

/* One pass over @data; @out_of_order says why it stopped without an error. */
static gboolean
read_once (const TmJsonReader *reader, const char *data, gsize length, const char *source, gboolean sorted,
           GString *extra, gboolean *out_of_order, GError **error)
{
  TmJsonParser parser;
  gboolean done;

  tm_json_parser_init (&parser, reader, source, data, length);
  parser.sorted = sorted;
  parser.extra = extra;
  done = tm_json_parser_run (&parser, error);
  *out_of_order = parser.out_of_order;
  tm_json_parser_clear (&parser);
  return done;
}

gboolean
tm_json_read (const TmJsonReader *reader, const char *data, gsize length, const char *source, GString *extra,
              GError **error)
{
  g_autoptr (GString) sorted = NULL;
  gboolean out_of_order;

  if (is_blank (data, length))
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_JSON, source, NULL,
                        _ ("the file is empty; open one that was exported as a job"));
      return FALSE;
    }
  if (!check_encoding (data, length, source, error))
    return FALSE;
  if (read_once (reader, data, length, source, FALSE, extra, &out_of_order, error))
    return TRUE;
  if (!out_of_order)
    return FALSE;
  reader->restart (reader->data);
  g_string_truncate (extra, 0);
  sorted = sort_sections (reader, data, length, source, error);
  return sorted != NULL
         && read_once (reader, sorted->str, sorted->len, source, TRUE, extra, &out_of_order, error);
}
