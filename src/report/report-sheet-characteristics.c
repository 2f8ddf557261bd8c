/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-characteristics: every requirement of the drawing with its result.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report-formula.h"
#include "report-line-words.h"
#include "report-names.h"
#include "report-sheets.h"
#include "report-words.h"

/* Rows of the title, the subtitle, a gap and the head. */
#define FIRST_ROW 4

#define LONGEST_NAME 60 /* letters of the part, in the line under the title */

typedef enum {
  COLUMN_BALLOON,
  COLUMN_WHERE,
  COLUMN_DESIGNATOR,
  COLUMN_REQUIREMENT,
  COLUMN_PIECE,
  COLUMN_PLACE,
  COLUMN_UNIT,
  COLUMN_NOMINAL,
  COLUMN_LOWER,
  COLUMN_UPPER,
  COLUMN_SMALLEST,
  COLUMN_LARGEST,
  COLUMN_DEVIATION,
  COLUMN_UNCERTAINTY,
  COLUMN_VERDICT,
  COLUMN_SIDE,
  COLUMN_GAUGE,
  COLUMN_DUE,
  COLUMN_REFERENCE,
  COLUMN_COUNTS,
  COLUMN_TOOLING,
  COLUMN_COMMENT,
  /* Beside the printed page: what the verdict's formula also rests on. */
  COLUMN_GUARD,
  COLUMN_GUARD_OUT,
  COLUMN_SETTLES,
  COLUMN_UNREAD,
  COLUMN_RECORDED,
  N_COLUMNS
} Column;

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_BALLOON] = { N_ ("No."), 4, 7 },
  [COLUMN_WHERE] = { N_ ("Sheet, zone"), 6, 9, TRUE },
  [COLUMN_DESIGNATOR] = { N_ ("Class"), 6, 9, TRUE },
  [COLUMN_REQUIREMENT] = { N_ ("Requirement"), 14, 24 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_PLACE] = { N_ ("Place"), 5, 7, TRUE },
  [COLUMN_UNIT] = { N_ ("Unit"), 4, 6 },
  [COLUMN_NOMINAL] = { N_ ("Nominal"), 7, 12 },
  [COLUMN_LOWER] = { N_ ("Lower limit"), 7, 12 },
  [COLUMN_UPPER] = { N_ ("Upper limit"), 7, 12 },
  [COLUMN_SMALLEST] = { N_ ("Smallest result"), 7, 12 },
  [COLUMN_LARGEST] = { N_ ("Largest result"), 7, 12 },
  [COLUMN_DEVIATION] = { N_ ("Deviation from nominal"), 7, 12 },
  [COLUMN_UNCERTAINTY] = { N_ ("Uncertainty ± (95 %)"), 7, 12 },
  [COLUMN_VERDICT] = { N_ ("Verdict"), 10, 14 },
  [COLUMN_SIDE] = { N_ ("Side"), 5, 11, TRUE },
  [COLUMN_GAUGE] = { N_ ("Gauge"), 7, 12 },
  [COLUMN_DUE] = { N_ ("Calibration due"), 10, 12 },
  [COLUMN_REFERENCE] = { N_ ("Nonconformance"), 9, 16, TRUE },
  [COLUMN_COUNTS] = { N_ ("What counts"), 8, 15 },
  [COLUMN_TOOLING] = { N_ ("Qualified tooling"), 8, 14, TRUE },
  [COLUMN_COMMENT] = { N_ ("Comment"), 10, 24, TRUE },
  [COLUMN_GUARD] = { N_ ("Guard, in"), 9, 14 },
  [COLUMN_GUARD_OUT] = { N_ ("Guard, out"), 9, 14 },
  [COLUMN_SETTLES] = { N_ ("Method settles"), 9, 14 },
  [COLUMN_UNREAD] = { N_ ("Stations unread"), 9, 10 },
  [COLUMN_RECORDED] = { N_ ("Verdict recorded"), 10, 14 },
};

char *
tm_characteristics_verdicts (const TmWorkbook *workbook)
{
  const guint n = workbook->content->lines->len;
  g_autofree char *first = NULL, *last = NULL, *column = NULL;
  g_auto (GStrv) parts = NULL;
  g_autofree char *name = NULL;

  if (n == 0)
    return NULL;
  parts = g_strsplit (_ ("Characteristics"), "'", -1);
  name = g_strjoinv (" ", parts);
  first = tm_cell_name (0, COLUMN_VERDICT);
  column = g_strndup (first, strlen (first) - 1);
  return g_strdup_printf ("'%s'!$%s$%u:$%s$%u", name, column, FIRST_ROW + 1, column, FIRST_ROW + n);
}

/* Digits of a printed spread: "0.0034" has four. */
static guint
count_spread_decimals (const TmJudgement *judgement, double counts)
{
  g_autofree char *text = tm_judgement_spread_text (judgement, counts);
  const char *point = strchr (text, '.');

  return point != NULL ? (guint)strlen (point + 1) : 0;
}

static void
write_identity (TmSheet *sheet, const TmReportLine *line)
{
  const TmFeature *feature = line->feature;
  g_autofree char *where = g_strdup_printf (
      "%s%s%s", feature->sheet, *feature->sheet != '\0' && *feature->zone != '\0' ? ", " : "", feature->zone);
  g_autofree char *requirement
      = g_strdup_printf ("%s%s%s", feature->requirement,
                         *feature->requirement != '\0' && *feature->name != '\0' ? "\n" : "", feature->name);
  g_autofree char *place
      = feature->places > 1 ? g_strdup_printf (_ ("%u of %u"), line->place, feature->places) : g_strdup ("");

  tm_sheet_text (sheet, COLUMN_BALLOON, feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_WHERE, where, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_DESIGNATOR, feature->designator, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_REQUIREMENT, requirement, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_PIECE, line->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_PLACE, place, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (feature->unit), TM_STYLE_CENTRE);
}

/* A limit that a bonus has widened is printed fine enough to show it. */
static void
write_limits (TmSheet *sheet, const TmReportLine *line, const TmRowValues *values)
{
  const TmFeature *feature = line->feature;
  const gboolean widened = !isnan (values->upper) && line->judgement.limits.upper != feature->upper.count;
  const guint decimals = widened ? MAX (feature->upper.decimals, 4) : feature->upper.decimals;

  tm_sheet_number (sheet, COLUMN_NOMINAL, values->nominal, feature->nominal.decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_LOWER, values->lower, feature->lower.decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_UPPER, values->upper, decimals, TM_STYLE_NUMBER);
}

static void
write_outcome (TmSheet *sheet, const TmJudgement *judgement)
{
  const char *word = "";

  if (judgement->sizes.n_stations > 0)
    word
        = judgement->sizes.stations[judgement->deciding].outcome == TM_OUTCOME_FAIL ? _ ("fail") : _ ("pass");
  tm_sheet_text (sheet, COLUMN_SMALLEST, word, TM_STYLE_CENTRE);
  tm_sheet_blank (sheet, COLUMN_LARGEST, TM_STYLE_TEXT);
  tm_sheet_blank (sheet, COLUMN_DEVIATION, TM_STYLE_TEXT);
  tm_sheet_blank (sheet, COLUMN_UNCERTAINTY, TM_STYLE_TEXT);
}

static void
write_results (TmSheet *sheet, const TmReportLine *line, const TmRowValues *values, const TmRowCells *cells)
{
  const TmJudgement *judgement = &line->judgement;
  const guint decimals = tm_report_line_decimals (line), digits = tm_formula_digits (line->feature->unit);
  g_autofree char *deviation = tm_formula_deviation (values, cells, digits);

  tm_sheet_number (sheet, COLUMN_SMALLEST, values->smallest, decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_LARGEST, values->largest, decimals, TM_STYLE_NUMBER);
  if (deviation == NULL)
    tm_sheet_blank (sheet, COLUMN_DEVIATION, TM_STYLE_NUMBER);
  else if (isnan (values->smallest))
    tm_sheet_formula_text (sheet, COLUMN_DEVIATION, deviation, "", TM_STYLE_NUMBER);
  else
    tm_sheet_formula_number (sheet, COLUMN_DEVIATION, deviation, tm_deviation_value (values, digits),
                             decimals, TM_STYLE_SIGNED);
  tm_sheet_number (sheet, COLUMN_UNCERTAINTY,
                   judgement->expanded / (double)MAX (1, tm_unit_counts (line->feature->unit)),
                   count_spread_decimals (judgement, judgement->expanded), TM_STYLE_NUMBER);
}

static void
write_verdict (TmSheet *sheet, const TmReportLine *line, const TmRowValues *values, const TmRowCells *cells)
{
  const char *word = tm_report_verdict_word (line->judgement.verdict);
  g_autofree char *formula = tm_formula_verdict (sheet->workbook->job, line, values, cells);

  if (formula != NULL)
    tm_sheet_formula_text (sheet, COLUMN_VERDICT, formula, word, TM_STYLE_CENTRE);
  else
    {
      tm_sheet_text (sheet, COLUMN_VERDICT, word, TM_STYLE_CENTRE);
      sheet->workbook->n_plain++;
    }
  tm_sheet_text (sheet, COLUMN_SIDE, tm_report_side_word (line->judgement.side), TM_STYLE_CENTRE);
}

static void
write_gauge (TmSheet *sheet, const TmReportLine *line)
{
  const TmJob *job = sheet->workbook->job;
  g_autofree char *tags = tm_report_gauges_of (job, line->judgement.method_name);
  g_autofree char *comment = tm_report_line_comment (line);
  g_autofree char *first = tm_report_line_first (line, sheet->workbook->styles.dates);
  g_autofree char *both
      = first != NULL ? g_strconcat (first, *comment != '\0' ? "\n" : "", comment, NULL) : g_strdup (comment);

  tm_sheet_text (sheet, COLUMN_GAUGE, tags, TM_STYLE_TEXT);
  tm_sheet_date (sheet, COLUMN_DUE, tm_report_line_due (job, line));
  tm_sheet_text (sheet, COLUMN_REFERENCE, line->nonconformance != NULL ? line->nonconformance->number : "",
                 TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_COUNTS, tm_report_line_counted (line), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_TOOLING, line->feature->tooling, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_COMMENT, both, TM_STYLE_TEXT);
}

static void
write_basis (TmSheet *sheet, const TmReportLine *line, const TmRowValues *values)
{
  const TmJudgement *judgement = &line->judgement;

  tm_sheet_number (sheet, COLUMN_GUARD, values->guard,
                   count_spread_decimals (judgement, (double)judgement->guard), TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_GUARD_OUT, values->guard_out,
                   count_spread_decimals (judgement, (double)judgement->guard_out), TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_SETTLES, tm_report_settles_word (judgement->settles), TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_UNREAD, values->unread, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_RECORDED, tm_report_verdict_word (judgement->verdict), TM_STYLE_CENTRE);
}

static void
write_line (TmSheet *sheet, const TmReportLine *line)
{
  static const Column named[]
      = { COLUMN_NOMINAL, COLUMN_LOWER,     COLUMN_UPPER,   COLUMN_SMALLEST, COLUMN_LARGEST,
          COLUMN_GUARD,   COLUMN_GUARD_OUT, COLUMN_SETTLES, COLUMN_UNREAD };
  const TmRowValues values = tm_row_values (line);
  char *names[N_COLUMNS] = { NULL };
  TmRowCells cells;

  for (gsize i = 0; i < G_N_ELEMENTS (named); i++)
    names[named[i]] = tm_cell_name (sheet->row, named[i]);
  cells = (TmRowCells) { names[COLUMN_NOMINAL],   names[COLUMN_LOWER],   names[COLUMN_UPPER],
                         names[COLUMN_SMALLEST],  names[COLUMN_LARGEST], names[COLUMN_GUARD],
                         names[COLUMN_GUARD_OUT], names[COLUMN_SETTLES], names[COLUMN_UNREAD] };
  write_identity (sheet, line);
  write_limits (sheet, line, &values);
  if (tm_kind_is_attribute (line->feature->kind))
    write_outcome (sheet, &line->judgement);
  else
    write_results (sheet, line, &values, &cells);
  write_verdict (sheet, line, &values, &cells);
  write_gauge (sheet, line);
  write_basis (sheet, line, &values);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    g_free (names[i]);
}

/* A verdict's own word marks its cell, whatever the formula comes to. */
static void
mark_word (TmSheet *sheet, TmVerdict verdict, guint32 last)
{
  g_autofree char *value = g_strdup_printf ("\"%s\"", tm_report_verdict_word (verdict));
  lxw_conditional_format condition = { 0 };

  condition.type = LXW_CONDITIONAL_TYPE_CELL;
  condition.criteria = LXW_CONDITIONAL_CRITERIA_EQUAL_TO;
  condition.value_string = value;
  condition.format = sheet->workbook->styles.verdicts[verdict];
  tm_workbook_check (sheet->workbook,
                     worksheet_conditional_format_range (sheet->sheet, FIRST_ROW, COLUMN_VERDICT, last,
                                                         COLUMN_VERDICT, &condition));
}

static void
finish_table (TmSheet *sheet)
{
  static const struct {
    TmName name;
    Column column;
  } named[] = {
    { TM_NAME_CHARACTERISTIC, COLUMN_BALLOON },
    { TM_NAME_NOMINAL, COLUMN_NOMINAL },
    { TM_NAME_LOWER, COLUMN_LOWER },
    { TM_NAME_UPPER, COLUMN_UPPER },
    { TM_NAME_SMALLEST, COLUMN_SMALLEST },
    { TM_NAME_LARGEST, COLUMN_LARGEST },
    { TM_NAME_DEVIATION, COLUMN_DEVIATION },
    { TM_NAME_UNCERTAINTY, COLUMN_UNCERTAINTY },
    { TM_NAME_VERDICT, COLUMN_VERDICT },
    { TM_NAME_VERDICT_RECORDED, COLUMN_RECORDED },
    { TM_NAME_GUARD_IN, COLUMN_GUARD },
    { TM_NAME_GUARD_OUT, COLUMN_GUARD_OUT },
    { TM_NAME_NONCONFORMANCE, COLUMN_REFERENCE },
  };
  const guint32 last = sheet->row - 1;

  for (guint i = 0; i < TM_N_VERDICTS; i++)
    mark_word (sheet, i, last);
  for (gsize i = 0; i < G_N_ELEMENTS (named); i++)
    tm_sheet_name_cells (sheet, named[i].name, FIRST_ROW, last, named[i].column);
  tm_sheet_filter (sheet, N_COLUMNS);
  worksheet_freeze_panes (sheet->sheet, FIRST_ROW, 1);
}

/* What the shop's template leaves out is hidden: formulas rest on some of it. */
static void
leave_out (TmSheet *sheet)
{
  static const struct {
    Column column;
    TmTemplateColumn left_out;
  } choices[] = {
    { COLUMN_WHERE, TM_TEMPLATE_WHERE },
    { COLUMN_DESIGNATOR, TM_TEMPLATE_CLASS },
    { COLUMN_NOMINAL, TM_TEMPLATE_NOMINAL },
    { COLUMN_DEVIATION, TM_TEMPLATE_DEVIATION },
    { COLUMN_UNCERTAINTY, TM_TEMPLATE_UNCERTAINTY },
    { COLUMN_SIDE, TM_TEMPLATE_SIDE },
    { COLUMN_GAUGE, TM_TEMPLATE_GAUGE },
    { COLUMN_DUE, TM_TEMPLATE_DUE },
    { COLUMN_COUNTS, TM_TEMPLATE_COUNTS },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
    if (!tm_template_shows (sheet->workbook->template, choices[i].left_out))
      sheet->left_out |= 1u << choices[i].column;
}

void
tm_sheet_write_characteristics (TmWorkbook *workbook)
{
  const GPtrArray *lines = workbook->content->lines;
  const char *revision = workbook->job->revision;
  g_autofree char *whole
      = g_strconcat (workbook->job->part_number, *revision != '\0' ? " " : "", revision, NULL);
  g_autofree char *part = tm_report_shorten (whole, LONGEST_NAME);
  g_autofree char *subtitle = g_strdup_printf (_ ("Part %s. Deviation and verdict are formulas over their "
                                                  "row; what the verdict also rests on stands "
                                                  "to the right of the printed page."),
                                               part);
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Characteristics"), N_ ("Characteristics"), subtitle))
    {
      leave_out (&sheet);
      tm_sheet_head (&sheet, columns, N_COLUMNS, COLUMN_GUARD);
      for (guint i = 0; i < lines->len; i++)
        {
          write_line (&sheet, g_ptr_array_index (lines, i));
          if (!tm_sheet_next (&sheet, (double)i / lines->len))
            break;
        }
      if (lines->len > 0 && !tm_workbook_stopped (workbook))
        finish_table (&sheet);
    }
  tm_sheet_end (&sheet);
}
