/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-tiles: the pages of a report as pictures for the screen, in tiles that a thread draws, one at a
 * time, and that are kept up to a bound.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-report-paper.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_TILES (tm_report_tiles_get_type ())
G_DECLARE_FINAL_TYPE (TmReportTiles, tm_report_tiles, TM, REPORT_TILES, GObject)

/* "drawn" (): a tile that was wanted is there. */
TmReportTiles *tm_report_tiles_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* What is drawn (or NULL), and how many pixels of the screen to the point.  What was drawn before stands in
 * until the same is there anew. */
void tm_report_tiles_set (TmReportTiles *self, TmReportPaper *paper, double scale);

/* Pixels of a page.  One that lies on its side is made smaller, so that it is no wider than the others: to
 * read it as large, zoom in. */
void tm_report_tiles_page_size (TmReportTiles *self, guint page, int *width, int *height);

/* A look at the pages: those parts that are painted or wanted between begin and end and are not there yet are
 * drawn, in that order; what was wanted before and is not any more is left out. */
void tm_report_tiles_begin (TmReportTiles *self);
void tm_report_tiles_end (TmReportTiles *self);

/* Paints as much of @page as is there onto white, its corner at 0,0, where it crosses @seen (pixels of the
 * page), and wants the rest. */
void tm_report_tiles_paint (TmReportTiles *self, GtkSnapshot *snapshot, guint page,
                            const graphene_rect_t *seen);
/* Wants the page without painting it: it may be looked at next. */
void tm_report_tiles_want (TmReportTiles *self, guint page);

/* Whether everything wanted is there. */
gboolean tm_report_tiles_is_idle (TmReportTiles *self);
/* Bytes that tiles take, and how many they may when no more than that is seen at once. */
gsize tm_report_tiles_bytes (TmReportTiles *self);
gsize tm_report_tiles_most_bytes (void);

G_END_DECLS
