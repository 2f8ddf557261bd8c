/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-csv.h"

#include <glib/gi18n-lib.h>

#define SNIFFED_ROWS    5
#define BYTE_ORDER_MARK "\xef\xbb\xbf"

typedef struct {
  const char *at;
  const char *end;
  guint line;
  char separator;
} Cursor;

static void
free_row (gpointer data)
{
  TmCsvRow *row = data;

  g_ptr_array_unref (row->cells);
  g_free (row);
}

/* Encodings. */

static char *
read_utf16 (const char *text, gsize length, gsize *out_length)
{
  gsize n = length / 2 - 1;
  gboolean big = (guchar)text[0] == 0xfe;
  g_autofree gunichar2 *units = g_new (gunichar2, n + 1);
  glong written = 0;
  char *utf8;

  for (gsize i = 0; i < n; i++)
    {
      guint first = (guchar)text[2 + 2 * i];
      guint second = (guchar)text[3 + 2 * i];

      units[i] = (gunichar2)(big ? first << 8 | second : second << 8 | first);
    }
  utf8 = g_utf16_to_utf8 (units, (glong)n, NULL, &written, NULL);
  *out_length = (gsize)written;
  return utf8;
}

static gboolean
has_utf16_mark (const char *text, gsize length)
{
  return length >= 2 && (memcmp (text, "\xff\xfe", 2) == 0 || memcmp (text, "\xfe\xff", 2) == 0);
}

static guint
count_lines (const char *from, const char *to)
{
  guint line = 1;

  for (; from < to; from++)
    line += *from == '\n';
  return line;
}

static void
fail_encoding (const char *text, const char *bad, const char *place, GError **error)
{
  g_autofree char *line = g_strdup_printf (_ ("line %u"), count_lines (text, bad));

  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_TEXT, place, line,
                    _ ("the byte 0x%02X is not UTF-8 text; save the table from the spreadsheet as CSV UTF-8"),
                    (guint)(guchar)*bad);
}

/* The text as valid UTF-8 without a byte order mark; NULL with @error. */
static char *
decode (const char *text, gsize length, const char *place, gsize *out_length, GError **error)
{
  const char *end;
  char *utf8;

  if (length > TM_EXCHANGE_MAX_BYTES)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, place, NULL,
                        _ ("larger than a table may be (96 MiB); split it"));
      return NULL;
    }
  if (has_utf16_mark (text, length))
    {
      utf8 = read_utf16 (text, length, out_length);
      if (utf8 == NULL)
        tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_TEXT, place, NULL,
                          _ ("is damaged UTF-16 text; save the table from the spreadsheet as CSV UTF-8"));
      return utf8;
    }
  if (length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    {
      text += 3;
      length -= 3;
    }
  if (!g_utf8_validate_len (text, length, &end))
    {
      fail_encoding (text, end, place, error);
      return NULL;
    }
  *out_length = length;
  return g_strndup (text, length);
}

/* Rows. */

static gboolean
at_line_end (const Cursor *cursor)
{
  return cursor->at == cursor->end || *cursor->at == '\n' || *cursor->at == '\r';
}

/* Takes a quoted part; FALSE when it is not closed. */
static gboolean
read_quoted (Cursor *cursor, GString *cell)
{
  for (cursor->at++; cursor->at < cursor->end; cursor->at++)
    {
      if (*cursor->at == '"')
        {
          cursor->at++;
          if (cursor->at == cursor->end || *cursor->at != '"')
            return TRUE;
        }
      if (*cursor->at == '\n')
        cursor->line++;
      g_string_append_c (cell, *cursor->at);
    }
  return FALSE;
}

static gboolean
read_cell (Cursor *cursor, GString *cell)
{
  g_string_truncate (cell, 0);
  while (!at_line_end (cursor) && *cursor->at == ' ')
    cursor->at++;
  if (!at_line_end (cursor) && *cursor->at == '"' && !read_quoted (cursor, cell))
    return FALSE;
  while (!at_line_end (cursor) && *cursor->at != cursor->separator)
    g_string_append_c (cell, *cursor->at++);
  return TRUE;
}

static void
skip_line_end (Cursor *cursor)
{
  if (cursor->at < cursor->end && *cursor->at == '\r')
    cursor->at++;
  if (cursor->at < cursor->end && *cursor->at == '\n')
    cursor->at++;
  cursor->line++;
}

/* The next row, blank or not; NULL when a quotation mark is not closed. */
static TmCsvRow *
read_row (Cursor *cursor)
{
  g_autoptr (GString) cell = g_string_new (NULL);
  TmCsvRow *row = g_new0 (TmCsvRow, 1);

  row->line = cursor->line;
  row->cells = g_ptr_array_new_with_free_func (g_free);
  for (;;)
    {
      if (!read_cell (cursor, cell))
        {
          free_row (row);
          return NULL;
        }
      g_ptr_array_add (row->cells, g_strstrip (g_strdup (cell->str)));
      if (at_line_end (cursor))
        break;
      cursor->at++;
    }
  skip_line_end (cursor);
  return row;
}

static gboolean
is_blank (const TmCsvRow *row)
{
  for (guint i = 0; i < row->cells->len; i++)
    {
      if (*(const char *)g_ptr_array_index (row->cells, i) != '\0')
        return FALSE;
    }
  return TRUE;
}

/* How many cells each of the first rows has when cut at @separator; 0 when they differ. */
static guint
count_columns (Cursor cursor, char separator)
{
  guint columns = 0;

  cursor.separator = separator;
  for (guint i = 0; i < SNIFFED_ROWS && cursor.at < cursor.end;)
    {
      TmCsvRow *row = read_row (&cursor);
      guint found = row != NULL ? row->cells->len : 0;
      gboolean counts = row != NULL && !is_blank (row);

      g_clear_pointer (&row, free_row);
      if (found == 0)
        return 0;
      if (counts && columns > 0 && found != columns)
        return 0;
      if (counts)
        {
          columns = found;
          i++;
        }
    }
  return columns;
}

/* "sep=;" on the first line is a spreadsheet's own note of its separator. */
static gboolean
take_note_of_separator (Cursor *cursor)
{
  gsize left = (gsize)(cursor->end - cursor->at);

  if (left < 5 || g_ascii_strncasecmp (cursor->at, "sep=", 4) != 0 || strchr (",;\t", cursor->at[4]) == NULL)
    return FALSE;
  cursor->separator = cursor->at[4];
  cursor->at += 5;
  skip_line_end (cursor);
  return TRUE;
}

/* Where no separator cuts all rows alike, the one that stands in the first row. */
static char
choose_separator (const Cursor *cursor)
{
  static const char separators[] = "\t;,";
  const char *line_end = cursor->at;

  for (const char *separator = separators; *separator != '\0'; separator++)
    {
      if (count_columns (*cursor, *separator) > 1)
        return *separator;
    }
  while (line_end < cursor->end && *line_end != '\n')
    line_end++;
  for (const char *separator = separators; *separator != '\0'; separator++)
    {
      if (memchr (cursor->at, *separator, (gsize)(line_end - cursor->at)) != NULL)
        return *separator;
    }
  return ',';
}

GPtrArray *
tm_csv_read (const char *text, gsize length, const char *place, GError **error)
{
  gsize utf8_length = 0;
  g_autofree char *utf8 = decode (text, length, place, &utf8_length, error);
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (free_row);
  Cursor cursor = { utf8, utf8 + utf8_length, 1, ',' };

  if (utf8 == NULL)
    return NULL;
  if (!take_note_of_separator (&cursor))
    cursor.separator = choose_separator (&cursor);
  while (cursor.at < cursor.end)
    {
      guint line = cursor.line;
      TmCsvRow *row = read_row (&cursor);

      if (row == NULL)
        {
          g_autofree char *where = g_strdup_printf (_ ("line %u"), line);

          tm_exchange_fail (error, TM_EXCHANGE_ERROR_BAD_VALUE, place, where,
                            _ ("a quotation mark opens a cell and none closes it; add the second one"));
          return NULL;
        }
      if (is_blank (row))
        free_row (row);
      else
        g_ptr_array_add (rows, row);
    }
  return g_steal_pointer (&rows);
}

/* Writing. */

static void
put_cell (GString *out, const char *guard, const char *text)
{
  gboolean starts_line
      = out->len == 0 || out->str[out->len - 1] == '\n' || g_str_equal (out->str, BYTE_ORDER_MARK);
  gboolean quoted = *guard != '\0' || (starts_line && *text == '\0') || strpbrk (text, ",\"\r\n") != NULL;

  if (!starts_line)
    g_string_append_c (out, ',');
  if (!quoted)
    {
      g_string_append (out, text);
      return;
    }
  g_string_append_c (out, '"');
  g_string_append (out, guard);
  for (; *text != '\0'; text++)
    {
      if (*text == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *text);
    }
  g_string_append_c (out, '"');
}

void
tm_csv_put_number (GString *out, const char *number)
{
  put_cell (out, "", number);
}

/* A sign, digits and at most one point: no spreadsheet makes more of it than the number that it is. */
static gboolean
is_plain_number (const char *text)
{
  gboolean any = FALSE, point = FALSE;

  for (const char *at = text + (*text == '+' || *text == '-'); *at != '\0'; at++)
    {
      if (*at == '.' && !point)
        point = TRUE;
      else if (g_ascii_isdigit (*at))
        any = TRUE;
      else
        return FALSE;
    }
  return any;
}

/* Signs that begin a formula, and their full-width forms; control characters that a spreadsheet drops before
 * it looks at what follows. */
static gboolean
begins_formula (const char *text)
{
  static const char *const wide[] = { "＝", "＋", "－", "＠" };

  for (gsize i = 0; i < G_N_ELEMENTS (wide); i++)
    if (g_str_has_prefix (text, wide[i]))
      return TRUE;
  return *text != '\0' && strchr ("=+-@\t\r\n", *text) != NULL && !is_plain_number (text);
}

void
tm_csv_put_text (GString *out, const char *text)
{
  put_cell (out, begins_formula (text) ? "'" : "", text);
}

void
tm_csv_begin (GString *out)
{
  g_string_append (out, BYTE_ORDER_MARK);
}

void
tm_csv_end_line (GString *out)
{
  g_string_append (out, "\r\n");
}
