/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-cut-history.h"

#include <string.h>

/* Jobs that are looked at, the newest: what a tool did long ago was another edge. */
#define JOBS_MAX 24

typedef struct {
  char *path;
  char *job_id;
  char *tool;
  GWeakRef document;
  GWeakRef owner;
  void (*known) (gpointer data);
  gpointer data;
} Ask;

static void
free_ask (gpointer data)
{
  Ask *ask = data;
  g_free (ask->path);
  g_free (ask->job_id);
  g_free (ask->tool);
  g_weak_ref_clear (&ask->document);
  g_weak_ref_clear (&ask->owner);
  g_free (ask);
}

/* On the worker: with a book of its own, only read. */
static void
gather_cb (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Ask *ask = task_data;
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (ask->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_autoptr (GPtrArray) jobs
      = book != NULL ? tm_book_tool_jobs (book, ask->tool, ask->job_id, JOBS_MAX, &error) : NULL;
  if (jobs == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  GArray *all = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));
  for (guint i = 0; i < jobs->len; i++)
    {
      g_autoptr (GArray) answers = tm_cut_answers (g_ptr_array_index (jobs, i), ask->tool, NULL, NULL, 0);
      if (answers != NULL && answers->len > 0)
        g_array_append_vals (all, answers->data, answers->len);
    }
  g_task_return_pointer (task, all, (GDestroyNotify)g_array_unref);
}

static void
gathered_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  const Ask *ask = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) answers = g_task_propagate_pointer (G_TASK (result), &error);
  g_autoptr (TmDocument) document = g_weak_ref_get ((GWeakRef *)&ask->document);
  g_autoptr (GObject) owner = g_weak_ref_get ((GWeakRef *)&ask->owner);
  if (answers == NULL)
    g_warning ("the other cuts of %s could not be read: %s", ask->tool, error != NULL ? error->message : "");
  if (answers == NULL || document == NULL)
    return;
  tm_bench_set_answers (tm_document_bench (document), ask->tool, answers);
  if (owner != NULL)
    ask->known (ask->data);
}

void
tm_cut_history_ask (TmDocument *document, const char *name, GObject *owner, void (*known) (gpointer data),
                    gpointer data)
{
  g_return_if_fail (TM_IS_DOCUMENT (document) && name != NULL);

  g_autofree char *key = g_strdup_printf ("tm-cut-history %s", name);
  if (tm_bench_has_answers (tm_document_bench (document), name)
      || g_object_get_data (G_OBJECT (document), key) != NULL)
    return;
  g_object_set_data (G_OBJECT (document), key, GINT_TO_POINTER (TRUE));
  Ask *ask = g_new0 (Ask, 1);
  ask->path = g_strdup (tm_book_path (tm_document_book (document)));
  ask->job_id = g_strdup (tm_document_job (document)->id);
  ask->tool = g_strdup (name);
  g_weak_ref_init (&ask->document, document);
  g_weak_ref_init (&ask->owner, owner);
  ask->known = known;
  ask->data = data;
  g_autoptr (GTask) task = g_task_new (NULL, NULL, gathered_cb, NULL);
  g_task_set_task_data (task, ask, free_ask);
  g_task_run_in_thread (task, gather_cb);
}
