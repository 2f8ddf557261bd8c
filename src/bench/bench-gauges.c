/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-gauges: the gauges that the next reading would be taken with, and the temperatures that go
 * with it.
 */

#include "bench-private.h"

#include "core-temperature.h"

const char *
tm_bench_method_in_force (const TmBench *bench)
{
  if (bench->method[0] != '\0' || bench->spot.feature == NULL)
    return bench->method;
  return bench->spot.feature->method;
}

guint
tm_bench_method_gauges (const TmBench *bench, const char *name, const TmGauge *gauges[TM_BENCH_MAX_GAUGES])
{
  const TmMethod *method = tm_job_find_method (bench->job, name);
  const TmGauge *gauge;
  guint n = 0;

  if (method == NULL)
    {
      gauge = tm_job_find_gauge (bench->job, name);
      if (gauge != NULL)
        gauges[n++] = gauge;
      return n;
    }
  for (guint i = 0; i < method->gauges->len && n < TM_BENCH_MAX_GAUGES; i++)
    {
      gauge = tm_job_find_gauge (bench->job, g_ptr_array_index (method->gauges, i));
      if (gauge != NULL)
        gauges[n++] = gauge;
    }
  return n;
}

const TmGauge *
tm_bench_find_short (const TmBench *bench, const TmQuantity *value)
{
  const TmGauge *gauges[TM_BENCH_MAX_GAUGES];
  guint n = tm_bench_method_gauges (bench, tm_bench_method_in_force (bench), gauges);

  /* A deviation of form or position is no size that the gauge spans. */
  if (!value->given || bench->spot.feature == NULL || !tm_feature_grows_warm (bench->spot.feature))
    return NULL;
  for (guint i = 0; i < n; i++)
    if (!tm_gauge_reaches (gauges[i], value->count))
      return gauges[i];
  return NULL;
}

void
tm_bench_set_temperatures (TmBench *bench, const TmQuantity *part, const TmQuantity *gauge)
{
  const TmQuantity none = { 0 };

  g_return_if_fail (bench != NULL);

  bench->part_temp = part != NULL ? *part : none;
  bench->gauge_temp = gauge != NULL ? *gauge : none;
}

void
tm_bench_temperatures (const TmBench *bench, TmQuantity *part, TmQuantity *gauge)
{
  g_return_if_fail (bench != NULL && part != NULL && gauge != NULL);

  *part = bench->part_temp;
  *gauge = bench->gauge_temp;
}

void
tm_bench_set_now (TmBench *bench, const char *at)
{
  g_return_if_fail (bench != NULL);

  g_free (bench->now);
  bench->now = g_strdup (at != NULL ? at : "");
}
