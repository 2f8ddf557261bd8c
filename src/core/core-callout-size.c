/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes: diameters, lengths, radii, chamfers, depths and angles.
 */

#include "core-callout-band.h"
#include "core-callout-reader.h"
#include "core-general-tolerance.h"

#include <string.h>

#define MAX_PLACES   9999
#define FULL_CIRCLE  360
#define FINEST_CLEAR 5 /* grade from which C and R can only be classes */

/* What stands around the number. */
typedef struct {
  gboolean diameter;
  gboolean inside;  /* a diameter, of a hole */
  gboolean outside; /* a diameter, of a shaft */
  gboolean radius;
  gboolean chamfer;
  gboolean depth;
  gboolean envelope;
  gboolean places; /* said twice is not read */
  TmBandForm side;
} Marks;

static const char *const diameter_words[] = { "dia", "diam", "diameter", NULL };
/* On drawings and at the bench alike (common practice). */
static const char *const inside_words[] = { "ID", "bore", "hole", NULL };
static const char *const outside_words[] = { "OD", "shaft", NULL };
static const char *const radius_words[] = { "R", "rad", "radius", NULL };
static const char *const depth_words[] = { "depth", "deep", "dp", NULL };
static const char *const place_words[] = { "places", "place", "plcs", "plc", "pls", "pl", "holes", NULL };

static guint
read_places (const TmToken *token)
{
  guint64 places;

  if (!tm_token_is_whole (token) || strlen (token->text) > 4)
    return 0;
  places = g_ascii_strtoull (token->text, NULL, 10);
  return places <= MAX_PLACES ? (guint)places : 0;
}

/* Whether "4X" at the token @at counts places and is not "4 by": the sign joins the number and a
 * gap follows ("4X 6.5"), or what follows is no number at all ("4 X Ø6.5", "4xM8"). */
static gboolean
counts_places (const TmTokens *tokens, guint at)
{
  const TmToken *sign = tm_tokens_peek (tokens, at + 1);
  const TmToken *next = tm_tokens_peek (tokens, at + 2);

  if (sign->kind != TM_TOKEN_TIMES || next->kind == TM_TOKEN_END)
    return FALSE;
  if (next->kind != TM_TOKEN_NUMBER)
    return TRUE;
  if (sign->spaced || !next->spaced)
    return FALSE;
  /* "1x 45°" is a chamfer written in haste, not one place of an angle. */
  return read_places (tm_tokens_peek (tokens, at)) > 1
         || tm_tokens_peek (tokens, at + 3)->kind != TM_TOKEN_DEGREE;
}

gboolean
tm_callout_take_places (TmCalloutReader *reader)
{
  TmTokens *tokens = &reader->tokens;
  guint start = tokens->at;
  gboolean open = tm_tokens_take (tokens, TM_TOKEN_OPEN);
  guint places = read_places (tm_tokens_peek (tokens, 0));
  gboolean found = FALSE;

  if (places > 0 && tm_tokens_peek (tokens, 1)->kind == TM_TOKEN_TIMES
      && (open ? tm_tokens_peek (tokens, 2)->kind == TM_TOKEN_CLOSE : counts_places (tokens, 0)))
    {
      tokens->at += 2;
      found = TRUE;
    }
  else if (places > 0)
    {
      tokens->at++;
      found = tm_tokens_take_any (tokens, place_words);
    }
  if (found && (!open || tm_tokens_take (tokens, TM_TOKEN_CLOSE)))
    {
      reader->out.places = places;
      return TRUE;
    }
  tokens->at = start;
  return FALSE;
}

/* "Ø6.5 ±0.1 4X", "… (4X)", "… 4 places". */
static gboolean
take_trailing_places (TmCalloutReader *reader, Marks *marks)
{
  TmTokens *tokens = &reader->tokens;
  guint places = read_places (tm_tokens_peek (tokens, 0));

  if (marks->places)
    return FALSE;
  if (places > 0 && tm_tokens_peek (tokens, 1)->kind == TM_TOKEN_TIMES && !tm_tokens_peek (tokens, 1)->spaced
      && tm_tokens_peek (tokens, 2)->kind == TM_TOKEN_END)
    {
      tokens->at += 2;
      reader->out.places = places;
      return marks->places = TRUE;
    }
  return marks->places = tm_callout_take_places (reader);
}

static gboolean
take_diameter (TmTokens *tokens)
{
  const TmToken *first = tm_tokens_peek (tokens, 0);

  if (tm_token_is_word (first, "S") && tm_tokens_peek (tokens, 1)->kind == TM_TOKEN_DIAMETER)
    tokens->at++; /* spherical */
  return tm_tokens_take (tokens, TM_TOKEN_DIAMETER) || tm_tokens_take_any (tokens, diameter_words);
}

/* "45° x " in front of the height of a chamfer, and " x 45°" behind it. */
static gboolean
take_chamfer_angle (TmTokens *tokens, gboolean in_front)
{
  const TmToken *angle = tm_tokens_peek (tokens, in_front ? 0 : 1);
  const TmToken *degree = tm_tokens_peek (tokens, in_front ? 1 : 2);
  const TmToken *times = tm_tokens_peek (tokens, in_front ? 2 : 0);

  if (times->kind != TM_TOKEN_TIMES || angle->kind != TM_TOKEN_NUMBER || strcmp (angle->text, "45") != 0)
    return FALSE;
  if (degree->kind != TM_TOKEN_DEGREE && !tm_token_is_word (degree, "deg"))
    return FALSE;
  tokens->at += 3;
  return TRUE;
}

static gboolean
set_once (gboolean *flag)
{
  if (*flag)
    return FALSE;
  return *flag = TRUE;
}

/* "C1" is a chamfer; "C" alone is not. */
static gboolean
take_chamfer_letter (TmTokens *tokens)
{
  const TmToken *next = tm_tokens_peek (tokens, 1);

  return strcmp (tm_tokens_peek (tokens, 0)->text, "C") == 0 && next->kind == TM_TOKEN_NUMBER && !next->spaced
         && tm_tokens_take (tokens, TM_TOKEN_WORD);
}

/* "OD 30", "30 ID". */
static gboolean
take_whose (TmTokens *tokens, Marks *marks)
{
  if (marks->inside || marks->outside)
    return FALSE;
  marks->inside = tm_tokens_take_any (tokens, inside_words);
  marks->outside = !marks->inside && tm_tokens_take_any (tokens, outside_words);
  return marks->inside || marks->outside;
}

static gboolean
take_mark_in_front (TmTokens *tokens, Marks *marks)
{
  if (take_whose (tokens, marks))
    return TRUE;
  if (take_diameter (tokens))
    return set_once (&marks->diameter);
  if (tm_tokens_take_word (tokens, "SR") || tm_tokens_take_any (tokens, radius_words))
    return set_once (&marks->radius);
  if (take_chamfer_letter (tokens) || take_chamfer_angle (tokens, TRUE))
    return set_once (&marks->chamfer);
  if (tm_tokens_take (tokens, TM_TOKEN_DEPTH) || tm_tokens_take_any (tokens, depth_words))
    return set_once (&marks->depth);
  if (marks->side != TM_BAND_BARE)
    return FALSE;
  marks->side = tm_band_take_side (tokens);
  return marks->side != TM_BAND_BARE;
}

/* Words that leave the limits as they are. */
static gboolean
take_idle_word (TmTokens *tokens)
{
  static const char *const through[] = { "thru", "through", NULL };
  static const char *const idle[] = { "typ", "typical", NULL };

  if (!tm_tokens_take_any (tokens, through))
    return tm_tokens_take_any (tokens, idle);
  tm_tokens_take_word (tokens, "all");
  return TRUE;
}

static gboolean
take_envelope (TmTokens *tokens)
{
  const TmToken *next = tm_tokens_peek (tokens, 0);

  if (strcmp (next->text, "E") != 0)
    return FALSE;
  return tm_tokens_take (tokens, TM_TOKEN_CIRCLED)
         || (tm_tokens_peek (tokens, 1)->kind != TM_TOKEN_NUMBER && tm_tokens_take (tokens, TM_TOKEN_WORD));
}

/* What may stand between the number and its tolerance, and behind both. */
static gboolean
take_mark_behind (TmTokens *tokens, Marks *marks)
{
  if (take_whose (tokens, marks))
    return TRUE;
  if (tm_tokens_take_any (tokens, diameter_words))
    return set_once (&marks->diameter);
  if (tm_token_is_word (tm_tokens_peek (tokens, 0), "R")
      && tm_tokens_peek (tokens, 1)->kind == TM_TOKEN_NUMBER)
    return FALSE;
  if (tm_tokens_take_any (tokens, radius_words))
    return set_once (&marks->radius);
  if (take_chamfer_angle (tokens, FALSE))
    return set_once (&marks->chamfer);
  if (tm_tokens_take_any (tokens, depth_words))
    return set_once (&marks->depth);
  return take_idle_word (tokens);
}

/* The whole text: marks, number, tolerance, marks. */
static TmCalloutStatus
take_size (TmCalloutReader *reader, const TmBandRules *rules, Marks *marks, TmBand *band)
{
  TmTokens *tokens = &reader->tokens;
  TmCalloutStatus status;

  marks->places = reader->out.places > 1;
  while (take_mark_in_front (tokens, marks))
    ;
  if (!tm_band_take_number (tokens, rules->unit, FALSE, &band->nominal))
    return TM_CALLOUT_NOT_READ;
  while (take_mark_behind (tokens, marks))
    ;
  band->form = marks->side;
  if (marks->side == TM_BAND_BARE)
    {
      status = tm_band_take_tolerance (tokens, rules, band);
      if (status != TM_CALLOUT_OK)
        return status;
    }
  while (take_mark_behind (tokens, marks)
         || (!marks->envelope && take_envelope (tokens) && set_once (&marks->envelope))
         || take_trailing_places (reader, marks))
    ;
  return tm_tokens_at_end (tokens) ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}

/* Marks that do not go together are not read. */
static gboolean
are_marks_sound (const Marks *marks, TmUnit unit, const TmBand *band)
{
  TmBandForm form = band->form;
  gboolean round = marks->diameter || marks->inside || marks->outside;
  guint shapes = round + marks->radius + marks->chamfer + marks->depth;

  if (shapes > 1 || (unit == TM_UNIT_DEGREE && (shapes > 0 || marks->envelope)))
    return FALSE;
  if (form == TM_BAND_CLASS && shapes > 0 && !round)
    return FALSE;
  /* A hole does not have a shaft's class. */
  if (form == TM_BAND_CLASS && (band->tolerance_class.hole ? marks->outside : marks->inside))
    return FALSE;
  return !marks->envelope || !(marks->radius || marks->chamfer || marks->depth);
}

static void
set_round (gboolean hole, TmCallout *out)
{
  out->kind = hole ? TM_KIND_BORE : TM_KIND_SHAFT;
  out->cut = hole ? TM_CUT_GROWS : TM_CUT_SHRINKS;
}

static void
set_kind (const Marks *marks, const TmBand *band, TmCallout *out)
{
  out->kind = TM_KIND_LENGTH;
  if (out->unit == TM_UNIT_DEGREE)
    out->kind = TM_KIND_ANGLE;
  else if (band->form == TM_BAND_CLASS || marks->inside || marks->outside)
    set_round (band->form == TM_BAND_CLASS ? band->tolerance_class.hole : marks->inside, out);
  else if (marks->depth)
    out->kind = TM_KIND_DEPTH;
  else if (marks->diameter)
    out->kind = TM_KIND_DIAMETER;
}

/* A number without tolerance takes the drawing's general one. */
static TmCalloutStatus
add_general (const TmCalloutReader *reader, const Marks *marks, const TmBand *band, TmBandLimits *limits)
{
  TmGeneralKind kind = marks->radius || marks->chamfer ? TM_GENERAL_RADIUS : TM_GENERAL_LINEAR;
  gint64 tolerance = 0;
  guint decimals;
  TmCalloutStatus status;

  if (limits->unit == TM_UNIT_DEGREE)
    kind = TM_GENERAL_ANGLE;
  if (limits->nominal.count <= 0)
    return TM_CALLOUT_NOT_READ;
  status = tm_general_tolerance_find (reader->general, reader->unit, kind, &limits->nominal,
                                      band->nominal.fraction, &tolerance);
  if (status != TM_CALLOUT_OK)
    return status;
  decimals = MAX (limits->nominal.decimals, tm_band_exact_decimals (tolerance, limits->unit));
  limits->lower = tm_quantity_new (limits->nominal.count - tolerance, limits->unit, decimals);
  limits->upper = tm_quantity_new (limits->nominal.count + tolerance, limits->unit, decimals);
  return limits->lower.count >= 0 ? TM_CALLOUT_OK : TM_CALLOUT_GENERAL_RANGE;
}

/* Sizes are not negative; only a length of nominally nothing (a step) may lie on both sides. */
static gboolean
are_limits_sound (const TmCallout *out)
{
  gboolean step = out->kind == TM_KIND_LENGTH && out->nominal.given && out->nominal.count == 0;

  if (out->nominal.given && out->nominal.count == 0 && !step)
    return FALSE;
  if (out->lower.given && out->lower.count < 0 && !step)
    return FALSE;
  if ((out->upper.given ? out->upper : out->lower).count <= 0 && !step)
    return FALSE;
  return out->unit != TM_UNIT_DEGREE || !out->upper.given
         || out->upper.count <= FULL_CIRCLE * tm_unit_counts (TM_UNIT_DEGREE);
}

/* "Ø5 C1" is a hole with a chamfer, "Ø20 R3" one with a radius, rather than a class that fine. */
static gboolean
is_class_doubtful (const TmBand *band)
{
  const TmIso286Class *one = &band->tolerance_class;

  return band->form == TM_BAND_CLASS && one->hole && one->grade < FINEST_CLEAR
         && (strcmp (one->letters, "c") == 0 || strcmp (one->letters, "r") == 0);
}

TmCalloutStatus
tm_callout_read_size (TmCalloutReader *reader)
{
  TmBandRules rules = { .unit = reader->unit };
  Marks marks = { .side = TM_BAND_BARE };
  TmBand band = { 0 };
  TmBandLimits limits;
  TmCallout *out = &reader->out;
  TmCalloutStatus status = take_size (reader, &rules, &marks, &band);

  if (status != TM_CALLOUT_OK)
    return status;
  if (is_class_doubtful (&band))
    return TM_CALLOUT_CLASS_UNKNOWN;
  status = tm_band_resolve (&band, &rules, &limits);
  if (status != TM_CALLOUT_OK)
    return status;
  if (!are_marks_sound (&marks, limits.unit, &band))
    return TM_CALLOUT_NOT_READ;
  if (band.form == TM_BAND_BARE)
    status = add_general (reader, &marks, &band, &limits);
  if (status != TM_CALLOUT_OK)
    return status;
  out->unit = limits.unit;
  out->nominal = limits.nominal;
  out->lower = limits.lower;
  out->upper = limits.upper;
  out->envelope = marks.envelope;
  set_kind (&marks, &band, out);
  return are_limits_sound (out) ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}
