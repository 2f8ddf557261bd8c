/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Roughness, hardness and threads.
 */

#include "core-callout-band.h"
#include "core-callout-reader.h"

#include <string.h>

/* Profile parameters of ISO 21920 / ISO 4287 that a number stands behind. */
static const char *const roughness_words[] = { "Ra", "Rz", "Rq", "Rt", "Rp", "Rv", "Rmax", NULL };

/* Scales; one that `loaded` may carry its load: "HV10". */
static const struct {
  const char *word;
  gboolean loaded;
} scales[] = {
  { "HRC", FALSE }, { "HRA", FALSE }, { "HRB", FALSE }, { "HRBW", FALSE }, { "HB", FALSE },
  { "HBW", TRUE },  { "HBS", FALSE }, { "HV", TRUE },   { "HK", TRUE },
};

static const char *const thread_words[]
    = { "UNC",  "UNF",  "UNEF", "UN",   "UNS",  "UNR", "UNRC", "UNRF", "UNJ", "UNJC", "UNJF", "UNJEF", "NPT",
        "NPTF", "NPSC", "NPSF", "NPSM", "NPSL", "BSP", "BSPP", "BSPT", "BSW", "BSF",  "ACME", NULL };

static gboolean
is_any (const TmToken *token, const char *const *words)
{
  for (gsize i = 0; words[i] != NULL; i++)
    if (tm_token_is_word (token, words[i]))
      return TRUE;
  return FALSE;
}

/* Where one of @words stands, from the cursor on; the end when none does. */
static guint
find_word (const TmTokens *tokens, const char *const *words)
{
  guint i = tokens->at;

  while (i < tokens->n - 1 && !is_any (&tokens->tokens[i], words))
    i++;
  return i;
}

gboolean
tm_callout_is_roughness (const TmTokens *tokens)
{
  return find_word (tokens, roughness_words) < tokens->n - 1;
}

static TmUnit
choose_roughness_unit (TmUnit drawing, TmUnit stated)
{
  if (stated == TM_UNIT_NONE)
    return drawing == TM_UNIT_IN ? TM_UNIT_UIN : TM_UNIT_UM;
  return stated;
}

/* "Ra 1.6", "1.6 Ra", "Ra max 1.6 µm": an upper limit, in µm or µin. */
TmCalloutStatus
tm_callout_read_roughness (TmCalloutReader *reader)
{
  TmTokens *tokens = &reader->tokens;
  TmCallout *out = &reader->out;
  TmCalloutNumber number;
  TmBandForm side;
  gint64 count;
  TmUnit unit;
  TmCalloutStatus status;

  tm_tokens_remove (tokens, find_word (tokens, roughness_words));
  tm_tokens_take (tokens, TM_TOKEN_ROOT);
  side = tm_band_take_side (tokens);
  if (!tm_band_take_number (tokens, TM_UNIT_NONE, FALSE, &number))
    return TM_CALLOUT_NOT_READ;
  if (side == TM_BAND_BARE)
    side = tm_band_take_side (tokens);
  if (side == TM_BAND_MIN || !tm_tokens_at_end (tokens))
    return TM_CALLOUT_NOT_READ;
  unit = choose_roughness_unit (reader->unit, number.unit);
  if (unit != TM_UNIT_UM && unit != TM_UNIT_UIN)
    return TM_CALLOUT_UNIT_WRONG;
  status = tm_band_count (&number, unit, &count);
  if (status != TM_CALLOUT_OK)
    return status;
  out->kind = TM_KIND_ROUGHNESS;
  out->unit = unit;
  out->upper = tm_quantity_new (count, unit, tm_band_written_decimals (&number));
  return count > 0 ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}

/* Where a hardness scale stands, from the cursor on; the end when none does. */
static guint
find_scale (const TmTokens *tokens, gboolean *loaded)
{
  for (guint i = tokens->at; i < tokens->n - 1; i++)
    for (gsize k = 0; k < G_N_ELEMENTS (scales); k++)
      if (tm_token_is_word (&tokens->tokens[i], scales[k].word))
        {
          *loaded = scales[k].loaded;
          return i;
        }
  return tokens->n - 1;
}

gboolean
tm_callout_is_hardness (const TmTokens *tokens)
{
  gboolean loaded;

  return find_scale (tokens, &loaded) < tokens->n - 1;
}

static guint
count_numbers (const TmTokens *tokens)
{
  guint n = 0;

  for (guint i = tokens->at; i < tokens->n - 1; i++)
    n += tokens->tokens[i].kind == TM_TOKEN_NUMBER;
  return n;
}

/* Takes the scale out of the text, with its load: "700 HV10". */
static TmCalloutStatus
remove_scale (TmTokens *tokens)
{
  gboolean loaded;
  guint at = find_scale (tokens, &loaded);
  const TmToken *next = &tokens->tokens[at + 1];
  gboolean joined = next->kind == TM_TOKEN_NUMBER && !next->spaced;

  tm_tokens_remove (tokens, at);
  if (!loaded || !joined)
    return TM_CALLOUT_OK;
  if (count_numbers (tokens) < 2) /* "HV700": a load or a value */
    return TM_CALLOUT_NOT_READ;
  tm_tokens_remove (tokens, at);
  return TM_CALLOUT_OK;
}

/* "58-62 HRC", "HRC 60 ±2", "200 HBW max". */
TmCalloutStatus
tm_callout_read_hardness (TmCalloutReader *reader)
{
  TmTokens *tokens = &reader->tokens;
  TmCallout *out = &reader->out;
  TmBandRules rules = { .unit = TM_UNIT_HARDNESS, .any_range = TRUE };
  TmBand band = { 0 };
  TmBandLimits limits;
  TmCalloutStatus status = remove_scale (tokens);
  TmBandForm side;

  if (status != TM_CALLOUT_OK)
    return status;
  side = tm_band_take_side (tokens);
  if (!tm_band_take_number (tokens, rules.unit, FALSE, &band.nominal))
    return TM_CALLOUT_NOT_READ;
  band.form = side;
  if (side == TM_BAND_BARE)
    status = tm_band_take_tolerance (tokens, &rules, &band);
  if (status != TM_CALLOUT_OK || !tm_tokens_at_end (tokens) || band.form == TM_BAND_CLASS)
    return TM_CALLOUT_NOT_READ;
  if (band.form == TM_BAND_BARE)
    return TM_CALLOUT_NO_GENERAL;
  status = tm_band_resolve (&band, &rules, &limits);
  if (status != TM_CALLOUT_OK)
    return status;
  out->kind = TM_KIND_HARDNESS;
  out->unit = TM_UNIT_HARDNESS;
  out->nominal = limits.nominal;
  out->lower = limits.lower;
  out->upper = limits.upper;
  return (limits.lower.given ? limits.lower : limits.upper).count > 0 ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}

/* A letter or two joined to a number, where a thread's designation begins. */
static gboolean
starts_metric (const TmTokens *tokens)
{
  const TmToken *letter = tm_tokens_peek (tokens, 0);
  const TmToken *size = tm_tokens_peek (tokens, 1);
  static const char *const letters[] = { "M", "m", "MJ", "MF", "Tr", "TR", NULL };

  if (letter->kind != TM_TOKEN_WORD || size->kind != TM_TOKEN_NUMBER || size->spaced)
    return FALSE;
  for (gsize i = 0; letters[i] != NULL; i++)
    if (strcmp (letter->text, letters[i]) == 0)
      return TRUE;
  return FALSE;
}

/* ISO 228 and ISO 7: "G1/4", "Rc 1/8". */
static gboolean
starts_pipe (const TmTokens *tokens)
{
  static const char *const letters[] = { "G", "Rc", "Rp", NULL };
  const TmToken *size = tm_tokens_peek (tokens, 1);

  for (gsize i = 0; letters[i] != NULL; i++)
    if (tm_tokens_peek (tokens, 0)->kind == TM_TOKEN_WORD
        && strcmp (tm_tokens_peek (tokens, 0)->text, letters[i]) == 0)
      return tm_token_is_whole (size);
  return FALSE;
}

/* "1/4-20" and "#10-32": a fraction or a number size, and threads to the inch. */
static gboolean
starts_inch (const TmTokens *tokens)
{
  guint dash = 3;

  if (tm_tokens_peek (tokens, 0)->kind == TM_TOKEN_HASH)
    dash = 2;
  else if (tm_tokens_peek (tokens, 1)->kind != TM_TOKEN_SLASH)
    return FALSE;
  return tm_token_is_whole (tm_tokens_peek (tokens, dash - 1))
         && tm_tokens_peek (tokens, dash)->kind == TM_TOKEN_MINUS && !tm_tokens_peek (tokens, dash)->spaced
         && tm_token_is_whole (tm_tokens_peek (tokens, dash + 1))
         && tm_tokens_peek (tokens, dash + 2)->kind != TM_TOKEN_SLASH; /* "1/4-3/8" */
}

/* The series named behind a size: "1/4-20 UNC-2B", "1/8 NPT", "10-32 UNF". */
static gboolean
names_series (const TmTokens *tokens)
{
  TmTokenKind first = tm_tokens_peek (tokens, 0)->kind;

  return (first == TM_TOKEN_NUMBER || first == TM_TOKEN_HASH || first == TM_TOKEN_DIAMETER)
         && find_word (tokens, thread_words) < tokens->n - 1;
}

gboolean
tm_callout_is_thread (const TmTokens *tokens, TmUnit unit)
{
  return starts_metric (tokens) || starts_pipe (tokens) || names_series (tokens)
         || (unit == TM_UNIT_IN && starts_inch (tokens));
}

/* Words of a thread's designation; a single letter is a tolerance position or a class. */
static gboolean
is_thread_word (const char *word)
{
  static const char *const words[]
      = { "LH", "RH", "thru", "through", "all", "deep", "depth", "min", "max", "tap",
          "mm", "in", "stub", "M",       "MJ",  "MF",   "Tr",    "Rc",  "Rp",  NULL };
  for (gsize i = 0; words[i] != NULL; i++)
    if (g_ascii_strcasecmp (words[i], word) == 0)
      return TRUE;
  return strlen (word) == 1;
}

static gboolean
is_thread_token (const TmToken *token)
{
  switch (token->kind)
    {
    case TM_TOKEN_NUMBER:
    case TM_TOKEN_TIMES:
    case TM_TOKEN_MINUS:
    case TM_TOKEN_SLASH:
    case TM_TOKEN_HASH:
    case TM_TOKEN_DEPTH:
    case TM_TOKEN_DIAMETER:
    case TM_TOKEN_DOUBLE:
      return TRUE;
    case TM_TOKEN_WORD:
      return is_any (token, thread_words) || is_thread_word (token->text);
    case TM_TOKEN_END:
    case TM_TOKEN_PLUSMINUS:
    case TM_TOKEN_PLUS:
    case TM_TOKEN_DEGREE:
    case TM_TOKEN_SINGLE:
    case TM_TOKEN_OPEN:
    case TM_TOKEN_CLOSE:
    case TM_TOKEN_AT_MOST:
    case TM_TOKEN_AT_LEAST:
    case TM_TOKEN_ROOT:
    case TM_TOKEN_CIRCLED:
    case TM_TOKEN_GEOMETRY:
    case TM_TOKEN_OTHER:
    default:
      return FALSE;
    }
}

/* A thread is judged by its gauge, go or no-go: its text is kept and gives no limits. */
TmCalloutStatus
tm_callout_read_thread (TmCalloutReader *reader)
{
  TmTokens *tokens = &reader->tokens;

  for (; !tm_tokens_at_end (tokens); tokens->at++)
    if (!is_thread_token (tm_tokens_peek (tokens, 0)))
      return TM_CALLOUT_NOT_READ;
  reader->out.kind = TM_KIND_THREAD;
  return TM_CALLOUT_OK;
}
