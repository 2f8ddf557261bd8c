/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The callbacks of the streaming parser: the state, and the row that is being gathered.
 */

#include "exchange-json-parser.h"

#include <glib/gi18n-lib.h>

#define PROGRESS_STEP ((gsize)1 << 20)

gsize
tm_json_consumed (const TmJsonParser *parser)
{
  return yajl_get_bytes_consumed (parser->yajl);
}

/* Rows. */

static void
begin_row (TmJsonParser *parser, gboolean in_list)
{
  TmJsonRow *row = &parser->row;

  row->section = parser->reader->sections[parser->section].key;
  row->shape = parser->reader->sections[parser->section].inside;
  row->in_list = in_list;
  memset (row->slots, 0, sizeof row->slots);
  memset (row->inner, 0, sizeof row->inner);
  g_string_truncate (row->texts, 0);
  g_string_truncate (row->extra, 0);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    g_string_truncate (row->inner_extra[i], 0);
  g_array_set_size (row->lists, 0);
}

static int
report_progress (TmJsonParser *parser)
{
  const TmJsonReader *reader = parser->reader;
  gsize at = tm_json_consumed (parser);

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
finish_row (TmJsonParser *parser)
{
  const TmJsonReader *reader = parser->reader;

  if (!reader->take (&parser->row, parser->section, reader->data, &parser->error))
    return 0;
  parser->row.index++;
  return report_progress (parser);
}

/* Texts. */

static gboolean
is_inside (const TmJsonParser *parser, const char *text)
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
check_escapes (TmJsonParser *parser, const char *text, gsize length)
{
  gsize start = tm_json_string_start (parser) + 1;

  if (memchr (text, '\0', length) != NULL)
    return tm_json_fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                            _ ("holds the character U+0000; take it out"))
           != 0;
  if (has_half_pair (parser->data + start, tm_json_consumed (parser) - 1 - start))
    return tm_json_fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
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
find_slot (TmJsonParser *parser)
{
  if (parser->level == AT_INNER)
    return &parser->row.inner[parser->inner_object][parser->inner_member];
  return &parser->row.slots[parser->level == AT_ROW ? parser->member : 0];
}

/* A value of the document itself is complete as soon as it is there. */
static int
finish_value (TmJsonParser *parser)
{
  return parser->level == AT_DOCUMENT ? finish_row (parser) : 1;
}

/* Prepares for a scalar: 1 go on, 0 stop, -1 it was skipped. */
static int
begin_value (TmJsonParser *parser, TmJsonFound found, TmJsonType type)
{
  if (parser->skipping)
    {
      if (parser->depth == parser->skip_depth)
        tm_json_end_skip (parser);
      return -1;
    }
  if (tm_json_expect_type (parser) != type || parser->level == AT_START || parser->level == AT_ROWS)
    return tm_json_fail_type (parser, found, tm_json_expect_type (parser));
  if (parser->level == AT_DOCUMENT)
    begin_row (parser, FALSE);
  return 1;
}

static int
null_cb (void *data)
{
  TmJsonParser *parser = data;

  if (parser->skipping)
    return begin_value (parser, FOUND_NULL, TM_JSON_TEXT) != 0;
  return tm_json_fail_type (parser, FOUND_NULL, TM_JSON_TEXT);
}

static int
truth_cb (void *data, int truth)
{
  TmJsonParser *parser = data;
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
  TmJsonParser *parser = data;
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
        return tm_json_fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                                _ ("this is no whole number from 0 to 999999999; write it like 4"));
      whole = whole * 10 + (guint)(text[i] - '0');
    }
  slot = find_slot (parser);
  slot->given = TRUE;
  slot->whole = whole;
  return finish_value (parser);
}

static int
add_to_list (TmJsonParser *parser, const char *text, gsize length)
{
  TmJsonSlot *slot = &parser->row.slots[parser->member];
  gsize at;

  if (slot->whole >= TM_JSON_MAX_LIST)
    return tm_json_fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                            _ ("the list is too long; keep it under 4096 texts"));
  at = store_text (&parser->row, text, length);
  g_array_append_val (parser->row.lists, at);
  slot->whole++;
  return 1;
}

static int
string_cb (void *data, const unsigned char *bytes, size_t length)
{
  TmJsonParser *parser = data;
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
find_missing (const TmJsonParser *parser, guint section)
{
  guint i = 0;

  while (i < MIN (section, parser->reader->n_required) && (parser->seen & (1u << i)) != 0)
    i++;
  return i < MIN (section, parser->reader->n_required) ? i : section;
}

static int
fail_twice (TmJsonParser *parser)
{
  return tm_json_fail_at (parser, TM_EXCHANGE_ERROR_BAD_VALUE,
                          _ ("this member stands twice; keep one of them"));
}

static int
enter_section (TmJsonParser *parser, guint section)
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
take_document_key (TmJsonParser *parser, const char *key, gsize length)
{
  guint section = count_sections (parser->reader);
  gboolean known = find_member (parser->reader->sections, 0, key, length, &section);

  if (parser->ranges == NULL)
    return known ? enter_section (parser, section) : tm_json_keep_unknown (parser, key, length);
  parser->section = section;
  return tm_json_begin_skip (parser);
}

static int
take_row_key (TmJsonParser *parser, const char *key, gsize length)
{
  if (!find_member (parser->row.shape, parser->member, key, length, &parser->member))
    return tm_json_keep_unknown (parser, key, length);
  if (parser->row.slots[parser->member].given)
    return fail_twice (parser);
  return 1;
}

static int
take_inner_key (TmJsonParser *parser, const char *key, gsize length)
{
  const TmJsonMember *inside = parser->row.shape[parser->member].inside;

  if (!find_member (inside, parser->inner_member, key, length, &parser->inner_member))
    return tm_json_keep_unknown (parser, key, length);
  if (parser->row.inner[parser->inner_object][parser->inner_member].given)
    return fail_twice (parser);
  return 1;
}

static int
key_cb (void *data, const unsigned char *bytes, size_t length)
{
  TmJsonParser *parser = data;
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
go_deeper (TmJsonParser *parser)
{
  if (++parser->depth <= TM_JSON_MAX_DEPTH)
    return 1;
  tm_exchange_fail (&parser->error, TM_EXCHANGE_ERROR_TOO_DEEP, parser->row.source, NULL,
                    _ ("nested deeper than %d levels; a job never is: this file was made wrong"),
                    TM_JSON_MAX_DEPTH);
  return 0;
}

static int
open_row (TmJsonParser *parser, gboolean in_list)
{
  begin_row (parser, in_list);
  parser->level = AT_ROW;
  parser->member = 0;
  return 1;
}

static int
open_object_cb (void *data)
{
  TmJsonParser *parser = data;

  if (!go_deeper (parser))
    return 0;
  if (parser->skipping)
    return 1;
  if (tm_json_expect_type (parser) != TM_JSON_OBJECT)
    return tm_json_fail_type (parser, FOUND_OBJECT, tm_json_expect_type (parser));
  if (parser->level == AT_ROWS || parser->level == AT_DOCUMENT)
    return open_row (parser, parser->level == AT_ROWS);
  if (parser->level == AT_ROW)
    {
      parser->row.slots[parser->member].given = TRUE;
      parser->inner_object = tm_json_object_index (parser->row.shape, parser->member);
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
  TmJsonParser *parser = data;

  if (!go_deeper (parser))
    return 0;
  if (parser->skipping)
    return 1;
  if (parser->level == AT_DOCUMENT && tm_json_expect_type (parser) == TM_JSON_ROWS)
    {
      parser->level = AT_ROWS;
      return 1;
    }
  if (parser->level == AT_ROW && tm_json_expect_type (parser) == TM_JSON_LIST)
    {
      parser->row.slots[parser->member].given = TRUE;
      parser->row.slots[parser->member].at = parser->row.lists->len;
      parser->level = AT_LIST;
      return 1;
    }
  return tm_json_fail_type (parser, FOUND_LIST, tm_json_expect_type (parser));
}

/* Leaves one level; TRUE when it was one that is skipped. */
static gboolean
go_up (TmJsonParser *parser)
{
  parser->depth--;
  if (!parser->skipping)
    return FALSE;
  if (parser->depth == parser->skip_depth)
    tm_json_end_skip (parser);
  return TRUE;
}

static int
close_object_cb (void *data)
{
  TmJsonParser *parser = data;

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
  TmJsonParser *parser = data;

  if (!go_up (parser))
    parser->level = parser->level == AT_LIST ? AT_ROW : AT_DOCUMENT;
  return 1;
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
finish_document (TmJsonParser *parser, GError **error)
{
  guint missing = find_missing (parser, parser->reader->n_required);

  if (parser->ranges != NULL || missing == parser->reader->n_required)
    return TRUE;
  parser->reader->missing (parser->row.source, missing, error);
  return FALSE;
}

gboolean
tm_json_parser_run (TmJsonParser *parser, GError **error)
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
    tm_json_fail_syntax (parser, cut_short, error);
  yajl_free (parser->yajl);
  parser->yajl = NULL;
  return status == yajl_status_ok && finish_document (parser, error);
}

void
tm_json_parser_init (TmJsonParser *parser, const TmJsonReader *reader, const char *source, const char *data,
                     gsize length)
{
  *parser = (TmJsonParser) { .reader = reader, .data = data, .length = length };
  parser->row.source = source;
  parser->row.texts = g_string_new (NULL);
  parser->row.extra = g_string_new (NULL);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    parser->row.inner_extra[i] = g_string_new (NULL);
  parser->row.lists = g_array_new (FALSE, FALSE, sizeof (gsize));
}

void
tm_json_parser_clear (TmJsonParser *parser)
{
  g_string_free (parser->row.texts, TRUE);
  g_string_free (parser->row.extra, TRUE);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    g_string_free (parser->row.inner_extra[i], TRUE);
  g_array_unref (parser->row.lists);
}
