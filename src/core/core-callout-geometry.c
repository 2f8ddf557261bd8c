/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tolerance frames of ISO 1101 and ASME Y14.5: characteristic, zone, material modifier, datums.
 */

#include "core-callout-band.h"
#include "core-callout-reader.h"

#include <string.h>

/* What may stand in the frame of a characteristic. */
enum {
  TAKES_DATUMS = 1 << 0,
  TAKES_DIAMETER = 1 << 1, /* the zone may be a cylinder */
  TAKES_MODIFIER = 1 << 2,
};

#define TAKES_ALL (TAKES_DATUMS | TAKES_DIAMETER | TAKES_MODIFIER)

typedef struct {
  const char *words; /* as typed; a sign stands for its word */
  TmKind kind;
  guint takes;
  const char *same; /* the one wording of what several words name; NULL: these */
} Characteristic;

/* Longer wordings stand before their own beginnings. */
static const Characteristic characteristics[] = {
  { "true position", TM_KIND_POSITION, TAKES_ALL, "position" },
  { "position", TM_KIND_POSITION, TAKES_ALL },
  { "pos", TM_KIND_POSITION, TAKES_ALL, "position" },
  { "TP", TM_KIND_POSITION, TAKES_ALL, "position" },
  { "straightness", TM_KIND_FORM, TAKES_DIAMETER | TAKES_MODIFIER },
  { "flatness", TM_KIND_FORM, TAKES_MODIFIER },
  { "flat", TM_KIND_FORM, TAKES_MODIFIER, "flatness" },
  { "circularity", TM_KIND_FORM, 0 },
  { "roundness", TM_KIND_FORM, 0, "circularity" },
  { "cylindricity", TM_KIND_FORM, 0 },
  { "profile of a line", TM_KIND_FORM, TAKES_DATUMS, "line profile" },
  { "profile of a surface", TM_KIND_FORM, TAKES_DATUMS, "surface profile" },
  { "line profile", TM_KIND_FORM, TAKES_DATUMS },
  { "surface profile", TM_KIND_FORM, TAKES_DATUMS },
  { "profile", TM_KIND_FORM, TAKES_DATUMS },
  { "perpendicularity", TM_KIND_FORM, TAKES_ALL },
  { "squareness", TM_KIND_FORM, TAKES_ALL, "perpendicularity" },
  { "perp", TM_KIND_FORM, TAKES_ALL, "perpendicularity" },
  { "parallelism", TM_KIND_FORM, TAKES_ALL },
  { "angularity", TM_KIND_FORM, TAKES_ALL },
  { "concentricity", TM_KIND_FORM, TAKES_ALL },
  { "conc", TM_KIND_FORM, TAKES_ALL, "concentricity" },
  { "coaxiality", TM_KIND_FORM, TAKES_ALL },
  { "symmetry", TM_KIND_FORM, TAKES_DATUMS | TAKES_MODIFIER },
  { "circular runout", TM_KIND_FORM, TAKES_DATUMS },
  { "total runout", TM_KIND_FORM, TAKES_DATUMS },
  { "runout", TM_KIND_FORM, TAKES_DATUMS },
};

/* Tokens that @words take at the cursor; 0 when they do not stand there. */
static guint
match_words (const TmTokens *tokens, const char *words)
{
  g_auto (GStrv) parts = g_strsplit (words, " ", -1);
  guint n = g_strv_length (parts);

  for (guint i = 0; i < n; i++)
    if (!tm_token_is_word (tm_tokens_peek (tokens, i), parts[i]))
      return 0;
  return n;
}

static const Characteristic *
find_characteristic (const TmTokens *tokens, guint *taken)
{
  const TmToken *first = tm_tokens_peek (tokens, 0);

  for (gsize i = 0; i < G_N_ELEMENTS (characteristics); i++)
    {
      const Characteristic *one = &characteristics[i];

      if (first->kind == TM_TOKEN_GEOMETRY && strcmp (first->text, one->words) == 0)
        *taken = 1;
      else
        *taken = match_words (tokens, one->words);
      if (*taken > 0)
        return one;
    }
  return NULL;
}

gboolean
tm_callout_is_geometry (const TmTokens *tokens)
{
  guint taken;

  return find_characteristic (tokens, &taken) != NULL;
}

const char *
tm_callout_geometry_word (const TmTokens *tokens)
{
  guint taken;
  const Characteristic *one = find_characteristic (tokens, &taken);

  if (one == NULL)
    return "";
  return one->same != NULL ? one->same : one->words;
}

static gboolean
take_diameter (TmTokens *tokens)
{
  static const char *const words[] = { "dia", "diam", "diameter", NULL };

  return tm_tokens_take (tokens, TM_TOKEN_DIAMETER) || tm_tokens_take_any (tokens, words);
}

static gboolean
take_circled (TmTokens *tokens, const char *letter)
{
  return strcmp (tm_tokens_peek (tokens, 0)->text, letter) == 0 && tm_tokens_take (tokens, TM_TOKEN_CIRCLED);
}

/* A plain M or L is not taken for the modifier: it may be a datum. */
static TmModifier
take_modifier (TmTokens *tokens)
{
  if (take_circled (tokens, "M") || tm_tokens_take_word (tokens, "mmc")
      || tm_tokens_take_word (tokens, "mmr"))
    return TM_MODIFIER_MMC;
  if (take_circled (tokens, "L") || tm_tokens_take_word (tokens, "lmc")
      || tm_tokens_take_word (tokens, "lmr"))
    return TM_MODIFIER_LMC;
  if (!take_circled (tokens, "S"))
    tm_tokens_take_word (tokens, "rfs");
  return TM_MODIFIER_NONE;
}

/* One letter, of either case. */
static gboolean
take_letter (TmTokens *tokens, char *letter)
{
  const TmToken *next = tm_tokens_peek (tokens, 0);

  if (next->kind == TM_TOKEN_TIMES && next->text[0] != '\0')
    *letter = 'X';
  else if (next->kind == TM_TOKEN_WORD && strlen (next->text) == 1)
    *letter = g_ascii_toupper (next->text[0]);
  else
    return FALSE;
  tokens->at++;
  return TRUE;
}

/* "A", the common datum "A-B", and either with Ⓜ or Ⓛ behind it. */
static gboolean
take_datum (TmTokens *tokens, TmCallout *out)
{
  char letter, other;
  char *datum;

  if (!take_letter (tokens, &letter))
    return FALSE;
  if (out->n_datums == TM_CALLOUT_MAX_DATUMS)
    return FALSE;
  datum = out->datums[out->n_datums++];
  g_snprintf (datum, sizeof out->datums[0], "%c", letter);
  if (tm_tokens_take (tokens, TM_TOKEN_MINUS))
    {
      if (!take_letter (tokens, &other))
        return FALSE;
      g_snprintf (datum, sizeof out->datums[0], "%c-%c", letter, other);
    }
  if (take_circled (tokens, "M"))
    g_strlcat (datum, "Ⓜ", sizeof out->datums[0]);
  else if (take_circled (tokens, "L"))
    g_strlcat (datum, "Ⓛ", sizeof out->datums[0]);
  return TRUE;
}

/* A plain M or L first among the datums is more likely a modifier typed in haste; which of the two
 * cannot be told. */
static gboolean
are_datums_clear (const TmCallout *out)
{
  return out->n_datums == 0 || (out->datums[0][0] != 'M' && out->datums[0][0] != 'L');
}

static TmCalloutStatus
set_tolerance (const TmCalloutReader *reader, const TmCalloutNumber *number, TmCallout *out)
{
  TmBand band = { .form = TM_BAND_MAX, .nominal = *number };
  TmBandRules rules = { .unit = reader->unit };
  TmBandLimits limits;
  TmCalloutStatus status = tm_band_resolve (&band, &rules, &limits);

  if (status != TM_CALLOUT_OK)
    return status;
  if (limits.unit == TM_UNIT_DEGREE)
    return TM_CALLOUT_UNIT_WRONG;
  out->unit = limits.unit;
  out->upper = limits.upper;
  return TM_CALLOUT_OK;
}

/* No tolerance at all is stated only where the size gives one: zero at MMC or LMC. */
static gboolean
is_frame_sound (const Characteristic *one, const TmCallout *out)
{
  if (out->zone_diameter && !(one->takes & TAKES_DIAMETER))
    return FALSE;
  if (out->modifier != TM_MODIFIER_NONE && !(one->takes & TAKES_MODIFIER))
    return FALSE;
  if (out->n_datums > 0 && !(one->takes & TAKES_DATUMS))
    return FALSE;
  return are_datums_clear (out) && (out->upper.count > 0 || out->modifier != TM_MODIFIER_NONE);
}

TmCalloutStatus
tm_callout_read_geometry (TmCalloutReader *reader)
{
  static const char *const indicator_words[] = { "TIR", "FIM", "max", NULL };
  TmTokens *tokens = &reader->tokens;
  TmCallout *out = &reader->out;
  TmCalloutNumber number;
  guint taken;
  const Characteristic *one = find_characteristic (tokens, &taken);
  TmCalloutStatus status;

  tokens->at += taken;
  out->kind = one->kind;
  out->zone_diameter = take_diameter (tokens);
  if (!tm_band_take_number (tokens, reader->unit, FALSE, &number))
    return TM_CALLOUT_NOT_READ;
  tm_tokens_take_any (tokens, indicator_words);
  out->modifier = take_modifier (tokens);
  while (!tm_tokens_at_end (tokens))
    if (!take_datum (tokens, out))
      return TM_CALLOUT_NOT_READ;
  status = set_tolerance (reader, &number, out);
  if (status != TM_CALLOUT_OK)
    return status;
  return is_frame_sound (one, out) ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}
