/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-file-check.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* Zip records (APPNOTE 6.3): signatures, sizes, and offsets of the fields that are read. */
#define END_SIGNATURE     0x06054b50u
#define END_SIZE          22
#define CENTRAL_SIGNATURE 0x02014b50u
#define CENTRAL_SIZE      46
#define LOCAL_SIGNATURE   0x04034b50u
#define LOCAL_SIZE        30
#define STORED            0
#define DEFLATED          8

/* The end of a member that must hold "</root>" and blanks. */
#define TAIL_SIZE 256
#define CHUNK     65536 /* that is inflated at a time */

typedef struct {
  const guint8 *data;
  gsize size;
} Archive;

typedef struct {
  char *name;
  guint method;
  const guint8 *data;
  gsize size;
} Member;

/* The first and the last bytes of a member's text. */
typedef struct {
  GString *head;
  GString *tail;
} Ends;

static guint32
read_number (const guint8 *at, guint bytes)
{
  guint32 value = 0;

  for (guint i = 0; i < bytes; i++)
    value |= (guint32)at[i] << (8 * i);
  return value;
}

static gboolean
set_damaged (GError **error, const char *name)
{
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_PARTIAL_INPUT, _ ("its part “%s” is not complete"), name);
  return FALSE;
}

/* The directory at the archive's end: where it starts, and how many members it lists. */
static gboolean
find_directory (const Archive *archive, gsize *offset, guint *n)
{
  for (gsize back = END_SIZE; back <= archive->size && back <= END_SIZE + 65535; back++)
    {
      const guint8 *at = archive->data + archive->size - back;
      if (read_number (at, 4) != END_SIGNATURE)
        continue;
      *n = read_number (at + 10, 2);
      *offset = read_number (at + 16, 4);
      return *offset < archive->size;
    }
  return FALSE;
}

/* Reads the directory's entry at *@offset and moves past it. */
static gboolean
read_member (const Archive *archive, gsize *offset, Member *member)
{
  const guint8 *entry = archive->data + *offset;
  gsize name_length, local, skip;

  if (*offset + CENTRAL_SIZE > archive->size || read_number (entry, 4) != CENTRAL_SIGNATURE)
    return FALSE;
  name_length = read_number (entry + 28, 2);
  local = read_number (entry + 42, 4);
  member->method = read_number (entry + 10, 2);
  member->size = read_number (entry + 20, 4);
  if (*offset + CENTRAL_SIZE + name_length > archive->size || local + LOCAL_SIZE > archive->size
      || read_number (archive->data + local, 4) != LOCAL_SIGNATURE)
    return FALSE;
  skip = LOCAL_SIZE + read_number (archive->data + local + 26, 2)
         + read_number (archive->data + local + 28, 2);
  if (local + skip + member->size > archive->size)
    return FALSE;
  member->data = archive->data + local + skip;
  member->name = g_strndup ((const char *)entry + CENTRAL_SIZE, name_length);
  *offset += CENTRAL_SIZE + name_length + read_number (entry + 30, 2) + read_number (entry + 32, 2);
  return TRUE;
}

static void
keep_ends (Ends *ends, const guint8 *data, gsize size)
{
  const gsize last = MIN (size, TAIL_SIZE);

  if (ends->head->len < TAIL_SIZE * 4)
    g_string_append_len (ends->head, (const char *)data, (gssize)MIN (size, TAIL_SIZE * 4));
  g_string_append_len (ends->tail, (const char *)data + size - last, (gssize)last);
  if (ends->tail->len > TAIL_SIZE)
    g_string_erase (ends->tail, 0, (gssize)(ends->tail->len - TAIL_SIZE));
}

static gboolean
goes_on (const TmFileWatch *watch, GError **error)
{
  if (watch == NULL || watch->goes_on (watch->data))
    return TRUE;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, _ ("cancelled"));
  return FALSE;
}

/* From memory to memory: a stream would copy all of it twice more. */
static gboolean
inflate_ends (const Member *member, Ends *ends, const TmFileWatch *watch, GError **error)
{
  g_autoptr (GConverter) inflate = G_CONVERTER (g_zlib_decompressor_new (G_ZLIB_COMPRESSOR_FORMAT_RAW));
  g_autofree guint8 *buffer = g_malloc (CHUNK);
  GConverterResult result = G_CONVERTER_CONVERTED;
  gsize at = 0;

  while (result == G_CONVERTER_CONVERTED)
    {
      gsize taken = 0, got = 0;

      result = g_converter_convert (inflate, member->data + at, member->size - at, buffer, CHUNK,
                                    G_CONVERTER_INPUT_AT_END, &taken, &got, NULL);
      if (result == G_CONVERTER_ERROR)
        break;
      at += taken;
      keep_ends (ends, buffer, got);
      if (!goes_on (watch, error))
        return FALSE;
    }
  return result == G_CONVERTER_FINISHED || set_damaged (error, member->name);
}

static gboolean
read_ends (const Member *member, Ends *ends, const TmFileWatch *watch, GError **error)
{
  if (member->method == DEFLATED)
    return inflate_ends (member, ends, watch, error);
  keep_ends (ends, member->data, member->size);
  return goes_on (watch, error);
}

/* The name of the first element: after "<", not "<?" or "<!". */
static char *
find_root (const char *head)
{
  const char *at = strchr (head, '<');

  while (at != NULL && (at[1] == '?' || at[1] == '!'))
    at = strchr (at + 1, '<');
  return at != NULL ? g_strndup (at + 1, strcspn (at + 1, " \t\r\n/>")) : NULL;
}

static gboolean
is_whole (const Ends *ends)
{
  g_autofree char *root = find_root (ends->head->str);
  g_autofree char *close = root != NULL ? g_strdup_printf ("</%s>", root) : NULL;
  g_autofree char *tail = g_strchomp (g_strdup (ends->tail->str));
  const char *last;

  if (close == NULL)
    return FALSE;
  /* An empty root closes itself, and is then the last element to begin. */
  last = strrchr (tail, '<');
  return g_str_has_suffix (tail, close)
         || (last != NULL && g_str_has_prefix (last + 1, root) && g_str_has_suffix (tail, "/>"));
}

static gboolean
check_member (const Member *member, const TmFileWatch *watch, GError **error)
{
  Ends ends;
  gboolean whole;

  if (!g_str_has_suffix (member->name, ".xml") && !g_str_has_suffix (member->name, ".rels"))
    return TRUE;
  if (member->method != STORED && member->method != DEFLATED)
    return set_damaged (error, member->name);
  ends = (Ends) { g_string_new (NULL), g_string_new (NULL) };
  whole = read_ends (member, &ends, watch, error) && (is_whole (&ends) || set_damaged (error, member->name));
  g_string_free (ends.head, TRUE);
  g_string_free (ends.tail, TRUE);
  return whole;
}

gboolean
tm_file_check_workbook (const char *path, const TmFileWatch *watch, GError **error)
{
  g_autoptr (GMappedFile) file = g_mapped_file_new (path, FALSE, error);
  Archive archive;
  gsize offset = 0;
  guint n = 0;

  if (file == NULL)
    return FALSE;
  archive = (Archive) { (const guint8 *)g_mapped_file_get_contents (file), g_mapped_file_get_length (file) };
  if (!find_directory (&archive, &offset, &n) || n == 0)
    return set_damaged (error, path);
  for (guint i = 0; i < n; i++)
    {
      Member member = { 0 };
      gboolean whole;

      if (!read_member (&archive, &offset, &member))
        return set_damaged (error, path);
      whole = check_member (&member, watch, error);
      g_free (member.name);
      if (!whole)
        return FALSE;
    }
  return TRUE;
}
