/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-work.h"

#include "app-batch-copy.h"

typedef struct {
  TmBatchAnswer *answer; /* its job at first, then all of it */
  char *balloon;
  guint place;
  gboolean brief;
  GCancellable *cancellable;
  TmBatchAnswered done;
  gpointer data;
} Work;

static void
clear_batch (gpointer batch)
{
  tm_batch_clear (batch);
}

void
tm_batch_answer_free (TmBatchAnswer *answer)
{
  g_clear_pointer (&answer->plot, tm_chart_plot_free);
  g_clear_pointer (&answer->small_shifts, tm_chart_plot_free);
  tm_tool_drift_clear (&answer->together);
  tm_batch_clear (&answer->batch);
  g_clear_pointer (&answer->same_tool, g_array_unref);
  g_clear_pointer (&answer->job, tm_job_free);
  g_clear_object (&answer->document);
  g_free (answer);
}

static void
free_work (Work *work)
{
  g_clear_pointer (&work->answer, tm_batch_answer_free);
  g_clear_object (&work->cancellable);
  g_free (work->balloon);
  g_free (work);
}

static gboolean
is_cancelled_cb (gpointer data)
{
  return g_cancellable_is_cancelled (data);
}

/* The others that the tool cuts, each at its first place. */
static gboolean
look_at_same_tool (Work *work, const TmFeature *feature)
{
  TmBatchAnswer *answer = work->answer;

  for (guint i = 0; *feature->tool != '\0' && i < answer->job->features->len; i++)
    {
      const TmFeature *other = g_ptr_array_index (answer->job->features, i);
      TmBatch batch;

      if (other == feature || !g_str_equal (other->tool, feature->tool))
        continue;
      if (!tm_batch_init (&batch, answer->job, other, 1, NULL, is_cancelled_cb, work->cancellable))
        return FALSE;
      g_array_append_val (answer->same_tool, batch);
    }
  return TRUE;
}

/* What the tool shows together is told only where it cuts more than this feature. */
static gboolean
look_at_tool (Work *work, const TmFeature *feature)
{
  TmBatchAnswer *answer = work->answer;

  if (!look_at_same_tool (work, feature))
    return FALSE;
  return answer->same_tool->len == 0
         || tm_tool_drift_init (&answer->together, answer->job, feature->tool, is_cancelled_cb,
                                work->cancellable);
}

static gboolean
work_out (Work *work, const TmFeature *feature)
{
  TmBatchAnswer *answer = work->answer;
  const TmBatchOptions options = { .brief = work->brief };

  if (!tm_batch_init (&answer->batch, answer->job, feature, work->place, &options, is_cancelled_cb,
                      work->cancellable))
    return FALSE;
  if (answer->batch.series.n_measured > 0)
    answer->plot = tm_chart_plot_new (&answer->batch,
                                      TM_CHART_SHOW_GUARD | TM_CHART_SHOW_CONTROL | TM_CHART_SHOW_TREND);
  if (work->brief)
    return TRUE;
  if (answer->plot != NULL)
    answer->small_shifts
        = tm_chart_plot_new (&answer->batch, TM_CHART_SHOW_GUARD | TM_CHART_SHOW_EWMA | TM_CHART_SHOW_CUSUM);
  answer->spread = tm_spread_of (&answer->batch);
  return look_at_tool (work, feature);
}

static void
run_cb (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Work *work = task_data;
  const TmFeature *feature = tm_job_find_feature (work->answer->job, work->balloon);

  g_task_return_boolean (task, feature != NULL && work_out (work, feature));
}

/* On the main loop: the document that the answer holds may go away with it. */
static void
finished_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Work *work = data;
  gboolean done = g_task_propagate_boolean (G_TASK (result), NULL);

  if (done && !g_cancellable_is_cancelled (work->cancellable))
    work->done (g_steal_pointer (&work->answer), work->data);
  free_work (work);
}

void
tm_batch_work (TmDocument *document, const TmFeature *feature, guint place, gboolean brief,
               GCancellable *cancellable, TmBatchAnswered done, gpointer data)
{
  g_autoptr (GTask) task = NULL;
  Work *work;

  g_return_if_fail (TM_IS_DOCUMENT (document));
  g_return_if_fail (feature != NULL);
  g_return_if_fail (G_IS_CANCELLABLE (cancellable));

  work = g_new0 (Work, 1);
  work->answer = g_new0 (TmBatchAnswer, 1);
  work->answer->same_tool = g_array_new (FALSE, FALSE, sizeof (TmBatch));
  g_array_set_clear_func (work->answer->same_tool, clear_batch);
  work->answer->document = g_object_ref (document);
  work->answer->job = tm_batch_copy (tm_document_job (document), feature);
  work->balloon = g_strdup (feature->balloon);
  work->place = place;
  work->brief = brief;
  work->cancellable = g_object_ref (cancellable);
  work->done = done;
  work->data = data;
  /* The cancellable is not the task's: its answer comes when the thread has let go of the copy. */
  task = g_task_new (NULL, NULL, finished_cb, work);
  g_task_set_task_data (task, work, NULL);
  g_task_run_in_thread (task, run_cb);
}
