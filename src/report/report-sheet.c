/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-sheet.h"

#include "report-facts.h"
#include "report-sheet-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define CELL_CHARACTERS   32767 /* a cell's text, in UTF-16 units */
#define SHEET_NAME_LENGTH 31
#define FOOTER_LENGTH     255

#define PAPER_LETTER 1
#define PAPER_A4     9

/* -------- The workbook's state -------- */

gboolean
tm_workbook_stopped (const TmWorkbook *workbook)
{
  return workbook->cancelled || workbook->error != NULL;
}

/* Often enough for whoever waits, and seldom enough to cost nothing. */
#define ASK_EVERY (15 * G_TIME_SPAN_MILLISECOND)

gboolean
tm_workbook_tell (TmWorkbook *workbook, double fraction)
{
  if (tm_workbook_stopped (workbook))
    return FALSE;
  workbook->asked = g_get_monotonic_time ();
  workbook->told = MAX (workbook->told, fraction);
  if (workbook->progress != NULL && !workbook->progress (workbook->told, workbook->data))
    workbook->cancelled = TRUE;
  return !workbook->cancelled;
}

gboolean
tm_workbook_goes_on (TmWorkbook *workbook, double fraction)
{
  if (g_get_monotonic_time () - workbook->asked < ASK_EVERY)
    return !tm_workbook_stopped (workbook);
  return tm_workbook_tell (workbook, fraction);
}

gboolean
tm_workbook_ask_stop (gpointer workbook)
{
  return !tm_workbook_goes_on (workbook, ((TmWorkbook *)workbook)->done);
}

void
tm_workbook_fail (TmWorkbook *workbook, TmReportError code, const char *format, ...)
{
  va_list arguments;

  if (workbook->error != NULL)
    return;
  va_start (arguments, format);
  workbook->error = g_error_new_valist (TM_REPORT_ERROR, (int)code, format, arguments);
  va_end (arguments);
}

/* An image's size cannot be read when the library's own copy of it was cut short. */
static gboolean
is_file_error (lxw_error status)
{
  return (status >= LXW_ERROR_CREATING_XLSX_FILE && status <= LXW_ERROR_ZIP_CLOSE)
         || status == LXW_ERROR_IMAGE_DIMENSIONS;
}

void
tm_workbook_check (TmWorkbook *workbook, lxw_error status)
{
  if (is_file_error (status))
    tm_workbook_fail (workbook, TM_REPORT_ERROR_CANNOT_WRITE,
                      _ ("The temporary folder %s cannot hold the workbook: make room there"),
                      g_get_tmp_dir ());
  else if (status != LXW_NO_ERROR)
    tm_workbook_fail (workbook, TM_REPORT_ERROR_FAILED, _ ("The workbook could not be made: %s"),
                      lxw_strerror (status));
}

/* -------- Text -------- */

static gboolean
is_storable (gunichar c)
{
  return c != 0xFFFE && c != 0xFFFF && (c >= 0x20 || c == '\t' || c == '\n');
}

static guint
count_units (gunichar c)
{
  return c > 0xFFFF ? 2 : 1;
}

/* The longest start of @text that is at most @most UTF-16 units long. */
static gsize
find_cut (const char *text, guint most)
{
  const char *at = text;
  guint units = 0;

  for (; *at != '\0'; at = g_utf8_next_char (at))
    {
      units += count_units (g_utf8_get_char (at));
      if (units > most)
        break;
    }
  return (gsize)(at - text);
}

/* Most texts: what a cell holds as it is. */
static gboolean
is_plain (const char *text)
{
  const unsigned char *at = (const unsigned char *)text;

  while ((*at >= 0x20 && *at < 0x7F) || *at == '\t' || *at == '\n')
    at++;
  return *at == '\0' && (gsize)((const char *)at - text) <= CELL_CHARACTERS;
}

static char *
make_storable (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_sized_new (strlen (valid));

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar c = g_utf8_get_char (at);
      if (c == '\r')
        continue;
      g_string_append_unichar (out, is_storable (c) ? c : 0xFFFD);
    }
  if (find_cut (out->str, CELL_CHARACTERS) < out->len)
    {
      const char *note = _ ("… [cut: longer than a cell holds]");
      g_string_truncate (out, find_cut (out->str, CELL_CHARACTERS - (guint)g_utf8_strlen (note, -1) * 2));
      g_string_append (out, note);
    }
  return g_string_free (out, FALSE);
}

char *
tm_cell_text (const char *text)
{
  return text == NULL || is_plain (text) ? g_strdup (text != NULL ? text : "") : make_storable (text);
}

char *
tm_cell_name (guint32 row, guint column)
{
  char name[LXW_MAX_CELL_NAME_LENGTH] = "";

  lxw_rowcol_to_cell (name, row, (lxw_col_t)column);
  return g_strdup (name);
}

/* A sheet's name may not hold some characters, nor be longer than 31. */
static char *
make_sheet_name (const char *name)
{
  g_autofree char *safe = g_strdelimit (g_strdup (name), "[]:*?/\\'", ' ');

  return g_strndup (safe, find_cut (safe, SHEET_NAME_LENGTH));
}

/* -------- Columns -------- */

static double
measure_text (const char *text)
{
  double widest = 0.0, line = 0.0;
  gsize plain = 0;

  while (text[plain] >= 0x20 && text[plain] < 0x7F)
    plain++;
  if (text[plain] == '\0')
    return (double)plain;
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar c = g_utf8_get_char (at);
      if (c == '\n')
        line = 0.0;
      else
        line += g_unichar_iswide (c) ? 2.0 : 1.0;
      widest = MAX (widest, line);
    }
  return widest;
}

/* Characters of the table's font to the width of one digit of the default font. */
#define NARROWER    0.9
#define LINE_POINTS 12.0

/* Fifteen digits, a mark and a sign. */
#define WIDEST_NUMBER 22.0

static void
grow_column (TmSheet *sheet, guint column, double width)
{
  if (column >= TM_SHEET_COLUMNS)
    return;
  sheet->used |= 1u << column;
  if (sheet->most[column] > 0)
    sheet->widths[column] = MAX (sheet->widths[column], MIN (width * NARROWER + 2.5, sheet->most[column]));
}

/* Lines that one paragraph takes when it is wrapped at @width characters between words. */
static guint
count_paragraph_lines (const char *text, double width)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  guint lines = 1;
  double used = 0.0;

  for (guint k = 0; words[k] != NULL; k++)
    {
      const double word = measure_text (words[k]);
      if (used > 0 && used + 1.0 + word > width)
        {
          lines++;
          used = 0.0;
        }
      used += (used > 0 ? 1.0 : 0.0) + word;
      /* A word longer than the line is broken. */
      for (; used > width && lines < 1000; used -= width)
        lines++;
    }
  return lines;
}

/* Letters of the table's font that fit into a column as wide as @width digits. */
static double
count_fitting (double width)
{
  return (width - 1.5) / 0.82;
}

static guint
count_lines (const char *text, double fitting)
{
  g_auto (GStrv) paragraphs = g_strsplit (text, "\n", -1);
  guint lines = 0;

  for (guint i = 0; paragraphs[i] != NULL; i++)
    lines += count_paragraph_lines (paragraphs[i], fitting);
  return lines;
}

static void
note_lines (TmSheet *sheet, guint column, const char *text, double width)
{
  if (column < TM_SHEET_COLUMNS && width > 2.0)
    sheet->lines = MAX (sheet->lines, count_lines (text, count_fitting (width)));
}

static void
set_column (TmSheet *sheet, guint column, double least, double most)
{
  sheet->least[column] = least;
  sheet->most[column] = most;
  sheet->widths[column] = MAX (sheet->widths[column], least);
}

/* -------- Begin and end -------- */

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
  g_autofree char *cut = g_strndup (valid, find_cut (valid, 60));
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
  g_autofree char *cut = g_strndup (valid, find_cut (valid, 60));
  g_autofree char *escaped = escape_footer (cut);
  g_autofree char *report = g_strdup_printf (_ ("Report %s"), escaped);
  g_autofree char *header = g_strconcat ("&R&8", report, NULL);

  if (*cut != '\0' && g_utf8_strlen (header, -1) < FOOTER_LENGTH)
    tm_workbook_check (sheet->workbook, worksheet_set_header (sheet->sheet, header));
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
                                                            (lxw_col_t)sheet->last_column));
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
    longest = MAX (longest, measure_text (words[i]));
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
      set_column (sheet, i, MAX (columns[i].least, measure_longest_word (name) * NARROWER * 1.08 + 1.0),
                  columns[i].most);
      note_lines (sheet, i, name, MAX (sheet->least[i], 3.0));
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

/* -------- Cells -------- */

/* The column grows, and the row, where it cannot grow enough. */
static void
make_room (TmSheet *sheet, guint column, const char *text)
{
  const double width = measure_text (text);
  const double most = sheet->most[MIN (column, TM_SHEET_COLUMNS - 1)];

  grow_column (sheet, column, width);
  if (width > count_fitting (most) || strchr (text, '\n') != NULL)
    note_lines (sheet, column, text, most);
  else
    sheet->lines = MAX (sheet->lines, 1);
}

void
tm_sheet_text (TmSheet *sheet, guint column, const char *text, TmStyle style)
{
  const gboolean plain = text == NULL || is_plain (text);
  g_autofree char *stored = plain ? NULL : make_storable (text);
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
  const double needed = (whole + decimals + 3.0) * NARROWER + 2.5;

  grow_column (sheet, column, 0.0);
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
  grow_column (sheet, column, width);
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
  grow_column (sheet, column, measure_text (value));
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
  fitting = count_fitting (width);
  while (count_lines (rest, fitting) > MOST_LINES)
    {
      const gsize length = find_row_end (rest, fitting);
      g_autofree char *piece = g_strndup (rest, length);

      write_paragraph_row (sheet, n, piece, count_lines (piece, fitting));
      rest += length;
      if (g_unichar_isspace (g_utf8_get_char (rest)))
        rest = g_utf8_next_char (rest);
    }
  write_paragraph_row (sheet, n, rest, count_lines (rest, fitting));
}
