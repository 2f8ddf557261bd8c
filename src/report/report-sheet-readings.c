/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-readings: every reading and pin trial as recorded, corrected and withdrawn ones too.
 */

#include <glib/gi18n-lib.h>

#include "plot-label.h"
#include "report-sheets.h"
#include "report-words.h"

enum {
  COLUMN_ID,
  COLUMN_PIECE,
  COLUMN_FEATURE,
  COLUMN_PLACE,
  COLUMN_STATION,
  COLUMN_VALUE,
  COLUMN_UNIT,
  COLUMN_DX,
  COLUMN_DY,
  COLUMN_TYPED,
  COLUMN_METHOD,
  COLUMN_GAUGES,
  COLUMN_BY,
  COLUMN_AT,
  COLUMN_PART_TEMP,
  COLUMN_GAUGE_TEMP,
  COLUMN_STATUS,
  COLUMN_REPLACES,
  COLUMN_REASON,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_ID] = { N_ ("Reading"), 5, 10 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_FEATURE] = { N_ ("Feature"), 5, 10 },
  [COLUMN_PLACE] = { N_ ("Place"), 4, 6 },
  [COLUMN_STATION] = { N_ ("Station"), 7, 18 },
  [COLUMN_VALUE] = { N_ ("Value"), 7, 14 },
  [COLUMN_UNIT] = { N_ ("Unit"), 5, 7 },
  [COLUMN_DX] = { N_ ("Offset x"), 6, 12 },
  [COLUMN_DY] = { N_ ("Offset y"), 6, 12 },
  [COLUMN_TYPED] = { N_ ("As typed"), 7, 16 },
  [COLUMN_METHOD] = { N_ ("Method"), 7, 20 },
  [COLUMN_GAUGES] = { N_ ("Gauges"), 7, 14 },
  [COLUMN_BY] = { N_ ("By"), 4, 8 },
  [COLUMN_AT] = { N_ ("Taken (UTC)"), 16, 19 },
  [COLUMN_PART_TEMP] = { N_ ("Part °C"), 6, 8 },
  [COLUMN_GAUGE_TEMP] = { N_ ("Gauge °C"), 6, 8 },
  [COLUMN_STATUS] = { N_ ("Status"), 7, 12 },
  [COLUMN_REPLACES] = { N_ ("Corrects"), 7, 10 },
  [COLUMN_REASON] = { N_ ("Reason"), 8, 26 },
};

static const char *
get_row_id (gpointer row)
{
  return row != NULL ? ((const TmEntryRow *)row)->id : "";
}

static char *
describe_status (const TmEntryRow *row)
{
  if (row->withdrawn != NULL)
    return g_strdup (_ ("withdrawn"));
  if (row->replaced_by != NULL)
    return g_strdup_printf (_ ("corrected by %s"), get_row_id (row->replaced_by));
  return g_strdup (_ ("counts"));
}

/* Why a row was corrected, and who withdrew it, when and why. */
static char *
describe_reason (const TmEntryRow *row)
{
  GString *out = g_string_new (row->reason);

  if (row->withdrawn != NULL)
    {
      if (out->len > 0)
        g_string_append (out, "; ");
      g_string_append_printf (out, _ ("withdrawn by %s, %s: %s"), row->withdrawn->by, row->withdrawn->at,
                              row->withdrawn->reason);
    }
  return g_string_free (out, FALSE);
}

static void
write_row_status (TmSheet *sheet, const TmEntryRow *row, guint status, guint replaces, guint reason)
{
  g_autofree char *status_text = describe_status (row);
  g_autofree char *reason_text = describe_reason (row);

  tm_sheet_text (sheet, status, status_text, TM_STYLE_TEXT);
  tm_sheet_text (sheet, replaces, row->replaces, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, reason, reason_text, TM_STYLE_TEXT);
}

static void
write_value (TmSheet *sheet, const TmReading *reading)
{
  const TmFeature *feature = reading->row.feature;

  if (reading->outcome != TM_OUTCOME_NONE)
    tm_sheet_text (sheet, COLUMN_VALUE, reading->outcome == TM_OUTCOME_FAIL ? _ ("fail") : _ ("pass"),
                   TM_STYLE_CENTRE);
  else
    tm_sheet_quantity (sheet, COLUMN_VALUE, &reading->value, feature->unit);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (feature->unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, COLUMN_DX, &reading->dx, feature->unit);
  tm_sheet_quantity (sheet, COLUMN_DY, &reading->dy, feature->unit);
  tm_sheet_text (sheet, COLUMN_TYPED, reading->typed, TM_STYLE_TEXT);
}

static void
write_reading (TmSheet *sheet, const TmReading *reading)
{
  const TmEntryRow *row = &reading->row;
  const char *method = *reading->method != '\0' ? reading->method : row->feature->method;
  g_autofree char *station
      = *reading->station != '\0' ? tm_station_label (reading->station, row->feature->unit) : g_strdup ("");
  g_autofree char *gauges = tm_report_gauges_of (sheet->workbook->job, method);

  tm_sheet_text (sheet, COLUMN_ID, row->id, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_PIECE, row->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_FEATURE, row->feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PLACE, reading->place, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_STATION, station, TM_STYLE_TEXT);
  write_value (sheet, reading);
  tm_sheet_text (sheet, COLUMN_METHOD, method, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_GAUGES, gauges, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_BY, row->by, TM_STYLE_CENTRE);
  tm_sheet_time (sheet, COLUMN_AT, row->at);
  tm_sheet_quantity (sheet, COLUMN_PART_TEMP, &reading->part_temp, TM_UNIT_CELSIUS);
  tm_sheet_quantity (sheet, COLUMN_GAUGE_TEMP, &reading->gauge_temp, TM_UNIT_CELSIUS);
  write_row_status (sheet, row, COLUMN_STATUS, COLUMN_REPLACES, COLUMN_REASON);
}

/* Said before anything is written, so that nobody waits for a workbook that cannot be. */
static gboolean
fits (TmWorkbook *workbook, guint n)
{
  if (n < TM_SHEET_ROWS - 8)
    return TRUE;
  tm_workbook_fail (workbook, TM_REPORT_ERROR_TOO_LARGE,
                    _ ("%u readings are more than the %u rows of a sheet hold: split the job"), n,
                    TM_SHEET_ROWS);
  return FALSE;
}

void
tm_sheet_write_readings (TmWorkbook *workbook)
{
  const GPtrArray *readings = workbook->job->readings;
  TmSheet sheet;

  if (fits (workbook, readings->len)
      && tm_sheet_begin (&sheet, workbook, _ ("Readings"), _ ("Readings"),
                         _ ("Every reading in the order recorded. Corrected and withdrawn readings are kept; "
                            "only those that count are judged.")))
    {
      tm_sheet_head (&sheet, columns, N_COLUMNS, N_COLUMNS);
      for (guint i = 0; i < readings->len; i++)
        {
          write_reading (&sheet, g_ptr_array_index (readings, i));
          if (!tm_sheet_next (&sheet, (double)i / readings->len))
            break;
        }
      tm_sheet_end (&sheet);
    }
}

/* -------- Pin trials -------- */

static const TmColumn pin_columns[] = {
  { N_ ("Trial"), 6, 10 },        { N_ ("Piece"), 6, 12 },   { N_ ("Feature"), 6, 10 },
  { N_ ("Pin size"), 9, 14 },     { N_ ("Unit"), 5, 7 },     { N_ ("Class"), 6, 8 },
  { N_ ("Tolerance"), 9, 12 },    { N_ ("Result"), 10, 14 }, { N_ ("By"), 5, 8 },
  { N_ ("Tried (UTC)"), 17, 20 }, { N_ ("Status"), 10, 16 }, { N_ ("Corrects"), 8, 10 },
  { N_ ("Reason"), 20, 40 },
};

static void
write_pin (TmSheet *sheet, const TmPinTrial *trial)
{
  const TmEntryRow *row = &trial->row;

  tm_sheet_text (sheet, 0, row->id, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 1, row->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 2, row->feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 3, &trial->size, row->feature->unit);
  tm_sheet_text (sheet, 4, tm_unit_symbol (row->feature->unit), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 5, trial->pin_class, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 6, trial->sign == TM_PIN_MINUS ? _ ("minus") : _ ("plus"), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 7, trial->went ? _ ("went") : _ ("did not go"), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 8, row->by, TM_STYLE_CENTRE);
  tm_sheet_time (sheet, 9, row->at);
  write_row_status (sheet, row, 10, 11, 12);
}

void
tm_sheet_write_pins (TmWorkbook *workbook)
{
  const GPtrArray *trials = workbook->job->pin_trials;
  TmSheet sheet;

  if (trials->len == 0 || !fits (workbook, trials->len))
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Pin trials"), _ ("Pin trials"),
                      _ ("Every pin tried, in the order recorded.")))
    {
      tm_sheet_head (&sheet, pin_columns, G_N_ELEMENTS (pin_columns), G_N_ELEMENTS (pin_columns));
      for (guint i = 0; i < trials->len; i++)
        {
          write_pin (&sheet, g_ptr_array_index (trials, i));
          if (!tm_sheet_next (&sheet, (double)i / trials->len))
            break;
        }
    }
  tm_sheet_end (&sheet);
}
