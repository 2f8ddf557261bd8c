/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-cells: texts, numbers, dates and formulas in the cells of a sheet, and the room they take.
 */

#include <math.h>
#include <string.h>

#include "report-sheet-private.h"

/* Fifteen digits, a mark and a sign. */
#define WIDEST_NUMBER 22.0

/* -------- Room -------- */

void
tm_sheet_grow (TmSheet *sheet, guint column, double width)
{
  if (column >= TM_SHEET_COLUMNS)
    return;
  sheet->used |= 1u << column;
  if (sheet->most[column] > 0)
    sheet->widths[column]
        = MAX (sheet->widths[column], MIN (width * TM_SHEET_NARROWER + 2.5, sheet->most[column]));
}

double
tm_sheet_fitting (double width)
{
  return (width - 1.5) / 0.82;
}

void
tm_sheet_note_lines (TmSheet *sheet, guint column, const char *text, double width)
{
  if (column < TM_SHEET_COLUMNS && width > 2.0)
    sheet->lines = MAX (sheet->lines, tm_cell_text_lines (text, tm_sheet_fitting (width)));
}

char *
tm_cell_name (guint32 row, guint column)
{
  char name[LXW_MAX_CELL_NAME_LENGTH] = "";

  lxw_rowcol_to_cell (name, row, (lxw_col_t)column);
  return g_strdup (name);
}

/* -------- Texts and numbers -------- */

/* The column grows, and the row, where it cannot grow enough. */
static void
make_room (TmSheet *sheet, guint column, const char *text)
{
  const double width = tm_cell_text_width (text);
  const double most = sheet->most[MIN (column, TM_SHEET_COLUMNS - 1)];

  tm_sheet_grow (sheet, column, width);
  if (width > tm_sheet_fitting (most) || strchr (text, '\n') != NULL)
    tm_sheet_note_lines (sheet, column, text, most);
  else
    sheet->lines = MAX (sheet->lines, 1);
}

void
tm_sheet_text (TmSheet *sheet, guint column, const char *text, TmStyle style)
{
  const gboolean plain = text == NULL || tm_cell_text_is_plain (text);
  g_autofree char *stored = plain ? NULL : tm_cell_text (text);
  const char *shown = stored != NULL ? stored : text != NULL ? text : "";

  if (*shown == '\0')
    {
      tm_sheet_blank (sheet, column, style);
      return;
    }
  sheet->workbook->n_cells++;
  if (style > TM_STYLE_SECTION && style != TM_STYLE_PLAIN && style != TM_STYLE_PARAGRAPH)
    make_room (sheet, column, shown);
  tm_workbook_check (sheet->workbook,
                     worksheet_write_string (sheet->sheet, sheet->row, (lxw_col_t)column, shown,
                                             tm_styles_get (&sheet->workbook->styles, style, 0)));
}

void
tm_sheet_blank (TmSheet *sheet, guint column, TmStyle style)
{
  tm_workbook_check (sheet->workbook,
                     worksheet_write_blank (sheet->sheet, sheet->row, (lxw_col_t)column,
                                            tm_styles_get (&sheet->workbook->styles, style, 0)));
}

/* A number that does not fit is shown as signs of none: its column grows as far as it takes. */
static void
grow_for_number (TmSheet *sheet, guint column, double value, guint decimals)
{
  const double whole = fabs (value) >= 1.0 ? floor (log10 (fabs (value))) + 1.0 : 1.0;
  const double needed = (whole + decimals + 3.0) * TM_SHEET_NARROWER + 2.5;

  tm_sheet_grow (sheet, column, 0.0);
  if (column < TM_SHEET_COLUMNS && sheet->most[column] > 0)
    sheet->widths[column] = MAX (sheet->widths[column], MIN (needed, WIDEST_NUMBER));
}

void
tm_sheet_number (TmSheet *sheet, guint column, double value, guint decimals, TmStyle style)
{
  if (!isfinite (value))
    {
      tm_sheet_blank (sheet, column, style);
      return;
    }
  grow_for_number (sheet, column, value, decimals);
  sheet->workbook->n_cells++;
  tm_workbook_check (sheet->workbook,
                     worksheet_write_number (sheet->sheet, sheet->row, (lxw_col_t)column, value,
                                             tm_styles_get (&sheet->workbook->styles, style, decimals)));
}

/* Digits that show @count in @unit exactly, as far as a cell's number goes. */
static guint
find_decimals (gint64 count, TmUnit unit, guint least)
{
  g_autofree char *text = tm_count_format_exact (count, unit, least);
  const char *point = strchr (text, '.');

  return point != NULL ? (guint)strlen (point + 1) : 0;
}

gboolean
tm_sheet_quantity_value (const TmQuantity *quantity, TmUnit unit, double *value)
{
  const TmUnit written = (TmUnit)quantity->unit;

  if (!quantity->given)
    return FALSE;
  *value = tm_count_to_double (quantity->count,
                               tm_unit_dimension (written) == tm_unit_dimension (unit) ? unit : written);
  return TRUE;
}

void
tm_sheet_quantity (TmSheet *sheet, guint column, const TmQuantity *quantity, TmUnit unit)
{
  const TmUnit written = (TmUnit)quantity->unit;
  const TmUnit shown = tm_unit_dimension (written) == tm_unit_dimension (unit) ? unit : written;
  guint decimals = quantity->decimals;

  if (!quantity->given)
    {
      tm_sheet_blank (sheet, column, TM_STYLE_NUMBER);
      return;
    }
  if (shown != written)
    decimals = MIN (find_decimals (quantity->count, shown, 0), 7);
  tm_sheet_number (sheet, column, tm_count_to_double (quantity->count, shown), decimals, TM_STYLE_NUMBER);
}

/* Digits @from…@from+@n of @text as a number, or -1. */
static int
read_digits (const char *text, gsize from, gsize n)
{
  int value = 0;

  for (gsize i = from; i < from + n; i++)
    {
      if (!g_ascii_isdigit (text[i]))
        return -1;
      value = value * 10 + (text[i] - '0');
    }
  return value;
}

/* The calendar of sheets begins in 1900 with a leap day that never was; March is safe. */
static gboolean
read_date (const char *text, lxw_datetime *out)
{
  if (strlen (text) < 10 || text[4] != '-' || text[7] != '-')
    return FALSE;
  out->year = read_digits (text, 0, 4);
  out->month = read_digits (text, 5, 2);
  out->day = read_digits (text, 8, 2);
  return out->year >= 1901 && out->month >= 1 && out->day >= 1
         && g_date_valid_dmy ((GDateDay)out->day, (GDateMonth)out->month, (GDateYear)out->year);
}

static gboolean
read_time (const char *text, lxw_datetime *out)
{
  int seconds;

  if (strlen (text) < 19 || text[10] != 'T' || text[13] != ':' || text[16] != ':' || !read_date (text, out))
    return FALSE;
  out->hour = read_digits (text, 11, 2);
  out->min = read_digits (text, 14, 2);
  seconds = read_digits (text, 17, 2);
  out->sec = seconds;
  return out->hour >= 0 && out->hour < 24 && out->min >= 0 && out->min < 60 && seconds >= 0 && seconds < 60;
}

static void
write_datetime (TmSheet *sheet, guint column, lxw_datetime *when, TmStyle style, double width)
{
  tm_sheet_grow (sheet, column, width);
  sheet->workbook->n_cells++;
  tm_workbook_check (sheet->workbook,
                     worksheet_write_datetime (sheet->sheet, sheet->row, (lxw_col_t)column, when,
                                               tm_styles_get (&sheet->workbook->styles, style, 0)));
}

void
tm_sheet_date (TmSheet *sheet, guint column, const char *date)
{
  lxw_datetime when = { 0 };

  if (strlen (date) == 10 && read_date (date, &when))
    write_datetime (sheet, column, &when, TM_STYLE_DATE, 10.0);
  else
    tm_sheet_text (sheet, column, date, TM_STYLE_CENTRE);
}

void
tm_sheet_time (TmSheet *sheet, guint column, const char *time)
{
  lxw_datetime when = { 0 };

  if (read_time (time, &when))
    write_datetime (sheet, column, &when, TM_STYLE_TIME, 19.0);
  else
    tm_sheet_text (sheet, column, time, TM_STYLE_CENTRE);
}

void
tm_sheet_formula_number (TmSheet *sheet, guint column, const char *formula, double value, guint decimals,
                         TmStyle style)
{
  grow_for_number (sheet, column, value, decimals);
  sheet->workbook->n_cells++;
  tm_workbook_check (sheet->workbook, worksheet_write_formula_num (
                                          sheet->sheet, sheet->row, (lxw_col_t)column, formula,
                                          tm_styles_get (&sheet->workbook->styles, style, decimals), value));
}

void
tm_sheet_formula_text (TmSheet *sheet, guint column, const char *formula, const char *value, TmStyle style)
{
  tm_sheet_grow (sheet, column, tm_cell_text_width (value));
  sheet->workbook->n_cells++;
  tm_workbook_check (sheet->workbook,
                     worksheet_write_formula_str (sheet->sheet, sheet->row, (lxw_col_t)column, formula,
                                                  tm_styles_get (&sheet->workbook->styles, style, 0), value));
}

/* A row is at most so high, points: what goes beyond is not to be seen. */
#define HIGHEST_ROW 409.0
#define MOST_LINES  32

void
tm_sheet_across (TmSheet *sheet, guint from, guint to, const char *text, TmStyle style, guint lines)
{
  g_autofree char *shown = tm_cell_text (text);
  lxw_format *format = tm_styles_get (&sheet->workbook->styles, style, 0);

  worksheet_set_row (sheet->sheet, sheet->row, MIN (12.5 * MAX (1, lines), HIGHEST_ROW), NULL);
  if (to > from)
    worksheet_merge_range (sheet->sheet, sheet->row, (lxw_col_t)from, sheet->row, (lxw_col_t)to, "", format);
  if (*shown != '\0')
    tm_workbook_check (sheet->workbook,
                       worksheet_write_string (sheet->sheet, sheet->row, (lxw_col_t)from, shown, format));
}

/* How many bytes of @text one row takes, up to a blank where there is one; a fifth of each line is left for
 * words that do not fit its end. */
static gsize
find_row_end (const char *text, double fitting)
{
  const char *blank = NULL;
  double line = 0.0;
  guint lines = 1;

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar c = g_utf8_get_char (at);

      if (at > text && g_unichar_isspace (c))
        blank = at;
      line += g_unichar_iswide (c) ? 2.0 : 1.0;
      if (c == '\n' || line > 0.8 * fitting)
        {
          lines++;
          line = 0.0;
        }
      if (lines > MOST_LINES && at > text)
        return (gsize)((blank != NULL ? blank : at) - text);
    }
  return strlen (text);
}

static void
write_paragraph_row (TmSheet *sheet, guint n, const char *text, guint lines)
{
  sheet->lines = 0;
  tm_sheet_across (sheet, 0, n - 1, text, TM_STYLE_PARAGRAPH, lines);
  sheet->row++;
}

void
tm_sheet_paragraph (TmSheet *sheet, guint n, const char *text)
{
  g_autofree char *shown = tm_cell_text (text);
  const char *rest = shown;
  double width = 0.0, fitting;

  for (guint i = 0; i < n; i++)
    width += sheet->widths[i];
  fitting = tm_sheet_fitting (width);
  while (tm_cell_text_lines (rest, fitting) > MOST_LINES)
    {
      const gsize length = find_row_end (rest, fitting);
      g_autofree char *piece = g_strndup (rest, length);

      write_paragraph_row (sheet, n, piece, tm_cell_text_lines (piece, fitting));
      rest += length;
      if (g_unichar_isspace (g_utf8_get_char (rest)))
        rest = g_utf8_next_char (rest);
    }
  write_paragraph_row (sheet, n, rest, tm_cell_text_lines (rest, fitting));
}
