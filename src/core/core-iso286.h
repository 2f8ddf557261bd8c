/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-iso286: limits of the ISO 286 tolerance classes, exact.
 *
 * Holes A to ZC and shafts a to zc, grades IT01 to IT18, for sizes over 0 up to 500 mm; over 500 up
 * to 3150 mm the deviations D to H, JS and K to U (d to h, js and k to u).  Source: ISO 286-1 and
 * ISO 286-2 with Corrigendum 1:2006.  A combination that the standard does not define is refused.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A tolerance class: "H7", "js6", "ZC10". */
typedef struct {
  gboolean hole;   /* upper-case letters */
  char letters[3]; /* lower case: "h", "js", "zc" */
  int grade;       /* -1 for IT01, 0 for IT0, 1..18 */
} TmIso286Class;

/* Reads the letters ("H", "js"; not a mixture of cases) and the grade's digits ("7", "01").
 * Returns: FALSE when they are no class of the standard at any size. */
gboolean tm_iso286_class_read (const char *letters, const char *grade, TmIso286Class *out);

/* The standard tolerance of @grade (-1 for IT01) for @size picometres, in picometres.
 * Returns: FALSE when the standard gives none. */
gboolean tm_iso286_grade (gint64 size, int grade, gint64 *tolerance);

/* The lower and upper limit deviation, in picometres, of @tolerance_class at nominal @size
 * picometres.  js is half the grade, unrounded.
 * Returns: FALSE when the standard does not define the class for the size. */
gboolean tm_iso286_deviations (gint64 size, const TmIso286Class *tolerance_class, gint64 *lower,
                               gint64 *upper);

G_END_DECLS
