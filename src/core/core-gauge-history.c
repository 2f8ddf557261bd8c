/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-gauge-history: whether what is known of a gauge fits it as it is to be.
 */

#include "core-gauge.h"

/* As tm_calibration_fault() and its like, for one row of a list. */
typedef TmGaugeFault (*RowFault) (const TmGauge *gauge, gconstpointer row);

static TmGaugeFault
calibration_fault (const TmGauge *gauge, gconstpointer row)
{
  return tm_calibration_fault (gauge, row);
}

static TmGaugeFault
check_fault (const TmGauge *gauge, gconstpointer row)
{
  return tm_check_fault (gauge, row);
}

static TmGaugeFault
pin_size_fault (const TmGauge *gauge, gconstpointer row)
{
  return tm_pin_size_fault (gauge, row);
}

G_STATIC_ASSERT (G_STRUCT_OFFSET (TmCalibration, gauge) == 0 && G_STRUCT_OFFSET (TmCheck, gauge) == 0
                 && G_STRUCT_OFFSET (TmPinSize, gauge) == 0);

/* Every row of a gauge's history begins with the gauge's tag. */
static TmGaugeFault
find_fault (const GPtrArray *rows, const char *tag, const TmGauge *gauge, RowFault row_fault)
{
  TmGaugeFault fault = TM_GAUGE_FINE;

  for (guint i = 0; fault == TM_GAUGE_FINE && i < rows->len; i++)
    {
      gconstpointer row = g_ptr_array_index (rows, i);

      if (g_str_equal (*(const char *const *)row, tag))
        fault = row_fault (gauge, row);
    }
  return fault;
}

TmGaugeFault
tm_gauge_history_fault (const TmJob *job, const char *tag, const TmGauge *gauge)
{
  TmGaugeFault fault;

  g_return_val_if_fail (job != NULL && tag != NULL && gauge != NULL, TM_GAUGE_FINE);

  fault = find_fault (job->calibrations, tag, gauge, calibration_fault);
  if (fault == TM_GAUGE_FINE)
    fault = find_fault (job->checks, tag, gauge, check_fault);
  return fault == TM_GAUGE_FINE ? find_fault (job->pin_sizes, tag, gauge, pin_size_fault) : fault;
}
