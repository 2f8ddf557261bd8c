/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-grid-private: what the grid's files share; tests look in here too.
 */

#pragma once

#include "app-batch-grid.h"
#include "app-batch-tiles.h"

G_BEGIN_DECLS

/* Pixels: from one cell to the next, and what of that the cell takes. */
#define TM_GRID_STEP_X 30
#define TM_GRID_STEP_Y 26
#define TM_GRID_CELL_X 27
#define TM_GRID_CELL_Y 22
/* Beside and over the cells. */
#define TM_GRID_LEFT 24
#define TM_GRID_GAP  10
#define TM_GRID_HEAD 32
#define TM_GRID_FOOT 6

struct _TmBatchGrid {
  TmScrolled parent_instance;

  TmBatchCells *cells;
  TmPiece *piece; /* that has the focus; only compared until found in the cells */
  TmFeature *feature;
  char *said;          /* of the cell that has the focus */
  guint generation;    /* of the cells, that the layouts are of */
  gboolean show_focus; /* into sight at the next allocation */
  int head_width;      /* of the rows */
  GHashTable *heads;   /* feature -> PangoLayout */
  GHashTable *serials; /* piece -> PangoLayout */
  PangoLayout *corner; /* what stands over the heads of the rows */
  TmBatchTiles *tiles;
};

/* app-batch-grid-draw.c */
void tm_batch_grid_snapshot (GtkWidget *widget, GtkSnapshot *snapshot);
void tm_batch_grid_forget_layouts (TmBatchGrid *self);
void tm_batch_grid_measure_heads (TmBatchGrid *self);

/* Where the first cell in sight begins to scroll, pixels. */
double tm_batch_grid_scroll (TmBatchGrid *self, GtkOrientation orientation);

G_END_DECLS
