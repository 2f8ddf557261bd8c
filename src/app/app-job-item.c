/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-item.h"

struct _TmJobItem {
  GObject parent_instance;

  TmFeature *feature; /* borrowed */
};

G_DEFINE_FINAL_TYPE (TmJobItem, tm_job_item, G_TYPE_OBJECT)

static guint changed_signal;

static void
tm_job_item_class_init (TmJobItemClass *klass)
{
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
tm_job_item_init (TmJobItem *self)
{
}

TmFeature *
tm_job_item_feature (TmJobItem *self)
{
  g_return_val_if_fail (TM_IS_JOB_ITEM (self), NULL);

  return self->feature;
}

static TmJobItem *
new_item (TmFeature *feature)
{
  TmJobItem *item = g_object_new (TM_TYPE_JOB_ITEM, NULL);

  item->feature = feature;
  return item;
}

/* Whether row @at of the store shows feature @index of the job. */
static gboolean
shows (GListStore *store, guint at, const TmJob *job, guint index)
{
  g_autoptr (TmJobItem) item = g_list_model_get_item (G_LIST_MODEL (store), at);

  return item->feature == g_ptr_array_index (job->features, index);
}

static void
announce_kept (GListStore *store, guint from, guint to)
{
  for (guint i = from; i < to; i++)
    {
      g_autoptr (TmJobItem) item = g_list_model_get_item (G_LIST_MODEL (store), i);

      g_signal_emit (item, changed_signal, 0);
    }
}

void
tm_job_items_refresh (GListStore *store, const TmJob *job)
{
  guint n_old = g_list_model_get_n_items (G_LIST_MODEL (store));
  guint n_new = job != NULL ? job->features->len : 0;
  guint n_head = 0, n_tail = 0;
  g_autoptr (GPtrArray) fresh = g_ptr_array_new_with_free_func (g_object_unref);

  while (n_head < MIN (n_old, n_new) && shows (store, n_head, job, n_head))
    n_head++;
  while (n_tail < MIN (n_old, n_new) - n_head && shows (store, n_old - 1 - n_tail, job, n_new - 1 - n_tail))
    n_tail++;
  for (guint i = n_head; i < n_new - n_tail; i++)
    g_ptr_array_add (fresh, new_item (g_ptr_array_index (job->features, i)));
  if (n_old - n_head - n_tail > 0 || fresh->len > 0)
    g_list_store_splice (store, n_head, n_old - n_head - n_tail, fresh->pdata, fresh->len);
  announce_kept (store, 0, n_head);
  announce_kept (store, n_new - n_tail, n_new);
}
