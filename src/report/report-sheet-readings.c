/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-readings: every reading as recorded, corrected and withdrawn ones too.
 */

#include <glib/gi18n-lib.h>

#include "core-correction.h"
#include "plot-label.h"
#include "report-names.h"
#include "report-row.h"
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
  COLUMN_CORRECTED,
  COLUMN_STATUS,
  COLUMN_REPLACES,
  COLUMN_REASON,
  COLUMN_OVERDUE,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_ID] = { N_ ("Reading"), 5, 10 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_FEATURE] = { N_ ("Feature"), 5, 10 },
  [COLUMN_PLACE] = { N_ ("Place"), 4, 6 },
  [COLUMN_STATION] = { N_ ("Station"), 7, 18, TRUE },
  [COLUMN_VALUE] = { N_ ("Value"), 7, 14 },
  [COLUMN_UNIT] = { N_ ("Unit"), 5, 7 },
  [COLUMN_DX] = { N_ ("Offset x"), 6, 12, TRUE },
  [COLUMN_DY] = { N_ ("Offset y"), 6, 12, TRUE },
  [COLUMN_TYPED] = { N_ ("As typed"), 7, 16 },
  [COLUMN_METHOD] = { N_ ("Method"), 7, 30 },
  [COLUMN_GAUGES] = { N_ ("Gauges"), 7, 14 },
  [COLUMN_BY] = { N_ ("By"), 4, 8 },
  [COLUMN_AT] = { N_ ("Taken (UTC)"), 16, 19 },
  [COLUMN_PART_TEMP] = { N_ ("Part °C"), 6, 8, TRUE },
  [COLUMN_GAUGE_TEMP] = { N_ ("Gauge °C"), 6, 8, TRUE },
  [COLUMN_CORRECTED] = { N_ ("Corrected value"), 7, 14, TRUE },
  [COLUMN_STATUS] = { N_ ("Status"), 7, 12 },
  [COLUMN_REPLACES] = { N_ ("Corrects"), 7, 10, TRUE },
  [COLUMN_REASON] = { N_ ("Reason"), 8, 26, TRUE },
  [COLUMN_OVERDUE] = { N_ ("Overdue gauge used because"), 8, 20, TRUE },
};

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

/* What is judged, where that is not what was read: brought to 20 °C when both temperatures were taken, and
 * less the known error of the gauge. */
static void
write_corrected (TmSheet *sheet, const TmReading *reading)
{
  const TmUnit unit = reading->row.feature->unit;
  const TmCorrection correction = tm_reading_correction (sheet->workbook->job, reading, NULL);
  const gboolean taken = reading->part_temp.given && reading->gauge_temp.given && reading->value.given;

  if (!reading->value.given || (correction.total == 0 && !taken))
    {
      tm_sheet_blank (sheet, COLUMN_CORRECTED, TM_STYLE_NUMBER);
      return;
    }
  tm_sheet_number (sheet, COLUMN_CORRECTED,
                   tm_count_to_double (reading->value.count + correction.total, unit),
                   MIN (reading->value.decimals + 1u, TM_MAX_DECIMALS), TM_STYLE_NUMBER);
}

/* What many readings have in common is put into words once: texts of a job are interned, so that their
 * addresses tell them apart. */
typedef struct {
  GHashTable *stations[TM_N_UNITS]; /* a station may be a depth in the feature's unit */
  GHashTable *gauges;
} Known;

static void
known_init (Known *known)
{
  for (guint i = 0; i < TM_N_UNITS; i++)
    known->stations[i] = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  known->gauges = g_hash_table_new_full (NULL, NULL, NULL, g_free);
}

static void
known_clear (Known *known)
{
  for (guint i = 0; i < TM_N_UNITS; i++)
    g_hash_table_unref (known->stations[i]);
  g_hash_table_unref (known->gauges);
}

static const char *
station_text (const Known *known, const TmReading *reading)
{
  const TmUnit unit = reading->row.feature->unit;
  GHashTable *stations = known->stations[unit];
  char *text = g_hash_table_lookup (stations, reading->station);

  if (*reading->station == '\0')
    return "";
  if (text == NULL)
    {
      text = tm_station_label (reading->station, unit);
      g_hash_table_insert (stations, (gpointer)reading->station, text);
    }
  return text;
}

static const char *
gauges_text (const Known *known, const TmJob *job, const char *method)
{
  char *text = g_hash_table_lookup (known->gauges, method);

  if (text == NULL)
    {
      text = tm_report_gauges_of (job, method);
      g_hash_table_insert (known->gauges, (gpointer)method, text);
    }
  return text;
}

static void
write_reading (TmSheet *sheet, const Known *known, const TmReading *reading)
{
  const TmEntryRow *row = &reading->row;
  const char *method = *reading->method != '\0' ? reading->method : row->feature->method;

  tm_sheet_text (sheet, COLUMN_ID, row->id, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_PIECE, row->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_FEATURE, row->feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PLACE, reading->place, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_STATION, station_text (known, reading), TM_STYLE_TEXT);
  write_value (sheet, reading);
  tm_sheet_text (sheet, COLUMN_METHOD, method, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_GAUGES, gauges_text (known, sheet->workbook->job, method), TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_BY, row->by, TM_STYLE_CENTRE);
  tm_sheet_time (sheet, COLUMN_AT, row->at);
  tm_sheet_quantity (sheet, COLUMN_PART_TEMP, &reading->part_temp, TM_UNIT_CELSIUS);
  tm_sheet_quantity (sheet, COLUMN_GAUGE_TEMP, &reading->gauge_temp, TM_UNIT_CELSIUS);
  write_corrected (sheet, reading);
  tm_sheet_row_status (sheet, row, COLUMN_STATUS);
  tm_sheet_text (sheet, COLUMN_OVERDUE, reading->overdue_reason, TM_STYLE_TEXT);
}

static void
finish_table (TmSheet *sheet)
{
  const guint32 first = sheet->head_last + 1, last = sheet->row - 1;

  tm_sheet_name_cells (sheet, TM_NAME_READING, first, last, COLUMN_ID);
  tm_sheet_name_cells (sheet, TM_NAME_READING_VALUE, first, last, COLUMN_VALUE);
  tm_sheet_name_cells (sheet, TM_NAME_READING_STATUS, first, last, COLUMN_STATUS);
  tm_sheet_filter (sheet, N_COLUMNS);
}

static void
write_rows (TmSheet *sheet, const GPtrArray *readings)
{
  Known known;

  known_init (&known);
  for (guint i = 0; i < readings->len; i++)
    {
      write_reading (sheet, &known, g_ptr_array_index (readings, i));
      if (!tm_sheet_next (sheet, (double)i / readings->len))
        break;
    }
  known_clear (&known);
}

void
tm_sheet_write_readings (TmWorkbook *workbook)
{
  const GPtrArray *readings = workbook->job->readings;
  TmSheet sheet;

  if (tm_sheet_rows_fit (workbook, readings->len)
      && tm_sheet_begin (&sheet, workbook, _ ("Readings"), N_ ("Readings"),
                         _ ("Every reading in the order recorded. Corrected and withdrawn readings and those "
                            "before a cut are kept; only those that count are judged, by the corrected value "
                            "where there is one.")))
    {
      tm_sheet_head (&sheet, columns, N_COLUMNS, N_COLUMNS);
      write_rows (&sheet, readings);
      if (readings->len > 0 && !tm_workbook_stopped (workbook))
        finish_table (&sheet);
      tm_sheet_end (&sheet);
    }
}
