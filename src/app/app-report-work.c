/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-work.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "app-report-form.h"
#include "app-report-gather.h"
#include "app-work.h"
#include "exchange-job.h"
#include "exchange-qif.h"
#include "exchange-table.h"
#include "report-package.h"
#include "report-workbook.h"

/* How much of the work is done when the job is read. */
#define READ 0.3

typedef struct {
  char *book_path;
  char *id;
  char *path; /* of the file to write */
  char *made; /* when, UTC */
  TmJobForm form;
  TmReportWritten written;
  char *warning; /* made with the file; or NULL */

  TmWork *work;
  double from; /* which part of the whole the present step is */
  double to;
} ReportWork;

static void
free_work (gpointer data)
{
  ReportWork *report = data;

  g_free (report->book_path);
  g_free (report->id);
  g_free (report->path);
  g_free (report->made);
  g_free (report->warning);
  tm_job_form_clear (&report->form);
  g_free (report);
}

static ReportWork *
new_work (TmDocument *document, const char *path, TmReportWritten done)
{
  ReportWork *report = g_new0 (ReportWork, 1);

  report->book_path = g_strdup (tm_book_path (tm_document_book (document)));
  report->id = g_strdup (tm_document_job (document)->id);
  report->path = g_strdup (path);
  report->made = tm_now_utc ();
  tm_job_form_fill_for (&report->form, document);
  report->written = done;
  report->to = READ;
  return report;
}

static gboolean
step_progress (double fraction, gpointer data)
{
  ReportWork *report = data;

  return tm_work_progress (report->from + fraction * (report->to - report->from), report->work);
}

/* -------- One for each ending -------- */

static gboolean
write_table (TmBook *book, const TmJob *job, ReportWork *report, GError **error)
{
  GString *table = tm_table_report (job);
  gboolean written
      = g_file_set_contents_full (report->path, table->str, (gssize)table->len,
                                  G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, error);

  g_string_free (table, TRUE);
  if (!written)
    g_prefix_error (error, _ ("%s: cannot be written; choose another folder or free some space: "),
                    report->path);
  return written;
}

static gboolean
write_qif (TmBook *book, const TmJob *job, ReportWork *report, GError **error)
{
  const TmQifFacts facts = { .created = report->made };

  return tm_qif_write_file (job, &facts, report->path, step_progress, report, error);
}

static gboolean
write_pages (TmBook *book, const TmJob *job, ReportWork *report, GError **error)
{
  g_autoptr (TmReportContent) content = tm_report_gather (book, job, &report->form.form, error);
  TmPackageMade told = { 0 };
  const gboolean written = content != NULL
                           && tm_report_package_write (content, &report->form.form, report->made,
                                                       report->path, &told, step_progress, report, error);

  report->warning = told.missing_glyphs;
  return written;
}

static gboolean
write_workbook (TmBook *book, const TmJob *job, ReportWork *report, GError **error)
{
  g_autoptr (TmReportContent) content = tm_report_gather (book, job, &report->form.form, error);
  g_autofree char *digest = tm_job_digest (job);

  return content != NULL
         && tm_workbook_write (content, report->path, &report->form.form,
                               &(TmWorkbookFacts) { report->made, digest }, step_progress, report, error);
}

static gboolean
write_by_ending (TmBook *book, const TmJob *job, ReportWork *report, GError **error)
{
  static const struct {
    const char *ending;
    gboolean (*write) (TmBook *book, const TmJob *job, ReportWork *report, GError **error);
  } kinds[] = {
    { ".csv", write_table }, { ".qif", write_qif }, { ".pdf", write_pages }, { ".xlsx", write_workbook }
  };
  g_autofree char *lower = g_ascii_strdown (report->path, -1);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_has_suffix (lower, kinds[i].ending))
      return kinds[i].write (book, job, report, error);
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
               _ ("%s: a report is written as .pdf, .xlsx, .qif or .csv; choose one of these endings"),
               report->path);
  return FALSE;
}

/* -------- The work -------- */

static gpointer
run_write (TmWork *work, gpointer data, GError **error)
{
  ReportWork *report = data;
  g_autoptr (TmBook) book = tm_book_open (report->book_path, TM_BOOK_OPEN_NORMAL, error);
  g_autoptr (TmJob) job = NULL;

  report->work = work;
  if (book != NULL)
    job = tm_book_load_job (book, report->id, step_progress, report, error);
  if (job == NULL || !tm_work_progress (READ, work))
    return NULL;
  report->from = READ;
  report->to = 1.0;
  return write_by_ending (book, job, report, error) ? g_strdup (report->path) : NULL;
}

static void
written_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  ReportWork *report = data;

  report->written (parent, result, report->warning, error);
  g_free (result);
}

void
tm_report_write (GtkWidget *parent, TmDocument *document, const char *path, TmReportWritten done)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *title = g_strdup_printf (_ ("Writing %s"), name);

  tm_work_run (parent, title, run_write, written_cb, new_work (document, path, done), free_work, g_free);
}
