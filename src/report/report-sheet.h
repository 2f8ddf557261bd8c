/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet: one sheet of the workbook: cells, table heads, page setup.
 *
 * Rows are written from the top down and never gone back to, because a large workbook's rows leave
 * memory as soon as the next one begins.
 */

#pragma once

#include <glib.h>
#include <xlsxwriter.h>

#include "plot-words.h"
#include "report-cell-text.h"
#include "report-style.h"
#include "report-workbook.h"

G_BEGIN_DECLS

#define TM_SHEET_COLUMNS 32
#define TM_SHEET_ROWS    1048576u /* what a sheet holds */

/* The whole workbook while it is written. */
typedef struct {
  const TmReportContent *content;
  const TmJob *job;
  const TmReportForm *form;
  const TmTemplate *template; /* of the form; or NULL */
  lxw_workbook *book;
  TmStyles styles;
  TmWorkbookFacts facts;
  TmPaper paper;
  TmWords second; /* language beside the first, in table heads */
  gboolean has_second;
  GStringChunk *texts; /* labels in both languages */
  guint n_plain;       /* verdicts that are no formula */
  TmReportProgress progress;
  gpointer data;
  double done, share; /* of the work: before this sheet, and of this sheet */
  gint64 asked;       /* when progress was told last, by the steady clock */
  double told;        /* what it was told: it never goes back */
  gsize n_cells, picture_bytes;
  gboolean cancelled;
  GError *error; /* the first one */
} TmWorkbook;

typedef struct {
  TmWorkbook *workbook;
  lxw_worksheet *sheet;
  char *name;
  guint32 row;
  guint32 head_first, head_last; /* rows repeated on each page */
  gboolean has_head;
  guint last_column;               /* that prints */
  guint lines;                     /* of text in the current row */
  guint scale;                     /* percent that it prints at; 0: fitted to the page's width */
  double subtitle;                 /* letters of it, which the page has room for */
  gboolean portrait;               /* else landscape */
  guint32 used, optional;          /* columns, a bit each: that have content, that may go without */
  guint32 left_out;                /* likewise: hidden by the shop's template, there for formulas */
  double widths[TM_SHEET_COLUMNS]; /* characters */
  double least[TM_SHEET_COLUMNS], most[TM_SHEET_COLUMNS];
} TmSheet;

/* A column of a table: its width grows with its text between @least and @most characters. */
typedef struct {
  const char *name; /* marked for translation */
  double least, most;
  gboolean is_optional; /* hidden where no row has anything for it */
} TmColumn;

/* Starts a sheet with its title, marked for translation; @subtitle may be NULL.  FALSE when the workbook has
 * failed. */
gboolean tm_sheet_begin (TmSheet *sheet, TmWorkbook *workbook, const char *name, const char *title,
                         const char *subtitle);
/* Column widths and page setup; also on failure, to free what the sheet holds. */
void tm_sheet_end (TmSheet *sheet);

/* The head of a table at the current row, which then moves below it.  The first head of a sheet is
 * frozen and repeated on each page.  Columns from @printed on do not print. */
void tm_sheet_head (TmSheet *sheet, const TmColumn *columns, guint n, guint printed);

/* The table of the sheet's first head, which goes on to the current row, can be filtered by its columns. */
void tm_sheet_filter (TmSheet *sheet, guint n);

/* Columns of fixed widths, characters, for a sheet whose layout is no table. */
void tm_sheet_columns (TmSheet *sheet, const double *widths, guint n);

/* Moves below the current row, whose height fits its wrapped text.  Without tm_sheet_next()'s checks:
 * for the few rows of a form. */
void tm_sheet_down (TmSheet *sheet);

/* Moves on by a row.  FALSE when the user cancels or the workbook has failed: stop then.  @fraction
 * of this sheet's work is done. */
gboolean tm_sheet_next (TmSheet *sheet, double fraction);

/* Text stays text, whatever it begins with.  What a cell cannot hold is cut, and says so. */
void tm_sheet_text (TmSheet *sheet, guint column, const char *text, TmStyle style);
void tm_sheet_number (TmSheet *sheet, guint column, double value, guint decimals, TmStyle style);
/* The number that tm_sheet_quantity() writes; FALSE: none. */
gboolean tm_sheet_quantity_value (const TmQuantity *quantity, TmUnit unit, double *value);
/* Blank when absent; converted to @unit when that is the same dimension. */
void tm_sheet_quantity (TmSheet *sheet, guint column, const TmQuantity *quantity, TmUnit unit);
/* @date: YYYY-MM-DD; @time: YYYY-MM-DDThh:mm:ssZ.  What is no date of this calendar stays text. */
void tm_sheet_date (TmSheet *sheet, guint column, const char *date);
void tm_sheet_time (TmSheet *sheet, guint column, const char *time);
void tm_sheet_formula_number (TmSheet *sheet, guint column, const char *formula, double value, guint decimals,
                              TmStyle style);
void tm_sheet_formula_text (TmSheet *sheet, guint column, const char *formula, const char *value,
                            TmStyle style);
void tm_sheet_blank (TmSheet *sheet, guint column, TmStyle style);

/* One text across @from…@to of this row, in @lines lines. */
void tm_sheet_across (TmSheet *sheet, guint from, guint to, const char *text, TmStyle style, guint lines);

/* Wrapped across the sheet's first @n columns, in as many lines as it takes, and in several rows where one
 * cannot be high enough; moves below. */
void tm_sheet_paragraph (TmSheet *sheet, guint n, const char *text);

/* "B7"; free it. */
char *tm_cell_name (guint32 row, guint column) G_GNUC_WARN_UNUSED_RESULT;

/* Notes the first error and remembers it; later ones are dropped. */
void tm_workbook_fail (TmWorkbook *workbook, TmReportError code, const char *format, ...)
    G_GNUC_PRINTF (3, 4);
/* Notes what the writing library answered. */
void tm_workbook_check (TmWorkbook *workbook, lxw_error status);
gboolean tm_workbook_stopped (const TmWorkbook *workbook);
/* Tells how much of the work is done; FALSE: stop. */
gboolean tm_workbook_tell (TmWorkbook *workbook, double fraction);
/* The same, unless that was done a moment ago. */
gboolean tm_workbook_goes_on (TmWorkbook *workbook, double fraction);
/* The same in the middle of what cannot tell how far it is; TRUE: stop. */
gboolean tm_workbook_ask_stop (gpointer workbook);

G_END_DECLS
