/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-callout-band.h"

#include <string.h>

#define MAX_DIVISOR 128

#define PER_DEGREE 60

/* The value of a whole number of at most six digits, -1 for anything else. */
static gint64
read_whole (const TmToken *token)
{
  if (!tm_token_is_whole (token) || strlen (token->text) > 6)
    return -1;
  return (gint64)g_ascii_strtoull (token->text, NULL, 10);
}

static gboolean
is_length_or_angle (TmUnit unit)
{
  TmDimension dimension = tm_unit_dimension (unit);

  return dimension == TM_DIMENSION_LENGTH || dimension == TM_DIMENSION_ANGLE;
}

/* The unit that the token @ahead states, TM_UNIT_NONE when it states none.  Letters right before
 * digits are a tolerance class, not a unit. */
static TmUnit
peek_unit (const TmTokens *tokens, guint ahead)
{
  const TmToken *token = tm_tokens_peek (tokens, ahead);
  const TmToken *next = tm_tokens_peek (tokens, ahead + 1);
  TmUnit unit;

  if (token->kind == TM_TOKEN_DOUBLE)
    return TM_UNIT_IN;
  if (token->kind == TM_TOKEN_DEGREE)
    return TM_UNIT_DEGREE;
  if (token->kind != TM_TOKEN_WORD || (next->kind == TM_TOKEN_NUMBER && !next->spaced))
    return TM_UNIT_NONE;
  if (!tm_unit_from_word (token->text, &unit) || !is_length_or_angle (unit))
    return TM_UNIT_NONE;
  return unit;
}

static void
take_unit (TmTokens *tokens, TmCalloutNumber *number)
{
  TmUnit unit = peek_unit (tokens, 0);

  if (unit == TM_UNIT_NONE)
    return;
  number->unit = unit;
  tokens->at++;
}

/* "3/8": both whole, no spaces, a proper fraction with a power of two below. */
static gboolean
is_fraction (const TmTokens *tokens, guint ahead, TmUnit unit)
{
  const TmToken *slash = tm_tokens_peek (tokens, ahead + 1);
  const TmToken *below = tm_tokens_peek (tokens, ahead + 2);
  gint64 numerator = read_whole (tm_tokens_peek (tokens, ahead));
  gint64 divisor = read_whole (below);

  if (slash->kind != TM_TOKEN_SLASH || slash->spaced || below->spaced)
    return FALSE;
  if (unit != TM_UNIT_IN && tm_band_family (peek_unit (tokens, ahead + 3)) != TM_UNIT_IN)
    return FALSE;
  return numerator > 0 && divisor > numerator && divisor <= MAX_DIVISOR && (divisor & (divisor - 1)) == 0;
}

static void
take_fraction (TmTokens *tokens, gint64 whole, TmCalloutNumber *number)
{
  gint64 numerator = read_whole (tm_tokens_peek (tokens, 0));
  gint64 divisor = read_whole (tm_tokens_peek (tokens, 2));

  tokens->at += 3;
  number->fraction = number->counted = TRUE;
  number->count = (whole * divisor + numerator) * (tm_unit_counts (TM_UNIT_IN) / divisor);
  number->decimals = tm_band_exact_decimals (number->count, TM_UNIT_IN);
  number->unit = TM_UNIT_IN;
  if (tm_band_family (peek_unit (tokens, 0)) == TM_UNIT_IN)
    tokens->at++;
}

/* "1 3/16" and "1-3/16". */
static gboolean
take_any_fraction (TmTokens *tokens, TmUnit unit, TmCalloutNumber *number)
{
  gint64 whole = read_whole (tm_tokens_peek (tokens, 0));
  const TmToken *next = tm_tokens_peek (tokens, 1);
  const TmToken *third = tm_tokens_peek (tokens, 2);

  if (is_fraction (tokens, 0, unit))
    whole = 0;
  else if (whole >= 0 && next->spaced && is_fraction (tokens, 1, unit))
    tokens->at += 1;
  else if (whole >= 0 && next->kind == TM_TOKEN_MINUS && !next->spaced && !third->spaced
           && is_fraction (tokens, 2, unit))
    tokens->at += 2;
  else
    return FALSE;
  take_fraction (tokens, whole, number);
  return TRUE;
}

/* Adds the number that comes next, in degrees divided by @divisor, when the sign @mark follows. */
static gboolean
add_part (TmTokens *tokens, TmTokenKind mark, gint64 divisor, TmCalloutNumber *number, gboolean *exact)
{
  TmQuantity part;

  if (tm_tokens_peek (tokens, 0)->kind != TM_TOKEN_NUMBER || tm_tokens_peek (tokens, 1)->kind != mark)
    return FALSE;
  if (tm_quantity_read (tm_tokens_peek (tokens, 0)->text, TM_UNIT_DEGREE, &part) != TM_READ_OK
      || part.count % divisor != 0 || part.count > 3600 * tm_unit_counts (TM_UNIT_DEGREE))
    {
      *exact = FALSE;
      return FALSE;
    }
  tokens->at += 2;
  number->count += part.count / divisor;
  return TRUE;
}

/* "90°", "1°30'", "1°30'20"", and, when @angle, "30'" and "20"". */
static gboolean
take_angle (TmTokens *tokens, gboolean angle, TmCalloutNumber *number)
{
  gboolean exact = TRUE;
  gboolean degrees = tm_tokens_peek (tokens, 1)->kind == TM_TOKEN_DEGREE
                     && (tm_tokens_peek (tokens, 3)->kind == TM_TOKEN_SINGLE
                         || tm_tokens_peek (tokens, 3)->kind == TM_TOKEN_DOUBLE);
  guint start = tokens->at;

  if (degrees)
    add_part (tokens, TM_TOKEN_DEGREE, 1, number, &exact);
  if (degrees || angle)
    {
      add_part (tokens, TM_TOKEN_SINGLE, PER_DEGREE, number, &exact);
      add_part (tokens, TM_TOKEN_DOUBLE, PER_DEGREE * PER_DEGREE, number, &exact);
    }
  if (tokens->at == start || !exact)
    {
      tokens->at = start;
      number->count = 0;
      return FALSE;
    }
  number->counted = TRUE;
  number->unit = TM_UNIT_DEGREE;
  number->decimals = tm_band_exact_decimals (number->count, TM_UNIT_DEGREE);
  return TRUE;
}

gboolean
tm_band_take_number (TmTokens *tokens, TmUnit unit, gboolean angle, TmCalloutNumber *number)
{
  const TmToken *token = tm_tokens_peek (tokens, 0);

  memset (number, 0, sizeof *number);
  if (token->kind != TM_TOKEN_NUMBER)
    return FALSE;
  if (take_any_fraction (tokens, unit, number) || take_angle (tokens, angle, number))
    return TRUE;
  g_strlcpy (number->text, token->text, sizeof number->text);
  tokens->at++;
  take_unit (tokens, number);
  return TRUE;
}

TmBandForm
tm_band_take_side (TmTokens *tokens)
{
  static const char *const max_words[] = { "max", "maximum", NULL };
  static const char *const min_words[] = { "min", "minimum", NULL };

  if (tm_tokens_take (tokens, TM_TOKEN_AT_MOST) || tm_tokens_take_any (tokens, max_words))
    return TM_BAND_MAX;
  if (tm_tokens_take (tokens, TM_TOKEN_AT_LEAST) || tm_tokens_take_any (tokens, min_words))
    return TM_BAND_MIN;
  return TM_BAND_BARE;
}

/* Letters of one case right before a whole number: the shape of a class.  A lone x is cut as a
 * times sign: it is a class only when a space stands before it ("25 x6"), else a product ("25x6"). */
gboolean
tm_band_take_class (TmTokens *tokens, TmIso286Class *out, gboolean *known)
{
  const TmToken *letters = tm_tokens_peek (tokens, 0);
  const TmToken *grade = tm_tokens_peek (tokens, 1);
  gboolean shaped = letters->kind == TM_TOKEN_WORD && strlen (letters->text) <= 2;

  if (letters->kind == TM_TOKEN_TIMES)
    shaped = letters->spaced && letters->text[0] != '\0';
  if (!shaped || grade->spaced || !tm_token_is_whole (grade))
    return FALSE;
  *known = tm_iso286_class_read (letters->text, grade->text, out);
  tokens->at += 2;
  return TRUE;
}

static gboolean
is_zero (const TmToken *token)
{
  return token->kind == TM_TOKEN_NUMBER && strpbrk (token->text, "123456789") == NULL;
}

/* "+0.1", "-0.2", or a zero with no sign. */
static gboolean
take_deviation (TmTokens *tokens, const TmBandRules *rules, gboolean angle, TmBandPair *pair, guint i)
{
  pair->sign[i] = 1;
  if (tm_tokens_take (tokens, TM_TOKEN_MINUS))
    pair->sign[i] = -1;
  else if (!tm_tokens_take (tokens, TM_TOKEN_PLUS) && !is_zero (tm_tokens_peek (tokens, 0)))
    return FALSE;
  return tm_band_take_number (tokens, rules->unit, angle, &pair->number[i]);
}

static gboolean
is_sign (const TmToken *token)
{
  return token->kind == TM_TOKEN_PLUS || token->kind == TM_TOKEN_MINUS;
}

static gboolean
starts_deviation (const TmToken *token)
{
  return is_sign (token) || is_zero (token);
}

static void
set_zero (TmBandPair *pair, guint i)
{
  memset (&pair->number[i], 0, sizeof pair->number[i]);
  g_strlcpy (pair->number[i].text, "0", sizeof pair->number[i].text);
  pair->sign[i] = 1;
}

/* Two deviations with or without a slash, or one whose other side is zero. */
static TmCalloutStatus
take_deviations (TmTokens *tokens, const TmBandRules *rules, gboolean angle, TmBandPair *pair, gboolean *lone)
{
  const TmToken *next;
  gboolean slash;

  *lone = FALSE;
  if (!take_deviation (tokens, rules, angle, pair, 0))
    return TM_CALLOUT_NOT_READ;
  slash = tm_tokens_take (tokens, TM_TOKEN_SLASH);
  next = tm_tokens_peek (tokens, 0);
  if (slash || is_sign (next) || (is_zero (next) && next->spaced))
    return take_deviation (tokens, rules, angle, pair, 1) ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
  set_zero (pair, 1);
  *lone = TRUE;
  return TM_CALLOUT_OK;
}

/* Compares two numbers as they would be with @unit: 0 when @part of 100 of the larger is not
 * reached by their difference. */
static gboolean
lie_within (const TmCalloutNumber *a, const TmCalloutNumber *b, TmUnit unit, int percent)
{
  gint64 first, second, larger, gap;

  if (tm_band_count (a, b->unit != TM_UNIT_NONE ? b->unit : unit, &first) != TM_CALLOUT_OK
      || tm_band_count (b, a->unit != TM_UNIT_NONE ? a->unit : unit, &second) != TM_CALLOUT_OK)
    return FALSE;
  larger = MAX (first, second);
  gap = first > second ? first - second : second - first;
  return (TmWide)gap * 100 <= (TmWide)larger * percent;
}

static void
set_limits (TmBand *band, const TmCalloutNumber *second)
{
  band->form = TM_BAND_LIMITS;
  band->pair.number[0] = band->nominal;
  band->pair.number[1] = *second;
  band->pair.sign[0] = band->pair.sign[1] = 1;
}

/* "25.000/25.021", "25.000 to 25.021".  Two numbers written alike, or close to each other; not "3/8". */
static TmCalloutStatus
take_two_limits (TmTokens *tokens, const TmBandRules *rules, gboolean angle, TmBand *band)
{
  TmCalloutNumber second;
  guint decimals = tm_band_written_decimals (&band->nominal);
  gboolean alike;

  if (!tm_tokens_take (tokens, TM_TOKEN_SLASH))
    tm_tokens_take_word (tokens, "to");
  if (!tm_band_take_number (tokens, rules->unit, angle, &second))
    return TM_CALLOUT_NOT_READ;
  alike = decimals > 0 && decimals == tm_band_written_decimals (&second);
  if (!alike && !rules->any_range && !lie_within (&band->nominal, &second, rules->unit, 20))
    return TM_CALLOUT_NOT_READ;
  set_limits (band, &second);
  return TM_CALLOUT_OK;
}

/* In brackets a minus is a sign: "25 (-0.1)". */
static gboolean
follows_bracket (const TmTokens *tokens)
{
  return tokens->at > 0 && tokens->tokens[tokens->at - 1].kind == TM_TOKEN_OPEN;
}

/* "a-b" is a range when the two lie within 20 %; "a -b" is a with +0/-b; "a - b" is whichever of
 * the two it plainly is.  Whatever could be the other thing is not read. */
static TmCalloutStatus
take_after_minus (TmTokens *tokens, const TmBandRules *rules, gboolean angle, TmBand *band)
{
  gboolean before = tm_tokens_peek (tokens, 0)->spaced || follows_bracket (tokens);
  gboolean behind = tm_tokens_peek (tokens, 1)->spaced;
  TmCalloutNumber second;
  gboolean lone;
  guint start = tokens->at;

  tokens->at++;
  if (!tm_band_take_number (tokens, rules->unit, angle, &second))
    return TM_CALLOUT_NOT_READ;
  if (before == behind && (rules->any_range || lie_within (&band->nominal, &second, rules->unit, 20)))
    {
      set_limits (band, &second);
      return TM_CALLOUT_OK;
    }
  if (!before)
    return TM_CALLOUT_NOT_READ;
  tokens->at = start;
  band->form = TM_BAND_DEVIATIONS;
  if (take_deviations (tokens, rules, angle, &band->pair, &lone) != TM_CALLOUT_OK)
    return TM_CALLOUT_NOT_READ;
  /* 25.021 -25.000 is no tolerance: a lone one of half the size or more is not taken. */
  if (lone && lie_within (&band->nominal, &second, rules->unit, behind ? 90 : 50))
    return TM_CALLOUT_NOT_READ;
  return TM_CALLOUT_OK;
}

/* "12 max", "10 min 12 max", "12 max / 10 min". */
static TmCalloutStatus
take_one_sided (TmTokens *tokens, const TmBandRules *rules, gboolean angle, TmBandForm side, TmBand *band)
{
  TmCalloutNumber second;

  guint start = tokens->at;

  band->form = side;
  tm_tokens_take (tokens, TM_TOKEN_SLASH);
  if (!tm_band_take_number (tokens, rules->unit, angle, &second)
      || tm_band_take_side (tokens) != (side == TM_BAND_MAX ? TM_BAND_MIN : TM_BAND_MAX))
    {
      tokens->at = start; /* what follows is something else: "12 max 4X" */
      return TM_CALLOUT_OK;
    }
  set_limits (band, &second);
  band->ordered = TRUE;
  if (side == TM_BAND_MAX)
    {
      band->pair.number[0] = second;
      band->pair.number[1] = band->nominal;
    }
  return TM_CALLOUT_OK;
}

/* What a drawing may write behind a class: its deviations, or its limits, often in brackets. */
static TmCalloutStatus
take_confirmation (TmTokens *tokens, const TmBandRules *rules, TmBand *band)
{
  const TmToken *next;
  gboolean lone = FALSE;
  gboolean open = FALSE;
  TmBandPair *pair = &band->pair;

  if (tm_tokens_peek (tokens, 0)->kind == TM_TOKEN_OPEN
      && tm_tokens_peek (tokens, 2)->kind != TM_TOKEN_TIMES) /* "(4X)" */
    open = tm_tokens_take (tokens, TM_TOKEN_OPEN);
  next = tm_tokens_peek (tokens, 0);
  if (starts_deviation (next))
    {
      if (take_deviations (tokens, rules, FALSE, pair, &lone) != TM_CALLOUT_OK)
        return TM_CALLOUT_NOT_READ;
      band->confirmed = TRUE;
    }
  else if (open)
    {
      if (!tm_band_take_number (tokens, rules->unit, FALSE, &pair->number[0])
          || (!tm_tokens_take (tokens, TM_TOKEN_SLASH) && !tm_tokens_take (tokens, TM_TOKEN_MINUS))
          || !tm_band_take_number (tokens, rules->unit, FALSE, &pair->number[1]))
        return TM_CALLOUT_NOT_READ;
      pair->sign[0] = pair->sign[1] = 1;
      band->confirmed = band->confirmed_limits = TRUE;
    }
  return !open || tm_tokens_take (tokens, TM_TOKEN_CLOSE) ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}

static TmCalloutStatus
take_plus_minus (TmTokens *tokens, const TmBandRules *rules, gboolean angle, TmBand *band)
{
  if (!tm_band_take_number (tokens, rules->unit, angle, &band->pair.number[0]))
    return TM_CALLOUT_NOT_READ;
  band->pair.number[1] = band->pair.number[0];
  band->pair.sign[0] = -1;
  band->pair.sign[1] = 1;
  band->form = TM_BAND_DEVIATIONS;
  return TM_CALLOUT_OK;
}

/* Everything but a class and brackets. */
static TmCalloutStatus
take_plain_tolerance (TmTokens *tokens, const TmBandRules *rules, TmBand *band)
{
  gboolean angle = band->nominal.unit == TM_UNIT_DEGREE;
  const TmToken *next = tm_tokens_peek (tokens, 0);
  TmBandForm side;
  gboolean lone;

  if (tm_tokens_take (tokens, TM_TOKEN_PLUSMINUS))
    return take_plus_minus (tokens, rules, angle, band);
  if (next->kind == TM_TOKEN_SLASH || tm_token_is_word (next, "to"))
    return take_two_limits (tokens, rules, angle, band);
  side = tm_band_take_side (tokens);
  if (side != TM_BAND_BARE)
    return take_one_sided (tokens, rules, angle, side, band);
  if (next->kind == TM_TOKEN_MINUS)
    return take_after_minus (tokens, rules, angle, band);
  if (next->kind == TM_TOKEN_PLUS || is_zero (next))
    {
      band->form = TM_BAND_DEVIATIONS;
      return take_deviations (tokens, rules, angle, &band->pair, &lone);
    }
  return TM_CALLOUT_OK;
}

/* "25 (±0.1)", "25 (+0.1/-0.2)". */
static gboolean
opens_tolerance (const TmTokens *tokens)
{
  const TmToken *next = tm_tokens_peek (tokens, 1);

  return tm_tokens_peek (tokens, 0)->kind == TM_TOKEN_OPEN
         && (next->kind == TM_TOKEN_PLUSMINUS || is_sign (next));
}

TmCalloutStatus
tm_band_take_tolerance (TmTokens *tokens, const TmBandRules *rules, TmBand *band)
{
  gboolean known, open;
  TmCalloutStatus status;

  band->form = TM_BAND_BARE;
  if (tm_band_take_class (tokens, &band->tolerance_class, &known))
    {
      band->form = TM_BAND_CLASS;
      if (band->nominal.unit == TM_UNIT_NONE)
        take_unit (tokens, &band->nominal); /* "25 H7 mm" */
      return known ? take_confirmation (tokens, rules, band) : TM_CALLOUT_CLASS_UNKNOWN;
    }
  open = opens_tolerance (tokens) && tm_tokens_take (tokens, TM_TOKEN_OPEN);
  status = take_plain_tolerance (tokens, rules, band);
  if (status == TM_CALLOUT_OK && open && !tm_tokens_take (tokens, TM_TOKEN_CLOSE))
    return TM_CALLOUT_NOT_READ;
  return status;
}
