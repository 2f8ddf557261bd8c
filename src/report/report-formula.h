/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-formula: the live formulas of a characteristic's row, and the values they have.
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

/* What a row's cells hold, in the feature's unit; NAN: the cell is empty. */
typedef struct {
  double nominal, lower, upper;
  double smallest, largest;
  double guard, guard_out;
  guint unread;    /* stations asked for and not read */
  gboolean cannot; /* the method cannot settle the band */
} TmRowValues;

/* Names of the cells that hold them: "K7". */
typedef struct {
  const char *nominal, *lower, *upper;
  const char *smallest, *largest;
  const char *guard, *guard_out;
  const char *settles, *unread;
} TmRowCells;

TmRowValues tm_row_values (const TmReportLine *line);

/* Digits at which a cell's number is rounded: as fine as the unit's exact count, so that nothing but
 * the tail of a binary fraction goes. */
guint tm_formula_digits (TmUnit unit);

/* As a sheet's ROUND: to the nearest decimal, halves away from zero. */
double tm_formula_round (double value, guint digits);

/* The larger of the two results' deviations from nominal.  NULL when the row has no nominal. */
char *tm_formula_deviation (const TmRowValues *values, const TmRowCells *cells,
                            guint digits) G_GNUC_WARN_UNUSED_RESULT;
double tm_deviation_value (const TmRowValues *values, guint digits);

/* The verdict from the row's own cells by the job's rule.  NULL when a formula over this row's cells
 * would not come to the judged verdict (a bonus not yet known, stations of different methods): the
 * word is then written as it is. */
char *tm_formula_verdict (const TmJob *job, const TmReportLine *line, const TmRowValues *values,
                          const TmRowCells *cells) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
