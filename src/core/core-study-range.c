/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-study-range.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#define NODES       128
#define REACH       9.0 /* standard deviations; what lies beyond is under 1e-18 */
#define MOST_GROUPS 15

typedef struct {
  gsl_integration_glfixed_table *table;
  guint n;
  double width;
} Range;

/* P(the range of n values <= w) = n ∫ φ(x) [Φ(x + w) - Φ(x)]^(n-1) dx. */
static double
find_density_cb (double x, void *data)
{
  const Range *range = data;
  const double inside = gsl_cdf_ugaussian_P (x + range->width) - gsl_cdf_ugaussian_P (x);

  return range->n * gsl_ran_ugaussian_pdf (x) * pow (inside, range->n - 1);
}

static double
find_above_cb (double width, void *data)
{
  Range *range = data;
  gsl_function density = { find_density_cb, range };

  range->width = width;
  return 1 - gsl_integration_glfixed (&density, -REACH, REACH, range->table);
}

static double
find_above_moment_cb (double width, void *data)
{
  return 2 * width * find_above_cb (width, data);
}

/* E(R) = ∫ P(R > w) dw and E(R²) = ∫ 2w P(R > w) dw. */
static void
integrate (guint n, double *d2, double *d3)
{
  Range range = { gsl_integration_glfixed_table_alloc (NODES), n, 0 };
  gsl_function above = { find_above_cb, &range }, above_moment = { find_above_moment_cb, &range };
  double moment;

  *d2 = gsl_integration_glfixed (&above, 0, 2 * REACH, range.table);
  moment = gsl_integration_glfixed (&above_moment, 0, 2 * REACH, range.table);
  *d3 = sqrt (MAX (0, moment - *d2 * *d2));
  gsl_integration_glfixed_table_free (range.table);
}

/* Moments already found: a pure cache, one per thread. */
#define CACHE_SIZE 64

void
tm_range_moments (guint n, double *d2, double *d3)
{
  static _Thread_local struct {
    guint n;
    double d2, d3;
  } cache[CACHE_SIZE];
  const guint at = n % CACHE_SIZE;

  if (cache[at].n != n)
    {
      integrate (n, &cache[at].d2, &cache[at].d3);
      cache[at].n = n;
    }
  *d2 = cache[at].d2;
  *d3 = cache[at].d3;
}

double
tm_range_divisor (guint n, guint groups)
{
  double d2, d3;

  tm_range_moments (n, &d2, &d3);
  return groups > MOST_GROUPS ? d2 : sqrt (d2 * d2 + d3 * d3 / groups);
}

static double
find_cell_range (const double *cell, guint repeats)
{
  double low = cell[0], high = cell[0];

  for (guint i = 1; i < repeats; i++)
    {
      low = MIN (low, cell[i]);
      high = MAX (high, cell[i]);
    }
  return high - low;
}

static double
find_cell_mean (const double *cell, guint repeats)
{
  double sum = 0;

  for (guint i = 0; i < repeats; i++)
    sum += cell[i] - cell[0];
  return cell[0] + sum / repeats;
}

void
tm_study_person (const double *values, guint pieces, guint people, guint repeats, guint person,
                 double *mean_range, double *mean)
{
  double ranges = 0, sum = 0;

  for (guint i = 0; i < pieces; i++)
    {
      const double *cell = values + (i * people + person) * repeats;

      ranges += find_cell_range (cell, repeats);
      sum += find_cell_mean (cell, repeats) - values[0];
    }
  *mean_range = ranges / pieces;
  *mean = values[0] + sum / pieces;
}

/* Largest - smallest mean of a person; the mean range over all people beside. */
static double
find_people_spread (const double *values, guint pieces, guint people, guint repeats, double *mean_range)
{
  double low = INFINITY, high = -INFINITY, ranges = 0;

  for (guint i = 0; i < people; i++)
    {
      double range, mean;

      tm_study_person (values, pieces, people, repeats, i, &range, &mean);
      ranges += range;
      low = MIN (low, mean);
      high = MAX (high, mean);
    }
  *mean_range = ranges / people;
  return high - low;
}

static double
find_piece_range (const double *values, guint pieces, guint per_piece)
{
  double low = INFINITY, high = -INFINITY;

  for (guint i = 0; i < pieces; i++)
    {
      const double mean = find_cell_mean (values + i * per_piece, per_piece);

      low = MIN (low, mean);
      high = MAX (high, mean);
    }
  return high - low;
}

/* EV = R̄/d2*, AV = √((X/d2*)² - EV²/(pieces · repeats)), PV = Rp/d2* (the measurement systems manual of
 * the automotive industry, chapter III, from memory). */
void
tm_study_range (const double *values, guint pieces, guint people, guint repeats, TmStudyRange *out)
{
  *out = (TmStudyRange) { .av = NAN, .mean_spread = NAN };
  out->mean_spread = find_people_spread (values, pieces, people, repeats, &out->mean_range);
  out->piece_range = find_piece_range (values, pieces, people * repeats);
  out->ev = out->mean_range / tm_range_divisor (repeats, pieces * people);
  out->pv = out->piece_range / tm_range_divisor (pieces, 1);
  out->grr = out->ev;
  if (people > 1)
    {
      const double spread = out->mean_spread / tm_range_divisor (people, 1);
      const double own = out->ev * out->ev / ((double)pieces * repeats);

      out->av = sqrt (MAX (0, spread * spread - own));
      out->grr = hypot (out->ev, out->av);
    }
  else
    out->mean_spread = NAN;
  out->tv = hypot (out->grr, out->pv);
}
