/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-names: names of the workbook's cells, by which a customer's own formulas refer to them.  They are
 * the same in every language, so that such formulas go on working.
 */

#pragma once

#include "report-sheet.h"

G_BEGIN_DECLS

/* Columns of the characteristics, then of the readings, then single cells. */
typedef enum {
  TM_NAME_CHARACTERISTIC,
  TM_NAME_NOMINAL,
  TM_NAME_LOWER,
  TM_NAME_UPPER,
  TM_NAME_SMALLEST,
  TM_NAME_LARGEST,
  TM_NAME_DEVIATION,
  TM_NAME_UNCERTAINTY,
  TM_NAME_VERDICT,
  TM_NAME_VERDICT_RECORDED,
  TM_NAME_GUARD_IN,
  TM_NAME_GUARD_OUT,
  TM_NAME_NONCONFORMANCE,
  TM_NAME_READING,
  TM_NAME_READING_VALUE,
  TM_NAME_READING_STATUS,
  TM_NAME_COUNT,
  TM_NAME_COUNT_IN,
  TM_NAME_COUNT_OUT,
  TM_NAME_COUNT_TOO_CLOSE,
  TM_NAME_COUNT_NOT_MEASURED,
  TM_NAME_COUNT_MISSING,
  TM_NAME_SELF_CHECK,
  TM_N_NAMES
} TmName;

/* "Lower_limit". */
const char *tm_name_word (TmName name);
/* What it names, marked for translation. */
const char *tm_name_subject (TmName name);

/* Names the cells @first…@last, counted from 0, of one column of @sheet. */
void tm_sheet_name_cells (const TmSheet *sheet, TmName name, guint32 first, guint32 last, guint column);
/* The cell at the current row. */
void tm_sheet_name_cell (const TmSheet *sheet, TmName name, guint column);

G_END_DECLS
