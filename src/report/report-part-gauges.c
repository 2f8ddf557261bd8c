/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-gauges: the gauges that took the readings, with their calibration.
 */

#include <glib/gi18n-lib.h>

#include "report-gauge-words.h"
#include "report-part.h"

typedef struct {
  const TmReportContent *content;
  const TmGauge *gauge;
} Cover;

static char *
say_cover (gconstpointer data)
{
  const Cover *cover = data;

  return tm_report_gauge_cover (cover->content, cover->gauge);
}

static void
add_gauge (TmParts *parts, const TmGauge *gauge)
{
  const Cover data = { parts->content, gauge };
  g_autofree char *cover = tm_part_both (parts, say_cover, &data);

  tm_report_add_cell (parts->document, gauge->tag);
  tm_report_add_cell (parts->document, gauge->kind);
  tm_report_add_cell (parts->document, gauge->serial);
  tm_report_add_cell (parts->document, tm_unit_symbol (gauge->unit));
  tm_part_quantity_cell (parts, &gauge->resolution, gauge->unit);
  tm_part_quantity_cell (parts, &gauge->error_limit, gauge->unit);
  tm_part_date_cell (parts, gauge->calibrated);
  tm_part_date_cell (parts, gauge->due);
  tm_report_add_cell (parts->document, gauge->certificate);
  tm_report_add_cell (parts->document, cover);
}

void
tm_part_gauges (TmParts *parts)
{
  static const TmReportColumn columns[] = {
    { N_ ("Gauge"), 36, 80, 0, TM_CELL_STRONG },
    { N_ ("Kind"), 50, 110, 1, TM_CELL_PLAIN },
    { N_ ("Serial"), 30, 70, 0, TM_CELL_PLAIN },
    { N_ ("Unit"), 22, 30, 0, TM_CELL_CENTRE },
    { N_ ("Resolution"), 30, 0, 0, TM_CELL_NUMBER },
    { N_ ("Limit of error ±"), 30, 0, 0, TM_CELL_NUMBER },
    { N_ ("Calibrated"), 48, 56, 0, TM_CELL_PLAIN },
    { N_ ("Calibration due"), 48, 56, 0, TM_CELL_PLAIN },
    { N_ ("Certificate"), 44, 90, 0, TM_CELL_PLAIN },
    { N_ ("In calibration when used"), 56, 150, 1, TM_CELL_PLAIN },
  };
  const GPtrArray *gauges = parts->content->gauges;

  if (gauges->len == 0)
    return;
  tm_part_section (parts, N_ ("Gauges"), "gauges", FALSE);
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < gauges->len; i++)
    add_gauge (parts, g_ptr_array_index (gauges, i));
}
