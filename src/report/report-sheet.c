/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-sheet.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "report-facts.h"
#include "report-sheet-private.h"
#include "report-sheet-words.h"

#define SHEET_NAME_LENGTH 31
#define FOOTER_LENGTH     255
#define LINE_POINTS       12.0
#define USUAL_WIDTH       8.43 /* digits that a column has room for where nothing is set */

#define PAPER_LETTER 1
#define PAPER_A4     9

/* -------- Begin and end -------- */

/* A sheet's name may not hold some characters, nor be longer than 31. */
static char *
make_sheet_name (const char *name)
{
  g_autofree char *safe = g_strdelimit (g_strdup (name), "[]:*?/\\'", ' ');

  return g_strndup (safe, tm_cell_text_cut (safe, SHEET_NAME_LENGTH));
}

static void
set_column (TmSheet *sheet, guint column, double least, double most)
{
  sheet->least[column] = least;
  sheet->most[column] = most;
  sheet->widths[column] = MAX (sheet->widths[column], least);
}

gboolean
tm_sheet_begin (TmSheet *sheet, TmWorkbook *workbook, const char *name, const char *title,
                const char *subtitle)
{
  memset (sheet, 0, sizeof *sheet);
  sheet->workbook = workbook;
  if (tm_workbook_stopped (workbook))
    return FALSE;
  sheet->name = make_sheet_name (name);
  sheet->sheet = workbook_add_worksheet (workbook->book, sheet->name);
  if (sheet->sheet == NULL)
    {
      tm_workbook_fail (workbook, TM_REPORT_ERROR_FAILED, _ ("Sheet “%s” could not be added"), sheet->name);
      return FALSE;
    }
  worksheet_set_row (sheet->sheet, sheet->row, 22.0, NULL);
  tm_sheet_text (sheet, 0, tm_sheet_label (workbook, NULL, title), TM_STYLE_TITLE);
  sheet->row++;
  if (subtitle != NULL && *subtitle != '\0')
    {
      tm_sheet_text (sheet, 0, subtitle, TM_STYLE_SUBTITLE);
      sheet->subtitle = tm_cell_text_width (subtitle);
      sheet->row++;
    }
  sheet->row++;
  return TRUE;
}

/* A header's or footer's text: & has a meaning there. */
static char *
escape_footer (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "&", -1);

  return g_strjoinv ("&&", parts);
}

static void
set_footer (TmSheet *sheet)
{
  const TmJob *job = sheet->workbook->job;
  g_autofree char *part = g_strdup_printf ("%s %s", job->part_number, job->revision);
  g_autofree char *valid = tm_cell_text (part);
  g_autofree char *cut = g_strndup (valid, tm_cell_text_cut (valid, 60));
  g_autofree char *left = escape_footer (cut);
  /* TRANSLATORS: the foot of a printed page; &P and &N are the page and the number of pages. */
  g_autofree char *footer = g_strdup_printf ("&L&8%s&C&8&A&R&8%s", left, _ ("page &P of &N"));

  if (g_utf8_strlen (footer, -1) < FOOTER_LENGTH)
    tm_workbook_check (sheet->workbook, worksheet_set_footer (sheet->sheet, footer));
}

/* The report's identifier, in the head of each page. */
static void
set_header (TmSheet *sheet)
{
  g_autofree char *valid = tm_cell_text (tm_report_identifier (sheet->workbook->job));
  g_autofree char *cut = g_strndup (valid, tm_cell_text_cut (valid, 60));
  g_autofree char *escaped = escape_footer (cut);
  g_autofree char *report = g_strdup_printf (_ ("Report %s"), escaped);
  g_autofree char *header = g_strconcat ("&R&8", report, NULL);

  if (*cut != '\0' && g_utf8_strlen (header, -1) < FOOTER_LENGTH)
    tm_workbook_check (sheet->workbook, worksheet_set_header (sheet->sheet, header));
}

/* The subtitle runs on over empty columns to its right: those that it takes print too, unless they hold what
 * shall not. */
static guint
find_last_column (const TmSheet *sheet)
{
  const guint hidden = sheet->left_out | (sheet->optional & ~sheet->used);
  guint last = sheet->last_column;
  double width = 0.0;

  for (guint i = 0; i <= last && i < TM_SHEET_COLUMNS; i++)
    if ((hidden & (1u << i)) == 0)
      width += sheet->widths[i] > 0 ? sheet->widths[i] : USUAL_WIDTH;
  while (width < sheet->subtitle * TM_SHEET_NARROWER && last + 1 < TM_SHEET_COLUMNS
         && sheet->widths[last + 1] <= 0)
    {
      width += USUAL_WIDTH;
      last++;
    }
  return last;
}

static void
set_page (TmSheet *sheet)
{
  if (!sheet->portrait)
    worksheet_set_landscape (sheet->sheet);
  worksheet_set_paper (sheet->sheet, sheet->workbook->paper == TM_PAPER_LETTER ? PAPER_LETTER : PAPER_A4);
  worksheet_set_margins (sheet->sheet, 0.45, 0.45, 0.5, 0.6);
  if (sheet->scale > 0)
    worksheet_set_print_scale (sheet->sheet, (uint16_t)sheet->scale);
  else
    worksheet_fit_to_pages (sheet->sheet, 1, 0);
  worksheet_gridlines (sheet->sheet, LXW_HIDE_ALL_GRIDLINES);
  tm_workbook_check (sheet->workbook, worksheet_print_area (sheet->sheet, 0, 0, MAX (1, sheet->row) - 1,
                                                            (lxw_col_t)find_last_column (sheet)));
  if (sheet->has_head)
    tm_workbook_check (sheet->workbook,
                       worksheet_repeat_rows (sheet->sheet, sheet->head_first, sheet->head_last));
  set_header (sheet);
  set_footer (sheet);
}

/* The page then has room for what there is. */
static void
finish_column (const TmSheet *sheet, guint column)
{
  const guint hidden = sheet->left_out | (sheet->optional & ~sheet->used);
  lxw_row_col_options options = { .hidden = (hidden & (1u << column)) != 0 };

  tm_workbook_check (sheet->workbook,
                     worksheet_set_column_opt (sheet->sheet, (lxw_col_t)column, (lxw_col_t)column,
                                               sheet->widths[column], NULL, &options));
}

void
tm_sheet_end (TmSheet *sheet)
{
  if (sheet->sheet != NULL && !tm_workbook_stopped (sheet->workbook))
    {
      for (guint i = 0; i < TM_SHEET_COLUMNS; i++)
        if (sheet->widths[i] > 0)
          finish_column (sheet, i);
      set_page (sheet);
    }
  g_clear_pointer (&sheet->name, g_free);
}

/* The longest word of a column's name must fit; the name itself may wrap. */
static double
measure_longest_word (const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  double longest = 0.0;

  for (guint i = 0; words[i] != NULL; i++)
    longest = MAX (longest, tm_cell_text_width (words[i]));
  return longest;
}

void
tm_sheet_head (TmSheet *sheet, const TmColumn *columns, guint n, guint printed)
{
  for (guint i = 0; i < n; i++)
    {
      const char *name = tm_sheet_label (sheet->workbook, NULL, columns[i].name);

      if (columns[i].is_optional)
        sheet->optional |= 1u << i;
      set_column (sheet, i,
                  MAX (columns[i].least, measure_longest_word (name) * TM_SHEET_NARROWER * 1.08 + 1.0),
                  columns[i].most);
      tm_sheet_note_lines (sheet, i, name, MAX (sheet->least[i], 3.0));
      worksheet_write_string (sheet->sheet, sheet->row, (lxw_col_t)i, name,
                              tm_styles_get (&sheet->workbook->styles, TM_STYLE_HEAD, 0));
    }
  sheet->last_column = MAX (sheet->last_column, printed - 1);
  if (!sheet->has_head)
    {
      sheet->has_head = TRUE;
      sheet->head_first = sheet->head_last = sheet->row;
      worksheet_freeze_panes (sheet->sheet, sheet->row + 1, 0);
    }
  tm_sheet_down (sheet);
}

void
tm_sheet_filter (TmSheet *sheet, guint n)
{
  if (!tm_workbook_stopped (sheet->workbook) && sheet->row > sheet->head_last + 1)
    tm_workbook_check (sheet->workbook, worksheet_autofilter (sheet->sheet, sheet->head_last, 0,
                                                              sheet->row - 1, (lxw_col_t)(n - 1)));
}

void
tm_sheet_columns (TmSheet *sheet, const double *widths, guint n)
{
  for (guint i = 0; i < n; i++)
    set_column (sheet, i, widths[i], widths[i]);
  sheet->last_column = n - 1;
}

void
tm_sheet_down (TmSheet *sheet)
{
  if (sheet->lines > 1)
    worksheet_set_row (sheet->sheet, sheet->row, MIN (LINE_POINTS * sheet->lines + 3.0, 400.0), NULL);
  sheet->lines = 0;
  sheet->row++;
}

gboolean
tm_sheet_next (TmSheet *sheet, double fraction)
{
  TmWorkbook *workbook = sheet->workbook;

  tm_sheet_down (sheet);
  if (sheet->row >= TM_SHEET_ROWS)
    tm_workbook_fail (workbook, TM_REPORT_ERROR_TOO_LARGE,
                      _ ("Sheet “%s” needs more than the %u rows a sheet holds: split the job"), sheet->name,
                      TM_SHEET_ROWS);
  return tm_workbook_goes_on (workbook, workbook->done + workbook->share * CLAMP (fraction, 0.0, 1.0));
}
