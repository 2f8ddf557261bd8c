/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-side-list: the list at the side of a view, from which one row is chosen to be shown beside it, and the
 * document that it lists.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

typedef void (*TmSideListCall) (GtkWidget *view);

/* Part of a view.  What it chose stays chosen by its key while its rows are made anew. */
typedef struct {
  GtkWidget *view;
  TmDocument *document; /* watched; owned, or NULL */
  char *key;            /* of the row chosen, or NULL; tm_list_row_key() */
  GtkListBox *list;
  GtkScrolledWindow *scroller;
  gboolean filling;
  TmSideListCall refresh, show;
} TmSideList;

/* Makes the list, which is read out as @name.  @refresh fills the view anew, when the definitions of the
 * document have changed; @show shows what is chosen beside the list. */
void tm_side_list_init (TmSideList *side, GtkWidget *view, const char *name, TmSideListCall refresh,
                        TmSideListCall show);
void tm_side_list_clear (TmSideList *side); /* in dispose */

/* Enter, or a second click on a row, calls @activate with the view. */
void tm_side_list_activates (TmSideList *side, GCallback activate);

/* The list under @head and over @foot; either may be NULL. */
GtkWidget *tm_side_list_put (TmSideList *side, GtkWidget *head, GtkWidget *foot) G_GNUC_WARN_UNUSED_RESULT;

/* Empties the list and forgets what was chosen; then, with a document, refreshes the view. */
void tm_side_list_set_document (TmSideList *side, TmDocument *document);

void tm_side_list_set_key (TmSideList *side, const char *key);

/* Rows are made between these two; the second selects that of the key, and the focus stays on it where it
 * was on a row before. */
gboolean tm_side_list_begin (TmSideList *side) G_GNUC_WARN_UNUSED_RESULT;
void tm_side_list_end (TmSideList *side, gboolean focused);

/* Puts the focus on the row chosen, else on the first part of the view that takes it. */
void tm_side_list_enter (TmSideList *side);

G_END_DECLS
