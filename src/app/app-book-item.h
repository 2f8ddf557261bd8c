/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-book-item: one line of the list of jobs, as an object for GListModel.
 */

#pragma once

#include <glib-object.h>

#include "book-store.h"

G_BEGIN_DECLS

#define TM_TYPE_BOOK_ITEM (tm_book_item_get_type ())
G_DECLARE_FINAL_TYPE (TmBookItem, tm_book_item, TM, BOOK_ITEM, GObject)

/* Takes ownership of @entry. */
TmBookItem *tm_book_item_new (TmBookEntry *entry);

const TmBookEntry *tm_book_item_entry (TmBookItem *self);

/* Whether every word of @folded (case-folded by g_utf8_casefold()) is found in part, name, customer
 * or order. */
gboolean tm_book_item_matches (TmBookItem *self, const char *folded);

G_END_DECLS
