/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-handling: errors of the hand that have a sign.  A gauge across a bore that leans along the axis
 * reads large, one off the middle reads small: the right reading is the largest across and the smallest
 * along.  Elementary geometry.
 */

#pragma once

#include "core-contact.h"

G_BEGIN_DECLS

/* What a gauge across a bore of @diameter reads too much when it leans by @tilt degrees along the axis:
 * D (1 / cos t - 1), never below 0; in the unit of @diameter.  @tilt within ±90°. */
double tm_handling_tilt_error (double diameter, double tilt);

/* What it reads too little, as a number of 0 or below, when it lies @offset beside the middle:
 * sqrt (D² - 4 e²) - D.  @offset in the same unit, at most half the diameter. */
double tm_handling_chord_error (double diameter, double offset);

/* Which reading of a method is the right one. */
typedef enum {
  TM_HANDLING_NONE,   /* not known to matter: not round, or a gauge of no known kind */
  TM_HANDLING_INSIDE, /* two points inside: largest across, smallest along */
  TM_HANDLING_LEANS,  /* three points inside: they find the middle; smallest along */
} TmHandling;
TmHandling tm_handling_of (const TmJob *job, const TmFeature *feature, const char *method);

/* One line for the bench, marked for translation; "" for NONE. */
const char *tm_handling_text (TmHandling handling);

G_END_DECLS
