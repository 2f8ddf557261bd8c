/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pointer-list.h"

struct _TmPointerItem {
  GObject parent_instance;

  gpointer pointer;
};

G_DEFINE_FINAL_TYPE (TmPointerItem, tm_pointer_item, G_TYPE_OBJECT)

static void
tm_pointer_item_class_init (TmPointerItemClass *klass)
{
}

static void
tm_pointer_item_init (TmPointerItem *self)
{
}

gpointer
tm_pointer_item_get (TmPointerItem *self)
{
  g_return_val_if_fail (TM_IS_POINTER_ITEM (self), NULL);

  return self->pointer;
}

struct _TmPointerList {
  GObject parent_instance;

  GPtrArray *array; /* borrowed */
};

static GType
tm_pointer_list_get_item_type (GListModel *model)
{
  return TM_TYPE_POINTER_ITEM;
}

static guint
tm_pointer_list_get_n_items (GListModel *model)
{
  TmPointerList *self = TM_POINTER_LIST (model);
  return self->array != NULL ? self->array->len : 0;
}

static gpointer
tm_pointer_list_get_item (GListModel *model, guint position)
{
  TmPointerList *self = TM_POINTER_LIST (model);
  if (self->array == NULL || position >= self->array->len)
    return NULL;
  TmPointerItem *item = g_object_new (TM_TYPE_POINTER_ITEM, NULL);
  item->pointer = g_ptr_array_index (self->array, position);
  return item;
}

static void
tm_pointer_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = tm_pointer_list_get_item_type;
  iface->get_n_items = tm_pointer_list_get_n_items;
  iface->get_item = tm_pointer_list_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (TmPointerList, tm_pointer_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, tm_pointer_list_model_init))

static void
tm_pointer_list_class_init (TmPointerListClass *klass)
{
}

static void
tm_pointer_list_init (TmPointerList *self)
{
}

TmPointerList *
tm_pointer_list_new (void)
{
  return g_object_new (TM_TYPE_POINTER_LIST, NULL);
}

void
tm_pointer_list_set_array (TmPointerList *self, GPtrArray *array)
{
  g_return_if_fail (TM_IS_POINTER_LIST (self));

  guint before = self->array != NULL ? self->array->len : 0;
  self->array = array;
  g_list_model_items_changed (G_LIST_MODEL (self), 0, before, array != NULL ? array->len : 0);
}
