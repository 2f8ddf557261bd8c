/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a document of the wrong shape is told: where, what was found, what belongs there.
 */

#include "exchange-json-parser.h"

#include <glib/gi18n-lib.h>

/* The path of the value that the parser is about to take, or "" for the document. */
static char *
describe_place (const TmJsonParser *parser)
{
  switch (parser->level)
    {
    case AT_ROWS:
      return g_strdup_printf ("%s[%u]", parser->row.section, parser->row.index);
    case AT_ROW:
      return tm_json_path (&parser->row, (int)parser->member);
    case AT_LIST:
      {
        g_autofree char *path = tm_json_path (&parser->row, (int)parser->member);

        return g_strdup_printf ("%s[%u]", path, parser->row.slots[parser->member].whole);
      }
    case AT_INNER:
      return tm_json_inner_path (&parser->row, parser->member, parser->inner_member);
    case AT_DOCUMENT:
      return g_strdup (parser->reader->sections[parser->section].key);
    case AT_START:
    case AT_END:
    default:
      return g_strdup ("");
    }
}

int
tm_json_fail_at (TmJsonParser *parser, TmExchangeError code, const char *text)
{
  g_autofree char *place = describe_place (parser);

  tm_exchange_fail (&parser->error, code, parser->row.source, place, "%s", text);
  return 0;
}

static const char *
name_found (TmJsonFound found)
{
  switch (found)
    {
    case FOUND_TEXT:
      return _ ("a text");
    case FOUND_NUMBER:
      return _ ("a number");
    case FOUND_TRUTH:
      return _ ("true or false");
    case FOUND_NULL:
      return _ ("null");
    case FOUND_LIST:
      return _ ("a list");
    case FOUND_OBJECT:
    default:
      return _ ("an object");
    }
}

/* Whole sentences, so that each can be translated as one. */
static char *
describe_mismatch (TmJsonFound found, TmJsonType wanted)
{
  const char *name = name_found (found);

  switch (wanted)
    {
    case TM_JSON_TEXT:
      return g_strdup_printf (_ ("found %s where a text belongs; write it in quotation marks, decimals too"),
                              name);
    case TM_JSON_WHOLE:
      return g_strdup_printf (
          _ ("found %s where a whole number belongs; write it without quotation marks, like 4"), name);
    case TM_JSON_TRUTH:
      return g_strdup_printf (_ ("found %s where true or false belongs; write it without quotation marks"),
                              name);
    case TM_JSON_LIST:
      return g_strdup_printf (_ ("found %s where a list of texts belongs; write it like [\"a\", \"b\"]"),
                              name);
    case TM_JSON_OBJECT:
      return g_strdup_printf (_ ("found %s where an object belongs; write it like {…}"), name);
    case TM_JSON_ROWS:
    default:
      return g_strdup_printf (_ ("found %s where a list of objects belongs; write it like [{…}, {…}]"), name);
    }
}

int
tm_json_fail_type (TmJsonParser *parser, TmJsonFound found, TmJsonType wanted)
{
  g_autofree char *text = NULL;

  if (parser->level == AT_START)
    return parser->reader->stranger != NULL
               ? tm_json_fail_at (parser, TM_EXCHANGE_ERROR_NOT_A_TEMPLATE, parser->reader->stranger)
               : tm_json_fail_at (parser, TM_EXCHANGE_ERROR_NOT_A_JOB,
                                  _ ("this is JSON, but no job; open a file that was exported as a job"));
  text = found == FOUND_NULL ? g_strdup (_ ("found null; leave out what is not known"))
                             : describe_mismatch (found, wanted);
  return tm_json_fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE, text);
}

TmJsonType
tm_json_expect_type (const TmJsonParser *parser)
{
  switch (parser->level)
    {
    case AT_DOCUMENT:
      return parser->reader->sections[parser->section].type;
    case AT_ROW:
      return parser->row.shape[parser->member].type;
    case AT_INNER:
      return parser->row.shape[parser->member].inside[parser->inner_member].type;
    case AT_LIST:
      return TM_JSON_TEXT;
    case AT_START:
    case AT_ROWS:
    case AT_END:
    default:
      return TM_JSON_OBJECT;
    }
}

guint
tm_json_line_at (const char *data, gsize offset)
{
  guint line = 1;

  for (const char *at = data; (at = memchr (at, '\n', (gsize)(data + offset - at))) != NULL; at++)
    line++;
  return line;
}

void
tm_json_fail_syntax (const TmJsonParser *parser, gboolean cut_short, GError **error)
{
  gsize at = MIN (tm_json_consumed (parser), parser->length);
  g_autofree char *line
      = g_strdup_printf (_ ("line %u"), tm_json_line_at (parser->data, cut_short ? parser->length : at));
  const char *text = cut_short ? _ ("the file ends too early; part of it is missing, fetch it again")
                     : parser->level == AT_END
                         ? _ ("something follows its end; take it out")
                         : _ ("this is not JSON; look for a missing comma, quotation mark or bracket");

  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_JSON, parser->row.source, line, "%s", text);
}
