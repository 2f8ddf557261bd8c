/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheets: the sheets of the first-article workbook, in their order.
 */

#pragma once

#include "report-sheet.h"

G_BEGIN_DECLS

/* Each writes its sheet into @workbook; what goes wrong is noted there. */
void tm_sheet_write_part (TmWorkbook *workbook);
void tm_sheet_write_materials (TmWorkbook *workbook);
void tm_sheet_write_characteristics (TmWorkbook *workbook);
void tm_sheet_write_readings (TmWorkbook *workbook);
void tm_sheet_write_pins (TmWorkbook *workbook); /* only when there are pin trials */
void tm_sheet_write_cuts (TmWorkbook *workbook); /* only when there are cuts */
void tm_sheet_write_fit (TmWorkbook *workbook);  /* only where a mate was measured or a clearance is wanted */
void tm_sheet_write_press (TmWorkbook *workbook); /* only where such a fit presses, and the press is stated */
void tm_sheet_write_gauges (TmWorkbook *workbook);
void tm_sheet_write_judged (TmWorkbook *workbook);
void tm_sheet_write_signatures (TmWorkbook *workbook);
void tm_sheet_write_check (TmWorkbook *workbook);       /* after the characteristics */
void tm_sheet_write_uncertainty (TmWorkbook *workbook); /* only where a method is known */
void tm_sheet_write_studies (TmWorkbook *workbook);     /* only when there are studies */
void tm_sheet_write_pictures (TmWorkbook *workbook);    /* only when a bore was measured */
void tm_sheet_write_runs (TmWorkbook *workbook);        /* likewise */
void
tm_sheet_write_batch (TmWorkbook *workbook); /* only where a feature was measured on ten pieces or more */

/* "'Characteristics'!$O$5:$O$24": the cells with the verdicts; free it.  NULL without lines. */
char *tm_characteristics_verdicts (const TmWorkbook *workbook) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
