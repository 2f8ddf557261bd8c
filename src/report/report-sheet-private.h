/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-private: what a sheet's page (report-sheet.c) and its cells (report-sheet-cells.c) share.
 */

#pragma once

#include "report-cell-text.h"
#include "report-sheet.h"

G_BEGIN_DECLS

/* Characters of the table's font to the width of one digit of the default font. */
#define TM_SHEET_NARROWER 0.9

/* The column is used, by a text of @width letters, and grows as far as it may. */
void tm_sheet_grow (TmSheet *sheet, guint column, double width);
/* The row gets the lines that @text takes in a column as wide as @width digits. */
void tm_sheet_note_lines (TmSheet *sheet, guint column, const char *text, double width);
/* Letters of the table's font that fit into a column as wide as @width digits. */
double tm_sheet_fitting (double width);

G_END_DECLS
