/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-shop: what the shop's template puts into the workbook: who made the report, and the shop's
 * statements.  Nothing without a template.
 */

#pragma once

#include "report-sheet.h"

G_BEGIN_DECLS

/* Name and address at the current row, the logo beside the sheet's title, at @column. */
void tm_sheet_write_shop (TmSheet *sheet, guint n_columns, guint column);

/* The statements of that place under a heading, across the sheet's @n_columns. */
void tm_sheet_write_statements (TmSheet *sheet, TmStatementPlace place, guint n_columns);

G_END_DECLS
