/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-fit-words: a fit, its chances and a pairing, put into words.  No widgets.
 *
 * Every function returns a text of the caller's own, translated, "" when there is nothing to say; what is
 * unknown is left out, never shown as a number.  Sizes are in @unit, mm or in, what lies between two sizes in
 * its small unit: micrometres, or tenths.
 */

#pragma once

#include "core-fit-check.h"
#include "core-pairing.h"

G_BEGIN_DECLS

/* "clearance 2 to 14 µm, ± 3 µm", "interference 3 to 12 µm", "interference 3 µm to clearance 9 µm"; ± only
 * where it was measured. */
char *tm_words_fit_range (const TmFitCheck *check, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* "wanted: interference 1 to 35 µm", "wanted: clearance of 5 µm or more"; "" when any will do. */
char *tm_words_fit_want (const TmFitWant *want, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* "inside 98.1 %, too loose 1.2 %, too tight 0.7 %"; by limits "all of it inside", or "" where it depends on
 * the parts; "" without a wanted clearance. */
char *tm_words_fit_chances (const TmFitCheck *check, const TmFitWant *want) G_GNUC_WARN_UNUSED_RESULT;

/* "inside 98 %", for the end of a row. */
char *tm_words_fit_inside (const TmFitCheck *check, const TmFitWant *want) G_GNUC_WARN_UNUSED_RESULT;

/* One short line: "Inside the wanted range", "Too tight", "May be too loose"; where nothing is wanted "An
 * interference fit"; where it cannot be told, what is missing and the mend. */
char *tm_words_fit_says (TmFitStatus status, const TmFitCheck *check,
                         const TmFitWant *want) G_GNUC_WARN_UNUSED_RESULT;

/* "It goes in without force: 99.9 %", "It presses all over: 97 %", both, or "It may have room or press". */
char *tm_words_fit_nature (const TmFitCheck *check) G_GNUC_WARN_UNUSED_RESULT;

/* The status alone, with its mend. */
char *tm_words_fit_status (TmFitStatus status) G_GNUC_WARN_UNUSED_RESULT;

/* "Expected outside: 0.3 of 12 pairs; in the order they came: 2.1" */
char *tm_words_pairing (const TmPairing *pairing) G_GNUC_WARN_UNUSED_RESULT;

/* "25.027 to 25.029 mm ± 2 µm" */
char *tm_words_mate_size (const TmMateSize *mate, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
