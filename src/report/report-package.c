/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-package.h"

#include <glib/gi18n-lib.h>

#include "core-form.h"
#include "report-facts.h"
#include "report-glyphs.h"
#include "report-language.h"
#include "report-part.h"
#include "report-template.h"
#include "report-words.h"

#define LONGEST_HEAD                                                                     \
  60 /* letters of the part's number repeated on each page; the first page has all of it \
      */
#define LONGEST_TITLE 400 /* letters of its name under the title */
#define MOST_PLOTS    200
#define MOST_PIECES   5 /* that have lines of their own */

/* How much of the work is done before the pages are written. */
#define BUILT 0.4

static gboolean
has_many_pieces (const GPtrArray *lines)
{
  const TmPiece *last = NULL;
  guint n = 0;

  for (guint i = 0; i < lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (lines, i);

      n += line->piece != last;
      last = line->piece;
    }
  return n > MOST_PIECES;
}

/* Of many pieces only those that are not in: their sizes stand on the batch's charts. */
static GArray *
list_plotted (const TmParts *parts)
{
  const GPtrArray *lines = parts->content->lines;
  GArray *plotted = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (lines, i);

      if (tm_feature_is_diameter (line->feature) && line->judgement.sizes.n_stations > 0
          && (!parts->together || line->judgement.verdict != TM_VERDICT_IN))
        g_array_append_val (plotted, i);
    }
  return plotted;
}

static void
set_margins (TmParts *parts)
{
  TmReportDocument *document = parts->document;
  const TmJob *job = parts->job;
  g_autofree char *number = tm_report_shorten (job->part_number, LONGEST_HEAD);
  g_autofree char *revision = tm_report_shorten (job->revision, LONGEST_HEAD);
  g_autofree char *part
      = *revision != '\0' ? g_strdup_printf (_ ("%s, revision %s"), number, revision) : g_strdup (number);
  g_autofree char *name = tm_report_shorten (job->part_name, LONGEST_TITLE);
  g_autofree char *id = tm_report_shorten (tm_report_identifier (job), LONGEST_HEAD);
  g_autofree char *report = *id != '\0' ? g_strdup_printf (_ ("Report %s"), id) : g_strdup ("");

  document->title = tm_part_label (parts, NULL, N_ ("First-article report"));
  document->subtitle = tm_report_text (document, name);
  document->head_left = tm_report_text (document, part);
  document->head_right = tm_report_text (document, report);
  document->foot = document->title;
}

static void
add_parts (TmParts *parts)
{
  static void (*const all[]) (TmParts * parts) = { tm_part_cover,
                                                   tm_part_statements_after_cover,
                                                   tm_part_supplies,
                                                   tm_part_drawing,
                                                   tm_part_characteristics,
                                                   tm_part_plots,
                                                   tm_part_batch,
                                                   tm_part_fit,
                                                   tm_part_pins,
                                                   tm_part_gauges,
                                                   tm_part_rules,
                                                   tm_part_statements_before_signatures,
                                                   tm_part_signatures };

  for (gsize i = 0; i < G_N_ELEMENTS (all) && tm_part_goes_on (parts, (double)i / G_N_ELEMENTS (all)); i++)
    all[i](parts);
}

TmReportDocument *
tm_report_package_new (const TmReportContent *content, const TmReportForm *form, TmReportProgress progress,
                       gpointer data)
{
  g_autoptr (GPtrArray) drawn = g_ptr_array_new ();
  g_autoptr (GArray) plotted = NULL;
  TmParts parts = { .content = content, .form = form, .n_words = 1, .progress = progress, .data = data };
  const TmWords *before;

  g_return_val_if_fail (content != NULL && form != NULL, NULL);
  parts.job = content->job;
  parts.drawn = drawn;
  parts.together = has_many_pieces (content->lines);
  parts.plotted = plotted = list_plotted (&parts);
  parts.n_plottable = plotted->len;
  g_array_set_size (plotted, MIN (plotted->len, MOST_PLOTS));
  tm_language_words (form->language, form->decimal, &parts.words[0]);
  if (form->second_language != NULL && *form->second_language != '\0')
    tm_language_words (form->second_language, form->decimal, &parts.words[parts.n_words++]);
  parts.document = tm_report_document_new ("");
  before = tm_words_use (&parts.words[0]);
  tm_report_template_apply (form->template, parts.document);
  set_margins (&parts);
  add_parts (&parts);
  tm_words_use (before);
  if (parts.cancelled)
    g_clear_pointer (&parts.document, tm_report_document_free);
  return parts.document;
}

TmPdfFacts
tm_report_package_facts (const TmJob *job, const char *made)
{
  return (TmPdfFacts) {
    .author = job->organisation,
    .subject = job->part_name,
    .keywords = job->customer,
    .made = made,
    .language = job->language,
  };
}

/* -------- In one step -------- */

typedef struct {
  TmReportProgress progress;
  gpointer data;
  double from, to;
} Share;

static gboolean
share_cb (double fraction, gpointer data)
{
  const Share *share = data;

  return share->progress == NULL
         || share->progress (share->from + fraction * (share->to - share->from), share->data);
}

gboolean
tm_report_package_write (const TmReportContent *content, const TmReportForm *form, const char *made,
                         const char *path, TmPackageMade *told, TmReportProgress progress, gpointer data,
                         GError **error)
{
  TmPdfFacts facts = tm_report_package_facts (content->job, made);
  Share share = { progress, data, 0.0, BUILT };
  g_autoptr (TmReportDocument) document = NULL;
  g_autoptr (TmPages) pages = NULL;

  if (!tm_report_form_check (form, error))
    return FALSE;
  document = tm_report_package_new (content, form, share_cb, &share);
  if (document == NULL)
    {
      g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED,
                           _ ("The report was cancelled; nothing was written"));
      return FALSE;
    }
  pages = tm_pages_new (document, form);
  facts.language = form->language;
  share.from = BUILT;
  share.to = 1.0;
  if (!tm_pages_write_pdf (pages, &facts, path, share_cb, &share, error))
    return FALSE;
  if (told != NULL)
    *told = (TmPackageMade) { tm_pages_count (pages), tm_report_missing_glyphs (document) };
  return TRUE;
}
