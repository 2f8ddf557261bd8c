/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-page-private: what tests look into.
 */

#pragma once

#include "app-batch-chart.h"
#include "app-batch-grid.h"
#include "app-batch-page.h"
#include "app-batch-panel.h"
#include "app-batch-work.h"

G_BEGIN_DECLS

struct _TmBatchPage {
  GtkBox parent_instance;

  TmDocument *document;
  TmBatchCells *cells;
  gboolean stale; /* the definitions changed while the page was out of sight */
  char *serial;   /* of the piece and feature that have the focus, whatever becomes of their rows */
  char *balloon;
  guint place;

  TmBatchAnswer *answer; /* NULL: not worked out yet */
  GCancellable *working;
  guint ask_id;

  GtkStack *stack;  /* "empty", "batch" */
  GtkWidget *empty; /* AdwStatusPage */
  GtkLabel *count;
  GtkProgressBar *progress;
  GtkWidget *sorts[2]; /* by TmBatchSort */
  GtkWidget *scroller; /* of the grid */
  TmBatchGrid *grid;
  TmBatchChart *chart;
  TmBatchPanel *panel;
  GtkWidget *tools;    /* what can be done, over the grid */
  GdkSurface *surface; /* while it is in sight: its size is followed */
  guint fit_id;
  gboolean filling;
};

G_END_DECLS
