/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-general-tolerance: what a drawing's general tolerance gives a number that has none.
 *
 * Two kinds of text are read: an ISO 2768-1 class ("ISO 2768-m", "ISO 2768-mK"; the second letter
 * belongs to ISO 2768-2 and is not used here), and a title block by the decimals that the drawing
 * writes (".X .1, .XX .01, .XXX .005, .XXXX .0005", with "ANGLES 1" and "FRACTIONS 1/64" if wished).
 * The block's figures are the drawing's own (common practice); none is assumed.
 */

#pragma once

#include "core-callout.h"

G_BEGIN_DECLS

typedef enum {
  TM_GENERAL_LINEAR,
  TM_GENERAL_RADIUS, /* outside radius or chamfer height */
  TM_GENERAL_ANGLE,
} TmGeneralKind;

/* The plus-or-minus tolerance of ISO 2768-1 @letter ('f', 'm', 'c', 'v').  @size is in picometres;
 * for an angle it is the length of its shorter side.  The tolerance is in picometres, for an angle
 * in millionths of an arc second.
 * Returns: FALSE when the standard gives none. */
gboolean tm_general_iso2768 (char letter, TmGeneralKind kind, gint64 size, gint64 *tolerance);

/* Finds the tolerance that @general, the text of a drawing in @unit, gives @nominal as written
 * (its unit, its decimals; @fraction: written as an inch fraction).
 * Returns: TM_CALLOUT_OK with @tolerance set, or NO_GENERAL, GENERAL_UNKNOWN, GENERAL_RANGE. */
TmCalloutStatus tm_general_tolerance_find (const char *general, TmUnit unit, TmGeneralKind kind,
                                           const TmQuantity *nominal, gboolean fraction, gint64 *tolerance);

G_END_DECLS
