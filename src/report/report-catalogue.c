/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-catalogue.h"

#include <string.h>

#define MAGIC      0x950412deu
#define MOST_BYTES (16 * 1024 * 1024)
#define MOST_TEXTS 200000u
#define HEAD_BYTES 28u
#define CONTEXT    "\004"

/* A translation: one text, or the forms of a plural, each ended by a zero. */
typedef struct {
  const char *text;
  gsize length;
} Entry;

struct _TmCatalogue {
  GBytes *bytes;
  GHashTable *entries; /* text with its context, Entry */
  char *rule;          /* of plurals, or NULL */
};

/* -------- Conversions -------- */

/* The next conversion after "%", as its argument's type: flags, width and precision do not change it.
 * NULL: the text ends. */
static const char *
next_conversion (const char *at, GString *type)
{
  g_string_truncate (type, 0);
  while ((at = strchr (at, '%')) != NULL)
    {
      at++;
      if (*at == '%')
        {
          at++;
          continue;
        }
      while (*at != '\0' && strchr ("0123456789.+- #'$*I", *at) != NULL)
        {
          if (*at == '*' || *at == '$')
            g_string_append_c (type, *at);
          at++;
        }
      while (*at != '\0' && strchr ("hlLqjzt", *at) != NULL)
        g_string_append_c (type, *at++);
      if (*at != '\0')
        g_string_append_c (type, *at++);
      return at;
    }
  return NULL;
}

/* Numbered conversions (%1$s) may stand in any order, and no text of ours needs them: they are refused. */
static gboolean
is_printable_for (const char *text, const char *translation)
{
  g_autoptr (GString) own = g_string_new (NULL), other = g_string_new (NULL);

  do
    {
      text = next_conversion (text, own);
      translation = next_conversion (translation, other);
      if (!g_string_equal (own, other) || strchr (other->str, '$') != NULL)
        return FALSE;
    }
  while (text != NULL && translation != NULL);
  return text == translation;
}

/* -------- Reading -------- */

typedef struct {
  const char *data;
  gsize length;
  gboolean swapped;
} File;

static guint32
read_number (const File *file, gsize at)
{
  guint32 value;

  memcpy (&value, file->data + at, sizeof value);
  return file->swapped ? GUINT32_SWAP_LE_BE (value) : value;
}

/* The text that the table's row at @at tells of: inside the file, ended, and valid. */
static gboolean
read_text (const File *file, gsize at, Entry *entry)
{
  const gsize length = read_number (file, at), start = read_number (file, at + 4);

  if (start >= file->length || length >= file->length - start || file->data[start + length] != '\0')
    return FALSE;
  entry->text = file->data + start;
  entry->length = length;
  for (const char *part = entry->text; part <= entry->text + length; part += strlen (part) + 1)
    if (!g_utf8_validate (part, -1, NULL))
      return FALSE;
  return TRUE;
}

/* Each form of the plural must print what its text does. */
static gboolean
is_sound (const Entry *text, const Entry *translation)
{
  const char *plain = strchr (text->text, CONTEXT[0]);
  const char *one = plain != NULL ? plain + 1 : text->text;
  const char *many = text->text + strlen (text->text) + 1;

  if (translation->length == 0)
    return FALSE;
  for (const char *form = translation->text; form <= translation->text + translation->length;
       form += strlen (form) + 1)
    if (!is_printable_for (one, form) && (many > text->text + text->length || !is_printable_for (many, form)))
      return FALSE;
  return TRUE;
}

static char *
find_rule (const char *header)
{
  const char *at = strstr (header, "Plural-Forms:");
  const char *end = at != NULL ? strchr (at, '\n') : NULL;

  if (at == NULL)
    return NULL;
  at += strlen ("Plural-Forms:");
  return end != NULL ? g_strndup (at, (gsize)(end - at)) : g_strdup (at);
}

static gboolean
read_entries (TmCatalogue *catalogue, const File *file)
{
  const gsize n = read_number (file, 8), texts = read_number (file, 12),
              translations = read_number (file, 16);

  if (n > MOST_TEXTS || texts > file->length || translations > file->length || n * 8 > file->length - texts
      || n * 8 > file->length - translations)
    return FALSE;
  for (gsize i = 0; i < n; i++)
    {
      Entry text, translation;

      if (!read_text (file, texts + i * 8, &text) || !read_text (file, translations + i * 8, &translation))
        return FALSE;
      if (text.length == 0)
        {
          g_free (catalogue->rule);
          catalogue->rule = find_rule (translation.text);
        }
      else if (is_sound (&text, &translation))
        g_hash_table_insert (catalogue->entries, (gpointer)text.text,
                             g_memdup2 (&translation, sizeof translation));
    }
  return TRUE;
}

TmCatalogue *
tm_catalogue_new (GBytes *bytes)
{
  g_autoptr (TmCatalogue) catalogue = g_new0 (TmCatalogue, 1);
  File file;
  guint32 revision;

  file.data = g_bytes_get_data (bytes, &file.length);
  file.swapped = FALSE;
  catalogue->bytes = g_bytes_ref (bytes);
  catalogue->entries = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  if (file.length < HEAD_BYTES || file.length > MOST_BYTES)
    return NULL;
  file.swapped = read_number (&file, 0) == GUINT32_SWAP_LE_BE (MAGIC);
  revision = read_number (&file, 4);
  if (read_number (&file, 0) != MAGIC || revision >> 16 > 1 || !read_entries (catalogue, &file))
    return NULL;
  return g_steal_pointer (&catalogue);
}

void
tm_catalogue_free (TmCatalogue *catalogue)
{
  if (catalogue == NULL)
    return;
  g_hash_table_unref (catalogue->entries);
  g_bytes_unref (catalogue->bytes);
  g_free (catalogue->rule);
  g_free (catalogue);
}

/* -------- Asking -------- */

const char *
tm_catalogue_text (const TmCatalogue *catalogue, const char *context, const char *text)
{
  g_autofree char *key = context != NULL ? g_strconcat (context, CONTEXT, text, NULL) : NULL;
  const Entry *entry = g_hash_table_lookup (catalogue->entries, key != NULL ? key : text);

  return entry != NULL ? entry->text : text;
}

const char *
tm_catalogue_plural (const TmCatalogue *catalogue, const char *one, const char *many, gulong n)
{
  const Entry *entry = g_hash_table_lookup (catalogue->entries, one);
  const guint form = catalogue->rule != NULL ? tm_catalogue_plural_form (catalogue->rule, n) : n != 1;
  const char *text;

  if (entry == NULL)
    return n == 1 ? one : many;
  text = entry->text;
  for (guint i = 0; i < form; i++)
    {
      const char *next = text + strlen (text) + 1;

      if (next > entry->text + entry->length)
        break;
      text = next;
    }
  return text;
}
