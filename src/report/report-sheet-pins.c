/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-pins: every pin tried, and what each truly proves of the mating size.
 */

#include <glib/gi18n-lib.h>

#include "core-pins.h"
#include "report-pin-words.h"
#include "report-row.h"
#include "report-sheets.h"

enum {
  COLUMN_ID,
  COLUMN_PIECE,
  COLUMN_FEATURE,
  COLUMN_PLACE,
  COLUMN_SIZE,
  COLUMN_UNIT,
  COLUMN_CLASS,
  COLUMN_SIGN,
  COLUMN_MEASURED,
  COLUMN_SET,
  COLUMN_RESULT,
  COLUMN_PROVES,
  COLUMN_BY,
  COLUMN_AT,
  COLUMN_STATUS,
  COLUMN_REPLACES,
  COLUMN_REASON,
  COLUMN_OVERDUE,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_ID] = { N_ ("Trial"), 5, 10 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_FEATURE] = { N_ ("Feature"), 6, 10 },
  [COLUMN_PLACE] = { N_ ("Place"), 5, 6 },
  [COLUMN_SIZE] = { N_ ("Pin size"), 7, 12 },
  [COLUMN_UNIT] = { N_ ("Unit"), 5, 7 },
  [COLUMN_CLASS] = { N_ ("Class"), 5, 7 },
  [COLUMN_SIGN] = { N_ ("Tolerance"), 7, 10 },
  [COLUMN_MEASURED] = { N_ ("Pin measured"), 7, 12 },
  [COLUMN_SET] = { N_ ("Set"), 6, 14 },
  [COLUMN_RESULT] = { N_ ("Result"), 8, 12 },
  [COLUMN_PROVES] = { N_ ("Proves that the mating size is"), 16, 26 },
  [COLUMN_BY] = { N_ ("By"), 4, 8 },
  [COLUMN_AT] = { N_ ("Tried (UTC)"), 16, 19 },
  [COLUMN_STATUS] = { N_ ("Status"), 7, 12 },
  [COLUMN_REPLACES] = { N_ ("Corrects"), 7, 10 },
  [COLUMN_REASON] = { N_ ("Reason"), 8, 26 },
  [COLUMN_OVERDUE] = { N_ ("Overdue set used because"), 8, 20 },
};

static void
write_pin (TmSheet *sheet, const TmPinTrial *trial)
{
  const TmEntryRow *row = &trial->row;
  g_autofree char *proof = tm_report_pin_proof (sheet->workbook->job, trial);

  tm_sheet_text (sheet, COLUMN_ID, row->id, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_PIECE, row->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_FEATURE, row->feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PLACE, trial->place, 0, TM_STYLE_NUMBER);
  tm_sheet_quantity (sheet, COLUMN_SIZE, &trial->size, row->feature->unit);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (row->feature->unit), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_CLASS, trial->pin_class, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_SIGN, trial->sign == TM_PIN_MINUS ? _ ("minus") : _ ("plus"), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, COLUMN_MEASURED, &trial->measured, row->feature->unit);
  tm_sheet_text (sheet, COLUMN_SET, trial->gauge, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_RESULT, trial->went ? _ ("went") : _ ("did not go"), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_PROVES, proof, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_BY, row->by, TM_STYLE_CENTRE);
  tm_sheet_time (sheet, COLUMN_AT, row->at);
  tm_sheet_row_status (sheet, row, COLUMN_STATUS);
  tm_sheet_text (sheet, COLUMN_OVERDUE, trial->overdue_reason, TM_STYLE_TEXT);
}

void
tm_sheet_write_pins (TmWorkbook *workbook)
{
  const GPtrArray *trials = workbook->job->pin_trials;
  TmSheet sheet;

  if (trials->len == 0 || !tm_sheet_rows_fit (workbook, trials->len))
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Pin trials"), N_ ("Pin trials"),
                      _ ("Every pin tried, in the order recorded, and what each proves by its class and "
                         "sign or by its measured size.")))
    {
      tm_sheet_head (&sheet, columns, N_COLUMNS, N_COLUMNS);
      for (guint i = 0; i < trials->len; i++)
        {
          write_pin (&sheet, g_ptr_array_index (trials, i));
          if (!tm_sheet_next (&sheet, (double)i / trials->len))
            break;
        }
      tm_sheet_filter (&sheet, N_COLUMNS);
    }
  tm_sheet_end (&sheet);
}
