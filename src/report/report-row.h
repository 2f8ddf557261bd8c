/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-row: what the sheets of the record share: a row's fate, and how many a sheet holds.
 */

#pragma once

#include "report-sheet.h"

G_BEGIN_DECLS

/* Three columns from @column on: whether the row counts, what it corrects, why. */
void tm_sheet_row_status (TmSheet *sheet, const TmEntryRow *row, guint column);

/* Said before anything is written, so that nobody waits for a workbook that cannot be: FALSE when @n rows
 * are more than a sheet holds, which is then the workbook's error. */
gboolean tm_sheet_rows_fit (TmWorkbook *workbook, guint n);

G_END_DECLS
