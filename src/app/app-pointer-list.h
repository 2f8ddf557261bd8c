/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-pointer-list: a GPtrArray of plain structs as a list model: an item is made only for what a
 * list view looks at.
 */

#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define TM_TYPE_POINTER_ITEM (tm_pointer_item_get_type ())
G_DECLARE_FINAL_TYPE (TmPointerItem, tm_pointer_item, TM, POINTER_ITEM, GObject)

/* The struct; borrowed from whoever owns the array. */
gpointer tm_pointer_item_get (TmPointerItem *self);

#define TM_TYPE_POINTER_LIST (tm_pointer_list_get_type ())
G_DECLARE_FINAL_TYPE (TmPointerList, tm_pointer_list, TM, POINTER_LIST, GObject)

TmPointerList *tm_pointer_list_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows @array (NULL: nothing), which must outlive its showing here. */
void tm_pointer_list_set_array (TmPointerList *self, GPtrArray *array);

G_END_DECLS
