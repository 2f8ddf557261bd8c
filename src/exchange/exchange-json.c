/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-json.h"

#include <glib/gi18n-lib.h>
#include <yajl/yajl_parse.h>

#define PROGRESS_STEP ((gsize)1 << 20)

/* Where in the document the parser stands.  The nesting of what is known is fixed (document, rows,
 * row, inner object or list); what is unknown is skipped by counting depth. */
typedef enum { AT_START, AT_DOCUMENT, AT_ROWS, AT_ROW, AT_INNER, AT_LIST, AT_END } Level;

typedef enum { FOUND_TEXT, FOUND_NUMBER, FOUND_TRUTH, FOUND_NULL, FOUND_LIST, FOUND_OBJECT } Found;

/* One member of the document, when they are put in order. */
typedef struct {
  guint section; /* the number of sections: unknown */
  gsize from, to;
} Range;

typedef struct {
  const TmJsonReader *reader;
  const char *data;
  gsize length;
  yajl_handle yajl;
  GString *extra;
  GArray *ranges; /* Range: only looking for the members of the document; NULL: reading */
  gboolean sorted;
  gboolean out_of_order;
  gboolean at_end; /* of the data: offsets mean nothing any more */

  Level level;
  guint depth;
  guint section;
  guint member; /* whose value comes next, in the row */
  guint inner_member;
  guint seen; /* one bit per section */

  gboolean skipping;
  guint skip_depth;
  gsize skip_from;

  TmJsonRow row;
  gsize next_progress;
  GError *error;
} Parser;

const char *
tm_json_text (const TmJsonRow *row, guint member)
{
  return row->slots[member].given ? row->texts->str + row->slots[member].at : "";
}

const char *
tm_json_inner_text (const TmJsonRow *row, guint member)
{
  return row->inner[member].given ? row->texts->str + row->inner[member].at : "";
}

const char *
tm_json_list_text (const TmJsonRow *row, guint index)
{
  return row->texts->str + g_array_index (row->list, gsize, index);
}

char *
tm_json_path (const TmJsonRow *row, int member)
{
  g_autoptr (GString) path = g_string_new (row->section);

  if (row->in_list)
    g_string_append_printf (path, "[%u]", row->index);
  if (member >= 0)
    g_string_append_printf (path, ".%s", row->shape[member].key);
  return g_string_free (g_steal_pointer (&path), FALSE);
}

static guint
find_object_member (const TmJsonMember *shape)
{
  guint i = 0;

  while (shape[i].type != TM_JSON_OBJECT)
    i++;
  return i;
}

char *
tm_json_inner_path (const TmJsonRow *row, guint member)
{
  guint object = find_object_member (row->shape);
  g_autofree char *path = tm_json_path (row, (int)object);

  return g_strconcat (path, ".", row->shape[object].inside[member].key, NULL);
}

/* The path of the value that the parser is about to take, or "" for the document. */
static char *
describe_place (const Parser *parser)
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

        return g_strdup_printf ("%s[%u]", path, parser->row.list->len);
      }
    case AT_INNER:
      return tm_json_inner_path (&parser->row, parser->inner_member);
    case AT_DOCUMENT:
      return g_strdup (parser->reader->sections[parser->section].key);
    case AT_START:
    case AT_END:
    default:
      return g_strdup ("");
    }
}

static int
fail_at (Parser *parser, TmExchangeError code, const char *text)
{
  g_autofree char *place = describe_place (parser);

  tm_exchange_fail (&parser->error, code, parser->row.source, place, "%s", text);
  return 0;
}

static const char *
name_found (Found found)
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

static const char *
name_wanted (TmJsonType wanted)
{
  switch (wanted)
    {
    case TM_JSON_TEXT:
      return _ ("a text belongs; write it in quotation marks, decimals too");
    case TM_JSON_WHOLE:
      return _ ("a whole number belongs; write it without quotation marks, like 4");
    case TM_JSON_TRUTH:
      return _ ("true or false belongs; write it without quotation marks");
    case TM_JSON_LIST:
      return _ ("a list of texts belongs; write it like [\"a\", \"b\"]");
    case TM_JSON_OBJECT:
      return _ ("an object belongs; write it like {…}");
    case TM_JSON_ROWS:
    default:
      return _ ("a list of objects belongs; write it like [{…}, {…}]");
    }
}

static int
fail_type (Parser *parser, Found found, TmJsonType wanted)
{
  g_autofree char *text = NULL;

  if (parser->level == AT_START)
    return fail_at (parser, TM_EXCHANGE_ERROR_NOT_A_JOB,
                    _ ("this is JSON, but no job; open a file that was exported as a job"));
  if (found == FOUND_NULL)
    text = g_strdup (_ ("found null; leave out what is not known"));
  else
    text = g_strdup_printf (_ ("found %s where %s"), name_found (found), name_wanted (wanted));
  return fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE, text);
}

/* The type that the value to come must have. */
static TmJsonType
expect_type (const Parser *parser)
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

static gsize
consumed (const Parser *parser)
{
  return yajl_get_bytes_consumed (parser->yajl);
}

/* Skipping what is unknown. */

/* The offset of the opening quotation mark of the string whose closing one was just read. */
static gsize
find_string_start (const Parser *parser)
{
  gsize at = consumed (parser) - 1;

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

static void
end_skip (Parser *parser)
{
  GString *extra = parser->level == AT_DOCUMENT ? parser->extra
                   : parser->level == AT_ROW    ? parser->row.extra
                                                : parser->row.inner_extra;
  Range range = { parser->section, parser->skip_from, consumed (parser) };

  parser->skipping = FALSE;
  if (parser->ranges != NULL)
    g_array_append_val (parser->ranges, range);
  else
    append_raw (extra, parser->data + range.from, range.to - range.from);
}

static int
begin_skip (Parser *parser)
{
  parser->skipping = TRUE;
  parser->skip_depth = parser->depth;
  parser->skip_from = find_string_start (parser);
  return 1;
}

/* Says that the unknown member @key is kept, and skips it. */
static int
keep_unknown (Parser *parser, const char *key, gsize length)
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
  return begin_skip (parser);
}

/* Rows. */

static void
begin_row (Parser *parser, gboolean in_list)
{
  TmJsonRow *row = &parser->row;

  row->section = parser->reader->sections[parser->section].key;
  row->shape = parser->reader->sections[parser->section].inside;
  row->in_list = in_list;
  memset (row->slots, 0, sizeof row->slots);
  memset (row->inner, 0, sizeof row->inner);
  g_string_truncate (row->texts, 0);
  g_string_truncate (row->extra, 0);
  g_string_truncate (row->inner_extra, 0);
  g_array_set_size (row->list, 0);
}

static int
report_progress (Parser *parser)
{
  const TmJsonReader *reader = parser->reader;
  gsize at = consumed (parser);

  if (reader->progress == NULL || at < parser->next_progress)
    return 1;
  parser->next_progress = at + PROGRESS_STEP;
  if (reader->progress ((double)at / (double)parser->length, reader->progress_data))
    return 1;
  tm_exchange_fail (&parser->error, TM_EXCHANGE_ERROR_CANCELLED, parser->row.source, NULL,
                    _ ("stopped; nothing was read"));
  return 0;
}

static int
finish_row (Parser *parser)
{
  const TmJsonReader *reader = parser->reader;

  if (!reader->take (&parser->row, parser->section, reader->data, &parser->error))
    return 0;
  parser->row.index++;
  return report_progress (parser);
}

/* Texts. */

static gboolean
is_inside (const Parser *parser, const char *text)
{
  return text >= parser->data && text < parser->data + parser->length;
}

/* Half of a UTF-16 pair in @raw, a JSON string with its escapes, has no character. */
static gboolean
has_half_pair (const char *raw, gsize length)
{
  gboolean high = FALSE;

  for (gsize i = 0; i < length;)
    {
      gboolean escaped = raw[i] == '\\' && i + 5 < length && raw[i + 1] == 'u';
      gboolean surrogate
          = escaped && g_ascii_xdigit_value (raw[i + 2]) == 13 && g_ascii_xdigit_value (raw[i + 3]) >= 8;
      gboolean low = surrogate && g_ascii_xdigit_value (raw[i + 3]) >= 12;

      if (high != low)
        return TRUE;
      high = surrogate && !low;
      i += escaped ? 6 : raw[i] == '\\' ? 2 : 1;
    }
  return high;
}

/* Only a text with escapes can hold what no text of the model can: U+0000, and half a pair. */
static gboolean
check_escapes (Parser *parser, const char *text, gsize length)
{
  gsize start = find_string_start (parser) + 1;

  if (memchr (text, '\0', length) != NULL)
    return fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE, _ ("holds the character U+0000; take it out")) != 0;
  if (has_half_pair (parser->data + start, consumed (parser) - 1 - start))
    return fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                    _ ("holds half of a \\u pair; write the character itself"))
           != 0;
  return TRUE;
}

static gsize
store_text (TmJsonRow *row, const char *text, gsize length)
{
  gsize at = row->texts->len;

  g_string_append_len (row->texts, text, (gssize)length);
  g_string_append_c (row->texts, '\0');
  return at;
}

/* Where the value that comes goes to. */
static TmJsonSlot *
find_slot (Parser *parser)
{
  if (parser->level == AT_INNER)
    return &parser->row.inner[parser->inner_member];
  return &parser->row.slots[parser->level == AT_ROW ? parser->member : 0];
}

/* A value of the document itself is complete as soon as it is there. */
static int
finish_value (Parser *parser)
{
  return parser->level == AT_DOCUMENT ? finish_row (parser) : 1;
}

/* Prepares for a scalar: 1 go on, 0 stop, -1 it was skipped. */
static int
begin_value (Parser *parser, Found found, TmJsonType type)
{
  if (parser->skipping)
    {
      if (parser->depth == parser->skip_depth)
        end_skip (parser);
      return -1;
    }
  if (expect_type (parser) != type || parser->level == AT_START || parser->level == AT_ROWS)
    return fail_type (parser, found, expect_type (parser));
  if (parser->level == AT_DOCUMENT)
    begin_row (parser, FALSE);
  return 1;
}

static int
null_cb (void *data)
{
  Parser *parser = data;

  if (parser->skipping)
    return begin_value (parser, FOUND_NULL, TM_JSON_TEXT) != 0;
  return fail_type (parser, FOUND_NULL, TM_JSON_TEXT);
}

static int
truth_cb (void *data, int truth)
{
  Parser *parser = data;
  int go_on = begin_value (parser, FOUND_TRUTH, TM_JSON_TRUTH);
  TmJsonSlot *slot;

  if (go_on != 1)
    return go_on != 0;
  slot = find_slot (parser);
  slot->given = TRUE;
  slot->truth = truth != 0;
  return finish_value (parser);
}

static int
number_cb (void *data, const char *text, size_t length)
{
  Parser *parser = data;
  TmJsonSlot *slot;
  guint whole = 0;
  int go_on;

  /* A number that the end of the data cuts off stands in a document that is cut off. */
  if (parser->at_end && parser->level != AT_START)
    return 1;
  go_on = begin_value (parser, FOUND_NUMBER, TM_JSON_WHOLE);
  if (go_on != 1)
    return go_on != 0;
  for (gsize i = 0; i < length; i++)
    {
      if (!g_ascii_isdigit (text[i]) || i == 9)
        return fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                        _ ("this is no whole number from 0 to 999999999; write it like 4"));
      whole = whole * 10 + (guint)(text[i] - '0');
    }
  slot = find_slot (parser);
  slot->given = TRUE;
  slot->whole = whole;
  return finish_value (parser);
}

static int
add_to_list (Parser *parser, const char *text, gsize length)
{
  gsize at;

  if (parser->row.list->len >= TM_JSON_MAX_LIST)
    return fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                    _ ("the list is too long; keep it under 4096 texts"));
  at = store_text (&parser->row, text, length);
  g_array_append_val (parser->row.list, at);
  return 1;
}

static int
string_cb (void *data, const unsigned char *bytes, size_t length)
{
  Parser *parser = data;
  const char *text = (const char *)bytes;
  int go_on = begin_value (parser, FOUND_TEXT, TM_JSON_TEXT);
  TmJsonSlot *slot;

  if (go_on != 1)
    return go_on != 0;
  if (length > 0 && !is_inside (parser, text) && !check_escapes (parser, text, length))
    return 0;
  if (parser->level == AT_LIST)
    return add_to_list (parser, text, length);
  slot = find_slot (parser);
  slot->given = TRUE;
  slot->at = store_text (&parser->row, text, length);
  return finish_value (parser);
}

/* Keys. */

/* Files that we wrote hold the members in the order of the shape, so the search starts at @hint. */
static gboolean
find_member (const TmJsonMember *members, guint hint, const char *key, gsize length, guint *found)
{
  for (guint pass = 0; pass < 2; pass++)
    {
      for (guint i = pass == 0 ? hint : 0; members[i].key != NULL; i++)
        {
          if (strlen (members[i].key) == length && memcmp (members[i].key, key, length) == 0)
            {
              *found = i;
              return TRUE;
            }
        }
    }
  return FALSE;
}

static guint
count_sections (const TmJsonReader *reader)
{
  guint n = 0;

  while (reader->sections[n].key != NULL)
    n++;
  return n;
}

/* The first required section before @section that has not come yet, or @section. */
static guint
find_missing (const Parser *parser, guint section)
{
  guint i = 0;

  while (i < MIN (section, parser->reader->n_required) && (parser->seen & (1u << i)) != 0)
    i++;
  return i < MIN (section, parser->reader->n_required) ? i : section;
}

static int
fail_twice (Parser *parser)
{
  return fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE, _ ("this member stands twice; keep one of them"));
}

static int
enter_section (Parser *parser, guint section)
{
  guint bit = 1u << section;
  guint missing = find_missing (parser, section);

  parser->section = section;
  parser->row.section = parser->reader->sections[section].key;
  parser->row.index = 0;
  if ((parser->seen & bit) != 0)
    return fail_twice (parser);
  if (missing != section && parser->sorted)
    {
      parser->reader->missing (parser->row.source, missing, &parser->error);
      return 0;
    }
  if (missing != section || parser->seen > bit)
    {
      parser->out_of_order = TRUE;
      return 0;
    }
  parser->seen |= bit;
  return 1;
}

static int
take_document_key (Parser *parser, const char *key, gsize length)
{
  guint section = count_sections (parser->reader);
  gboolean known = find_member (parser->reader->sections, 0, key, length, &section);

  if (parser->ranges == NULL)
    return known ? enter_section (parser, section) : keep_unknown (parser, key, length);
  parser->section = section;
  return begin_skip (parser);
}

static int
take_row_key (Parser *parser, const char *key, gsize length)
{
  if (!find_member (parser->row.shape, parser->member, key, length, &parser->member))
    return keep_unknown (parser, key, length);
  if (parser->row.slots[parser->member].given)
    return fail_twice (parser);
  return 1;
}

static int
take_inner_key (Parser *parser, const char *key, gsize length)
{
  const TmJsonMember *inside = parser->row.shape[parser->member].inside;

  if (!find_member (inside, parser->inner_member, key, length, &parser->inner_member))
    return keep_unknown (parser, key, length);
  if (parser->row.inner[parser->inner_member].given)
    return fail_twice (parser);
  return 1;
}

static int
key_cb (void *data, const unsigned char *bytes, size_t length)
{
  Parser *parser = data;
  const char *key = (const char *)bytes;

  if (parser->skipping)
    return 1;
  if (parser->level == AT_DOCUMENT)
    return take_document_key (parser, key, length);
  if (parser->level == AT_ROW)
    return take_row_key (parser, key, length);
  return take_inner_key (parser, key, length);
}

/* Objects and lists. */

static int
go_deeper (Parser *parser)
{
  if (++parser->depth <= TM_JSON_MAX_DEPTH)
    return 1;
  tm_exchange_fail (&parser->error, TM_EXCHANGE_ERROR_TOO_DEEP, parser->row.source, NULL,
                    _ ("nested deeper than %d levels; a job never is: this file was made wrong"),
                    TM_JSON_MAX_DEPTH);
  return 0;
}

static int
open_row (Parser *parser, gboolean in_list)
{
  begin_row (parser, in_list);
  parser->level = AT_ROW;
  parser->member = 0;
  return 1;
}

static int
open_object_cb (void *data)
{
  Parser *parser = data;

  if (!go_deeper (parser))
    return 0;
  if (parser->skipping)
    return 1;
  if (expect_type (parser) != TM_JSON_OBJECT)
    return fail_type (parser, FOUND_OBJECT, expect_type (parser));
  if (parser->level == AT_ROWS || parser->level == AT_DOCUMENT)
    return open_row (parser, parser->level == AT_ROWS);
  if (parser->level == AT_ROW)
    {
      parser->row.slots[parser->member].given = TRUE;
      parser->inner_member = 0;
      parser->level = AT_INNER;
      return 1;
    }
  parser->level = AT_DOCUMENT;
  return 1;
}

static int
open_list_cb (void *data)
{
  Parser *parser = data;

  if (!go_deeper (parser))
    return 0;
  if (parser->skipping)
    return 1;
  if (parser->level == AT_DOCUMENT && expect_type (parser) == TM_JSON_ROWS)
    {
      parser->level = AT_ROWS;
      return 1;
    }
  if (parser->level == AT_ROW && expect_type (parser) == TM_JSON_LIST)
    {
      parser->row.slots[parser->member].given = TRUE;
      parser->level = AT_LIST;
      return 1;
    }
  return fail_type (parser, FOUND_LIST, expect_type (parser));
}

/* Leaves one level; TRUE when it was one that is skipped. */
static gboolean
go_up (Parser *parser)
{
  parser->depth--;
  if (!parser->skipping)
    return FALSE;
  if (parser->depth == parser->skip_depth)
    end_skip (parser);
  return TRUE;
}

static int
close_object_cb (void *data)
{
  Parser *parser = data;

  if (go_up (parser))
    return 1;
  if (parser->level == AT_ROW)
    {
      parser->level = parser->row.in_list ? AT_ROWS : AT_DOCUMENT;
      return finish_row (parser);
    }
  parser->level = parser->level == AT_INNER ? AT_ROW : AT_END;
  return 1;
}

static int
close_list_cb (void *data)
{
  Parser *parser = data;

  if (!go_up (parser))
    parser->level = parser->level == AT_LIST ? AT_ROW : AT_DOCUMENT;
  return 1;
}

/* The whole document. */

static guint
line_at (const char *data, gsize offset)
{
  guint line = 1;

  for (const char *at = data; (at = memchr (at, '\n', (gsize)(data + offset - at))) != NULL; at++)
    line++;
  return line;
}

static void
fail_json (const Parser *parser, gboolean cut_short, GError **error)
{
  gsize at = MIN (consumed (parser), parser->length);
  g_autofree char *line
      = g_strdup_printf (_ ("line %u"), line_at (parser->data, cut_short ? parser->length : at));
  const char *text = cut_short ? _ ("the file ends too early; part of it is missing, fetch it again")
                     : parser->level == AT_END
                         ? _ ("something follows the end of the job; take it out")
                         : _ ("this is not JSON; look for a missing comma, quotation mark or bracket");

  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_JSON, parser->row.source, line, "%s", text);
}

static const yajl_callbacks callbacks = {
  .yajl_null = null_cb,
  .yajl_boolean = truth_cb,
  .yajl_number = number_cb,
  .yajl_string = string_cb,
  .yajl_map_key = key_cb,
  .yajl_start_map = open_object_cb,
  .yajl_end_map = close_object_cb,
  .yajl_start_array = open_list_cb,
  .yajl_end_array = close_list_cb,
};

static gboolean
finish_document (Parser *parser, GError **error)
{
  guint missing = find_missing (parser, parser->reader->n_required);

  if (parser->ranges != NULL || missing == parser->reader->n_required)
    return TRUE;
  parser->reader->missing (parser->row.source, missing, error);
  return FALSE;
}

/* Runs the parser over its data.  On FALSE with no error the sections are out of order. */
static gboolean
run (Parser *parser, GError **error)
{
  yajl_status status;
  gboolean cut_short = FALSE;

  parser->yajl = yajl_alloc (&callbacks, NULL, parser);
  yajl_config (parser->yajl, yajl_dont_validate_strings, 1); /* the caller has, and more strictly */
  parser->level = AT_START;
  status = yajl_parse (parser->yajl, (const unsigned char *)parser->data, parser->length);
  if (status == yajl_status_ok)
    {
      parser->at_end = TRUE;
      status = yajl_complete_parse (parser->yajl);
      cut_short = status == yajl_status_error;
    }
  if (parser->error != NULL)
    g_propagate_error (error, g_steal_pointer (&parser->error));
  else if (status == yajl_status_error)
    fail_json (parser, cut_short, error);
  yajl_free (parser->yajl);
  parser->yajl = NULL;
  return status == yajl_status_ok && finish_document (parser, error);
}

static void
init_parser (Parser *parser, const TmJsonReader *reader, const char *source, const char *data, gsize length)
{
  *parser = (Parser) { .reader = reader, .data = data, .length = length };
  parser->row.source = source;
  parser->row.texts = g_string_new (NULL);
  parser->row.extra = g_string_new (NULL);
  parser->row.inner_extra = g_string_new (NULL);
  parser->row.list = g_array_new (FALSE, FALSE, sizeof (gsize));
}

static void
clear_parser (Parser *parser)
{
  g_string_free (parser->row.texts, TRUE);
  g_string_free (parser->row.extra, TRUE);
  g_string_free (parser->row.inner_extra, TRUE);
  g_array_unref (parser->row.list);
}

/* By section; what is of one section, or unknown, keeps its order. */
static int
compare_ranges_cb (gconstpointer a, gconstpointer b)
{
  const Range *left = a;
  const Range *right = b;

  if (left->section != right->section)
    return left->section < right->section ? -1 : 1;
  return (left->from > right->from) - (left->from < right->from);
}

/* The same document with its sections in order; NULL with @error when it is not JSON. */
static GString *
sort_sections (const TmJsonReader *reader, const char *data, gsize length, const char *source, GError **error)
{
  g_autoptr (GArray) ranges = g_array_new (FALSE, FALSE, sizeof (Range));
  GString *sorted = NULL;
  Parser parser;

  init_parser (&parser, reader, source, data, length);
  parser.ranges = ranges;
  if (run (&parser, error))
    {
      g_array_sort (ranges, compare_ranges_cb);
      sorted = g_string_sized_new (length + 16);
      g_string_append_c (sorted, '{');
      for (guint i = 0; i < ranges->len; i++)
        {
          const Range *range = &g_array_index (ranges, Range, i);

          g_string_append (sorted, i == 0 ? "" : ",");
          g_string_append_len (sorted, data + range->from, (gssize)(range->to - range->from));
        }
      g_string_append_c (sorted, '}');
    }
  clear_parser (&parser);
  return sorted;
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
  if (g_utf8_validate_len (data, length, &end))
    return TRUE;
  line = g_strdup_printf (_ ("line %u"), line_at (data, (gsize)(end - data)));
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
  Parser parser;
  gboolean done;

  init_parser (&parser, reader, source, data, length);
  parser.sorted = sorted;
  parser.extra = extra;
  done = run (&parser, error);
  *out_of_order = parser.out_of_order;
  clear_parser (&parser);
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
