/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-cover: the first page: which part, for whom, what came out, what is missing.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-words.h"

#define MOST_GAPS 40 /* told one by one */
#define UNKNOWN   "–"

/* A fact that every report has, known or not. */
static void
add_required (TmParts *parts, const char *label, const char *value)
{
  tm_report_add_fact (parts->document, tm_part_label (parts, NULL, label), *value != '\0' ? value : UNKNOWN);
}

static void
add_kind (TmParts *parts)
{
  const TmJob *job = parts->job;
  const gboolean partial = job->first_article == TM_FIRST_ARTICLE_PARTIAL;

  tm_report_add_fact (parts->document, tm_part_label (parts, NULL, N_ ("Kind of first article")),
                      tm_part_label (parts, NULL, partial ? N_ ("partial") : N_ ("full")));
  tm_part_fact (parts, N_ ("Reason"), job->first_article_reason);
  tm_part_fact (parts, N_ ("Baseline part"), job->first_article_baseline);
}

static void
add_part (TmParts *parts)
{
  const TmJob *job = parts->job;
  g_autofree char *pieces = tm_report_pieces (parts->content);

  tm_part_section (parts, N_ ("Part and order"), "part", FALSE);
  tm_report_begin_facts (parts->document, parts->form->landscape ? 4 : 3);
  add_required (parts, N_ ("Part number"), job->part_number);
  add_required (parts, N_ ("Part name"), job->part_name);
  add_required (parts, N_ ("Revision"), job->revision);
  add_required (parts, N_ ("Drawing number"), job->drawing);
  add_required (parts, N_ ("Customer"), job->customer);
  add_required (parts, N_ ("Order"), job->order);
  tm_part_fact (parts, N_ ("Pieces"), pieces);
  tm_part_fact (parts, N_ ("Report identifier"), job->id);
  add_kind (parts);
  tm_part_fact (parts, N_ ("Material"), job->material);
  tm_part_fact (parts, N_ ("Unit of the drawing"), tm_unit_symbol (job->unit));
  tm_part_fact (parts, N_ ("Tolerancing standard"), tm_standard_word (job->standard));
  tm_part_fact (parts, N_ ("General tolerance"), job->general_tolerance);
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
      tm_report_add_cell (parts->document, note->disposition);
    }
}

void
tm_part_cover (TmParts *parts)
{
  add_part (parts);
  add_result (parts);
  add_gaps (parts);
  add_nonconformances (parts);
}
