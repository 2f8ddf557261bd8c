/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-part: the first sheet: which part, for whom, what came out, what is missing.
 */

#include <glib/gi18n-lib.h>

#include "report-facts.h"
#include "report-names.h"
#include "report-sheet-shop.h"
#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-signed.h"
#include "report-words.h"

#define N_COLUMNS    7
#define LONGEST_NAME 70 /* letters, in the line under the title; the facts have all of it */
#define LOGO_COLUMN  5
/* More of them would push the result off the first page. */
#define MOST_GAPS 30

/* Label, value, label, value, label, value; the last is for the nonconformances. */
static const double widths[N_COLUMNS] = { 22, 26, 22, 26, 22, 26, 20 };

static void
write_fact (TmSheet *sheet, guint column, const TmReportFact *fact)
{
  TmWorkbook *workbook = sheet->workbook;
  const char *value = fact->is_word ? tm_sheet_label (workbook, NULL, fact->value) : fact->value;

  tm_sheet_text (sheet, column, fact->is_own ? fact->label : tm_sheet_label (workbook, NULL, fact->label),
                 TM_STYLE_LABEL);
  if (*value == '\0' && fact->need == TM_FACT_BY_HAND)
    tm_sheet_blank (sheet, column + 1, TM_STYLE_BY_HAND);
  else
    tm_sheet_text (sheet, column + 1, value, column == 0 ? TM_STYLE_STRONG : TM_STYLE_TEXT);
}

/* Three facts in a row. */
static void
write_facts (TmSheet *sheet, const GArray *facts)
{
  guint n = 0;

  for (guint i = 0; i < facts->len; i++)
    {
      const TmReportFact *fact = &g_array_index (facts, TmReportFact, i);

      if (*fact->value == '\0' && fact->need == TM_FACT_OPTIONAL)
        continue;
      write_fact (sheet, (n % 3) * 2, fact);
      if (n++ % 3 == 2)
        tm_sheet_down (sheet);
    }
  if (n % 3 != 0)
    tm_sheet_down (sheet);
}

static char *
say_superseded (gconstpointer data)
{
  const TmWorkbook *workbook = data;

  return tm_report_say_superseded (workbook->content, workbook->styles.dates);
}

static char *
say_referred (gconstpointer content)
{
  return tm_report_referred (content);
}

static void
write_part (TmSheet *sheet)
{
  const TmReportContent *content = sheet->workbook->content;
  g_auto (TmReportFacts) facts = { 0 };

  tm_report_facts (content, &facts);
  write_facts (sheet, facts.facts);
  tm_sheet_down (sheet);
  if (content->referred->len > 0)
    tm_sheet_say (sheet, N_COLUMNS, say_referred, content);
  tm_sheet_say (sheet, N_COLUMNS, say_superseded, sheet->workbook);
}

/* A count over the verdict column, so that it follows what is changed there. */
static void
write_count (TmSheet *sheet, guint column, TmVerdict verdict, guint n, TmName name)
{
  const char *word = tm_report_verdict_word (verdict);
  g_autofree char *cells = tm_characteristics_verdicts (sheet->workbook);
  g_autofree char *formula = NULL;

  tm_sheet_text (sheet, column, tm_sheet_label (sheet->workbook, "verdict", tm_verdict_word (verdict)),
                 TM_STYLE_LABEL);
  tm_sheet_name_cell (sheet, name, column + 1);
  if (cells == NULL)
    {
      tm_sheet_number (sheet, column + 1, n, 0, TM_STYLE_COUNT);
      return;
    }
  formula = g_strdup_printf ("=COUNTIF(%s,\"%s\")", cells, word);
  tm_sheet_formula_number (sheet, column + 1, formula, n, 0, TM_STYLE_COUNT);
}

static void
write_total (TmSheet *sheet, const char *label, guint n, TmName name)
{
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, label), TM_STYLE_LABEL);
  tm_sheet_number (sheet, 1, n, 0, TM_STYLE_COUNT);
  tm_sheet_name_cell (sheet, name, 1);
}

static void
write_result (TmSheet *sheet)
{
  const TmReportContent *content = sheet->workbook->content;

  tm_sheet_section (sheet, N_ ("Result"));
  write_total (sheet, N_ ("Characteristics"), content->lines->len, TM_NAME_COUNT);
  write_count (sheet, 2, TM_VERDICT_IN, content->n_in, TM_NAME_COUNT_IN);
  write_count (sheet, 4, TM_VERDICT_OUT, content->n_out, TM_NAME_COUNT_OUT);
  tm_sheet_down (sheet);
  write_total (sheet, N_ ("Missing before it can go out"), content->gaps->len, TM_NAME_COUNT_MISSING);
  write_count (sheet, 2, TM_VERDICT_TOO_CLOSE, content->n_too_close, TM_NAME_COUNT_TOO_CLOSE);
  write_count (sheet, 4, TM_VERDICT_NOT_MEASURED, content->n_not_measured, TM_NAME_COUNT_NOT_MEASURED);
  tm_sheet_down (sheet);
}

/* -------- What is missing -------- */

static char *
say_gap (gconstpointer gap)
{
  return tm_gap_describe (gap);
}

static char *
say_more (gconstpointer data)
{
  const guint n = GPOINTER_TO_UINT (data);

  return g_strdup_printf (ngettext ("… and %u more", "… and %u more", n), n);
}

static void
write_gaps (TmSheet *sheet)
{
  const GPtrArray *gaps = sheet->workbook->content->gaps;
  const guint shown = gaps->len > MOST_GAPS + 1 ? MOST_GAPS : gaps->len;

  if (gaps->len == 0)
    return;
  tm_sheet_section (sheet, N_ ("Missing before it can go out"));
  for (guint i = 0; i < shown; i++)
    tm_sheet_say (sheet, N_COLUMNS, say_gap, g_ptr_array_index (gaps, i));
  if (shown < gaps->len)
    tm_sheet_say (sheet, N_COLUMNS, say_more, GUINT_TO_POINTER (gaps->len - shown));
}

/* -------- Nonconformances -------- */

static void
write_nonconformance (TmSheet *sheet, const TmNonconformance *note)
{
  tm_sheet_text (sheet, 0, note->number, TM_STYLE_STRONG);
  tm_sheet_text (sheet, 1,
                 *note->piece != '\0' ? note->piece
                                      : tm_sheet_label (sheet->workbook, NULL, N_ ("every piece")),
                 TM_STYLE_TEXT);
  tm_sheet_text (sheet, 2, note->feature, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 3, note->note, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 4, note->disposition, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 5, note->rework_by, TM_STYLE_TEXT);
  tm_sheet_time (sheet, 6, note->rework_at);
  tm_sheet_next (sheet, 0.5);
}

static void
write_nonconformances (TmSheet *sheet)
{
  static const char *const heads[]
      = { N_ ("Number"),      N_ ("Piece"),       N_ ("Feature"),          N_ ("What was found"),
          N_ ("Disposition"), N_ ("Reworked by"), N_ ("Reworked at (UTC)") };
  const GPtrArray *notes = sheet->workbook->job->nonconformances;

  tm_sheet_section (sheet, N_ ("Documented nonconformances"));
  if (notes->len == 0)
    {
      tm_sheet_say_text (sheet, N_COLUMNS, N_ ("None."));
      return;
    }
  tm_sheet_heads (sheet, heads, G_N_ELEMENTS (heads));
  for (guint i = 0; i < notes->len && !tm_workbook_stopped (sheet->workbook); i++)
    write_nonconformance (sheet, g_ptr_array_index (notes, i));
}

/* What the report is about, in one line: the part's name and its revision, where they are given. */
static char *
name_part (const TmJob *job)
{
  const char *name = *job->part_name != '\0' ? job->part_name : job->part_number;
  g_autofree char *part = tm_report_shorten (name, LONGEST_NAME);
  g_autofree char *revision = tm_report_shorten (job->revision, LONGEST_NAME);

  if (*revision == '\0')
    return g_strdup_printf (_ ("%s. Shaded cells are to be filled in by hand."), part);
  return g_strdup_printf (_ ("%s, revision %s. Shaded cells are to be filled in by hand."), part, revision);
}

void
tm_sheet_write_part (TmWorkbook *workbook)
{
  g_autofree char *subtitle = name_part (workbook->job);
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Part and order"), N_ ("First-article report"), subtitle))
    {
      tm_sheet_columns (&sheet, widths, N_COLUMNS);
      tm_sheet_write_shop (&sheet, N_COLUMNS, LOGO_COLUMN);
      write_part (&sheet);
      write_result (&sheet);
      write_gaps (&sheet);
      write_nonconformances (&sheet);
      tm_sheet_write_statements (&sheet, TM_STATEMENT_AFTER_COVER, N_COLUMNS);
    }
  tm_sheet_end (&sheet);
}
