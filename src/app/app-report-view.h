/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-view: the pages of a report as sheets of paper below each other, to be scrolled and zoomed.
 *
 * "moved" (): the page that is looked at, the zoom, or the pages themselves are others.
 */

#pragma once

#include "app-report-paper.h"
#include "app-report-tiles.h"
#include "app-scrolled.h"

G_BEGIN_DECLS

#define TM_TYPE_REPORT_VIEW (tm_report_view_get_type ())
G_DECLARE_FINAL_TYPE (TmReportView, tm_report_view, TM, REPORT_VIEW, TmScrolled)

/* How large the pages are shown. */
typedef enum {
  TM_ZOOM_WIDTH, /* as wide as there is room */
  TM_ZOOM_PAGE,  /* a whole page */
  TM_ZOOM_FACTOR,
} TmZoom;

/* Into a GtkScrolledWindow. */
GtkWidget *tm_report_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @paper may be NULL.  Where there were pages already, the place in them is kept as far as it is there. */
void tm_report_view_set_paper (TmReportView *self, TmReportPaper *paper);
TmReportPaper *tm_report_view_paper (TmReportView *self); /* borrowed; or NULL */

/* The page that is looked at, from 0. */
guint tm_report_view_page (TmReportView *self);
void tm_report_view_show_page (TmReportView *self, guint page);

TmZoom tm_report_view_zoom (TmReportView *self);
/* 1: as large as on paper (at 96 pixels to the inch); whatever the zoom is. */
double tm_report_view_factor (TmReportView *self);
void tm_report_view_set_zoom (TmReportView *self, TmZoom zoom);
void tm_report_view_set_factor (TmReportView *self, double factor);
/* To the next usual factor, larger (1) or smaller (-1). */
void tm_report_view_step_zoom (TmReportView *self, int way);

/* For tests and measurements. */
TmReportTiles *tm_report_view_tiles (TmReportView *self);

G_END_DECLS
