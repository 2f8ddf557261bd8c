/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-part: the first sheet: which part, for whom, what came out, who answers for it.
 */

#include <glib/gi18n-lib.h>

#include "report-facts.h"
#include "report-sheets.h"
#include "report-signed.h"
#include "report-words.h"

#define N_COLUMNS 6
/* More of them would push the result off the first page. */
#define MOST_GAPS 30

/* Label, value, label, value, label, value. */
static const double widths[N_COLUMNS] = { 22, 26, 22, 26, 22, 26 };

static void
write_fact (TmSheet *sheet, guint column, const TmReportFact *fact)
{
  tm_sheet_text (sheet, column, fact->is_own ? fact->label : _ (fact->label), TM_STYLE_LABEL);
  if (*fact->value == '\0' && fact->need == TM_FACT_BY_HAND)
    tm_sheet_blank (sheet, column + 1, TM_STYLE_BY_HAND);
  else
    tm_sheet_text (sheet, column + 1, fact->is_word ? _ (fact->value) : fact->value,
                   column == 0 ? TM_STYLE_STRONG : TM_STYLE_TEXT);
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

static void
write_section (TmSheet *sheet, const char *name)
{
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, name, TM_STYLE_SECTION);
  tm_sheet_down (sheet);
}

static void
write_part (TmSheet *sheet)
{
  g_auto (TmReportFacts) facts = { 0 };
  g_autofree char *referred = tm_report_referred (sheet->workbook->content);

  tm_report_facts (sheet->workbook->content, &facts);
  write_facts (sheet, facts.facts);
  if (referred == NULL)
    return;
  tm_sheet_down (sheet);
  tm_sheet_across (sheet, 0, N_COLUMNS - 1, referred, TM_STYLE_PARAGRAPH, 2);
  tm_sheet_down (sheet);
}

/* A count over the verdict column, so that it follows what is changed there. */
static void
write_count (TmSheet *sheet, guint column, TmVerdict verdict, guint n)
{
  const char *word = tm_report_verdict_word (verdict);
  g_autofree char *cells = tm_characteristics_verdicts (sheet->workbook);
  g_autofree char *formula = NULL;

  tm_sheet_text (sheet, column, word, TM_STYLE_LABEL);
  if (cells == NULL)
    {
      tm_sheet_number (sheet, column + 1, n, 0, TM_STYLE_NUMBER);
      return;
    }
  formula = g_strdup_printf ("=COUNTIF(%s,\"%s\")", cells, word);
  tm_sheet_formula_number (sheet, column + 1, formula, n, 0, TM_STYLE_NUMBER);
}

static void
write_result (TmSheet *sheet)
{
  const TmReportContent *content = sheet->workbook->content;
  g_autofree char *rule = tm_report_rule (sheet->workbook->job);

  write_section (sheet, _ ("Result"));
  tm_sheet_text (sheet, 0, _ ("Characteristics"), TM_STYLE_LABEL);
  tm_sheet_number (sheet, 1, content->lines->len, 0, TM_STYLE_NUMBER);
  write_count (sheet, 2, TM_VERDICT_IN, content->n_in);
  write_count (sheet, 4, TM_VERDICT_OUT, content->n_out);
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, _ ("Missing before it can go out"), TM_STYLE_LABEL);
  tm_sheet_number (sheet, 1, content->gaps->len, 0, TM_STYLE_NUMBER);
  write_count (sheet, 2, TM_VERDICT_TOO_CLOSE, content->n_too_close);
  write_count (sheet, 4, TM_VERDICT_NOT_MEASURED, content->n_not_measured);
  tm_sheet_down (sheet);
  write_section (sheet, _ ("Decision rule"));
  tm_sheet_across (sheet, 0, N_COLUMNS - 1, rule, TM_STYLE_PARAGRAPH, 2);
  tm_sheet_down (sheet);
}

static void
write_heads (TmSheet *sheet, const char *const *names, guint n)
{
  for (guint i = 0; i < n; i++)
    tm_sheet_text (sheet, i, names[i], TM_STYLE_HEAD);
  tm_sheet_down (sheet);
}

static void
write_nonconformances (TmSheet *sheet)
{
  const GPtrArray *notes = sheet->workbook->job->nonconformances;
  const char *names[] = { _ ("Number"), _ ("Piece"), _ ("Feature"), _ ("What was found"), _ ("Disposition") };

  write_section (sheet, _ ("Documented nonconformances"));
  if (notes->len == 0)
    {
      tm_sheet_text (sheet, 0, _ ("None."), TM_STYLE_PLAIN);
      tm_sheet_down (sheet);
      return;
    }
  write_heads (sheet, names, G_N_ELEMENTS (names));
  for (guint i = 0; i < notes->len && !tm_workbook_stopped (sheet->workbook); i++)
    {
      const TmNonconformance *note = g_ptr_array_index (notes, i);
      tm_sheet_text (sheet, 0, note->number, TM_STYLE_STRONG);
      tm_sheet_text (sheet, 1, *note->piece != '\0' ? note->piece : _ ("every piece"), TM_STYLE_TEXT);
      tm_sheet_text (sheet, 2, note->feature, TM_STYLE_TEXT);
      tm_sheet_text (sheet, 3, note->note, TM_STYLE_TEXT);
      tm_sheet_text (sheet, 4, note->disposition, TM_STYLE_TEXT);
      tm_sheet_next (sheet, 0.5);
    }
}

static void
write_signature (TmSheet *sheet, const TmSignature *signature)
{
  const TmReportContent *content = sheet->workbook->content;
  gboolean known = g_strv_contains (tm_report_roles (), signature->role);
  g_autofree char *said = tm_report_say_signature (content, signature);

  tm_sheet_text (sheet, 0, known ? _ (signature->role) : signature->role, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 1, tm_report_signer (content->job, signature), TM_STYLE_TEXT);
  tm_sheet_time (sheet, 2, signature->at);
  tm_sheet_text (sheet, 3, said, TM_STYLE_TEXT);
  tm_sheet_down (sheet);
}

/* What is said of all of them, where there is something. */
static void
write_signed (TmSheet *sheet)
{
  const TmWorkbook *workbook = sheet->workbook;
  g_autofree char *superseded = tm_report_say_superseded (workbook->content, workbook->styles.dates);
  g_autofree char *gaps = tm_report_say_signed_with_gaps (workbook->content);
  const char *const said[] = { superseded, gaps };

  for (gsize i = 0; i < G_N_ELEMENTS (said); i++)
    {
      if (said[i] == NULL)
        continue;
      tm_sheet_across (sheet, 0, N_COLUMNS - 1, said[i], TM_STYLE_PARAGRAPH, 2);
      tm_sheet_down (sheet);
    }
}

static void
write_signatures (TmSheet *sheet)
{
  const TmReportContent *content = sheet->workbook->content;
  const char *names[] = { _ ("Role"), _ ("Name"), _ ("Date"), _ ("Signature") };

  write_section (sheet, _ ("Signatures"));
  write_signed (sheet);
  write_heads (sheet, names, G_N_ELEMENTS (names));
  for (guint i = 0; i < content->job->signatures->len; i++)
    write_signature (sheet, g_ptr_array_index (content->job->signatures, i));
  for (const char *const *role = tm_report_roles (); *role != NULL; role++)
    {
      if (tm_report_role_is_signed (content, *role))
        continue;
      worksheet_set_row (sheet->sheet, sheet->row, 24.0, NULL);
      tm_sheet_text (sheet, 0, _ (*role), TM_STYLE_LABEL);
      for (guint column = 1; column < G_N_ELEMENTS (names); column++)
        tm_sheet_blank (sheet, column, TM_STYLE_BY_HAND);
      tm_sheet_down (sheet);
    }
}

static void
write_gaps (TmSheet *sheet)
{
  const GPtrArray *gaps = sheet->workbook->content->gaps;
  const guint shown = gaps->len > MOST_GAPS + 1 ? MOST_GAPS : gaps->len;

  if (gaps->len == 0)
    return;
  write_section (sheet, _ ("Missing before it can go out"));
  for (guint i = 0; i < shown; i++)
    {
      g_autofree char *text = tm_gap_describe (g_ptr_array_index (gaps, i));
      tm_sheet_text (sheet, 0, text, TM_STYLE_PLAIN);
      tm_sheet_down (sheet);
    }
  if (shown < gaps->len)
    {
      g_autofree char *more = g_strdup_printf (ngettext ("… and %u more", "… and %u more", gaps->len - shown),
                                               gaps->len - shown);
      tm_sheet_text (sheet, 0, more, TM_STYLE_PLAIN);
      tm_sheet_down (sheet);
    }
}

/* What the report is about, in one line: the part's name and its revision, where they are given. */
static char *
name_part (const TmJob *job)
{
  const char *part = *job->part_name != '\0' ? job->part_name : job->part_number;

  if (*job->revision == '\0')
    return g_strdup_printf (_ ("%s. Shaded cells are to be filled in by hand."), part);
  return g_strdup_printf (_ ("%s, revision %s. Shaded cells are to be filled in by hand."), part,
                          job->revision);
}

void
tm_sheet_write_part (TmWorkbook *workbook)
{
  g_autofree char *subtitle = name_part (workbook->job);
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Part and order"), _ ("First-article report"), subtitle))
    {
      tm_sheet_columns (&sheet, widths, N_COLUMNS);
      write_part (&sheet);
      write_result (&sheet);
      write_gaps (&sheet);
      write_nonconformances (&sheet);
      write_signatures (&sheet);
    }
  tm_sheet_end (&sheet);
}
