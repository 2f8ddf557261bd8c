/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-sheet: a page of a drawing as pictures that are made on a thread: the whole page once, and what
 * is in sight again at each scale, sharp.  Until that is there the nearest picture is shown enlarged, so that
 * no key and no movement waits for a page that is slow to draw.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-drawing-frame.h"

G_BEGIN_DECLS

typedef struct _TmDrawingSheet TmDrawingSheet;

/* @changed is called on the main loop: the page is open, or could not be opened, or there is a better
 * picture. */
TmDrawingSheet *tm_drawing_sheet_new (void (*changed) (gpointer data),
                                      gpointer data) G_GNUC_WARN_UNUSED_RESULT;
/* At once, though a thread may still be drawing: that lets go by itself. */
void tm_drawing_sheet_free (TmDrawingSheet *sheet);

/* Page @page, from 1, of the file @content, opened on a thread; the file @content NULL: none.  The same page
 * again changes nothing. */
void tm_drawing_sheet_set (TmDrawingSheet *sheet, GBytes *content, guint page);

/* In points; FALSE: not open (yet). */
gboolean tm_drawing_sheet_size (TmDrawingSheet *sheet, double *width, double *height);

/* Why it could not be opened, in one line, or NULL. */
const char *tm_drawing_sheet_problem (TmDrawingSheet *sheet);

/* Draws what of the page @frame shows, and has what is not sharp yet drawn.  @device: pixels of the screen
 * to one of the view. */
void tm_drawing_sheet_draw (TmDrawingSheet *sheet, cairo_t *cr, const TmDrawingFrame *frame, int device);

/* Whether what was last drawn was as sharp as it can be. */
gboolean tm_drawing_sheet_is_sharp (TmDrawingSheet *sheet);

G_END_DECLS
