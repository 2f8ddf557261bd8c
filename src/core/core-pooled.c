/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-pooled.h"

#include <math.h>
#include <string.h>

#include "core-station.h"

gboolean
tm_pool_squares (const double *sums, const guint *dofs, gsize n, double *sd, guint *dof)
{
  double sum = 0;
  guint total = 0;

  for (gsize i = 0; i < n; i++)
    {
      sum += sums[i];
      total += dofs[i];
    }
  if (total == 0)
    return FALSE;
  *sd = sqrt (sum / total);
  *dof = total;
  return TRUE;
}

typedef struct {
  const char *method;
  TmDimension dimension;
  GArray *sums; /* double */
  GArray *dofs; /* guint */
  TmPooled *out;
} Pooling;

static gboolean
is_taken_by (const Pooling *pooling, const TmReading *reading)
{
  const TmFeature *feature = reading->row.feature;
  const char *method = *reading->method != '\0' ? reading->method : feature->method;

  return tm_row_counts (&reading->row) && strcmp (method, pooling->method) == 0
         && tm_unit_dimension (feature->unit) == pooling->dimension;
}

static const TmQuantity *
get_value (const TmReading *reading, guint which)
{
  const TmQuantity *const values[] = { &reading->value, &reading->dx, &reading->dy };

  return values[which];
}

/* A position is a reading of each offset; its deviation, never below zero, is none where they stand. */
static gboolean
has_value (const TmReading *reading, guint which)
{
  gboolean offsets = reading->dx.given && reading->dy.given;

  return which == 0 ? reading->value.given && !offsets : offsets;
}

/* Deviations are taken from the first value, exactly, so that nothing is lost to a large size. */
static void
pool_group (Pooling *pooling, GPtrArray *group, guint which)
{
  gint64 first = 0;
  double sum = 0, squares = 0, mean;
  guint n = 0, dof;

  for (guint i = 0; i < group->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (group, i);

      if (!has_value (reading, which))
        continue;
      first = n == 0 ? get_value (reading, which)->count : first;
      sum += (double)(get_value (reading, which)->count - first);
      n++;
    }
  if (n < 2)
    return;
  mean = sum / n;
  for (guint i = 0; i < group->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (group, i);
      double deviation = (double)(get_value (reading, which)->count - first) - mean;

      squares += has_value (reading, which) ? deviation * deviation : 0;
    }
  dof = n - 1;
  g_array_append_val (pooling->sums, squares);
  g_array_append_val (pooling->dofs, dof);
  pooling->out->n_stations += which == 2 ? 0 : 1;
  pooling->out->n_readings += which == 2 ? 0 : n;
}

/* Takes the readings at the station of the first of *@left out of it. */
static GPtrArray *
take_station (GPtrArray **left)
{
  GPtrArray *group = g_ptr_array_new (), *others = g_ptr_array_new ();
  const TmReading *first = g_ptr_array_index (*left, 0);

  for (guint i = 0; i < (*left)->len; i++)
    {
      TmReading *reading = g_ptr_array_index (*left, i);
      gboolean same = tm_station_same (reading->station, first->station, first->row.feature->unit);

      g_ptr_array_add (same ? group : others, reading);
    }
  g_ptr_array_unref (*left);
  *left = others;
  return group;
}

static void
pool_place (Pooling *pooling, const GPtrArray *readings)
{
  g_autoptr (GPtrArray) left = g_ptr_array_new ();

  for (guint i = 0; i < readings->len; i++)
    if (is_taken_by (pooling, g_ptr_array_index (readings, i)))
      g_ptr_array_add (left, g_ptr_array_index (readings, i));
  while (left->len > 0)
    {
      g_autoptr (GPtrArray) group = take_station (&left);

      for (guint which = 0; which < 3; which++)
        pool_group (pooling, group, which);
    }
}

gboolean
tm_pooled_repeatability (const TmJob *job, const char *method_name, TmDimension dimension, TmPooled *out)
{
  g_autoptr (GArray) sums = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) dofs = g_array_new (FALSE, FALSE, sizeof (guint));
  Pooling pooling = { method_name, dimension, sums, dofs, out };

  *out = (TmPooled) { 0 };
  if (*method_name == '\0')
    return FALSE;
  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      const GPtrArray *place
          = tm_job_readings_at (job, reading->row.piece, reading->row.feature, reading->place);

      if (place != NULL && g_ptr_array_index (place, 0) == reading)
        pool_place (&pooling, place);
    }
  return tm_pool_squares ((const double *)(gpointer)sums->data, (const guint *)(gpointer)dofs->data,
                          sums->len, &out->sd, &out->dof);
}

TmQuantity
tm_pooled_quantity (const TmPooled *pooled, TmUnit unit)
{
  double value = pooled->sd / (double)MAX (tm_unit_counts (unit), 1);
  double wanted = value > 0 ? 2 - floor (log10 (value)) : 3;
  guint decimals = (guint)CLAMP (wanted, 0, 9);
  double scale = pow (10, decimals);

  return tm_quantity_new (tm_count_from_double (round (value * scale) / scale, unit), unit, decimals);
}
