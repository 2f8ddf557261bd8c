/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-fit: whether each feature fits its mate, by limits and as measured.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-fit.h"
#include "report-row.h"
#include "report-sheets.h"

enum {
  COLUMN_FEATURE,
  COLUMN_NAME,
  COLUMN_PIECE,
  COLUMN_PLACE,
  COLUMN_MATE,
  COLUMN_UNIT,
  COLUMN_BORE_SMALLEST,
  COLUMN_BORE_LARGEST,
  COLUMN_SHAFT_SMALLEST,
  COLUMN_SHAFT_LARGEST,
  COLUMN_LEAST,
  COLUMN_MOST,
  COLUMN_EXPANDED,
  COLUMN_WANTED_LEAST,
  COLUMN_WANTED_MOST,
  COLUMN_TIGHT,
  COLUMN_LOOSE,
  COLUMN_WITHIN,
  COLUMN_SAYS,
  COLUMN_NOTE,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_FEATURE] = { N_ ("Feature"), 6, 10 },
  [COLUMN_NAME] = { N_ ("Name"), 8, 22 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_PLACE] = { N_ ("Place"), 5, 6 },
  [COLUMN_MATE] = { N_ ("Mate"), 8, 14 },
  [COLUMN_UNIT] = { N_ ("Unit"), 5, 7 },
  [COLUMN_BORE_SMALLEST] = { N_ ("Bore smallest"), 8, 12 },
  [COLUMN_BORE_LARGEST] = { N_ ("Bore largest"), 8, 12 },
  [COLUMN_SHAFT_SMALLEST] = { N_ ("Shaft smallest"), 8, 12 },
  [COLUMN_SHAFT_LARGEST] = { N_ ("Shaft largest"), 8, 12 },
  [COLUMN_LEAST] = { N_ ("Clearance least"), 9, 12 },
  [COLUMN_MOST] = { N_ ("Clearance most"), 9, 12 },
  [COLUMN_EXPANDED] = { N_ ("± (k = 2)"), 7, 12 },
  [COLUMN_WANTED_LEAST] = { N_ ("Wanted least"), 8, 12 },
  [COLUMN_WANTED_MOST] = { N_ ("Wanted most"), 8, 12 },
  [COLUMN_TIGHT] = { N_ ("Too tight (%)"), 6, 8 },
  [COLUMN_LOOSE] = { N_ ("Too loose (%)"), 6, 8 },
  [COLUMN_WITHIN] = { N_ ("As wanted (%)"), 7, 9 },
  [COLUMN_SAYS] = { N_ ("The fit is"), 12, 24 },
  [COLUMN_NOTE] = { N_ ("Note"), 8, 22 },
};

static void
write_part (TmSheet *sheet, guint column, const TmFitPart *part, TmUnit unit, guint decimals)
{
  const gboolean known = part->smallest > 0;

  tm_sheet_number (sheet, column, known ? tm_count_to_double (part->smallest, unit) : NAN, decimals,
                   TM_STYLE_NUMBER);
  tm_sheet_number (sheet, column + 1, known ? tm_count_to_double (part->largest, unit) : NAN, decimals,
                   TM_STYLE_NUMBER);
}

static void
write_clearance (TmSheet *sheet, const TmReportFit *fit)
{
  const TmFeature *feature = fit->feature;
  const double unit = (double)tm_unit_counts (feature->unit);
  const guint decimals = tm_report_fit_decimals (fit);

  tm_sheet_number (sheet, COLUMN_LEAST, fit->check.least / unit, decimals, TM_STYLE_SIGNED);
  tm_sheet_number (sheet, COLUMN_MOST, fit->check.most / unit, decimals, TM_STYLE_SIGNED);
  tm_sheet_number (sheet, COLUMN_EXPANDED, fit->mate != NULL ? fit->check.expanded / unit : NAN, decimals,
                   TM_STYLE_NUMBER);
  tm_sheet_quantity (sheet, COLUMN_WANTED_LEAST, &feature->mate.wanted_least, feature->unit);
  tm_sheet_quantity (sheet, COLUMN_WANTED_MOST, &feature->mate.wanted_most, feature->unit);
}

/* A chance says something only where an end is wanted. */
static void
write_chances (TmSheet *sheet, const TmReportFit *fit)
{
  const gboolean any = fit->want.has_least || fit->want.has_most;

  tm_sheet_number (sheet, COLUMN_TIGHT, fit->want.has_least ? 100 * fit->check.tight : NAN, 1,
                   TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_LOOSE, fit->want.has_most ? 100 * fit->check.loose : NAN, 1,
                   TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_WITHIN, any ? 100 * fit->check.within : NAN, 1, TM_STYLE_NUMBER);
}

static void
write_fit (TmSheet *sheet, const TmReportFit *fit)
{
  const TmFeature *feature = fit->feature;
  const guint decimals = tm_report_fit_decimals (fit);
  const TmFitPart *bore = fit->is_bore ? &fit->own : &fit->other;
  const TmFitPart *shaft = fit->is_bore ? &fit->other : &fit->own;

  tm_sheet_text (sheet, COLUMN_FEATURE, feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_NAME, feature->name, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_PIECE, fit->piece != NULL ? fit->piece->serial : "", TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PLACE, fit->place > 0 ? fit->place : (double)NAN, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_MATE, fit->mate != NULL ? fit->mate->serial : _ ("by limits"),
                 TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (feature->unit), TM_STYLE_CENTRE);
  write_part (sheet, COLUMN_BORE_SMALLEST, bore, feature->unit, decimals);
  write_part (sheet, COLUMN_SHAFT_SMALLEST, shaft, feature->unit, decimals);
  write_clearance (sheet, fit);
  write_chances (sheet, fit);
  tm_sheet_text (sheet, COLUMN_SAYS, tm_report_fit_word (fit), TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_NOTE, fit->mate != NULL ? fit->mate->note : "", TM_STYLE_TEXT);
}

void
tm_sheet_write_fit (TmWorkbook *workbook)
{
  g_autoptr (GArray) fits = NULL;
  TmSheet sheet;

  if (!tm_report_has_fits (workbook->job))
    return;
  fits = tm_report_fits (workbook->job);
  if (!tm_sheet_rows_fit (workbook, fits->len))
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Fit"), N_ ("Fit"),
                      _ ("Each feature with its mate at 20 °C, by limits and as measured. Clearance is bore "
                         "less shaft: below zero it is interference.")))
    {
      tm_sheet_head (&sheet, columns, N_COLUMNS, N_COLUMNS);
      for (guint i = 0; i < fits->len; i++)
        {
          write_fit (&sheet, &g_array_index (fits, TmReportFit, i));
          if (!tm_sheet_next (&sheet, (double)i / fits->len))
            break;
        }
      tm_sheet_filter (&sheet, N_COLUMNS);
    }
  tm_sheet_end (&sheet);
}
