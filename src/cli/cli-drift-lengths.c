/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How sizes, spreads and slopes of a series are printed.
 */

#include <math.h>

#include "cli-drift-print.h"

/* A hundredth of a micrometre, or of a ten-thousandth of an inch. */
static guint
get_decimals (const TmSeries *series)
{
  switch (series->feature->unit)
    {
    case TM_UNIT_MM:
      return 5;
    case TM_UNIT_IN:
      return 6;
    case TM_UNIT_NONE:
    case TM_UNIT_UM:
    case TM_UNIT_UIN:
    case TM_UNIT_THOU:
    case TM_UNIT_TENTH:
    case TM_UNIT_DEGREE:
    case TM_UNIT_HARDNESS:
    case TM_UNIT_COUNT:
    case TM_UNIT_CELSIUS:
    case TM_N_UNITS:
    default:
      return 3;
    }
}

char *
tm_drift_format_spread (const TmSeries *series, double counts)
{
  double most = (double)TM_COUNT_MAX;

  return tm_count_format (llround (CLAMP (counts, -most, most)), series->feature->unit,
                          get_decimals (series));
}

char *
tm_drift_format_size (const TmSeries *series, double counts)
{
  return tm_drift_format_spread (series, (double)series->reference + counts);
}

const char *
tm_drift_unit (const TmSeries *series)
{
  return tm_unit_symbol (series->feature->unit);
}

/* Of a slope, whose last digits a piece are small: micrometres, or ten-thousandths of an inch. */
char *
tm_drift_format_rate (const TmSeries *series, double counts)
{
  TmUnit small = tm_unit_small (series->feature->unit);
  gint64 unit = tm_unit_counts (small);

  return g_strdup_printf ("%+.4f", unit > 0 ? counts / (double)unit : counts);
}

const char *
tm_drift_serial (const TmBatch *batch, guint point)
{
  return batch->series.points[point].piece->serial;
}
