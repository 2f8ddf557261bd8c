/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-batch-data: the rows behind the charts of a batch: each piece measured, and beside them each group.
 */

#pragma once

#include "core-batch.h"
#include "report-axis.h"
#include "report-sheet.h"

G_BEGIN_DECLS

typedef enum {
  TM_DATA_FEATURE,
  TM_DATA_PIECE,
  TM_DATA_UNIT,
  TM_DATA_SIZE,
  TM_DATA_EVENT,
  TM_DATA_GROUP,
  TM_DATA_FIRST,
  TM_DATA_COUNT,
  TM_DATA_LOCATION,
  TM_DATA_CENTRE,
  TM_DATA_CONTROL_LOWER,
  TM_DATA_CONTROL_UPPER,
  TM_DATA_LOWER,
  TM_DATA_UPPER,
  TM_DATA_GUARD_LOWER,
  TM_DATA_GUARD_UPPER,
  TM_DATA_TARGET,
  TM_DATA_SPOKEN,
  TM_DATA_EVENT_LINE,
  TM_DATA_DISPERSION,
  TM_DATA_DISPERSION_CENTRE,
  TM_DATA_DISPERSION_LOWER,
  TM_DATA_DISPERSION_UPPER,
  TM_DATA_DISPERSION_SPOKEN,
  TM_DATA_RULES,
  TM_N_DATA
} TmDataColumn;

/* The rows of one feature's place, and what its charts show. */
typedef struct {
  guint32 first;
  guint n_pieces, n_groups;
  TmAxisRange sizes, spreads;
  gboolean has_spreads;
  gboolean has_events; /* between two groups */
} TmDataBlock;

/* Sheet heads; then the rows of a batch.  FALSE when the workbook is stopped. */
void tm_batch_data_head (TmSheet *sheet);
gboolean tm_batch_data_write (TmSheet *sheet, const TmBatch *batch, TmDataBlock *block, double fraction);

/* The name of a column, translated, for a chart's legend. */
const char *tm_batch_data_name (TmDataColumn column);

G_END_DECLS
