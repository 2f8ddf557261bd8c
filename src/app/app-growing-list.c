/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-growing-list.h"

#define ROWS_A_FRAME 24
/* A list view makes no more rows than some two hundred: then the rest costs nothing. */
#define ROWS_ENOUGH 256

struct _TmGrowingList {
  GObject parent_instance;

  GListModel *model;
  guint n_shown;
  GtkWidget *view; /* weak; or NULL */
  guint tick_id;
};

static GType
tm_growing_list_get_item_type (GListModel *model)
{
  return g_list_model_get_item_type (TM_GROWING_LIST (model)->model);
}

static guint
tm_growing_list_get_n_items (GListModel *model)
{
  return TM_GROWING_LIST (model)->n_shown;
}

static gpointer
tm_growing_list_get_item (GListModel *model, guint position)
{
  const TmGrowingList *self = TM_GROWING_LIST (model);

  return position < self->n_shown ? g_list_model_get_item (self->model, position) : NULL;
}

static void
tm_growing_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = tm_growing_list_get_item_type;
  iface->get_n_items = tm_growing_list_get_n_items;
  iface->get_item = tm_growing_list_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (TmGrowingList, tm_growing_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, tm_growing_list_model_init))

static void
show_first (TmGrowingList *self, guint n)
{
  const guint before = self->n_shown;

  self->n_shown = n;
  if (n > before)
    g_list_model_items_changed (G_LIST_MODEL (self), before, 0, n - before);
}

static gboolean
grow_cb (GtkWidget *view, GdkFrameClock *clock, gpointer data)
{
  TmGrowingList *self = data;
  const guint n = g_list_model_get_n_items (self->model);
  const guint next = self->n_shown + ROWS_A_FRAME;

  show_first (self, next < ROWS_ENOUGH ? MIN (next, n) : n);
  if (self->n_shown < n)
    return G_SOURCE_CONTINUE;
  self->tick_id = 0;
  return G_SOURCE_REMOVE;
}

static void
grow (TmGrowingList *self)
{
  if (self->tick_id == 0 && self->view != NULL && self->n_shown < g_list_model_get_n_items (self->model))
    self->tick_id = gtk_widget_add_tick_callback (self->view, grow_cb, self, NULL);
}

static void
changed_cb (TmGrowingList *self)
{
  const guint before = self->n_shown;

  self->n_shown = MIN (g_list_model_get_n_items (self->model), ROWS_A_FRAME);
  g_list_model_items_changed (G_LIST_MODEL (self), 0, before, self->n_shown);
  grow (self);
}

static void
stop (TmGrowingList *self)
{
  if (self->tick_id != 0 && self->view != NULL)
    gtk_widget_remove_tick_callback (self->view, self->tick_id);
  self->tick_id = 0;
  g_clear_weak_pointer (&self->view);
}

static void
tm_growing_list_dispose (GObject *object)
{
  TmGrowingList *self = TM_GROWING_LIST (object);

  stop (self);
  if (self->model != NULL)
    g_signal_handlers_disconnect_by_data (self->model, self);
  g_clear_object (&self->model);
  self->n_shown = 0;
  G_OBJECT_CLASS (tm_growing_list_parent_class)->dispose (object);
}

static void
tm_growing_list_class_init (TmGrowingListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_growing_list_dispose;
}

static void
tm_growing_list_init (TmGrowingList *self)
{
}

TmGrowingList *
tm_growing_list_new (GListModel *model)
{
  TmGrowingList *self;

  g_return_val_if_fail (G_IS_LIST_MODEL (model), NULL);

  self = g_object_new (TM_TYPE_GROWING_LIST, NULL);
  self->model = model;
  self->n_shown = MIN (g_list_model_get_n_items (model), ROWS_A_FRAME);
  g_signal_connect_swapped (model, "items-changed", G_CALLBACK (changed_cb), self);
  return self;
}

/* Keys that go to the end, or choose all, mean those too that are not shown yet. */
static gboolean
key_cb (TmGrowingList *self)
{
  show_first (self, g_list_model_get_n_items (self->model));
  return FALSE;
}

void
tm_growing_list_follow (TmGrowingList *self, GtkWidget *view)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_return_if_fail (TM_IS_GROWING_LIST (self));
  g_return_if_fail (GTK_IS_WIDGET (view));

  stop (self);
  g_set_weak_pointer (&self->view, view);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_cb), self, G_CONNECT_SWAPPED);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  gtk_widget_add_controller (view, keys);
  grow (self);
}
