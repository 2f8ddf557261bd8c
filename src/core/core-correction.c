/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-correction.h"

#include <math.h>
#include <string.h>

#include "core-gauge.h"
#include "core-temperature.h"

/* A method's gauges, or a gauge used alone. */
typedef struct {
  const TmGauge *gauges[2];
  guint n;
} Gauges;

static Gauges
find_gauges (const TmJob *job, const TmReading *reading)
{
  const char *name = reading->method[0] != '\0' ? reading->method : reading->row.feature->method;
  const TmMethod *method = tm_job_find_method (job, name);
  Gauges found = { { NULL }, 0 };
  const TmGauge *gauge;

  for (guint i = 0; method && i < MIN (method->gauges->len, 2); i++)
    if ((gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i))) != NULL)
      found.gauges[found.n++] = gauge;
  if (method == NULL && (gauge = tm_job_find_gauge (job, name)) != NULL)
    found.gauges[found.n++] = gauge;
  return found;
}

gboolean
tm_error_is_supposed (const TmJudgeOptions *options, const char *tag, const char *at)
{
  if (options == NULL || options->gauge == NULL || strcmp (options->gauge, tag) != 0)
    return FALSE;
  return options->since == NULL || at[0] == '\0' || strcmp (at, options->since) >= 0;
}

/* An error counts only where it and the feature measure the same thing; one that is supposed does. */
static gint64
find_error (const TmJob *job, const TmJudgeOptions *options, const TmGauge *gauge, const TmReading *reading)
{
  const TmCalibration *calibration;

  if (tm_error_is_supposed (options, gauge->tag, reading->row.at))
    return options->error;
  calibration = job->calibrations->len > 0 ? tm_calibration_at (job, gauge->tag, reading->row.at) : NULL;
  if (calibration == NULL || !calibration->error.given
      || tm_unit_dimension (calibration->error.unit) != tm_unit_dimension (reading->row.feature->unit))
    return 0;
  return calibration->error.count;
}

static gboolean
may_have_error (const TmJob *job, const TmJudgeOptions *options)
{
  return job->calibrations->len > 0 || (options != NULL && options->gauge != NULL);
}

static gint64
sum_errors (const TmJob *job, const TmJudgeOptions *options, const Gauges *gauges, const TmReading *reading)
{
  TmWide sum = 0;

  for (guint i = 0; i < gauges->n; i++)
    sum += find_error (job, options, gauges->gauges[i], reading);
  return (gint64)CLAMP (sum, -TM_COUNT_MAX, TM_COUNT_MAX);
}

static gboolean
has_temperatures (const TmReading *reading)
{
  return reading->part_temp.given && reading->gauge_temp.given;
}

TmCorrection
tm_reading_correction (const TmJob *job, const TmReading *reading, const TmJudgeOptions *options)
{
  TmCorrection correction = { 0, 0, 0 };
  gboolean may_err = may_have_error (job, options);
  Gauges gauges;

  if (!reading->value.given || (!may_err && !has_temperatures (reading)))
    return correction;
  gauges = find_gauges (job, reading);
  if (may_err)
    correction.certificate = -sum_errors (job, options, &gauges, reading);
  if (!tm_reading_temperature (job, gauges.n > 0 ? gauges.gauges[gauges.n - 1] : NULL, reading,
                               &correction.temperature))
    correction.temperature = 0;
  correction.total = tm_count_from_double (correction.temperature, TM_UNIT_COUNT);
  correction.total = CLAMP (correction.total + correction.certificate, -TM_COUNT_MAX, TM_COUNT_MAX);
  return correction;
}

typedef struct {
  const TmJob *job;
  const TmJudgeOptions *options;
} Corrector;

static gint64
correct_cb (gconstpointer data, const TmReading *reading)
{
  const Corrector *corrector = data;

  return tm_reading_correction (corrector->job, reading, corrector->options).total;
}

void
tm_sizes_of (const TmJob *job, const TmFeature *feature, const GPtrArray *readings,
             const TmJudgeOptions *options, TmSizes *out)
{
  const Corrector corrector = { job, options };

  tm_sizes_collect_corrected (feature, readings, correct_cb, &corrector, out);
}

void
tm_sizes_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
             const TmJudgeOptions *options, TmSizes *out)
{
  tm_sizes_of (job, feature, tm_job_readings_at (job, piece, feature, place), options, out);
}
