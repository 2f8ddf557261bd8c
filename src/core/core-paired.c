/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two methods on the same pieces: bias and limits of agreement.
 */

#include <math.h>

#include "core-correction.h"
#include "core-station.h"
#include "core-statistics.h"
#include "core-study.h"
#include "core-uncertainty.h"

#define AGREE 1.96 /* as Bland and Altman have it: 95 % of the differences, if they are normal */

/* The variance of a limit of agreement is that of the mean, s²/n, and of 1.96 s, about
 * 1.96² s² / (2 (n - 1)). */
gboolean
tm_paired (const double *a, const double *b, guint n, TmPaired *out)
{
  g_autofree double *differences = g_new (double, MAX (1, n));
  double t, of_mean, of_limit;
  TmSummary summary;

  *out = (TmPaired) { .n = n };
  if (n < 2)
    return FALSE;
  for (guint i = 0; i < n; i++)
    differences[i] = a[i] - b[i];
  tm_summary (differences, n, &summary);
  t = tm_t_quantile (0.975, n - 1.0);
  of_mean = t * summary.standard_deviation / sqrt (n);
  of_limit = t * summary.standard_deviation * sqrt (1.0 / n + AGREE * AGREE / (2 * (n - 1.0)));
  out->mean = summary.mean;
  out->sd = summary.standard_deviation;
  out->mean_low = out->mean - of_mean;
  out->mean_high = out->mean + of_mean;
  out->agree_low = out->mean - AGREE * out->sd;
  out->agree_high = out->mean + AGREE * out->sd;
  out->agree_low_low = out->agree_low - of_limit;
  out->agree_low_high = out->agree_low + of_limit;
  out->agree_high_low = out->agree_high - of_limit;
  out->agree_high_high = out->agree_high + of_limit;
  return TRUE;
}

/* The readings of one place by one method; a reading that names none is by the feature's. */
static GPtrArray *
select_readings (const TmFeature *feature, const GPtrArray *readings, const char *method)
{
  GPtrArray *selected = g_ptr_array_new ();

  for (guint i = 0; i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);

      if (g_str_equal (*reading->method != '\0' ? reading->method : feature->method, method))
        g_ptr_array_add (selected, g_ptr_array_index (readings, i));
    }
  return selected;
}

static double
find_mean (const TmLocalSize *size, TmUnit unit)
{
  return (double)size->sum / size->n / (double)tm_unit_counts (unit);
}

typedef struct {
  const TmFeature *feature;
  const char *method_a, *method_b;
  GArray *a, *b;
  const TmJob *job;
} Pairs;

static void
add_stations (Pairs *pairs, const TmSizes *a, const TmSizes *b)
{
  for (guint i = 0; i < a->n_stations; i++)
    for (guint j = 0; j < b->n_stations; j++)
      {
        const double mean_a = find_mean (&a->stations[i], pairs->feature->unit);
        const double mean_b = find_mean (&b->stations[j], pairs->feature->unit);

        if (!tm_station_same (a->stations[i].station, b->stations[j].station, pairs->feature->unit))
          continue;
        g_array_append_val (pairs->a, mean_a);
        g_array_append_val (pairs->b, mean_b);
        break;
      }
}

static void
add_place (Pairs *pairs, const GPtrArray *readings)
{
  g_autoptr (GPtrArray) a = select_readings (pairs->feature, readings, pairs->method_a);
  g_autoptr (GPtrArray) b = select_readings (pairs->feature, readings, pairs->method_b);
  g_auto (TmSizes) sizes_a = { 0 }, sizes_b = { 0 };

  tm_sizes_of (pairs->job, pairs->feature, a, NULL, &sizes_a);
  tm_sizes_of (pairs->job, pairs->feature, b, NULL, &sizes_b);
  add_stations (pairs, &sizes_a, &sizes_b);
}

guint
tm_paired_values (const TmJob *job, const TmFeature *feature, const char *method_a, const char *method_b,
                  double **a, double **b)
{
  Pairs pairs = { feature, method_a, method_b, NULL, NULL, job };
  guint n;

  pairs.a = g_array_new (FALSE, FALSE, sizeof (double));
  pairs.b = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < job->pieces->len && !tm_kind_is_attribute (feature->kind); i++)
    for (guint place = 1; place <= feature->places; place++)
      {
        const GPtrArray *readings
            = tm_job_readings_at (job, g_ptr_array_index (job->pieces, i), feature, place);

        if (readings != NULL)
          add_place (&pairs, readings);
      }
  n = pairs.a->len;
  *a = (double *)(gpointer)g_array_free (pairs.a, FALSE);
  *b = (double *)(gpointer)g_array_free (pairs.b, FALSE);
  return n;
}
