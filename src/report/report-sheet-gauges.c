/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-gauges: the gauges that were used, their calibration, and the methods they make up.
 */

#include <glib/gi18n-lib.h>

#include "report-gaps.h"
#include "report-sheets.h"
#include "report-words.h"

static const TmColumn columns[] = {
  { N_ ("Gauge"), 12, 24 },
  { N_ ("Kind"), 18, 30 },
  { N_ ("Unit"), 6, 8 },
  { N_ ("Resolution"), 12, 14 },
  { N_ ("Limit of error ±"), 12, 14 },
  { N_ ("Calibrated"), 12, 13 },
  { N_ ("Calibration due"), 12, 13 },
  { N_ ("Certificate"), 18, 34 },
  { N_ ("In calibration when used"), 14, 24 },
};

static const TmColumn method_columns[] = {
  { N_ ("Method"), 12, 24 },
  { N_ ("Gauges"), 18, 30 },
  { N_ ("Unit"), 6, 8 },
  { N_ ("Repeatability"), 12, 14 },
  { N_ ("Degrees of freedom"), 12, 14 },
};

/* Whether every counting reading by @gauge fell into its calibration. */
static gboolean
was_covered (const TmReportContent *content, const TmGauge *gauge)
{
  for (guint i = 0; i < content->gaps->len; i++)
    {
      const TmGap *gap = g_ptr_array_index (content->gaps, i);
      if (gap->kind == TM_GAP_GAUGE_OVERDUE && g_strcmp0 (gap->field, gauge->tag) == 0)
        return FALSE;
    }
  return TRUE;
}

static const char *
describe_cover (const TmReportContent *content, const TmGauge *gauge)
{
  if (!was_covered (content, gauge))
    return _ ("no");
  /* No date and no gap: it only ever carried sizes to a gauge that has one, or took no reading that
   * counts. */
  return *gauge->due == '\0' ? _ ("needs none: read by another") : _ ("yes");
}

static void
write_gauge (TmSheet *sheet, const TmGauge *gauge)
{
  tm_sheet_text (sheet, 0, gauge->tag, TM_STYLE_STRONG);
  tm_sheet_text (sheet, 1, gauge->kind, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 2, tm_unit_symbol (gauge->unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 3, &gauge->resolution, gauge->unit);
  tm_sheet_quantity (sheet, 4, &gauge->error_limit, gauge->unit);
  tm_sheet_date (sheet, 5, gauge->calibrated);
  tm_sheet_date (sheet, 6, gauge->due);
  tm_sheet_text (sheet, 7, gauge->certificate, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 8, describe_cover (sheet->workbook->content, gauge), TM_STYLE_CENTRE);
}

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
  tm_sheet_text (sheet, 2, tm_unit_symbol (unit), TM_STYLE_CENTRE);
  tm_sheet_quantity (sheet, 3, &method->repeatability, unit);
  tm_sheet_quantity (sheet, 4, &method->repeatability_dof, TM_UNIT_COUNT);
}

static void
write_methods (TmSheet *sheet)
{
  const GPtrArray *methods = sheet->workbook->job->methods;

  if (methods->len == 0 || !tm_sheet_next (sheet, 0.5))
    return;
  tm_sheet_text (sheet, 0, _ ("Methods"), TM_STYLE_SECTION);
  tm_sheet_down (sheet);
  tm_sheet_head (sheet, method_columns, G_N_ELEMENTS (method_columns), G_N_ELEMENTS (method_columns));
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

  if (tm_sheet_begin (&sheet, workbook, _ ("Gauges"), _ ("Gauges and methods"),
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
        write_methods (&sheet);
    }
  tm_sheet_end (&sheet);
}
