/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-temperature.h"

#include <math.h>

/* ISO 1: the temperature at which sizes are stated, °C. */
#define REFERENCE 20.0

/* L ((1 + αg θg) / (1 + αp θp) - 1), written so that nothing cancels. */
double
tm_temperature_correction (double length, double part_alpha, double gauge_alpha, double part_temp,
                           double gauge_temp)
{
  double part = part_alpha * 1e-6 * (part_temp - REFERENCE);
  double gauge = gauge_alpha * 1e-6 * (gauge_temp - REFERENCE);

  return length * (gauge - part) / (1 + part);
}

double
tm_warmth_temperature (const TmWarmth *warmth, double length)
{
  return fabs (length * warmth->alpha * 1e-6 * warmth->half_width);
}

double
tm_warmth_expansion (const TmWarmth *warmth, double length)
{
  double away = hypot (warmth->away, warmth->half_width / sqrt (3));

  return fabs (length * warmth->alpha_half_width * 1e-6 * away);
}

gboolean
tm_temperature_may_be (const TmQuantity *temperature)
{
  double celsius;

  if (!temperature->given)
    return TRUE;
  celsius = tm_count_to_double (temperature->count, temperature->unit);
  return celsius >= TM_TEMPERATURE_LEAST && celsius <= TM_TEMPERATURE_MOST;
}

gboolean
tm_feature_grows_warm (const TmFeature *feature)
{
  return tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH && !tm_kind_is_attribute (feature->kind)
         && !tm_kind_is_zero_bounded (feature->kind);
}

gint64
tm_feature_length (const TmFeature *feature)
{
  if (feature->nominal.given)
    return feature->nominal.count;
  if (feature->lower.given && feature->upper.given)
    return feature->lower.count + (feature->upper.count - feature->lower.count) / 2;
  if (feature->lower.given || feature->upper.given)
    return feature->lower.given ? feature->lower.count : feature->upper.count;
  return 0;
}

gboolean
tm_reading_temperature (const TmJob *job, const TmGauge *gauge, const TmReading *reading, double *correction)
{
  TmExpansion part, own;

  if (!reading->part_temp.given || !reading->gauge_temp.given || !reading->value.given
      || !tm_feature_grows_warm (reading->row.feature) || !tm_job_expansion (job, &part))
    return FALSE;
  own = tm_gauge_expansion (gauge);
  *correction
      = tm_temperature_correction ((double)reading->value.count, part.value, own.value,
                                   tm_count_to_double (reading->part_temp.count, reading->part_temp.unit),
                                   tm_count_to_double (reading->gauge_temp.count, reading->gauge_temp.unit));
  return TRUE;
}
