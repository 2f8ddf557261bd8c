/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-paper.h"

#include <glib/gi18n-lib.h>

#include "report-language.h"
#include "report-package.h"

/* How much of the work is done when the document is composed: the rest is laying it out. */
#define COMPOSED 0.5

/* What the pages say, whatever their form: papers in several forms share it. */
typedef struct {
  gatomicrefcount n_refs;
  TmJob *job;
  TmReportContent *content;
} Matter;

struct _TmReportPaper {
  gatomicrefcount n_refs;
  GMutex turn; /* drawing shapes and keeps texts */
  Matter *matter;
  TmReportDocument *document;
  TmPages *pages;
  TmJobForm form;
  GArray *sections; /* TmPaperSection */
};

/* -------- Making -------- */

typedef struct {
  TmReportProgress progress;
  gpointer data;
} Share;

static gboolean
compose_cb (double fraction, gpointer data)
{
  const Share *share = data;

  return share->progress == NULL || share->progress (fraction * COMPOSED, share->data);
}

static gboolean
goes_on (const Share *share, double fraction, GError **error)
{
  if (share->progress == NULL || share->progress (fraction, share->data))
    return TRUE;
  g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED,
                       _ ("The pages were not laid out: cancelled"));
  return FALSE;
}

static void
list_sections (TmReportPaper *paper)
{
  const GPtrArray *sections = paper->document->sections;

  paper->sections = g_array_new (FALSE, FALSE, sizeof (TmPaperSection));
  for (guint i = 0; i < sections->len; i++)
    {
      const TmReportSection *section = g_ptr_array_index (sections, i);
      const gint page = tm_pages_find (paper->pages, section->name);

      if (page >= 0)
        g_array_append_val (paper->sections, ((TmPaperSection) { section->title, (guint)page }));
    }
}

static gboolean
fill (TmReportPaper *paper, TmReportProgress progress, gpointer data, GError **error)
{
  Share share = { progress, data };
  const TmReportForm *form = &paper->form.form;

  if (!tm_report_form_check (form, error) || !goes_on (&share, 0.0, error))
    return FALSE;
  paper->document = tm_report_package_new (paper->matter->content, form, compose_cb, &share);
  if (paper->document == NULL || !goes_on (&share, COMPOSED, error))
    {
      if (error != NULL && *error == NULL)
        g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED,
                             _ ("The pages were not laid out: cancelled"));
      return FALSE;
    }
  paper->pages = tm_pages_new (paper->document, form);
  list_sections (paper);
  return goes_on (&share, 1.0, error);
}

/* Takes @matter. */
static TmReportPaper *
make (Matter *matter, const TmJobForm *form, TmReportProgress progress, gpointer data, GError **error)
{
  TmReportPaper *paper = g_new0 (TmReportPaper, 1);

  g_atomic_ref_count_init (&paper->n_refs);
  g_mutex_init (&paper->turn);
  paper->matter = matter;
  tm_job_form_copy (&paper->form, form);
  if (fill (paper, progress, data, error))
    return paper;
  tm_report_paper_unref (paper);
  return NULL;
}

TmReportPaper *
tm_report_paper_new (TmJob *job, TmReportContent *content, const TmJobForm *form, TmReportProgress progress,
                     gpointer data, GError **error)
{
  Matter *matter;

  g_return_val_if_fail (job != NULL && content != NULL && form != NULL, NULL);

  matter = g_new0 (Matter, 1);
  g_atomic_ref_count_init (&matter->n_refs);
  matter->job = job;
  matter->content = content;
  return make (matter, form, progress, data, error);
}

TmReportPaper *
tm_report_paper_again (TmReportPaper *paper, const TmJobForm *form, TmReportProgress progress, gpointer data,
                       GError **error)
{
  g_return_val_if_fail (paper != NULL && form != NULL, NULL);

  g_atomic_ref_count_inc (&paper->matter->n_refs);
  return make (paper->matter, form, progress, data, error);
}

static void
unref_matter (Matter *matter)
{
  if (!g_atomic_ref_count_dec (&matter->n_refs))
    return;
  tm_report_content_free (matter->content);
  tm_job_free (matter->job);
  g_free (matter);
}

TmReportPaper *
tm_report_paper_ref (TmReportPaper *paper)
{
  g_return_val_if_fail (paper != NULL, NULL);

  g_atomic_ref_count_inc (&paper->n_refs);
  return paper;
}

void
tm_report_paper_unref (TmReportPaper *paper)
{
  g_return_if_fail (paper != NULL);

  if (!g_atomic_ref_count_dec (&paper->n_refs))
    return;
  g_clear_pointer (&paper->sections, g_array_unref);
  g_clear_pointer (&paper->pages, tm_pages_free);
  g_clear_pointer (&paper->document, tm_report_document_free);
  unref_matter (paper->matter);
  tm_job_form_clear (&paper->form);
  g_mutex_clear (&paper->turn);
  g_free (paper);
}

/* -------- Asking -------- */

TmReportContent *
tm_report_paper_content (TmReportPaper *paper)
{
  return paper->matter->content;
}

const TmReportForm *
tm_report_paper_form (TmReportPaper *paper)
{
  return &paper->form.form;
}

const char *
tm_report_paper_title (TmReportPaper *paper)
{
  return paper->document->title;
}

guint
tm_report_paper_n_pages (TmReportPaper *paper)
{
  return tm_pages_count (paper->pages);
}

void
tm_report_paper_size (TmReportPaper *paper, double *width, double *height)
{
  tm_pages_size (paper->pages, width, height);
}

void
tm_report_paper_page_size (TmReportPaper *paper, guint page, double *width, double *height)
{
  tm_pages_upright_size (paper->pages, page, width, height);
}

const GArray *
tm_report_paper_sections (TmReportPaper *paper)
{
  return paper->sections;
}

const char *
tm_report_paper_section_of (TmReportPaper *paper, guint page)
{
  return tm_pages_section (paper->pages, page);
}

/* -------- Taking turns -------- */

void
tm_report_paper_draw (TmReportPaper *paper, guint page, cairo_t *cr)
{
  g_return_if_fail (page < tm_report_paper_n_pages (paper));

  g_mutex_lock (&paper->turn);
  tm_pages_draw (paper->pages, page, cr);
  g_mutex_unlock (&paper->turn);
}

void
tm_report_paper_draw_upright (TmReportPaper *paper, guint page, cairo_t *cr)
{
  g_return_if_fail (page < tm_report_paper_n_pages (paper));

  g_mutex_lock (&paper->turn);
  tm_pages_draw_upright (paper->pages, page, cr);
  g_mutex_unlock (&paper->turn);
}

char *
tm_report_paper_text (TmReportPaper *paper, guint page)
{
  char *text;

  g_return_val_if_fail (page < tm_report_paper_n_pages (paper), NULL);

  g_mutex_lock (&paper->turn);
  text = tm_pages_text (paper->pages, page);
  g_mutex_unlock (&paper->turn);
  return text;
}

gboolean
tm_report_paper_write (TmReportPaper *paper, const char *made, const char *path, TmReportProgress progress,
                       gpointer data, GError **error)
{
  TmPdfFacts facts = tm_report_package_facts (paper->matter->job, made);
  gboolean written;

  facts.language = paper->form.form.language;
  g_mutex_lock (&paper->turn);
  written = tm_pages_write_pdf (paper->pages, &facts, path, progress, data, error);
  g_mutex_unlock (&paper->turn);
  return written;
}
