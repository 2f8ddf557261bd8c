/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-drawing: a page of a customer's drawing, from the bytes of a PNG, JPEG, SVG or PDF file, on any
 * cairo_t.  What the file holds says what it is, never its name.
 *
 * Nothing is read but the bytes: no other file, no network.  A file that would take too much is refused in
 * one line, before it is decoded where its head tells; plot-drawing-check has the rest tried first in a
 * process of its own.
 */

#pragma once

#include <cairo.h>
#include <glib.h>

#include "plot-error.h"

G_BEGIN_DECLS

/* Most bytes of a file, most pixels of a picture, longest side of a page in points (DIN A0 has 3370). */
#define TM_DRAWING_MAX_BYTES  (64u * 1024u * 1024u)
#define TM_DRAWING_MAX_PIXELS 80000000u
#define TM_DRAWING_MAX_POINTS 20000.0

/* A page that is ready to be drawn; never changes. */
typedef struct _TmDrawingPage TmDrawingPage;

/* What @content is: "image/png", "image/jpeg", "image/svg+xml" or "application/pdf", a text that is never
 * freed, and how many pages it has (may be NULL; 1 of all but a PDF).  NULL with @error (TM_PLOT_ERROR) when
 * it is none of them, holds no page, or cannot be read. */
const char *tm_drawing_look (GBytes *content, guint *n_pages, GError **error);

/* Page @page, from 1, of @content.  On any thread; slow for a large file.  NULL with @error
 * (TM_PLOT_ERROR). */
TmDrawingPage *tm_drawing_page_open (GBytes *content, guint page, GError **error) G_GNUC_WARN_UNUSED_RESULT;

TmDrawingPage *tm_drawing_page_ref (TmDrawingPage *page);
void tm_drawing_page_unref (TmDrawingPage *page);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmDrawingPage, tm_drawing_page_unref)

/* In points, upright as it is read; a picture has the size that its own resolution gives it, taken as 96
 * pixels an inch where it says none or one that no scanner has. */
double tm_drawing_page_width (const TmDrawingPage *page);
double tm_drawing_page_height (const TmDrawingPage *page);

/* Draws it on white into 0, 0, width, height of @cr, whose unit is the point: scale @cr before.  Lines stay
 * lines where @cr keeps them.  On any thread, several at once wait for each other.  FALSE when something of
 * it could not be drawn. */
gboolean tm_drawing_page_draw (TmDrawingPage *page, cairo_t *cr);

G_END_DECLS
