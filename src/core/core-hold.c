/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-hold.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

/* Measured pieces on each side that tell the level about one that was not measured. */
#define NEIGHBOURS 2

/* The piece after the last one measured before @low: no reading says that it was still made as before. */
static guint
find_first (const TmSeries *series, guint low)
{
  const guint start = tm_series_stretch_start (series, low);
  guint first = low;

  while (first > start && isnan (series->points[first - 1].mean))
    first--;
  return first;
}

typedef struct {
  double smallest, largest; /* sums */
  guint n;
} Level;

static void
add_point (const TmSeriesPoint *point, Level *level)
{
  level->smallest += point->smallest;
  level->largest += point->largest;
  level->n++;
}

/* Of the pieces measured from @from on, up to @end, the nearest to @at on each side. */
static Level
find_level (const TmSeries *series, guint from, guint at, guint end)
{
  Level level = { 0 };
  guint found = 0;

  for (guint i = at; i > from && found < NEIGHBOURS; i--)
    if (!isnan (series->points[i - 1].mean))
      add_point (&series->points[i - 1], &level), found++;
  found = 0;
  for (guint i = at + 1; i < end && found < NEIGHBOURS; i++)
    if (i >= from && !isnan (series->points[i].mean))
      add_point (&series->points[i], &level), found++;
  return level;
}

/* Of a piece whose level is known from @level->n others. */
static double
find_out (const TmSeries *series, const Level *level, double sigma)
{
  const double spread = sigma * sqrt (1 + 1.0 / level->n);
  const double above = series->upper - level->largest / level->n;
  const double below = level->smallest / level->n - series->lower;

  if (!(spread > 0))
    return above < 0 || below < 0;
  return MIN (1, gsl_cdf_ugaussian_Q (above / spread) + gsl_cdf_ugaussian_Q (below / spread));
}

static double
find_measured_out (const TmSeriesPoint *point)
{
  if (!isnan (point->probability_in))
    return 1 - point->probability_in;
  if (point->verdict == TM_VERDICT_OUT)
    return 1;
  return point->verdict == TM_VERDICT_TOO_CLOSE ? 0.5 : 0;
}

GArray *
tm_hold_back (const TmSeries *series, const TmLevelChange *change, double sigma, double least_chance)
{
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (TmHoldRow));
  guint end;

  g_return_val_if_fail (series != NULL && change != NULL, rows);
  if (!change->found || change->at >= series->n_points)
    return rows;

  end = tm_series_stretch_end (series, change->at);
  for (guint i = find_first (series, change->low); i < end; i++)
    {
      const TmSeriesPoint *point = &series->points[i];
      TmHoldRow row = { .point = i, .measured = !isnan (point->mean) };

      if (row.measured)
        row.out = find_measured_out (point);
      else
        {
          Level level = find_level (series, change->at, i, end);

          row.out = find_out (series, &level, sigma);
        }
      if (row.out >= least_chance)
        g_array_append_val (rows, row);
    }
  return rows;
}
