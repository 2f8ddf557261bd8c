/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-view-private: what the files of the view of a report's pages share.
 */

#pragma once

#include "app-report-view.h"

G_BEGIN_DECLS

/* Pixels. */
#define TM_SHEET_MARGIN 16.0 /* around the sheets */
#define TM_SHEET_GAP    14.0 /* between them */

struct _TmReportView {
  TmScrolled parent_instance;

  TmReportPaper *paper; /* or NULL */
  TmReportTiles *tiles;

  TmZoom zoom;
  double factor; /* as it is now */
  double
      anchor;   /* pages from the top: what stays in place while the size changes; < 0: the top of the view */
  guint page;   /* looked at */
  GArray *tops; /* double, pixels: where each sheet begins, and where one more would */
  double widest; /* of them, pixels */

  guint said_page; /* + 1; 0: none */
  guint read_id, moved_id;
};

/* -------- Where the sheets lie (app-report-view-places.c) -------- */

guint tm_report_view_n_pages (TmReportView *self);
/* To be called whenever paper or size have changed. */
void tm_report_view_place_sheets (TmReportView *self);
/* Pixels of a sheet, whole ones of the screen. */
void tm_report_view_sheet_size (TmReportView *self, guint page, double *width, double *height);
/* One more than there are sheets: their lower end. */
double tm_report_view_sheet_top (TmReportView *self, guint page);
/* The sheet at that height, with the gap under it. */
guint tm_report_view_find_sheet (TmReportView *self, double y);
/* The same with the share of the sheet above it, and back: what stays where it is when sheets change. */
double tm_report_view_find_place (TmReportView *self, double y);
double tm_report_view_find_height (TmReportView *self, double place);
/* How far it is scrolled, and the page that is then looked at. */
double tm_report_view_top (TmReportView *self);
guint tm_report_view_find_page (TmReportView *self);

/* -------- What is read aloud (app-report-view-speech.c) -------- */

/* Names the view after the page that is looked at, and describes it with its text once it has come to rest.
 */
void tm_report_view_say_page (TmReportView *self);

G_END_DECLS
