/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-entry-text: the text of a reading taken apart: sign, number or fraction, unit.
 */

#include <string.h>

#include "core-entry-text.h"

/* What a keyboard, a gauge or a pasted text writes for what is plain ASCII to us. */
static const struct {
  const char *from;
  const char *to;
} spellings[] = {
  { "\u2212", "-" },    { "\u00b5", "u" },    { "\u03bc", "u" },    { "\u00b0", "deg" },
  { "\u2033", "\"" },   { "\u201d", "\"" },   { "\u2019", "'" },    { "\u00a0", " " },
  { "\u2009", " " },    { "\u202f", " " },    { "\u2044", "/" },    { "\u00bd", " 1/2" },
  { "\u00bc", " 1/4" }, { "\u00be", " 3/4" }, { "\u215b", " 1/8" }, { "\u215c", " 3/8" },
  { "\u215d", " 5/8" }, { "\u215e", " 7/8" },
};

/* The ASCII for the character at @text, and how many bytes it takes; "?" for one that no reading has. */
static const char *
spell_one (const char *text, gsize n_left, gsize *n_bytes, char scratch[2])
{
  *n_bytes = 1;
  for (gsize i = 0; i < G_N_ELEMENTS (spellings); i++)
    {
      gsize n = strlen (spellings[i].from);
      if (n <= n_left && memcmp (text, spellings[i].from, n) == 0)
        {
          *n_bytes = n;
          return spellings[i].to;
        }
    }
  if (text[0] == '\t')
    return " ";
  scratch[0] = g_ascii_isprint (text[0]) ? g_ascii_tolower (text[0]) : '?';
  scratch[1] = '\0';
  return scratch;
}

/* FALSE when the text is longer than any reading. */
static gboolean
spell_plain (const char *text, char plain[TM_ENTRY_TEXT_MAX + 4])
{
  gsize used = 0;
  gsize n_left;

  while (g_ascii_isspace (*text))
    text++;
  for (n_left = strlen (text); n_left > 0 && g_ascii_isspace (text[n_left - 1]);)
    n_left--;
  while (n_left > 0)
    {
      char scratch[2];
      gsize n_bytes;
      const char *spelt = spell_one (text, n_left, &n_bytes, scratch);
      gsize n = strlen (spelt);

      if (used + n > TM_ENTRY_TEXT_MAX)
        return FALSE;
      memcpy (plain + used, spelt, n);
      used += n;
      text += n_bytes;
      n_left -= n_bytes;
    }
  plain[used] = '\0';
  g_strstrip (plain);
  return TRUE;
}

static const char *
skip_spaces (const char *p)
{
  while (*p == ' ')
    p++;
  return p;
}

static const char *
take_span (const char *p, const char *accept, char *out)
{
  gsize n = strspn (p, accept);

  memcpy (out, p, n);
  out[n] = '\0';
  return p + n;
}

static guint
count_marks (const char *number)
{
  guint n = 0;

  for (; *number != '\0'; number++)
    n += *number == '.' || *number == ',';
  return n;
}

/* What is left after the number: nothing, or a unit word, which has no digits in it. */
static TmEntryStatus
read_unit_word (const char *p, char *out)
{
  p = skip_spaces (p);
  if (strpbrk (p, "0123456789+-/?.,") != NULL)
    return TM_ENTRY_NOT_A_NUMBER;
  g_strlcpy (out, strcmp (p, "''") == 0 ? "\"" : p, TM_ENTRY_TEXT_MAX + 4);
  return TM_ENTRY_OK;
}

static gboolean
is_group_separator (const char *p)
{
  if (*p == ' ')
    return g_ascii_isdigit (*skip_spaces (p));
  return (*p == '\'' || *p == '_') && g_ascii_isdigit (p[1]);
}

static TmEntryStatus
read_decimal (const char *p, TmEntryText *out)
{
  p = take_span (p, "0123456789.,", out->number);
  if (strpbrk (out->number, "0123456789") == NULL)
    return TM_ENTRY_NOT_A_NUMBER;
  if (count_marks (out->number) > 1 || is_group_separator (p))
    return TM_ENTRY_THOUSANDS;
  return read_unit_word (p, out->unit);
}

/* "3/16", "1 3/16" or, as many write it, "1-3/16". */
static TmEntryStatus
read_fraction (const char *p, TmEntryText *out)
{
  const char *slash;

  out->is_fraction = TRUE;
  p = take_span (p, "0123456789", out->numerator);
  if (*p == ' ' || *p == '-')
    {
      const char *next = *p == '-' ? p + 1 : skip_spaces (p);
      if (g_ascii_isdigit (*next))
        {
          g_strlcpy (out->number, out->numerator, sizeof out->number);
          p = take_span (next, "0123456789", out->numerator);
        }
    }
  slash = skip_spaces (p);
  if (*slash != '/' || out->numerator[0] == '\0')
    return TM_ENTRY_NOT_A_NUMBER;
  p = take_span (skip_spaces (slash + 1), "0123456789", out->denominator);
  if (out->denominator[0] == '\0')
    return TM_ENTRY_NOT_A_NUMBER;
  return read_unit_word (p, out->unit);
}

static TmEntryStatus
read_parts (TmEntryText *out)
{
  const char *p = out->plain;

  if (*p == '\0')
    return TM_ENTRY_EMPTY;
  if (*p == '+' || *p == '-')
    out->sign = *p++;
  p = skip_spaces (p);
  return strchr (p, '/') != NULL ? read_fraction (p, out) : read_decimal (p, out);
}

void
tm_entry_text_read (const char *text, TmEntryText *out)
{
  memset (out, 0, sizeof *out);
  if (!spell_plain (text != NULL ? text : "", out->plain))
    {
      out->plain[0] = '\0';
      out->status = TM_ENTRY_NOT_A_NUMBER;
      return;
    }
  out->status = read_parts (out);
}
