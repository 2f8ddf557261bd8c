/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-list: the features of a job, and which of them have a balloon.  One with several places can be
 * unfolded (Right and Left, or the arrow in its row): then each place has a row and may have its own balloon.
 *
 *   "chosen" ()     another one was chosen here
 *   "activated" ()  Enter, or a second click, on the one chosen
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_DRAWING_LIST (tm_drawing_list_get_type ())
G_DECLARE_FINAL_TYPE (TmDrawingList, tm_drawing_list, TM, DRAWING_LIST, GtkBox)

GtkWidget *tm_drawing_list_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL. */
void tm_drawing_list_set_document (TmDrawingList *self, TmDocument *document);

/* The balloon number chosen, or NULL; and of which place, 0: the feature itself. */
const char *tm_drawing_list_chosen (TmDrawingList *self);
guint tm_drawing_list_place (TmDrawingList *self);
/* Emits no "chosen".  For a place the feature is unfolded. */
void tm_drawing_list_choose (TmDrawingList *self, const char *balloon, guint place);

/* How many features there are, and how many of them have a balloon. */
guint tm_drawing_list_count (TmDrawingList *self, guint *n_placed);

G_END_DECLS
