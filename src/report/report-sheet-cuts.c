/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-cuts: every cut as recorded, and what the readings before and after it found.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-cut-work.h"
#include "report-row.h"
#include "report-sheets.h"

enum {
  COLUMN_ID,
  COLUMN_PIECE,
  COLUMN_FEATURE,
  COLUMN_PLACE,
  COLUMN_AT,
  COLUMN_BY,
  COLUMN_TOOL,
  COLUMN_READS,
  COLUMN_DIALLED,
  COLUMN_UNIT,
  COLUMN_PASSES,
  COLUMN_WANTED,
  COLUMN_FOUND,
  COLUMN_EXPANDED,
  COLUMN_ANSWER,
  COLUMN_NOTE,
  COLUMN_STATUS,
  COLUMN_REPLACES,
  COLUMN_REASON,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_ID] = { N_ ("Cut"), 4, 10 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_FEATURE] = { N_ ("Feature"), 6, 10 },
  [COLUMN_PLACE] = { N_ ("Place"), 5, 6 },
  [COLUMN_AT] = { N_ ("Made (UTC)"), 16, 19 },
  [COLUMN_BY] = { N_ ("By"), 4, 8 },
  [COLUMN_TOOL] = { N_ ("Tool"), 8, 20 },
  [COLUMN_READS] = { N_ ("Dial reads on"), 8, 11 },
  [COLUMN_DIALLED] = { N_ ("Dialled"), 7, 12 },
  [COLUMN_UNIT] = { N_ ("Unit"), 5, 7 },
  [COLUMN_PASSES] = { N_ ("Spring passes"), 6, 8 },
  [COLUMN_WANTED] = { N_ ("Change dialled"), 8, 12 },
  [COLUMN_FOUND] = { N_ ("Change found"), 8, 12 },
  [COLUMN_EXPANDED] = { N_ ("± (k = 2)"), 7, 12 },
  [COLUMN_ANSWER] = { N_ ("Answer"), 8, 18 },
  [COLUMN_NOTE] = { N_ ("Note"), 8, 26 },
  [COLUMN_STATUS] = { N_ ("Status"), 7, 12 },
  [COLUMN_REPLACES] = { N_ ("Corrects"), 7, 10 },
  [COLUMN_REASON] = { N_ ("Reason"), 8, 26 },
};

/* What @cut did, which is found for all cuts of its place at once; NULL when it does not stand.  @outcomes:
 * const TmCutRow * -> TmCutOutcome *. */
static const TmCutOutcome *
find_outcome (GHashTable *outcomes, const TmJob *job, const TmCutRow *cut)
{
  g_autoptr (TmCutWork) work = NULL;

  if (!tm_row_stands (&cut->row))
    return NULL;
  if (g_hash_table_contains (outcomes, cut))
    return g_hash_table_lookup (outcomes, cut);
  work = tm_cut_work_new (job, cut->row.piece, cut->row.feature, cut->place,
                          tm_job_find_tool (job, cut->tool), NULL, 0);
  for (guint n = 0; n < tm_cut_work_n_outcomes (work); n++)
    {
      TmCutOutcome *outcome = g_new0 (TmCutOutcome, 1);

      tm_cut_work_outcome (work, n, outcome);
      g_hash_table_insert (outcomes, (gpointer)outcome->cut, outcome);
    }
  return g_hash_table_lookup (outcomes, cut);
}

static double
in_unit (double counts, TmUnit unit)
{
  return counts / (double)tm_unit_counts (unit);
}

/* A change is positive towards less metal, whichever way the size goes. */
static void
write_outcome (TmSheet *sheet, const TmCutRow *cut, const TmCutOutcome *outcome)
{
  const TmUnit unit = cut->row.feature->unit;
  const guint decimals = MIN (cut->dialled.decimals + 1u, TM_MAX_DECIMALS);
  const double dialled
      = (double)cut->dialled.count * (double)tm_cut_changes_by (cut->row.feature, cut->reads);
  const double found = outcome != NULL ? outcome->answer.achieved : (double)NAN;

  tm_sheet_number (sheet, COLUMN_WANTED, in_unit (dialled, unit), cut->dialled.decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_FOUND, in_unit (found, unit), decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_EXPANDED, isfinite (found) ? in_unit (2 * outcome->answer.u, unit) : NAN,
                   decimals, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_ANSWER,
                 outcome == NULL     ? ""
                 : !isfinite (found) ? _ ("not read on both sides of it")
                 : outcome->unlike   ? _ ("unlike the others")
                                     : _ ("as expected"),
                 TM_STYLE_TEXT);
}

static void
write_cut (TmSheet *sheet, const TmCutRow *cut, const TmCutOutcome *outcome)
{
  const TmEntryRow *row = &cut->row;

  tm_sheet_text (sheet, COLUMN_ID, row->id, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_PIECE, row->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_FEATURE, row->feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PLACE, cut->place, 0, TM_STYLE_NUMBER);
  tm_sheet_time (sheet, COLUMN_AT, row->at);
  tm_sheet_text (sheet, COLUMN_BY, row->by, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_TOOL, cut->tool, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_READS, cut->reads == TM_READS_RADIUS ? _ ("radius") : _ ("diameter"),
                 TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, COLUMN_DIALLED, &cut->dialled, row->feature->unit);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (row->feature->unit), TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PASSES, cut->passes, 0, TM_STYLE_NUMBER);
  write_outcome (sheet, cut, outcome);
  tm_sheet_text (sheet, COLUMN_NOTE, cut->note, TM_STYLE_TEXT);
  tm_sheet_row_status (sheet, row, COLUMN_STATUS);
}

void
tm_sheet_write_cuts (TmWorkbook *workbook)
{
  const GPtrArray *cuts = workbook->job->cuts;
  g_autoptr (GHashTable) outcomes = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  TmSheet sheet;

  if (cuts->len == 0 || !tm_sheet_rows_fit (workbook, cuts->len))
    return;
  if (tm_sheet_begin (
          &sheet, workbook, _ ("Cuts"), N_ ("Cuts"),
          _ ("Every cut in the order recorded: what the dial was moved by, and the change of size "
             "that the readings before and after it found, positive where metal went.")))
    {
      tm_sheet_head (&sheet, columns, N_COLUMNS, N_COLUMNS);
      for (guint i = 0; i < cuts->len; i++)
        {
          const TmCutRow *cut = g_ptr_array_index (cuts, i);

          write_cut (&sheet, cut, find_outcome (outcomes, workbook->job, cut));
          if (!tm_sheet_next (&sheet, (double)i / cuts->len))
            break;
        }
      tm_sheet_filter (&sheet, N_COLUMNS);
    }
  tm_sheet_end (&sheet);
}
