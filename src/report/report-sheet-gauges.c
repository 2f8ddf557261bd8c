/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-gauges: the gauges that were used, their history, and the methods they make up.
 */

#include <glib/gi18n-lib.h>

#include "core-gauge.h"
#include "report-gaps.h"
#include "report-gauge-words.h"
#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-words.h"

static const TmColumn columns[] = {
  { N_ ("Gauge"), 9, 18 },        { N_ ("Kind"), 12, 24 },
  { N_ ("Serial"), 8, 16 },       { N_ ("Unit"), 5, 7 },
  { N_ ("Range from"), 8, 12 },   { N_ ("Range to"), 8, 12 },
  { N_ ("Resolution"), 10, 13 },  { N_ ("Limit of error ±"), 10, 13 },
  { N_ ("Calibrated"), 11, 13 },  { N_ ("Calibration due"), 11, 13 },
  { N_ ("Certificate"), 12, 24 }, { N_ ("In calibration when used"), 14, 36 },
};

static const TmColumn calibration_columns[] = {
  { N_ ("Gauge"), 9, 18 },         { N_ ("By"), 12, 24 },
  { N_ ("Outcome"), 8, 16 },       { N_ ("Unit"), 5, 7 },
  { N_ ("Uncertainty ±"), 8, 12 }, { N_ ("k"), 8, 12 },
  { N_ ("Known error"), 10, 13 },  { N_ ("In force when used"), 10, 13 },
  { N_ ("Calibrated"), 11, 13 },   { N_ ("Calibration due"), 11, 13 },
  { N_ ("Certificate"), 12, 24 },  { N_ ("Note"), 14, 36 },
};

static const TmColumn check_columns[] = {
  { N_ ("Gauge"), 9, 18 },  { N_ ("Checked (UTC)"), 17, 24 }, { N_ ("By"), 8, 16 },
  { N_ ("Unit"), 5, 7 },    { N_ ("Standard"), 8, 12 },       { N_ ("Reading"), 8, 12 },
  { N_ ("Drift"), 10, 13 }, { N_ ("Note"), 10, 13 },
};

static const TmColumn method_columns[] = {
  { N_ ("Method"), 9, 18 }, { N_ ("Gauges"), 12, 24 },       { N_ ("Repeatability from"), 8, 16 },
  { N_ ("Unit"), 5, 7 },    { N_ ("Repeatability"), 8, 12 }, { N_ ("Degrees of freedom"), 8, 12 },
};

/* -------- The gauges -------- */

static void
write_gauge (TmSheet *sheet, const TmGauge *gauge)
{
  g_autofree char *cover = tm_report_gauge_cover (sheet->workbook->content, gauge);

  tm_sheet_text (sheet, 0, gauge->tag, TM_STYLE_STRONG);
  tm_sheet_text (sheet, 1, gauge->kind, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 2, gauge->serial, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 3, tm_unit_symbol (gauge->unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 4, &gauge->range_from, gauge->unit);
  tm_sheet_quantity (sheet, 5, &gauge->range_to, gauge->unit);
  tm_sheet_quantity (sheet, 6, &gauge->resolution, gauge->unit);
  tm_sheet_quantity (sheet, 7, &gauge->error_limit, gauge->unit);
  tm_sheet_date (sheet, 8, gauge->calibrated);
  tm_sheet_date (sheet, 9, gauge->due);
  tm_sheet_text (sheet, 10, gauge->certificate, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 11, cover, TM_STYLE_CENTRE);
}

/* -------- Their history -------- */

static gboolean
is_shown (const TmSheet *sheet, const char *tag)
{
  const TmGauge *gauge = tm_job_find_gauge (sheet->workbook->job, tag);

  return gauge != NULL && g_ptr_array_find (sheet->workbook->content->gauges, gauge, NULL);
}

typedef struct {
  const TmJob *job;
  GHashTable *used; /* TmCalibration */
} InForce;

static void
note_calibration_cb (const char *tag, const TmReading *reading, gpointer data)
{
  InForce *in_force = data;
  const TmCalibration *calibration = tm_calibration_at (in_force->job, tag, reading->row.at);

  if (calibration != NULL)
    g_hash_table_add (in_force->used, (gpointer)calibration);
}

/* The calibrations that were in force at a reading or a trial that counts. */
static GHashTable *
find_in_force (const TmJob *job)
{
  InForce in_force = { job, g_hash_table_new (NULL, NULL) };

  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      if (tm_row_counts (&reading->row))
        tm_report_each_tag (job, reading, note_calibration_cb, &in_force);
    }
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);
      const TmCalibration *calibration = tm_calibration_at (job, trial->gauge, trial->row.at);
      if (calibration != NULL && tm_row_counts (&trial->row))
        g_hash_table_add (in_force.used, (gpointer)calibration);
    }
  return in_force.used;
}

static void
write_calibration (TmSheet *sheet, const TmCalibration *row, gboolean in_force)
{
  const TmUnit unit = tm_job_find_gauge (sheet->workbook->job, row->gauge)->unit;
  const gboolean bad = g_str_equal (row->outcome, "bad");

  tm_sheet_text (sheet, 0, row->gauge, TM_STYLE_STRONG);
  tm_sheet_text (sheet, 1, row->by, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 2, bad ? _ ("found bad") : _ ("good"), TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 3, tm_unit_symbol (unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 4, &row->uncertainty, unit);
  tm_sheet_quantity (sheet, 5, &row->coverage, TM_UNIT_HARDNESS);
  tm_sheet_quantity (sheet, 6, &row->error, unit);
  tm_sheet_text (sheet, 7, in_force ? _ ("yes") : _ ("no"), TM_STYLE_CENTRE);
  tm_sheet_date (sheet, 8, row->date);
  tm_sheet_date (sheet, 9, row->due);
  tm_sheet_text (sheet, 10, row->certificate, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 11, row->note, TM_STYLE_TEXT);
}

/* The heading of a further table. */
static gboolean
begin_table (TmSheet *sheet, const char *name, const TmColumn *table, guint n)
{
  if (!tm_sheet_next (sheet, 0.5))
    return FALSE;
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, name), TM_STYLE_SECTION);
  tm_sheet_down (sheet);
  tm_sheet_head (sheet, table, n, n);
  return TRUE;
}

static void
write_calibrations (TmSheet *sheet)
{
  const GPtrArray *rows = sheet->workbook->job->calibrations;
  g_autoptr (GHashTable) used = find_in_force (sheet->workbook->job);
  gboolean begun = FALSE;

  for (guint i = 0; i < rows->len; i++)
    {
      const TmCalibration *row = g_ptr_array_index (rows, i);

      if (!is_shown (sheet, row->gauge))
        continue;
      if (!begun
          && !begin_table (sheet, N_ ("Calibrations"), calibration_columns,
                           G_N_ELEMENTS (calibration_columns)))
        return;
      begun = TRUE;
      write_calibration (sheet, row, g_hash_table_contains (used, row));
      if (!tm_sheet_next (sheet, 0.5))
        return;
    }
}

static void
write_check (TmSheet *sheet, const TmCheck *row)
{
  const TmUnit unit = tm_job_find_gauge (sheet->workbook->job, row->gauge)->unit;
  const gint64 drift = tm_check_drift (sheet->workbook->job, row);
  const guint decimals = MAX (row->reading.decimals, row->standard.decimals);

  tm_sheet_text (sheet, 0, row->gauge, TM_STYLE_STRONG);
  tm_sheet_time (sheet, 1, row->at);
  tm_sheet_text (sheet, 2, row->by, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, 3, tm_unit_symbol (unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 4, &row->standard, unit);
  tm_sheet_quantity (sheet, 5, &row->reading, unit);
  tm_sheet_number (sheet, 6, tm_count_to_double (drift, unit), decimals, TM_STYLE_SIGNED);
  tm_sheet_text (sheet, 7, row->note, TM_STYLE_TEXT);
}

static void
write_checks (TmSheet *sheet)
{
  const GPtrArray *rows = sheet->workbook->job->checks;
  gboolean begun = FALSE;

  for (guint i = 0; i < rows->len; i++)
    {
      const TmCheck *row = g_ptr_array_index (rows, i);

      if (!is_shown (sheet, row->gauge))
        continue;
      if (!begun
          && !begin_table (sheet, N_ ("Checks on the standard"), check_columns, G_N_ELEMENTS (check_columns)))
        return;
      begun = TRUE;
      write_check (sheet, row);
      if (!tm_sheet_next (sheet, 0.5))
        return;
    }
}

/* -------- Methods -------- */

static void
write_method (TmSheet *sheet, const TmMethod *method)
{
  const TmJob *job = sheet->workbook->job;
  const TmGauge *first
      = method->gauges->len > 0 ? tm_job_find_gauge (job, g_ptr_array_index (method->gauges, 0)) : NULL;
  const TmUnit unit = first != NULL ? first->unit : job->unit;
  g_autofree char *tags = tm_report_gauges_of (job, method->name);

  tm_sheet_text (sheet, 0, method->name, TM_STYLE_STRONG);
  tm_sheet_text (sheet, 1, tags, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 2, method->repeatability_source, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 3, tm_unit_symbol (unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 4, &method->repeatability, unit);
  tm_sheet_quantity (sheet, 5, &method->repeatability_dof, TM_UNIT_COUNT);
}

static void
write_methods (TmSheet *sheet)
{
  const GPtrArray *methods = sheet->workbook->job->methods;

  if (methods->len == 0
      || !begin_table (sheet, N_ ("Methods"), method_columns, G_N_ELEMENTS (method_columns)))
    return;
  for (guint i = 0; i < methods->len; i++)
    {
      write_method (sheet, g_ptr_array_index (methods, i));
      if (!tm_sheet_next (sheet, 0.5 + 0.5 * i / methods->len))
        return;
    }
}

void
tm_sheet_write_gauges (TmWorkbook *workbook)
{
  const GPtrArray *gauges = workbook->content->gauges;
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Gauges"), N_ ("Gauges and methods"),
                      _ ("The gauges that took the readings, with their calibration.")))
    {
      tm_sheet_head (&sheet, columns, G_N_ELEMENTS (columns), G_N_ELEMENTS (columns));
      for (guint i = 0; i < gauges->len; i++)
        {
          write_gauge (&sheet, g_ptr_array_index (gauges, i));
          if (!tm_sheet_next (&sheet, 0.5 * i / gauges->len))
            break;
        }
      if (!tm_workbook_stopped (workbook))
        write_calibrations (&sheet);
      if (!tm_workbook_stopped (workbook))
        write_checks (&sheet);
      if (!tm_workbook_stopped (workbook))
        write_methods (&sheet);
    }
  tm_sheet_end (&sheet);
}
