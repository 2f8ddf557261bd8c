/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-work.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "app-work.h"
#include "book-store.h"
#include "exchange-job.h"
#include "exchange-table.h"
#include "report-workbook.h"

typedef struct {
  char *book_path;
  char *id;
  char *path; /* of the file to write, or NULL */
  TmTemplate *template;
  TmReportGathered gathered;
  TmReportWritten written;

  TmWork *work;
  double from; /* which part of the whole the present step is */
  double to;
} ReportWork;

void
tm_report_copy_clear (TmReportCopy *copy)
{
  g_clear_pointer (&copy->content, tm_report_content_free);
  g_clear_pointer (&copy->job, tm_job_free);
}

static void
free_copy (gpointer data)
{
  TmReportCopy *copy = data;
  tm_report_copy_clear (copy);
  g_free (copy);
}

static void
free_work (gpointer data)
{
  ReportWork *report = data;
  g_free (report->book_path);
  g_free (report->id);
  g_free (report->path);
  tm_template_free (report->template);
  g_free (report);
}

static ReportWork *
new_work (TmDocument *document, const char *path)
{
  ReportWork *report = g_new0 (ReportWork, 1);
  report->book_path = g_strdup (tm_book_path (tm_document_book (document)));
  report->id = g_strdup (tm_document_job (document)->id);
  report->path = g_strdup (path);
  report->template = tm_template_copy (tm_document_template (document));
  return report;
}

static gboolean
step_progress (double fraction, gpointer data)
{
  ReportWork *report = data;
  return tm_work_progress (report->from + fraction * (report->to - report->from), report->work);
}

static TmJob *
load_job (ReportWork *report, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (report->book_path, TM_BOOK_OPEN_NORMAL, error);
  if (book == NULL)
    return NULL;
  return tm_book_load_job (book, report->id, step_progress, report, error);
}

static gpointer
run_gather (TmWork *work, gpointer data, GError **error)
{
  ReportWork *report = data;
  report->work = work;
  report->to = 0.5;
  g_autoptr (TmJob) job = load_job (report, error);
  if (job == NULL || !tm_work_progress (0.5, work))
    return NULL;
  TmReportCopy *copy = g_new0 (TmReportCopy, 1);
  copy->content = tm_report_content_new (job);
  tm_report_content_set_template (copy->content, report->template);
  copy->job = g_steal_pointer (&job);
  return copy;
}

static void
gathered_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  ReportWork *report = data;
  TmReportCopy nothing = { 0 };
  report->gathered (parent, result != NULL ? result : &nothing, error);
  if (result != NULL)
    free_copy (result);
}

void
tm_report_gather (GtkWidget *parent, TmDocument *document, TmReportGathered done)
{
  ReportWork *report = new_work (document, NULL);
  report->gathered = done;
  tm_work_run (parent, _ ("Gathering the report"), run_gather, gathered_cb, report, free_work, free_copy);
}

static gboolean
write_table (const TmJob *job, const char *path, GError **error)
{
  GString *table = tm_table_report (job);
  gboolean written
      = g_file_set_contents_full (path, table->str, (gssize)table->len,
                                  G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, error);
  g_string_free (table, TRUE);
  return written;
}

gboolean
tm_report_write_job (const TmJob *job, const char *path, gboolean (*progress) (double, gpointer),
                     gpointer data, GError **error)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);
  if (g_str_has_suffix (lower, ".csv"))
    return write_table (job, path, error);
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autofree char *now = tm_now_utc ();
  g_autofree char *digest = tm_job_digest (job);
  return tm_workbook_write (content, path, &(TmReportForm) { .paper = tm_paper_of_locale () },
                            &(TmWorkbookFacts) { now, digest }, progress, data, error);
}

static gpointer
run_write (TmWork *work, gpointer data, GError **error)
{
  ReportWork *report = data;
  report->work = work;
  report->to = 0.3;
  g_autoptr (TmJob) job = load_job (report, error);
  if (job == NULL || !tm_work_progress (0.3, work))
    return NULL;
  report->from = 0.3;
  report->to = 1.0;
  if (!tm_report_write_job (job, report->path, step_progress, report, error))
    return NULL;
  return g_strdup (report->path);
}

static void
written_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  ReportWork *report = data;
  report->written (parent, result, error);
  g_free (result);
}

void
tm_report_write (GtkWidget *parent, TmDocument *document, const char *path, TmReportWritten done)
{
  ReportWork *report = new_work (document, path);
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *title = g_strdup_printf (_ ("Writing %s"), name);
  report->written = done;
  tm_work_run (parent, title, run_write, written_cb, report, free_work, g_free);
}
