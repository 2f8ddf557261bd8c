/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-batch-charts: the control charts of one feature as native charts of the workbook.
 */

#pragma once

#include "report-batch-data.h"

G_BEGIN_DECLS

/* One feature's place on both sheets. */
typedef struct {
  TmSheet *sheet;
  const char *data; /* name of the sheet with the rows */
  const TmBatch *batch;
  const TmDataBlock *block;
  const char *tool; /* what its features show together, or "" */
  GArray *breaks;   /* lxw_row_t: rows that begin a page */
} TmBatchSection;

/* At the current row, of level and of scatter, with their words as description; moves below them.  Nothing
 * where there is no group. */
void tm_batch_write_charts (const TmBatchSection *section);

G_END_DECLS
