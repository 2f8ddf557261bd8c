/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-portion.h"

#include <gio/gio.h>
#include <math.h>

#include "app-batch-copy.h"
#include "core-judge.h"

/* Rows of the record that the main loop copies at a time: well within a frame, and work for a thread that is
 * worth the handing over. */
#define COPY_ROWS_AT_ONCE 3000

/* The copy's texts are those of the job, which may go once a portion has been stopped: so that must know
 * whether the thread has not begun yet, is at it, or has let go. */
typedef enum { WAITING, JUDGING, LET_GO } State;

struct _TmBatchPortion {
  GMutex lock; /* for `state` and `stopped` */
  GCond let_go;
  State state;
  gint stopped; /* also looked at without the lock, between cells */

  TmJob *copy; /* the thread's while it is judging */
  guint from, to;
  TmGridCell *cells;

  TmBatchJudged judged; /* the main loop's; NULL: stopped */
  gpointer data;
};

/* -------- One cell -------- */

int
tm_batch_rank_verdict (guint8 verdict)
{
  static const int ranks[TM_N_VERDICTS] = {
    [TM_VERDICT_IN] = 0,
    [TM_VERDICT_NOT_MEASURED] = 1,
    [TM_VERDICT_TOO_CLOSE] = 2,
    [TM_VERDICT_OUT] = 3,
  };

  g_return_val_if_fail (verdict < TM_N_VERDICTS, 0);
  return ranks[verdict];
}

static gboolean
is_worse (const TmGridCell *one, const TmGridCell *other)
{
  int a = tm_batch_rank_verdict (one->verdict), b = tm_batch_rank_verdict (other->verdict);

  if (a != b)
    return a > b;
  return isfinite (one->used) && !(one->used <= other->used);
}

TmGridCell
tm_batch_judge_cell (const TmJob *job, guint piece_index, const TmFeature *feature, guint *place)
{
  const TmPiece *piece = g_ptr_array_index (job->pieces, piece_index);
  gboolean due = tm_job_feature_is_due (job, feature, piece, piece_index);
  TmGridCell worst = { .used = NAN, .verdict = TM_VERDICT_NOT_MEASURED };

  for (guint i = 1; i <= feature->places; i++)
    {
      g_auto (TmJudgement) judgement = { 0 };
      TmGridCell cell;

      tm_judge (job, piece, feature, i, &judgement);
      cell = tm_grid_cell (&judgement, due);
      if (i > 1 && !is_worse (&cell, &worst))
        continue;
      worst = cell;
      if (place != NULL)
        *place = i;
    }
  return worst;
}

/* -------- On the thread -------- */

static gboolean
begin (TmBatchPortion *portion)
{
  gboolean wanted;

  g_mutex_lock (&portion->lock);
  wanted = !portion->stopped;
  if (wanted)
    portion->state = JUDGING;
  g_mutex_unlock (&portion->lock);
  return wanted;
}

static void
let_go (TmBatchPortion *portion)
{
  g_clear_pointer (&portion->copy, tm_job_free);
  g_mutex_lock (&portion->lock);
  portion->state = LET_GO;
  g_cond_signal (&portion->let_go);
  g_mutex_unlock (&portion->lock);
}

static void
judge_all (TmBatchPortion *portion)
{
  const GPtrArray *features = portion->copy->features;
  TmGridCell *cell = portion->cells;

  for (guint piece = portion->from; piece < portion->to; piece++)
    for (guint i = 0; i < features->len; i++)
      {
        if (g_atomic_int_get (&portion->stopped))
          return;
        *cell++ = tm_batch_judge_cell (portion->copy, piece, g_ptr_array_index (features, i), NULL);
      }
}

static void
run_cb (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  TmBatchPortion *portion = task_data;

  if (begin (portion))
    {
      judge_all (portion);
      let_go (portion);
    }
  g_task_return_boolean (task, TRUE);
}

/* -------- On the main loop -------- */

static void
free_portion (TmBatchPortion *portion)
{
  g_clear_pointer (&portion->copy, tm_job_free);
  g_mutex_clear (&portion->lock);
  g_cond_clear (&portion->let_go);
  g_free (portion->cells);
  g_free (portion);
}

static void
wait_let_go (TmBatchPortion *portion, gboolean stop)
{
  g_mutex_lock (&portion->lock);
  if (stop)
    g_atomic_int_set (&portion->stopped, TRUE);
  while (portion->state == JUDGING)
    g_cond_wait (&portion->let_go, &portion->lock);
  g_mutex_unlock (&portion->lock);
}

static void
finished_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  TmBatchPortion *portion = data;

  wait_let_go (portion, FALSE);
  if (portion->judged != NULL)
    portion->judged (portion->from, portion->to, portion->cells, portion->data);
  free_portion (portion);
}

TmBatchPortion *
tm_batch_portion_start (const TmJob *job, guint from, guint to, TmBatchJudged judged, gpointer data)
{
  g_autoptr (GTask) task = NULL;
  TmBatchPortion *portion;

  g_return_val_if_fail (job != NULL && from < to && to <= job->pieces->len, NULL);
  g_return_val_if_fail (judged != NULL, NULL);

  portion = g_new0 (TmBatchPortion, 1);
  g_mutex_init (&portion->lock);
  g_cond_init (&portion->let_go);
  portion->from = from;
  portion->to = to;
  portion->copy = tm_batch_copy_pieces (job, from, &portion->to, COPY_ROWS_AT_ONCE);
  portion->cells = g_new0 (TmGridCell, (gsize)(portion->to - from) * job->features->len);
  portion->judged = judged;
  portion->data = data;
  task = g_task_new (NULL, NULL, finished_cb, portion);
  g_task_set_priority (task, G_PRIORITY_DEFAULT_IDLE);
  g_task_set_task_data (task, portion, NULL);
  g_task_run_in_thread (task, run_cb);
  return portion;
}

void
tm_batch_portion_stop (TmBatchPortion *portion)
{
  g_return_if_fail (portion != NULL);

  portion->judged = NULL;
  wait_let_go (portion, TRUE);
}
