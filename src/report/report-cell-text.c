/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-cell-text.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "plot-words.h"

#define CELL_CHARACTERS 32767 /* a cell's text, in UTF-16 units */

/* -------- What it holds -------- */

static gboolean
is_storable (gunichar c)
{
  return c != 0xFFFE && c != 0xFFFF && (c >= 0x20 || c == '\t' || c == '\n');
}

static guint
count_units (gunichar c)
{
  return c > 0xFFFF ? 2 : 1;
}

gsize
tm_cell_text_cut (const char *text, guint most)
{
  const char *at = text;
  guint units = 0;

  for (; *at != '\0'; at = g_utf8_next_char (at))
    {
      units += count_units (g_utf8_get_char (at));
      if (units > most)
        break;
    }
  return (gsize)(at - text);
}

gboolean
tm_cell_text_is_plain (const char *text)
{
  const unsigned char *at = (const unsigned char *)text;

  while ((*at >= 0x20 && *at < 0x7F) || *at == '\t' || *at == '\n')
    at++;
  return *at == '\0' && (gsize)((const char *)at - text) <= CELL_CHARACTERS;
}

static char *
make_storable (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_sized_new (strlen (valid));

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar c = g_utf8_get_char (at);
      if (c == '\r')
        continue;
      g_string_append_unichar (out, is_storable (c) ? c : 0xFFFD);
    }
  if (tm_cell_text_cut (out->str, CELL_CHARACTERS) < out->len)
    {
      const char *note = _ ("… [cut: longer than a cell holds]");
      g_string_truncate (out,
                         tm_cell_text_cut (out->str, CELL_CHARACTERS - (guint)g_utf8_strlen (note, -1) * 2));
      g_string_append (out, note);
    }
  return g_string_free (out, FALSE);
}

char *
tm_cell_text (const char *text)
{
  return text == NULL || tm_cell_text_is_plain (text) ? g_strdup (text != NULL ? text : "")
                                                      : make_storable (text);
}

/* -------- The room it takes -------- */

double
tm_cell_text_width (const char *text)
{
  double widest = 0.0, line = 0.0;
  gsize plain = 0;

  while (text[plain] >= 0x20 && text[plain] < 0x7F)
    plain++;
  if (text[plain] == '\0')
    return (double)plain;
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar c = g_utf8_get_char (at);
      if (c == '\n')
        line = 0.0;
      else
        line += g_unichar_iswide (c) ? 2.0 : 1.0;
      widest = MAX (widest, line);
    }
  return widest;
}

/* Lines that one paragraph takes when it is wrapped at @width characters between words. */
static guint
count_paragraph_lines (const char *text, double width)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  guint lines = 1;
  double used = 0.0;

  for (guint k = 0; words[k] != NULL; k++)
    {
      const double word = tm_cell_text_width (words[k]);
      if (used > 0 && used + 1.0 + word > width)
        {
          lines++;
          used = 0.0;
        }
      used += (used > 0 ? 1.0 : 0.0) + word;
      /* A word longer than the line is broken. */
      for (; used > width && lines < 1000; used -= width)
        lines++;
    }
  return lines;
}

guint
tm_cell_text_lines (const char *text, double fitting)
{
  g_auto (GStrv) paragraphs = g_strsplit (text, "\n", -1);
  guint lines = 0;

  for (guint i = 0; paragraphs[i] != NULL; i++)
    lines += count_paragraph_lines (paragraphs[i], fitting);
  return lines;
}
