/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * zip-support: reads one member of a zip archive, for the tests of workbooks.
 */

#pragma once

#include <gio/gio.h>
#include <string.h>

static inline guint32
zip_number (const char *at, guint bytes)
{
  guint32 value = 0;

  for (guint i = 0; i < bytes; i++)
    value |= (guint32)(guint8)at[i] << (8 * i);
  return value;
}

/* One member (APPNOTE 6.3): stored, or deflated when @method is 8. */
static inline char *
zip_inflate (const char *data, gsize size, guint method)
{
  g_autoptr (GInputStream) raw = g_memory_input_stream_new_from_data (data, (gssize)size, NULL);
  g_autoptr (GConverter) inflate = G_CONVERTER (g_zlib_decompressor_new (G_ZLIB_COMPRESSOR_FORMAT_RAW));
  g_autoptr (GInputStream) text
      = method == 8 ? g_converter_input_stream_new (raw, inflate) : g_object_ref (raw);
  g_autoptr (GOutputStream) out = g_memory_output_stream_new_resizable ();

  g_assert_cmpint (g_output_stream_splice (out, text, G_OUTPUT_STREAM_SPLICE_NONE, NULL, NULL), >=, 0);
  g_assert_true (g_output_stream_write_all (out, "", 1, NULL, NULL, NULL));
  g_assert_true (g_output_stream_close (out, NULL, NULL));
  return g_memory_output_stream_steal_data (G_MEMORY_OUTPUT_STREAM (out));
}

/* The text of member @name, or NULL; with @n the members whose name begins with @name are counted
 * instead and NULL is given. */
static inline char *
zip_find (const char *path, const char *name, guint *n)
{
  g_autofree char *data = NULL;
  gsize size;

  g_assert_true (g_file_get_contents (path, &data, &size, NULL));
  for (gsize at = 0; at + 46 <= size; at++)
    {
      gsize length, local, start;
      if (memcmp (data + at, "PK\1\2", 4) != 0)
        continue;
      length = zip_number (data + at + 28, 2);
      local = zip_number (data + at + 42, 4);
      start = local + 30 + zip_number (data + local + 26, 2) + zip_number (data + local + 28, 2);
      if (n != NULL)
        *n += length >= strlen (name) && memcmp (data + at + 46, name, strlen (name)) == 0;
      else if (length == strlen (name) && memcmp (data + at + 46, name, length) == 0)
        return zip_inflate (data + start, zip_number (data + at + 20, 4), zip_number (data + at + 10, 2));
    }
  return NULL;
}

static inline char *
zip_read (const char *path, const char *name)
{
  char *text = zip_find (path, name, NULL);

  g_assert_nonnull (text);
  return text;
}

/* The sheet called @name: the workbook numbers them in their order. */
static inline char *
zip_sheet (const char *path, const char *name)
{
  g_autofree char *book = zip_read (path, "xl/workbook.xml");
  g_autofree char *wanted = g_strdup_printf ("<sheet name=\"%s\"", name);
  guint number = 0;

  for (const char *at = strstr (book, "<sheet name="); at != NULL; at = strstr (at + 1, "<sheet name="))
    {
      number++;
      if (g_str_has_prefix (at, wanted))
        {
          g_autofree char *member = g_strdup_printf ("xl/worksheets/sheet%u.xml", number);

          return zip_read (path, member);
        }
    }
  g_error ("no sheet %s", name);
}

static inline guint
zip_count (const char *path, const char *prefix)
{
  guint n = 0;

  zip_find (path, prefix, &n);
  return n;
}

/* The cell's own XML, from "<c r=…" to its end. */
static inline char *
sheet_cell (const char *sheet, const char *cell)
{
  g_autofree char *start = g_strdup_printf ("<c r=\"%s\"", cell);
  const char *at = strstr (sheet, start), *end;

  if (at == NULL)
    return NULL;
  end = strstr (at, ">");
  if (end[-1] == '/')
    return g_strndup (at, (gsize)(end + 1 - at));
  end = strstr (at, "</c>");
  return g_strndup (at, (gsize)(end + 4 - at));
}

/* What stands between @open and @close in @text. */
static inline char *
between (const char *text, const char *open, const char *close)
{
  const char *from = strstr (text, open), *to;

  if (from == NULL)
    return NULL;
  from += strlen (open);
  to = strstr (from, close);
  return to != NULL ? g_strndup (from, (gsize)(to - from)) : NULL;
}

/* The text of a cell that holds a string, shared or inline; asserts that it is one. */
static inline char *
cell_string (const char *path, const char *sheet, const char *cell)
{
  g_autofree char *xml = sheet_cell (sheet, cell);
  g_autofree char *shared = NULL, *index = NULL, *text = NULL;
  const char *at;

  g_assert_nonnull (xml);
  g_assert_null (strstr (xml, "<f>"));
  if (strstr (xml, "t=\"inlineStr\"") != NULL)
    {
      const char *open = strstr (xml, "<t");
      return between (open, ">", "</t>");
    }
  g_assert_nonnull (strstr (xml, "t=\"s\""));
  index = between (xml, "<v>", "</v>");
  shared = zip_read (path, "xl/sharedStrings.xml");
  at = shared;
  for (guint64 i = g_ascii_strtoull (index, NULL, 10) + 1; i > 0; i--)
    at = strstr (at + 1, "<si>");
  g_assert_nonnull (at);
  text = between (strstr (at, "<t"), ">", "</t>");
  return g_steal_pointer (&text);
}

static inline double
cell_number (const char *sheet, const char *cell)
{
  g_autofree char *xml = sheet_cell (sheet, cell);
  g_autofree char *value = NULL;

  g_assert_nonnull (xml);
  g_assert_null (strstr (xml, " t="));
  value = between (xml, "<v>", "</v>");
  g_assert_nonnull (value);
  return g_ascii_strtod (value, NULL);
}
