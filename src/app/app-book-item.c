/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-book-item.h"

struct _TmBookItem {
  GObject parent_instance;

  TmBookEntry *entry;
  char *folded; /* what a search looks in */
};

G_DEFINE_FINAL_TYPE (TmBookItem, tm_book_item, G_TYPE_OBJECT)

static void
tm_book_item_finalize (GObject *object)
{
  TmBookItem *self = TM_BOOK_ITEM (object);

  g_clear_pointer (&self->entry, tm_book_entry_free);
  g_free (self->folded);
  G_OBJECT_CLASS (tm_book_item_parent_class)->finalize (object);
}

static void
tm_book_item_class_init (TmBookItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_book_item_finalize;
}

static void
tm_book_item_init (TmBookItem *self)
{
}

TmBookItem *
tm_book_item_new (TmBookEntry *entry)
{
  TmBookItem *self;

  g_return_val_if_fail (entry != NULL, NULL);

  self = g_object_new (TM_TYPE_BOOK_ITEM, NULL);
  self->entry = entry;
  return self;
}

const TmBookEntry *
tm_book_item_entry (TmBookItem *self)
{
  g_return_val_if_fail (TM_IS_BOOK_ITEM (self), NULL);

  return self->entry;
}

gboolean
tm_book_item_matches (TmBookItem *self, const char *folded)
{
  g_auto (GStrv) words = g_strsplit (folded, " ", -1);

  g_return_val_if_fail (TM_IS_BOOK_ITEM (self), FALSE);

  if (self->folded == NULL)
    {
      g_autofree char *all
          = g_strjoin ("\n", self->entry->part_number, self->entry->part_name, self->entry->revision,
                       self->entry->customer, self->entry->order, NULL);

      self->folded = g_utf8_casefold (all, -1);
    }
  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (self->folded, words[i]) == NULL)
      return FALSE;
  return TRUE;
}
