/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * workbook-cells: the cells of a workbook (.xlsx) that was written row by row, so that they can be written
 * again.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_CELL_KIND_BLANK,
  TM_CELL_KIND_NUMBER,
  TM_CELL_KIND_TEXT,
  TM_CELL_KIND_NUMBER_FORMULA,
  TM_CELL_KIND_TEXT_FORMULA,
} TmCellKind;

/* Texts are escaped as in the file. */
typedef struct {
  guint32 row, column; /* from 0 */
  TmCellKind kind;
  guint style;
  double number;
  const char *text;
  const char *formula;
} TmWorkbookCell;

typedef struct {
  GPtrArray *sheets;  /* GArray of TmWorkbookCell, row by row */
  GPtrArray *members; /* what the texts stand in */
  guint n_styles;
} TmWorkbookCells;

/* Aborts where @path is none of ours, or has texts in a table of their own. */
TmWorkbookCells *tm_workbook_cells_read (const char *path);
void tm_workbook_cells_free (TmWorkbookCells *cells);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmWorkbookCells, tm_workbook_cells_free)

G_END_DECLS
