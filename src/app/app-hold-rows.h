/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-hold-rows: the pieces held back as rows to choose from.  Only what is in sight is a widget, so that the
 * list may be as long as the batch.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-hold-list.h"

G_BEGIN_DECLS

typedef struct {
  TmDocument *document; /* owned, as is the list */
  TmHoldList *list;
  GtkListView *view;
  GtkSelectionModel *selection; /* owned by the view */
  GHashTable *bound;            /* GtkListItem: those in sight */
} TmHoldRows;

void tm_hold_rows_init (TmHoldRows *rows, TmDocument *document, TmHoldList *list);
void tm_hold_rows_clear (TmHoldRows *rows);

/* Says anew what is decided of each. */
void tm_hold_rows_refresh (TmHoldRows *rows);

/* Puts the focus on the first, once it is there; of a list that is not empty. */
void tm_hold_rows_focus (TmHoldRows *rows);

/* The pieces chosen that the job still has, TmPiece, borrowed. */
GPtrArray *tm_hold_rows_chosen (TmHoldRows *rows) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
