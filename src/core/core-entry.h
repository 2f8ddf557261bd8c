/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-entry: what a machinist's keystrokes mean as a reading of one feature.
 *
 * Reads every form of a reading (as written, with a unit, a signed deviation from nominal, bare
 * shorthand, an inch fraction, pass or fail) into one exact value, or refuses with the reason and
 * the readings it might have meant.  Never guesses between two meanings.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_ENTRY_OK,
  TM_ENTRY_EMPTY,
  TM_ENTRY_NOT_A_NUMBER,
  TM_ENTRY_THOUSANDS, /* more than one decimal mark or a digit-group separator */
  TM_ENTRY_TOO_FINE,  /* not a whole number of counts */
  TM_ENTRY_TOO_LARGE,
  TM_ENTRY_UNIT_UNKNOWN,
  TM_ENTRY_UNIT_WRONG,     /* a unit of another dimension */
  TM_ENTRY_NO_NOMINAL,     /* a deviation typed for a feature that has no nominal */
  TM_ENTRY_SHORTHAND_NONE, /* bare digits, and no scaling of them lies near the nominal */
  TM_ENTRY_SHORTHAND_MANY, /* …and more than one does: see the candidates */
  TM_ENTRY_BAD_FRACTION,   /* denominator zero, a sign, or a fraction for a feature not in inches */
  TM_ENTRY_NEGATIVE,       /* a size below zero */
  TM_ENTRY_NOT_PASS_FAIL,  /* the feature is judged by pass or fail */
  TM_ENTRY_PASS_FAIL,      /* pass or fail typed for a feature that has a number */
  TM_N_ENTRY_STATUSES
} TmEntryStatus;

/* How the text was taken. */
typedef enum {
  TM_ENTRY_FORM_PLAIN,
  TM_ENTRY_FORM_WITH_UNIT,
  TM_ENTRY_FORM_DEVIATION,
  TM_ENTRY_FORM_SHORTHAND,
  TM_ENTRY_FORM_FRACTION,
  TM_ENTRY_FORM_OUTCOME,
} TmEntryForm;

#define TM_ENTRY_MAX_CANDIDATES 6

typedef struct {
  TmEntryStatus status;
  TmEntryForm form;   /* on TM_ENTRY_OK and the two SHORTHAND refusals */
  TmQuantity value;   /* given on TM_ENTRY_OK unless form is OUTCOME */
  TmOutcome outcome;  /* on TM_ENTRY_OK with form OUTCOME */
  guint n_candidates; /* on SHORTHAND_NONE and SHORTHAND_MANY: what it might have meant */
  TmQuantity candidates[TM_ENTRY_MAX_CANDIDATES];
} TmEntry;

/* Reads @text as a reading of @feature (design: "Typing a reading").  Never fails to return; any
 * byte string is allowed, UTF-8 or not.  At most 60 characters are a reading.
 *
 * With a unit, or as a fraction: as written, whatever it is.
 *
 * Without a unit and sign, for a size (any kind of length that is not zero-bounded), with R, near,
 * about and plausible of core-near.h: as written when it is near R; else as the one of thou, tenths
 * and micrometres that is near R while no other is even about R; else as written when it is
 * plausible; else refused.  Two meanings
 * are refused, and so are digits that begin with a zero and have no mark: "012" may be the end of
 * 25.012.  Every other kind is taken as written.
 *
 * With a sign and no unit: a whole number counts the shop's small unit (tenths, micrometres, for
 * an angle degrees).  A length with a fraction is refused where it may have meant inches or
 * millimetres: below one, with more than one decimal, or when that meaning lies near R.
 *
 * A value is kept in inches or millimetres, in the feature's unit where that is exact: 748.6 thou
 * is 0.7486 in, 19010 um of an inch feature is 19.010 mm. */
TmEntry tm_entry_read (const char *text, const TmFeature *feature);

/* The message template, marked for translation. */
const char *tm_entry_status_text (TmEntryStatus status);

/* Slips: entered values that are possible but look like a mistake of the hand. */
typedef enum {
  TM_SLIP_NONE,
  TM_SLIP_THIMBLE_TURN, /* off by exactly one turn of a thimble: 0.025 in or 0.5 mm */
  TM_SLIP_DIGIT_SWAP,   /* swapping two neighbouring digits gives a far likelier value */
  TM_SLIP_FAR_OUT,      /* far outside everything read so far and the limits */
  TM_SLIP_OTHER_SYSTEM, /* bare shorthand that fits only in the other system of units */
  TM_SLIP_OUT_OF_REACH, /* outside what the gauge reaches: whoever knows the gauge asks */
  TM_N_SLIPS
} TmSlip;

typedef struct {
  TmSlip slip;
  TmQuantity likelier; /* what was probably meant; not given for FAR_OUT and below */
} TmSlipCheck;

/* Looks for a slip in @value, typed for @feature, against its limits, its nominal, and the
 * readings made so far of the same feature: @so_far, @n_so_far counts (may be NULL, 0).  A value
 * that is plausible as it stands is never called a slip. */
TmSlipCheck tm_slip_check (const TmQuantity *value, const TmFeature *feature, const gint64 *so_far,
                           gsize n_so_far);

/* As tm_slip_check() for what an entry was read as, with one slip more: bare shorthand taken in a
 * system of units that is not the feature's (984 for a 25 mm bore: 0.984 in) may as well be the
 * last digits of a reading in the feature's own.  TM_SLIP_NONE for an entry that was refused or is
 * pass or fail. */
TmSlipCheck tm_entry_slip_check (const TmEntry *entry, const TmFeature *feature, const gint64 *so_far,
                                 gsize n_so_far);

G_END_DECLS
