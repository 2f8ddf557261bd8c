/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Members that the reader does not know: passed over, and kept byte for byte.
 */

#include "exchange-json-parser.h"

gsize
tm_json_string_start (const TmJsonParser *parser)
{
  gsize at = tm_json_consumed (parser) - 1;

  for (;;)
    {
      gsize backslashes = 0;

      do
        at--;
      while (parser->data[at] != '"');
      while (backslashes < at && parser->data[at - 1 - backslashes] == '\\')
        backslashes++;
      if (backslashes % 2 == 0)
        return at;
    }
}

static void
append_raw (GString *extra, const char *raw, gsize length)
{
  if (extra->len > 0)
    g_string_append (extra, ",\n");
  g_string_append_len (extra, raw, (gssize)length);
}

void
tm_json_end_skip (TmJsonParser *parser)
{
  GString *extra = parser->level == AT_DOCUMENT ? parser->extra
                   : parser->level == AT_ROW    ? parser->row.extra
                                                : parser->row.inner_extra[parser->inner_object];
  TmJsonRange range = { parser->section, parser->skip_from, tm_json_consumed (parser) };

  parser->skipping = FALSE;
  if (parser->ranges != NULL)
    g_array_append_val (parser->ranges, range);
  else
    append_raw (extra, parser->data + range.from, range.to - range.from);
}

int
tm_json_begin_skip (TmJsonParser *parser)
{
  parser->skipping = TRUE;
  parser->skip_depth = parser->depth;
  parser->skip_from = tm_json_string_start (parser);
  return 1;
}

int
tm_json_keep_unknown (TmJsonParser *parser, const char *key, gsize length)
{
  g_autoptr (GString) path = g_string_new (NULL);

  if (parser->level != AT_DOCUMENT)
    {
      g_autofree char *owner = parser->level == AT_ROW ? tm_json_path (&parser->row, -1)
                                                       : tm_json_path (&parser->row, (int)parser->member);

      g_string_append_printf (path, "%s.", owner);
    }
  g_string_append_len (path, key, (gssize)length);
  parser->reader->unknown (path->str, parser->reader->data);
  return tm_json_begin_skip (parser);
}
