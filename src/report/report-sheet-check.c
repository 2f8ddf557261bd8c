/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-check: how the numbers hang together, how to have them calculated again, and checks that a
 * spreadsheet program makes itself: what the sheets come to against what the record says.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-formula.h"
#include "report-names.h"
#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-words.h"

static const double widths[] = { 52, 24, 24, 40 };

#define N_COLUMNS G_N_ELEMENTS (widths)
/* Sums are compared so far: finer than any reading, coarser than the last bits of many of them. */
#define SUM_DIGITS 6

enum { COLUMN_WHAT, COLUMN_RECORD, COLUMN_SHEETS, COLUMN_RESULT };

/* -------- How the numbers hang together -------- */

static char *
say_plain (gconstpointer n)
{
  const guint count = GPOINTER_TO_UINT (n);

  return g_strdup_printf (
      ngettext ("%u verdict is no formula, because it cannot be reckoned from its row alone (a bonus, pins, "
                "no limits, "
                "stations read by different methods): it is written as judged.",
                "%u verdicts are no formulas, because they cannot be reckoned from their rows alone (a "
                "bonus, pins, no "
                "limits, stations read by different methods): they are written as judged.",
                count),
      count);
}

static void
write_rules (TmSheet *sheet)
{
  const TmWorkbook *workbook = sheet->workbook;

  tm_sheet_section (sheet, N_ ("How the numbers hang together"));
  tm_sheet_say_text (
      sheet, N_COLUMNS,
      N_ ("On the sheet of the characteristics, deviation and verdict are formulas over the cells of their "
          "own row; the "
          "counts on the first sheet count the verdicts. Smallest and largest result are the smallest and "
          "largest "
          "size of any station, each the mean of the readings there that count, as corrected. Limits, "
          "results and "
          "guards are values from the record. The deviation is that of the result further from nominal."));
  if (workbook->job->decision == TM_DECISION_SIMPLE)
    tm_sheet_say_text (sheet, N_COLUMNS,
                       N_ ("The verdict: where the method does not settle the band, too close. Else out, "
                           "when the smallest result "
                           "lies below the lower limit or the largest above the upper; in, when neither "
                           "does. A row that would be "
                           "in and has stations unread is not measured."));
  else
    tm_sheet_say_text (sheet, N_COLUMNS,
                       N_ ("The verdict: out, when the smallest result lies below the lower limit less the "
                           "outer guard, or the "
                           "largest above the upper limit and the outer guard. Else too close, where the "
                           "method does not settle "
                           "the band. In, when the smallest lies on or above the lower limit and the inner "
                           "guard, and the largest "
                           "on or below the upper limit less the inner guard; too close between. A row that "
                           "would be in and has "
                           "stations unread is not measured."));
  if (workbook->n_plain > 0)
    tm_sheet_say (sheet, N_COLUMNS, say_plain, GUINT_TO_POINTER (workbook->n_plain));
  if (workbook->job->drawings->len > 0)
    tm_sheet_say_text (
        sheet, N_COLUMNS,
        N_ ("The drawing with its balloons stands in the pages of this report, not in the workbook."));
}

/* -------- What is checked -------- */

/* The next row: @expected by the record, @formula by the sheets. */
static void
write_check (TmSheet *sheet, const char *what, double expected, guint decimals, const char *formula)
{
  g_autofree char *record = tm_cell_name (sheet->row, COLUMN_RECORD);
  g_autofree char *sheets = tm_cell_name (sheet->row, COLUMN_SHEETS);
  g_autofree char *result = g_strdup_printf ("=IF(ROUND(%s-%s,%d)=0,\"%s\",\"%s\")", record, sheets,
                                             SUM_DIGITS, _ ("agrees"), _ ("differs"));

  tm_sheet_text (sheet, COLUMN_WHAT, tm_sheet_label (sheet->workbook, NULL, what), TM_STYLE_TEXT);
  tm_sheet_number (sheet, COLUMN_RECORD, expected, decimals, TM_STYLE_NUMBER);
  tm_sheet_formula_number (sheet, COLUMN_SHEETS, formula, expected, decimals, TM_STYLE_NUMBER);
  tm_sheet_formula_text (sheet, COLUMN_RESULT, result, _ ("agrees"), TM_STYLE_CENTRE);
  tm_sheet_down (sheet);
}

/* Compensated (Neumaier 1974), as spreadsheet programs sum: what is left over would turn a half. */
typedef struct {
  double sum, lost;
} Total;

static void
add (Total *total, double value)
{
  const double sum = total->sum + value;

  total->lost += fabs (total->sum) >= fabs (value) ? (total->sum - sum) + value : (value - sum) + total->sum;
  total->sum = sum;
}

static double
sum_deviations (const GPtrArray *lines)
{
  Total total = { 0.0, 0.0 };

  for (guint i = 0; i < lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (lines, i);
      const TmRowValues values = tm_row_values (line);

      if (isfinite (values.nominal) && isfinite (values.smallest))
        add (&total, tm_deviation_value (&values, tm_formula_digits (line->feature->unit)));
    }
  return total.sum + total.lost;
}

static void
check_characteristics (TmSheet *sheet)
{
  const GPtrArray *lines = sheet->workbook->content->lines;

  if (lines->len == 0)
    return;
  write_check (sheet, N_ ("Characteristics"), lines->len, 0, "=ROWS(Verdict)");
  write_check (sheet, N_ ("In, out, too close and not measured, together"), lines->len, 0,
               "=Count_in+Count_out+Count_too_close+Count_not_measured");
  write_check (sheet, N_ ("Verdicts that are not as recorded"), 0, 0,
               "=SUMPRODUCT(--(Verdict<>Verdict_recorded))");
  write_check (sheet, N_ ("Rows with a smallest result above the largest"), 0, 0,
               "=SUMPRODUCT((Largest_result<>\"\")*(Smallest_result>Largest_result))");
  write_check (sheet, N_ ("Sum of all deviations"), tm_formula_round (sum_deviations (lines), SUM_DIGITS),
               SUM_DIGITS, "=ROUND(SUM(Deviation),6)");
}

static double
sum_readings (const GPtrArray *readings, guint *n_counting)
{
  Total total = { 0.0, 0.0 };

  for (guint i = 0; i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);
      double value;

      *n_counting += tm_row_counts (&reading->row);
      if (reading->outcome == TM_OUTCOME_NONE
          && tm_sheet_quantity_value (&reading->value, reading->row.feature->unit, &value))
        add (&total, value);
    }
  return total.sum + total.lost;
}

static void
check_readings (TmSheet *sheet)
{
  const GPtrArray *readings = sheet->workbook->job->readings;
  g_autofree char *counting = g_strdup_printf ("=COUNTIF(Reading_status,\"%s\")", _ ("counts"));
  guint n_counting = 0;
  double sum;

  if (readings->len == 0)
    return;
  sum = sum_readings (readings, &n_counting);
  write_check (sheet, N_ ("Readings"), readings->len, 0, "=COUNTA(Reading_number)");
  write_check (sheet, N_ ("Readings that count"), n_counting, 0, counting);
  write_check (sheet, N_ ("Sum of all values read"), tm_formula_round (sum, SUM_DIGITS), SUM_DIGITS,
               "=ROUND(SUM(Reading_value),6)");
}

static void
mark_differing (TmSheet *sheet, guint32 first, guint32 last)
{
  g_autofree char *value = g_strdup_printf ("\"%s\"", _ ("differs"));
  lxw_conditional_format condition = { 0 };

  condition.type = LXW_CONDITIONAL_TYPE_CELL;
  condition.criteria = LXW_CONDITIONAL_CRITERIA_EQUAL_TO;
  condition.value_string = value;
  condition.format = sheet->workbook->styles.verdicts[TM_VERDICT_OUT];
  tm_workbook_check (sheet->workbook, worksheet_conditional_format_range (sheet->sheet, first, COLUMN_RESULT,
                                                                          last, COLUMN_RESULT, &condition));
}

static void
write_checks (TmSheet *sheet)
{
  static const char *const heads[]
      = { N_ ("What is checked"), N_ ("By the record"), N_ ("By the sheets"), N_ ("Result") };
  guint32 first;
  g_autofree char *formula = NULL, *from = NULL, *to = NULL;

  if (sheet->workbook->content->lines->len + sheet->workbook->job->readings->len == 0)
    return;
  tm_sheet_section (sheet, N_ ("What the workbook checks itself"));
  tm_sheet_heads (sheet, heads, G_N_ELEMENTS (heads));
  first = sheet->row;
  check_characteristics (sheet);
  check_readings (sheet);
  mark_differing (sheet, first, sheet->row - 1);
  from = tm_cell_name (first, COLUMN_RESULT);
  to = tm_cell_name (sheet->row - 1, COLUMN_RESULT);
  formula = g_strdup_printf ("=SUMPRODUCT(--(%s:%s<>\"%s\"))", from, to, _ ("agrees"));
  tm_sheet_text (sheet, COLUMN_WHAT, tm_sheet_label (sheet->workbook, NULL, N_ ("Checks that fail")),
                 TM_STYLE_STRONG);
  tm_sheet_blank (sheet, COLUMN_RECORD, TM_STYLE_NUMBER);
  tm_sheet_blank (sheet, COLUMN_SHEETS, TM_STYLE_NUMBER);
  tm_sheet_formula_number (sheet, COLUMN_RESULT, formula, 0, 0, TM_STYLE_COUNT);
  tm_sheet_name_cell (sheet, TM_NAME_SELF_CHECK, COLUMN_RESULT);
  tm_sheet_down (sheet);
}

static void
write_again (TmSheet *sheet)
{
  tm_sheet_section (sheet, N_ ("How to calculate it again"));
  tm_sheet_say_text (
      sheet, N_COLUMNS,
      N_ ("Have your spreadsheet program calculate all formulas anew, not only those whose cells have "
          "changed: no cell "
          "may change, and no check may fail. Then change one result of the characteristics: its deviation, "
          "its "
          "verdict and the counts follow, and the checks say what no longer agrees. Close without saving."));
}

static void
write_digest (TmSheet *sheet)
{
  const char *digest = sheet->workbook->facts.digest;

  if (digest == NULL || *digest == '\0')
    return;
  tm_sheet_section (sheet, N_ ("The record that this was written from"));
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, N_ ("Digest of the record (SHA-256)")),
                 TM_STYLE_LABEL);
  tm_sheet_across (sheet, 1, N_COLUMNS - 1, digest, TM_STYLE_TEXT, 1);
  tm_sheet_down (sheet);
  tm_sheet_say_text (
      sheet, N_COLUMNS,
      N_ ("It is taken over the job file in its canonical form without its signatures: whoever holds the "
          "job file can take it again. A signature of the report carries the same digest."));
}

/* -------- Words and names -------- */

static const char *
get_meaning (TmVerdict verdict)
{
  switch (verdict)
    {
    case TM_VERDICT_IN:
      return N_ ("the rule proves it inside its limits");
    case TM_VERDICT_OUT:
      return N_ ("the rule proves it outside its limits");
    case TM_VERDICT_TOO_CLOSE:
      return N_ ("neither is proven");
    case TM_VERDICT_NOT_MEASURED:
    case TM_N_VERDICTS:
    default:
      return N_ ("a result that the requirement asks for is not there");
    }
}

static void
write_words (TmSheet *sheet)
{
  static const TmVerdict verdicts[]
      = { TM_VERDICT_IN, TM_VERDICT_OUT, TM_VERDICT_TOO_CLOSE, TM_VERDICT_NOT_MEASURED };

  tm_sheet_section (sheet, N_ ("The words of the verdicts"));
  for (gsize i = 0; i < G_N_ELEMENTS (verdicts); i++)
    {
      const char *meaning = tm_sheet_label (sheet->workbook, NULL, get_meaning (verdicts[i]));

      tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, "verdict", tm_verdict_word (verdicts[i])),
                     TM_STYLE_STRONG);
      tm_sheet_across (sheet, 1, N_COLUMNS - 1, meaning, TM_STYLE_TEXT, 1);
      tm_sheet_down (sheet);
    }
}

static gboolean
is_named (const TmWorkbook *workbook, TmName name)
{
  if (name < TM_NAME_READING)
    return workbook->content->lines->len > 0;
  if (name < TM_NAME_COUNT)
    return workbook->job->readings->len > 0;
  return name != TM_NAME_SELF_CHECK || workbook->content->lines->len + workbook->job->readings->len > 0;
}

static void
write_names (TmSheet *sheet)
{
  tm_sheet_section (sheet, N_ ("Names of cells, for formulas of your own"));
  for (guint i = 0; i < TM_N_NAMES; i++)
    {
      if (!is_named (sheet->workbook, i))
        continue;
      tm_sheet_text (sheet, 0, tm_name_word (i), TM_STYLE_TEXT);
      tm_sheet_across (sheet, 1, N_COLUMNS - 1, tm_sheet_label (sheet->workbook, NULL, tm_name_subject (i)),
                       TM_STYLE_TEXT, 1);
      tm_sheet_down (sheet);
    }
}

void
tm_sheet_write_check (TmWorkbook *workbook)
{
  TmSheet sheet;

  if (tm_sheet_begin (
          &sheet, workbook, _ ("How to check"), N_ ("How to check"),
          _ ("What a customer needs to go over the figures without the program that wrote them.")))
    {
      sheet.portrait = TRUE;
      tm_sheet_columns (&sheet, widths, N_COLUMNS);
      write_checks (&sheet);
      write_again (&sheet);
      write_rules (&sheet);
      write_digest (&sheet);
      write_words (&sheet);
      write_names (&sheet);
    }
  tm_sheet_end (&sheet);
}
