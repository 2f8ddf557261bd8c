/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-page-private: what the files of the Report page share.
 */

#pragma once

#include "app-pointer-list.h"
#include "app-report-gaps.h"
#include "app-report-layout.h"
#include "app-report-page.h"
#include "app-report-sign.h"

G_BEGIN_DECLS

/* What has changed since the pages were laid out; each covers those before it. */
typedef enum { TM_STALE_NOTHING, TM_STALE_FORM, TM_STALE_RECORD } TmStale;

struct _TmReportPage {
  GtkBox parent_instance;

  TmDocument *document;
  TmReportContent *content; /* of the document's own job; NULL: gathered with the pages, or not yet */
  TmStale stale;
  TmReportLayout *layout; /* under way, or NULL */
  guint progress_id, n_progress;
  GtkWidget *lost_focus; /* the list or table that had it when its rows went, or NULL */

  GtkLabel *title;
  GtkWidget *under; /* with the next two */
  GtkLabel *about;
  GtkLabel *summary;
  GtkWidget *fold, *side; /* what is missing, and the signatures */
  TmReportSign *sign;
  TmReportGaps *gaps;
  TmPointerList *lines;
  GPtrArray *table_lines; /* what it shows, or would; borrowed from the content, or NULL */
  GtkStack *views;        /* "pages", "table" */
  GtkWidget *pages_button, *table_button;
  TmReportPreview *preview;
  GtkWidget *table;
};

void tm_report_page_show_view (TmReportPage *self, const char *name);
void tm_report_page_show_missing (TmReportPage *self);

G_END_DECLS
