/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-general-tolerance.h"

#include <string.h>

#define PM_PER_MM         G_GINT64_CONSTANT (1000000000)
#define PM_PER_UM         G_GINT64_CONSTANT (1000000)
#define COUNTS_PER_MINUTE G_GINT64_CONSTANT (60000000) /* of arc */
#define SMALLEST          (PM_PER_MM / 2)
#define ENDLESS           0
#define NO                0
#define MAX_GENERAL       400 /* bytes of text */
#define MAX_DECIMALS      6

/* One range of ISO 2768-1: sizes over the row before's `upto` up to and including its own. */
typedef struct {
  int upto;      /* mm; ENDLESS: no upper end */
  int values[4]; /* f, m, c, v; NO: the standard gives none */
} Range;

/* ISO 2768-1 table 1, micrometres.  A circulating copy prints the older 150 and 200 for c. */
static const Range linear[] = {
  { 3, { 50, 100, 200, NO } },         { 6, { 50, 100, 300, 500 } },       { 30, { 100, 200, 500, 1000 } },
  { 120, { 150, 300, 800, 1500 } },    { 400, { 200, 500, 1200, 2500 } },  { 1000, { 300, 800, 2000, 4000 } },
  { 2000, { 500, 1200, 3000, 6000 } }, { 4000, { NO, 2000, 4000, 8000 } },
};

/* ISO 2768-1 table 2, micrometres. */
static const Range radius[] = {
  { 3, { 200, 200, 400, 400 } },
  { 6, { 500, 500, 1000, 1000 } },
  { ENDLESS, { 1000, 1000, 2000, 2000 } },
};

/* ISO 2768-1 table 3, minutes of arc, by the length of the shorter side. */
static const Range angle[] = {
  { 10, { 60, 60, 90, 180 } }, { 50, { 30, 30, 60, 120 } },   { 120, { 20, 20, 30, 60 } },
  { 400, { 10, 10, 15, 30 } }, { ENDLESS, { 5, 5, 10, 20 } },
};

static const struct {
  const Range *ranges;
  gsize n;
  gint64 counts;   /* of one value */
  gint64 smallest; /* size in pm from which the table starts */
} tables[] = {
  [TM_GENERAL_LINEAR] = { linear, G_N_ELEMENTS (linear), PM_PER_UM, SMALLEST },
  [TM_GENERAL_RADIUS] = { radius, G_N_ELEMENTS (radius), PM_PER_UM, SMALLEST },
  [TM_GENERAL_ANGLE] = { angle, G_N_ELEMENTS (angle), COUNTS_PER_MINUTE, 1 },
};

/* A title block, read. */
typedef struct {
  gint64 by_decimals[MAX_DECIMALS + 1]; /* pm; 0: none stated */
  gint64 fractions;                     /* pm */
  gint64 angles;                        /* millionths of an arc second */
} Block;

gboolean
tm_general_iso2768 (char letter, TmGeneralKind kind, gint64 size, gint64 *tolerance)
{
  const char *letters = "fmcv";
  const char *column = letter != '\0' ? strchr (letters, letter) : NULL;

  if (column == NULL || size < tables[kind].smallest)
    return FALSE;
  for (gsize i = 0; i < tables[kind].n; i++)
    {
      const Range *range = &tables[kind].ranges[i];

      if (range->upto != ENDLESS && size > range->upto * PM_PER_MM)
        continue;
      *tolerance = range->values[column - letters] * tables[kind].counts;
      return range->values[column - letters] != NO;
    }
  return FALSE;
}

static const char *
skip_any (const char *text, const char *set)
{
  return text + strspn (text, set);
}

static gboolean
skip_word (const char **text, const char *word)
{
  if (g_ascii_strncasecmp (*text, word, strlen (word)) != 0)
    return FALSE;
  *text = skip_any (*text + strlen (word), " ");
  return TRUE;
}

/* "ISO 2768-m", "DIN ISO 2768 - 1 - mK": the letter of ISO 2768-1.
 * Returns: FALSE when @text is not of this kind; a letter of 0 when it is and cannot be read. */
static gboolean
read_iso2768 (const char *text, char *letter)
{
  const char *at = skip_any (text, " ");

  *letter = '\0';
  while (skip_word (&at, "DIN") || skip_word (&at, "EN") || skip_word (&at, "BS") || skip_word (&at, "ISO"))
    ;
  if (!skip_word (&at, "2768"))
    return FALSE;
  at = skip_any (at, " -");
  if (*at == '1')
    at = skip_any (at + 1, " -");
  if (*at != '\0' && strchr ("fmcv", g_ascii_tolower (*at)) != NULL)
    {
      char found = g_ascii_tolower (*at++);

      at = skip_any (at, " -");
      if (*at != '\0' && strchr ("HKLhkl", *at) != NULL)
        at++;
      if (skip_any (at, " ")[0] == '\0')
        *letter = found;
    }
  return TRUE;
}

/* The figure of an entry: "±.005", "= .005", "+/- 1/64", ": 1°". */
static gboolean
read_figure (const char *text, TmUnit unit, gboolean fraction, gint64 *count)
{
  TmQuantity value, divisor;
  g_auto (GStrv) parts = NULL;
  const char *at = skip_any (text, " =:");

  while (g_str_has_prefix (at, "±") || *at == '+' || *at == '/' || *at == '-')
    at += g_str_has_prefix (at, "±") ? strlen ("±") : 1;
  parts = g_strsplit (at, "/", 2);
  if (parts[0] == NULL || tm_quantity_read (parts[0], unit, &value) != TM_READ_OK || value.count <= 0)
    return FALSE;
  *count = value.count;
  if (parts[1] == NULL)
    return TRUE;
  if (!fraction || tm_quantity_read (parts[1], TM_UNIT_COUNT, &divisor) != TM_READ_OK || divisor.count <= 0
      || value.count % divisor.count != 0)
    return FALSE;
  *count /= divisor.count;
  return TRUE;
}

/* ".XX", "X.XX", "XX" are patterns of decimals; anything else is none. */
static gboolean
skip_pattern (const char **text, guint *decimals)
{
  const char *at = *text;
  gsize whole = strspn (at, "Xx");
  gsize places = 0;

  at += whole;
  if (*at == '.')
    {
      at++;
      places = strspn (at, "Xx");
      at += places;
    }
  if (whole + places == 0 || whole > 4 || places > MAX_DECIMALS || g_ascii_isalnum (*at) || *at == '.')
    return FALSE;
  *decimals = (guint)places;
  *text = at;
  return TRUE;
}

static gboolean
set_once (gint64 *slot, gint64 value)
{
  if (*slot != 0)
    return FALSE;
  *slot = value;
  return TRUE;
}

static gboolean
read_entry (const char *text, TmUnit unit, Block *block)
{
  const char *at = skip_any (text, " ");
  guint decimals;
  gint64 count;

  if (skip_pattern (&at, &decimals))
    return read_figure (at, unit, FALSE, &count) && set_once (&block->by_decimals[decimals], count);
  if (skip_word (&at, "angles") || skip_word (&at, "angle") || skip_word (&at, "angular")
      || skip_word (&at, "ang"))
    return read_figure (at, TM_UNIT_DEGREE, FALSE, &count) && set_once (&block->angles, count);
  if (skip_word (&at, "fractions") || skip_word (&at, "fraction") || skip_word (&at, "frac"))
    return read_figure (at, unit, TRUE, &count) && set_once (&block->fractions, count);
  return FALSE;
}

/* One entry that cannot be read makes the whole block unknown: it might have been the one needed. */
static gboolean
read_block (const char *text, TmUnit unit, Block *block)
{
  g_auto (GStrv) entries = g_strsplit_set (text, strpbrk (text, ";\n") != NULL ? ";\n" : ",", -1);
  guint n = 0;

  for (guint i = 0; entries[i] != NULL; i++)
    {
      g_strstrip (entries[i]);
      if (entries[i][0] == '\0')
        continue;
      if (!read_entry (entries[i], unit, block))
        return FALSE;
      n++;
    }
  return n > 0;
}

static gint64
look_up (const Block *block, TmUnit unit, TmGeneralKind kind, const TmQuantity *nominal, gboolean fraction)
{
  if (kind == TM_GENERAL_ANGLE)
    return block->angles;
  if (nominal->unit != unit)
    return 0;
  if (fraction)
    return block->fractions;
  return nominal->decimals <= MAX_DECIMALS ? block->by_decimals[nominal->decimals] : 0;
}

TmCalloutStatus
tm_general_tolerance_find (const char *general, TmUnit unit, TmGeneralKind kind, const TmQuantity *nominal,
                           gboolean fraction, gint64 *tolerance)
{
  Block block = { 0 };
  char letter;

  if (general == NULL || skip_any (general, " \t\n")[0] == '\0')
    return TM_CALLOUT_NO_GENERAL;
  if (strlen (general) > MAX_GENERAL || !g_utf8_validate (general, -1, NULL))
    return TM_CALLOUT_GENERAL_UNKNOWN;
  if (read_iso2768 (general, &letter))
    {
      if (letter == '\0')
        return TM_CALLOUT_GENERAL_UNKNOWN;
      /* An angle's class goes by the length of its shorter side, which a callout does not tell. */
      if (kind == TM_GENERAL_ANGLE || nominal->unit != TM_UNIT_MM
          || !tm_general_iso2768 (letter, kind, nominal->count, tolerance))
        return TM_CALLOUT_GENERAL_RANGE;
      return TM_CALLOUT_OK;
    }
  if (!read_block (general, unit, &block))
    return TM_CALLOUT_GENERAL_UNKNOWN;
  *tolerance = look_up (&block, unit, kind, nominal, fraction);
  return *tolerance > 0 ? TM_CALLOUT_OK : TM_CALLOUT_GENERAL_RANGE;
}
