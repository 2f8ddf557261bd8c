/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-signing.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "app-words.h"
#include "app-work.h"
#include "book-store.h"
#include "exchange-job.h"
#include "report-glyphs.h"
#include "report-language.h"
#include "report-package.h"
#include "report-signed.h"
#include "report-workbook.h"

/* How much of the work of signing each step is. */
#define PAGES_DONE    0.4
#define WORKBOOK_DONE 0.9

static void
clear_signing (gpointer data)
{
  TmSigning *signing = data;

  g_free (signing->book_path);
  g_free (signing->id);
  tm_job_form_clear (&signing->form);
  g_clear_pointer (&signing->job, tm_job_free);
  g_free (signing->digest);
  g_free (signing->namesake);
  g_ptr_array_unref (signing->missing);
  g_free (signing->unprintable);
}

TmSigning *
tm_signing_ref (TmSigning *signing)
{
  return g_atomic_rc_box_acquire (signing);
}

void
tm_signing_unref (TmSigning *signing)
{
  g_atomic_rc_box_release_full (signing, clear_signing);
}

/* -------- Steps of a thread -------- */

typedef struct {
  TmWork *work;
  double from, to; /* of the whole */
} Step;

static gboolean
step_cb (double fraction, gpointer data)
{
  const Step *step = data;

  return tm_work_progress (step->from + fraction * (step->to - step->from), step->work);
}

static void
begin_step (Step *step, double to)
{
  step->from = step->to;
  step->to = to;
}

static TmSignature *
put_signature (TmJob *job, const char *by, const char *role, const char *digest)
{
  TmSignature *row = tm_signature_new ();
  g_autofree char *now = tm_now_utc ();

  row->by = tm_job_intern (job, by);
  row->role = tm_job_intern (job, role);
  row->at = tm_job_intern (job, now);
  row->digest = tm_job_intern (job, digest);
  row->report = job->report_identifier;
  tm_job_add_signature (job, row);
  return row;
}

/* The report as it stands once it is signed. */
static TmReportContent *
gather (const TmSigning *signing)
{
  TmReportContent *content = tm_report_content_new (signing->job);

  tm_report_content_set_template (content, signing->form.form.template);
  tm_report_content_set_digest (content, signing->digest);
  tm_report_content_set_namesake (content, signing->namesake);
  return content;
}

/* -------- Preparing -------- */

static gboolean
find_namesake (TmSigning *signing, TmBook *book, GError **error)
{
  g_autoptr (GPtrArray) found
      = tm_book_find_report (book, signing->job->report_identifier, signing->id, error);

  if (found != NULL && found->len > 0)
    {
      const TmBookEntry *entry = g_ptr_array_index (found, 0);

      signing->namesake = tm_words_job_title (entry->part_number, entry->part_name, entry->revision);
    }
  return found != NULL;
}

/* The mark comes first: what is recorded between the two counts as a change. */
static gboolean
read_record (TmSigning *signing, Step *step, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (signing->book_path, TM_BOOK_OPEN_NORMAL, error);

  if (book == NULL || !tm_book_mark (book, &signing->mark, error))
    return FALSE;
  signing->job = tm_book_load_job (book, signing->id, step_cb, step, error);
  if (signing->job == NULL || !find_namesake (signing, book, error))
    return FALSE;
  signing->digest = tm_job_digest (signing->job);
  return TRUE;
}

static void
note_content (TmSigning *signing, const TmReportContent *content)
{
  signing->n_in = content->n_in;
  signing->n_out = content->n_out;
  signing->n_too_close = content->n_too_close;
  signing->n_not_measured = content->n_not_measured;
  for (guint i = 0; i < content->gaps->len; i++)
    g_ptr_array_add (signing->missing, tm_gap_describe (g_ptr_array_index (content->gaps, i)));
}

/* With a signature in the place of the one that comes, so that the pages are as many. */
static gboolean
lay_out (TmSigning *signing, Step *step)
{
  TmSignature *row = put_signature (signing->job, "", tm_report_roles ()[0], signing->digest);
  g_autoptr (TmReportContent) content = gather (signing);
  g_autoptr (TmReportDocument) document = tm_report_package_new (content, &signing->form.form, step_cb, step);

  if (document != NULL)
    {
      g_autoptr (TmPages) pages = tm_pages_new (document, &signing->form.form);

      signing->n_pages = tm_pages_count (pages);
      signing->unprintable = tm_report_missing_glyphs (document);
      note_content (signing, content);
    }
  g_ptr_array_remove (signing->job->signatures, row);
  return document != NULL;
}

static gpointer
run_prepare (TmWork *work, gpointer data, GError **error)
{
  TmSigning *signing = data;
  Step step = { work, 0.0, 0.5 };

  if (!tm_report_form_check (&signing->form.form, error) || !read_record (signing, &step, error))
    return NULL;
  begin_step (&step, 1.0);
  return lay_out (signing, &step) ? tm_signing_ref (signing) : NULL;
}

typedef struct {
  TmSigning *signing;
  TmSigningPrepared done;
} Prepare;

static gpointer
run_prepare_cb (TmWork *work, gpointer data, GError **error)
{
  return run_prepare (work, ((Prepare *)data)->signing, error);
}

static void
prepared_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  ((Prepare *)data)->done (parent, result, error);
  if (result != NULL)
    tm_signing_unref (result);
}

static void
free_prepare (gpointer data)
{
  tm_signing_unref (((Prepare *)data)->signing);
  g_free (data);
}

void
tm_signing_prepare (GtkWidget *parent, TmDocument *document, TmSigningPrepared done)
{
  TmSigning *signing = g_atomic_rc_box_new0 (TmSigning);
  Prepare *prepare = g_new0 (Prepare, 1);

  signing->book_path = g_strdup (tm_book_path (tm_document_book (document)));
  signing->id = g_strdup (tm_document_job (document)->id);
  tm_job_form_fill_for (&signing->form, document);
  signing->missing = g_ptr_array_new_with_free_func (g_free);
  prepare->signing = signing;
  prepare->done = done;
  tm_work_run (parent, _ ("Reading what is signed"), run_prepare_cb, prepared_cb, prepare, free_prepare,
               (GDestroyNotify)tm_signing_unref);
}

/* -------- Making -------- */

typedef struct {
  TmSigning *signing;
  char *by, *role;
  TmSigningMade done;
  TmSignature *row; /* in the copy of the job */
} Make;

/* A folder that goes away with what is in it. */
typedef struct {
  char *folder, *pages, *workbook;
} Folder;

static gboolean
make_folder (Folder *folder, GError **error)
{
  folder->folder = g_dir_make_tmp ("tenthmark-sign-XXXXXX", error);
  if (folder->folder == NULL)
    return FALSE;
  folder->pages = g_build_filename (folder->folder, "report.pdf", NULL);
  folder->workbook = g_build_filename (folder->folder, "report.xlsx", NULL);
  return TRUE;
}

static void
remove_folder (Folder *folder)
{
  if (folder->folder != NULL)
    {
      (void)g_unlink (folder->pages);
      (void)g_unlink (folder->workbook);
      (void)g_rmdir (folder->folder);
    }
  g_free (folder->folder);
  g_free (folder->pages);
  g_free (folder->workbook);
}

static GBytes *
read_file (const char *path, GError **error)
{
  char *bytes = NULL;
  gsize length = 0;

  return g_file_get_contents (path, &bytes, &length, error) ? g_bytes_new_take (bytes, length) : NULL;
}

/* The digest under which the book keeps the file; NULL with an error. */
static const char *
keep_file (Make *make, TmBook *book, const char *path, GError **error)
{
  g_autoptr (GBytes) bytes = read_file (path, error);
  g_autofree char *digest
      = bytes != NULL ? tm_book_keep_content (book, make->signing->id, bytes, error) : NULL;

  return digest != NULL ? tm_job_intern (make->signing->job, digest) : NULL;
}

static gboolean
write_files (Make *make, const Folder *folder, TmWork *work, GError **error)
{
  g_autoptr (TmReportContent) content = gather (make->signing);
  const TmReportForm *form = &make->signing->form.form;
  Step step = { work, 0.0, PAGES_DONE };

  if (!tm_report_package_write (content, form, make->row->at, folder->pages, NULL, step_cb, &step, error))
    return FALSE;
  begin_step (&step, WORKBOOK_DONE);
  return tm_workbook_write (content, folder->workbook, form, &(TmWorkbookFacts) { .made = make->row->at },
                            step_cb, &step, error);
}

/* Both are kept before the signature names either. */
static gboolean
keep_files (Make *make, const Folder *folder, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (make->signing->book_path, TM_BOOK_OPEN_NORMAL, error);
  const char *pages = book != NULL ? keep_file (make, book, folder->pages, error) : NULL;
  const char *workbook = pages != NULL ? keep_file (make, book, folder->workbook, error) : NULL;

  if (workbook == NULL)
    return FALSE;
  make->row->pages = pages;
  make->row->workbook = workbook;
  return TRUE;
}

static gpointer
run_make (TmWork *work, gpointer data, GError **error)
{
  Make *make = data;
  TmSigning *signing = make->signing;
  Folder folder = { NULL };
  gboolean made;

  make->row = put_signature (signing->job, make->by, make->role, signing->digest);
  made = make_folder (&folder, error) && write_files (make, &folder, work, error)
         && tm_work_progress (WORKBOOK_DONE, work) && keep_files (make, &folder, error);
  remove_folder (&folder);
  if (made)
    return make->row;
  g_ptr_array_remove (signing->job->signatures, make->row);
  return NULL;
}

static void
made_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  Make *make = data;

  make->done (parent, result, error);
  if (result != NULL)
    g_ptr_array_remove (make->signing->job->signatures, result);
}

static void
free_make (gpointer data)
{
  Make *make = data;

  tm_signing_unref (make->signing);
  g_free (make->by);
  g_free (make->role);
  g_free (make);
}

void
tm_signing_make (GtkWidget *parent, TmSigning *signing, const char *by, const char *role, TmSigningMade done)
{
  Make *make = g_new0 (Make, 1);

  make->signing = tm_signing_ref (signing);
  make->by = g_strdup (by);
  make->role = g_strdup (role);
  make->done = done;
  tm_work_run (parent, _ ("Signing the report"), run_make, made_cb, make, free_make, NULL);
}
