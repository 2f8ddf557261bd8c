/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-callout-band: a number with its tolerance, in every way a drawing writes one.  Private to the
 * callout reader.
 */

#pragma once

#include "core-callout-token.h"
#include "core-callout.h"
#include "core-iso286.h"

G_BEGIN_DECLS

/* One number as written. */
typedef struct {
  TmUnit unit;       /* TM_UNIT_NONE: not stated */
  gboolean fraction; /* an inch fraction */
  gboolean counted;  /* count holds the value: a fraction, or degrees with minutes */
  gint64 count;
  guint decimals; /* that give the value exactly, when counted */
  char text[TM_TOKEN_TEXT];
} TmCalloutNumber;

typedef enum {
  TM_BAND_BARE,
  TM_BAND_DEVIATIONS, /* nominal with two signed deviations */
  TM_BAND_LIMITS,     /* two limits, no nominal */
  TM_BAND_MAX,        /* upper limit only */
  TM_BAND_MIN,        /* lower limit only */
  TM_BAND_CLASS,      /* nominal with a tolerance class */
} TmBandForm;

/* Two numbers with signs: deviations, or limits (then both positive), in no set order. */
typedef struct {
  TmCalloutNumber number[2];
  int sign[2];
} TmBandPair;

typedef struct {
  TmBandForm form;
  gboolean ordered;        /* limits written with "min" and "max": pair holds them in that order */
  TmCalloutNumber nominal; /* of BARE, DEVIATIONS, CLASS; the one limit of MAX and MIN */
  TmBandPair pair;
  TmIso286Class tolerance_class;
  gboolean confirmed; /* CLASS with its limits or deviations written behind it in `pair` */
  gboolean confirmed_limits;
} TmBand;

/* How numbers are to be taken. */
typedef struct {
  TmUnit unit;        /* of a number without one */
  gboolean any_range; /* "a-b" is a range however far apart the two lie */
} TmBandRules;

/* A band in counts; nominal, lower, upper not given where the form has none. */
typedef struct {
  TmUnit unit;
  TmQuantity nominal;
  TmQuantity lower;
  TmQuantity upper;
} TmBandLimits;

/* Takes a number with its unit, if it has one; @angle: ' and " are minutes and seconds. */
gboolean tm_band_take_number (TmTokens *tokens, TmUnit unit, gboolean angle, TmCalloutNumber *number);

/* Takes the tolerance behind band->nominal.
 * Returns: TM_CALLOUT_OK, also when nothing that looks like a tolerance follows (BARE). */
TmCalloutStatus tm_band_take_tolerance (TmTokens *tokens, const TmBandRules *rules, TmBand *band);

/* Works out the limits.  A BARE band gives its nominal only. */
TmCalloutStatus tm_band_resolve (const TmBand *band, const TmBandRules *rules, TmBandLimits *limits);

/* The two words of a one-sided requirement; also the signs ≤ and ≥.
 * Returns: TM_BAND_MAX, TM_BAND_MIN, or TM_BAND_BARE when neither comes next. */
TmBandForm tm_band_take_side (TmTokens *tokens);

/* The exact count of @number, in @unit when it states none. */
TmCalloutStatus tm_band_count (const TmCalloutNumber *number, TmUnit unit, gint64 *count);

/* MM or IN for units of length, DEGREE for angles, HARDNESS for hardness. */
TmUnit tm_band_family (TmUnit unit);

/* Digits that give @count exactly in @unit; 6 where none do. */
guint tm_band_exact_decimals (gint64 count, TmUnit unit);

/* Digits written behind the point of @number. */
guint tm_band_written_decimals (const TmCalloutNumber *number);

/* Takes a class like "H7". Returns: FALSE with nothing taken when none comes next; @known tells
 * whether it is a class of ISO 286. */
gboolean tm_band_take_class (TmTokens *tokens, TmIso286Class *out, gboolean *known);

G_END_DECLS
