/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-layout.h"

#include <gio/gio.h>

#include "app-report-gather.h"

/* How much of the work is done when the job is read, and when it is judged. */
#define READ     0.3
#define GATHERED 0.6

struct _TmReportLayout {
  gatomicrefcount n_refs;
  GWeakRef owner;
  TmReportLaidOut done;
  char *book_path;
  char *id;
  TmJobForm form;
  TmReportPaper *again; /* or NULL */
  GCancellable *cancellable;
  gint permille; /* atomic */
};

typedef struct {
  TmReportProgress progress;
  gpointer data;
  double from;
} Share;

/* -------- On a thread -------- */

static gboolean
read_cb (double fraction, gpointer data)
{
  const Share *share = data;

  return share->progress == NULL || share->progress (fraction * READ, share->data);
}

static gboolean
lay_out_cb (double fraction, gpointer data)
{
  const Share *share = data;

  return share->progress == NULL || share->progress (GATHERED + fraction * (1 - GATHERED), share->data);
}

TmReportPaper *
tm_report_lay_out (const char *book_path, const char *id, const TmJobForm *form, TmReportProgress progress,
                   gpointer data, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (book_path, TM_BOOK_OPEN_NORMAL, error);
  Share share = { progress, data };
  g_autoptr (TmJob) job = book != NULL ? tm_book_load_job (book, id, read_cb, &share, error) : NULL;
  TmReportContent *content = job != NULL ? tm_report_gather (book, job, &form->form, error) : NULL;

  if (content == NULL)
    return NULL;
  return tm_report_paper_new (g_steal_pointer (&job), content, form, lay_out_cb, &share, error);
}

static gboolean
progress_cb (double fraction, gpointer data)
{
  TmReportLayout *layout = data;

  g_atomic_int_set (&layout->permille, (gint)(CLAMP (fraction, 0, 1) * 1000));
  return !g_cancellable_is_cancelled (layout->cancellable);
}

static void
run_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  TmReportLayout *layout = data;
  GError *error = NULL;
  TmReportPaper *paper
      = layout->again != NULL
            ? tm_report_paper_again (layout->again, &layout->form, progress_cb, layout, &error)
            : tm_report_lay_out (layout->book_path, layout->id, &layout->form, progress_cb, layout, &error);

  if (paper != NULL)
    g_task_return_pointer (task, paper, (GDestroyNotify)tm_report_paper_unref);
  else
    g_task_return_error (task, error);
}

/* -------- On the main loop -------- */

static gint n_running; /* atomic */

static void
ran_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  TmReportLayout *layout = data;
  g_autoptr (GObject) owner = g_weak_ref_get (&layout->owner);
  g_autoptr (GError) error = NULL;
  TmReportPaper *paper = g_task_propagate_pointer (G_TASK (result), &error);
  const gboolean cancelled = g_cancellable_is_cancelled (layout->cancellable);

  if (owner != NULL && !cancelled)
    layout->done (owner, g_steal_pointer (&paper), error);
  else if (owner != NULL)
    layout->done (owner, NULL, NULL);
  g_clear_pointer (&paper, tm_report_paper_unref);
  tm_report_layout_unref (layout);
  g_atomic_int_add (&n_running, -1);
}

gboolean
tm_report_layout_is_any (void)
{
  return g_atomic_int_get (&n_running) > 0;
}

TmReportLayout *
tm_report_layout_begin (GObject *owner, TmDocument *document, TmReportPaper *again, TmReportLaidOut done)
{
  g_autoptr (GTask) task = NULL;
  TmReportLayout *layout;

  g_return_val_if_fail (G_IS_OBJECT (owner) && TM_IS_DOCUMENT (document) && done != NULL, NULL);

  layout = g_new0 (TmReportLayout, 1);
  g_atomic_ref_count_init (&layout->n_refs);
  g_weak_ref_init (&layout->owner, owner);
  layout->done = done;
  layout->book_path = g_strdup (tm_book_path (tm_document_book (document)));
  layout->id = g_strdup (tm_document_job (document)->id);
  tm_job_form_fill_for (&layout->form, document);
  layout->again = again != NULL ? tm_report_paper_ref (again) : NULL;
  layout->cancellable = g_cancellable_new ();
  /* One for the task, let go on the main loop. */
  g_atomic_ref_count_inc (&layout->n_refs);
  task = g_task_new (NULL, NULL, ran_cb, layout);
  g_task_set_task_data (task, layout, NULL);
  g_atomic_int_inc (&n_running);
  g_task_run_in_thread (task, run_cb);
  return layout;
}

void
tm_report_layout_cancel (TmReportLayout *layout)
{
  g_cancellable_cancel (layout->cancellable);
}

double
tm_report_layout_fraction (TmReportLayout *layout)
{
  return g_atomic_int_get (&layout->permille) / 1000.0;
}

void
tm_report_layout_unref (TmReportLayout *layout)
{
  if (!g_atomic_ref_count_dec (&layout->n_refs))
    return;
  g_weak_ref_clear (&layout->owner);
  g_free (layout->book_path);
  g_free (layout->id);
  tm_job_form_clear (&layout->form);
  g_clear_pointer (&layout->again, tm_report_paper_unref);
  g_object_unref (layout->cancellable);
  g_free (layout);
}
