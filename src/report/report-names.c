/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-names.h"

#include <glib/gi18n-lib.h>

/* None of them reads as a cell's address or a function, in either way of writing these. */
static const struct {
  const char *word;
  const char *subject;
} names[TM_N_NAMES] = {
  [TM_NAME_CHARACTERISTIC] = { "Characteristic", N_ ("numbers of the characteristics") },
  [TM_NAME_NOMINAL] = { "Nominal", N_ ("nominal sizes") },
  [TM_NAME_LOWER] = { "Lower_limit", N_ ("lower limits") },
  [TM_NAME_UPPER] = { "Upper_limit", N_ ("upper limits") },
  [TM_NAME_SMALLEST] = { "Smallest_result", N_ ("smallest results; pass or fail") },
  [TM_NAME_LARGEST] = { "Largest_result", N_ ("largest results") },
  [TM_NAME_DEVIATION] = { "Deviation", N_ ("deviations from nominal, formulas") },
  [TM_NAME_UNCERTAINTY] = { "Uncertainty", N_ ("expanded uncertainties") },
  [TM_NAME_VERDICT] = { "Verdict", N_ ("verdicts, formulas") },
  [TM_NAME_VERDICT_RECORDED] = { "Verdict_recorded", N_ ("verdicts as the record was judged, text") },
  [TM_NAME_GUARD_IN] = { "Guard_in", N_ ("guards towards the inside") },
  [TM_NAME_GUARD_OUT] = { "Guard_out", N_ ("guards towards the outside") },
  [TM_NAME_NONCONFORMANCE] = { "Nonconformance", N_ ("numbers of the nonconformances") },
  [TM_NAME_READING] = { "Reading_number", N_ ("numbers of the readings") },
  [TM_NAME_READING_VALUE] = { "Reading_value", N_ ("values as read") },
  [TM_NAME_READING_STATUS] = { "Reading_status", N_ ("whether each reading counts") },
  [TM_NAME_COUNT] = { "Count_all", N_ ("how many characteristics") },
  [TM_NAME_COUNT_IN] = { "Count_in", N_ ("how many are in") },
  [TM_NAME_COUNT_OUT] = { "Count_out", N_ ("how many are out") },
  [TM_NAME_COUNT_TOO_CLOSE] = { "Count_too_close", N_ ("how many are too close to call") },
  [TM_NAME_COUNT_NOT_MEASURED] = { "Count_not_measured", N_ ("how many are not measured") },
  [TM_NAME_COUNT_MISSING] = { "Count_missing", N_ ("how much is missing before the report can go out") },
  [TM_NAME_SELF_CHECK] = { "Self_check", N_ ("how many of the checks fail") },
};

const char *
tm_name_word (TmName name)
{
  return names[name].word;
}

const char *
tm_name_subject (TmName name)
{
  return names[name].subject;
}

void
tm_sheet_name_cells (const TmSheet *sheet, TmName name, guint32 first, guint32 last, guint column)
{
  char from[LXW_MAX_CELL_NAME_LENGTH] = "", to[LXW_MAX_CELL_NAME_LENGTH] = "";
  g_autofree char *formula = NULL;

  lxw_rowcol_to_cell_abs (from, first, (lxw_col_t)column, LXW_TRUE, LXW_TRUE);
  lxw_rowcol_to_cell_abs (to, last, (lxw_col_t)column, LXW_TRUE, LXW_TRUE);
  /* A sheet's name holds no apostrophe. */
  formula = last > first ? g_strdup_printf ("='%s'!%s:%s", sheet->name, from, to)
                         : g_strdup_printf ("='%s'!%s", sheet->name, from);
  tm_workbook_check (sheet->workbook,
                     workbook_define_name (sheet->workbook->book, names[name].word, formula));
}

void
tm_sheet_name_cell (const TmSheet *sheet, TmName name, guint column)
{
  tm_sheet_name_cells (sheet, name, sheet->row, sheet->row, column);
}
