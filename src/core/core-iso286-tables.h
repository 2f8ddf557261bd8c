/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-iso286-tables: the figures of ISO 286-1, as data.  Private to core-iso286.
 *
 * A row holds the sizes over the row before's `upto` up to and including its own.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* No value in the standard. */
#define TM_ISO286_NO G_MININT16

#define TM_ISO286_N_GRADES     20
#define TM_ISO286_N_DEVIATIONS 25
#define TM_ISO286_N_J          6

typedef struct {
  int upto;                       /* mm */
  int tenths[TM_ISO286_N_GRADES]; /* IT01, IT0, IT1 … IT18: tenths of a micrometre */
} TmIso286GradeRow;

/* Magnitudes of the fundamental deviations, micrometres, in the order of tm_iso286_deviation_names.
 * One table serves shafts and holes: apart from j, the hole's base value is the shaft's with the
 * other sign. */
typedef struct {
  int upto; /* mm */
  int micrometres[TM_ISO286_N_DEVIATIONS];
} TmIso286DeviationRow;

/* Signed: lower deviations of j5 and j6, j7, j8, then upper deviations of J6, J7, J8. */
typedef struct {
  int upto; /* mm */
  int micrometres[TM_ISO286_N_J];
} TmIso286JRow;

extern const char tm_iso286_deviation_names[TM_ISO286_N_DEVIATIONS][3];
extern const TmIso286GradeRow tm_iso286_grade_rows[];
extern const gsize tm_iso286_n_grade_rows;
extern const TmIso286DeviationRow tm_iso286_deviation_rows[];
extern const gsize tm_iso286_n_deviation_rows;
extern const TmIso286JRow tm_iso286_j_rows[];
extern const gsize tm_iso286_n_j_rows;

G_END_DECLS
