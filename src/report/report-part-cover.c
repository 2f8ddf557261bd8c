/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-cover: the first page: which part, for whom, what came out, what is missing.
 */

#include <glib/gi18n-lib.h>

#include "report-facts.h"
#include "report-part.h"
#include "report-signed.h"

#define MOST_GAPS 40 /* told one by one */
#define UNKNOWN   "–"

static void
add_fact (TmParts *parts, const TmReportFact *fact)
{
  const char *value = fact->is_word ? tm_part_label (parts, NULL, fact->value) : fact->value;
  const char *label = fact->is_own ? fact->label : tm_part_label (parts, NULL, fact->label);

  if (*value == '\0' && fact->need != TM_FACT_REQUIRED)
    return;
  tm_report_add_fact (parts->document, label, *value != '\0' ? value : UNKNOWN);
}

static char *
say_referred (gconstpointer content)
{
  return tm_report_referred (content);
}

static void
add_part (TmParts *parts)
{
  g_auto (TmReportFacts) facts = { 0 };

  tm_part_section (parts, N_ ("Part and order"), "part", FALSE);
  tm_report_begin_facts (parts->document, parts->form->landscape ? 4 : 3);
  tm_report_facts (parts->content, &facts);
  for (guint i = 0; i < facts.facts->len; i++)
    add_fact (parts, &g_array_index (facts.facts, TmReportFact, i));
  if (parts->content->referred->len > 0)
    tm_part_say (parts, say_referred, parts->content, FALSE);
}

/* -------- Result -------- */

static void
add_count (TmParts *parts, const char *label, guint n)
{
  g_autofree char *text = g_strdup_printf ("%u", n);

  tm_report_add_fact (parts->document, label, text);
}

static void
add_result (TmParts *parts)
{
  const TmReportContent *content = parts->content;

  tm_part_section (parts, N_ ("Result"), "result", FALSE);
  tm_report_begin_facts (parts->document, 6);
  add_count (parts, tm_part_label (parts, NULL, N_ ("Characteristics")), content->lines->len);
  add_count (parts, tm_part_label (parts, "verdict", tm_verdict_word (TM_VERDICT_IN)), content->n_in);
  add_count (parts, tm_part_label (parts, "verdict", tm_verdict_word (TM_VERDICT_OUT)), content->n_out);
  add_count (parts, tm_part_label (parts, "verdict", tm_verdict_word (TM_VERDICT_TOO_CLOSE)),
             content->n_too_close);
  add_count (parts, tm_part_label (parts, "verdict", tm_verdict_word (TM_VERDICT_NOT_MEASURED)),
             content->n_not_measured);
  add_count (parts, tm_part_label (parts, NULL, N_ ("Missing")), content->gaps->len);
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

/* A gap of a line with a picture leads there. */
static void
link_gap (TmParts *parts, const TmGap *gap)
{
  for (guint i = 0; i < parts->plotted->len && gap->feature != NULL; i++)
    {
      const guint at = g_array_index (parts->plotted, guint, i);
      const TmReportLine *line = g_ptr_array_index (parts->content->lines, at);

      if (line->feature == gap->feature && line->piece == gap->piece && line->place == gap->place)
        {
          g_autofree char *name = tm_part_plot_name (parts, at);

          tm_report_link_cell (parts->document, name);
          return;
        }
    }
}

static void
add_gaps (TmParts *parts)
{
  static const TmReportColumn columns[]
      = { { N_ ("No."), 34, 0, 0, TM_CELL_CENTRE },
          { N_ ("What is missing, and what mends it"), 120, 0, 1, TM_CELL_PLAIN } };
  const GPtrArray *gaps = parts->content->gaps;
  const guint shown = gaps->len > MOST_GAPS + 1 ? MOST_GAPS : gaps->len;

  if (gaps->len == 0)
    return;
  tm_part_section (parts, N_ ("Missing before it can go out"), "missing", FALSE);
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < shown; i++)
    {
      const TmGap *gap = g_ptr_array_index (gaps, i);
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      g_autofree char *text = tm_part_both (parts, say_gap, gap);

      tm_report_add_cell (parts->document, number);
      tm_report_add_cell (parts->document, text);
      link_gap (parts, gap);
    }
  if (shown < gaps->len)
    tm_part_say (parts, say_more, GUINT_TO_POINTER (gaps->len - shown), TRUE);
}

/* -------- Nonconformances -------- */

/* What was decided, and when it was done. */
static void
add_disposition (TmParts *parts, const TmNonconformance *note)
{
  g_autofree char *date = tm_report_date (parts->form->dates, note->rework_at);
  g_autofree char *done = *date != '\0' && *note->rework_by != '\0'
                              ? g_strdup_printf ("%s, %s", date, note->rework_by)
                              : g_strdup (date);
  g_autofree char *text
      = g_strconcat (note->disposition, *note->disposition != '\0' && *done != '\0' ? "\n" : "", done, NULL);

  tm_report_add_cell (parts->document, text);
}

static void
add_nonconformances (TmParts *parts)
{
  static const TmReportColumn columns[] = {
    { N_ ("Number"), 40, 110, 0, TM_CELL_STRONG },     { N_ ("Piece"), 30, 90, 0, TM_CELL_PLAIN },
    { N_ ("Feature"), 30, 60, 0, TM_CELL_PLAIN },      { N_ ("What was found"), 80, 260, 2, TM_CELL_PLAIN },
    { N_ ("Disposition"), 60, 140, 1, TM_CELL_PLAIN },
  };
  const GPtrArray *notes = parts->job->nonconformances;

  tm_part_section (parts, N_ ("Documented nonconformances"), "nonconformances", FALSE);
  if (notes->len == 0)
    {
      tm_part_say_text (parts, N_ ("None."), FALSE);
      return;
    }
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < notes->len; i++)
    {
      const TmNonconformance *note = g_ptr_array_index (notes, i);

      tm_report_add_cell (parts->document, note->number);
      tm_report_add_cell (parts->document, *note->piece != '\0'
                                               ? note->piece
                                               : tm_part_label (parts, NULL, N_ ("every piece")));
      tm_report_add_cell (parts->document, note->feature);
      tm_report_add_cell (parts->document, note->note);
      add_disposition (parts, note);
    }
}

/* -------- An earlier report -------- */

static char *
say_superseded (gconstpointer data)
{
  const TmParts *parts = data;

  return tm_report_say_superseded (parts->content, parts->form->dates);
}

void
tm_part_cover (TmParts *parts)
{
  add_part (parts);
  tm_part_say (parts, say_superseded, parts, FALSE);
  add_result (parts);
  add_gaps (parts);
  add_nonconformances (parts);
}
