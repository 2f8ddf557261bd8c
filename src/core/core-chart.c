/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-chart.h"

#include <gsl/gsl_sf_gamma.h>
#include <math.h>

#include "core-study-range.h"

/* Covariance of two moving ranges that share a value, of a normal process with standard deviation 1: of
 * |X|, |Y| with variance 2 and correlation 1/2, (4/π)(√(1-ρ²) + ρ asin ρ) - 4/π (N. L. Johnson, S. Kotz,
 * Continuous Multivariate Distributions). */
#define SHARED_RANGES (2 * M_SQRT3 / G_PI + 1.0 / 3 - 4 / G_PI)
#define M_SQRT3       1.7320508075688772

/* Above this the series of c4 is good to all digits, and lnpoch is not. */
#define MANY 150

/* √(2/ν) Γ((ν+1)/2) / Γ(ν/2), the mean of χ/√ν: lnpoch keeps all digits where two lgammas would cancel; its
 * series in 1/ν follows from Stirling's. */
static double
find_mean_root (double dof)
{
  const double v = 1 / dof;

  if (dof > MANY)
    return 1 - v / 4 * (1 - v / 8 * (1 + v / 4 * (5 - v * 21 / 16 * (1 + v * 19 / 4))));
  return sqrt (2 * v) * exp (gsl_sf_lnpoch (dof / 2, 0.5));
}

double
tm_chart_c4 (guint n)
{
  g_return_val_if_fail (n >= 2, NAN);

  return find_mean_root (n - 1.0);
}

void
tm_chart_factors (guint n, TmChartFactors *out)
{
  double spread;

  g_return_if_fail (n >= 2 && out != NULL);

  out->c4 = tm_chart_c4 (n);
  tm_range_moments (n, &out->d2, &out->d3);
  spread = 3 * sqrt (1 - out->c4 * out->c4) / out->c4;
  out->a2 = 3 / (out->d2 * sqrt (n));
  out->a3 = 3 / (out->c4 * sqrt (n));
  out->b3 = MAX (0, 1 - spread);
  out->b4 = 1 + spread;
  out->d_3 = MAX (0, 1 - 3 * out->d3 / out->d2);
  out->d_4 = 1 + 3 * out->d3 / out->d2;
  out->e2 = 3 / out->d2;
}

/* -------- Groups -------- */

static void
describe_values (const double *values, guint n, TmChartGroup *group)
{
  double first = NAN, sum = 0; /* differences from the first value keep the digits of a small spread */

  for (guint i = 0; i < n; i++)
    if (!isnan (values[i]))
      {
        if (group->n++ == 0)
          first = values[i];
        sum += values[i] - first;
      }
  group->location = group->n > 0 ? first + sum / group->n : NAN;
}

static double
find_range (const double *values, guint n)
{
  double least = INFINITY, most = -INFINITY;

  for (guint i = 0; i < n; i++)
    if (!isnan (values[i]))
      {
        least = MIN (least, values[i]);
        most = MAX (most, values[i]);
      }
  return most - least;
}

static double
find_deviation (const double *values, guint n, const TmChartGroup *group)
{
  double squares = 0;

  for (guint i = 0; i < n; i++)
    if (!isnan (values[i]))
      squares += (values[i] - group->location) * (values[i] - group->location);
  return sqrt (squares / (group->n - 1));
}

static guint
count_groups (const TmChartInput *input, GArray *groups)
{
  gsize at = 0;
  guint next_break = 0;

  while (at < input->n)
    {
      TmChartGroup group = { .from = (guint)at, .location = NAN, .dispersion = NAN };
      gsize end = MIN (input->n, at + input->group_size);

      while (next_break < input->n_breaks && input->breaks[next_break] <= at)
        next_break++;
      if (next_break < input->n_breaks)
        end = MIN (end, input->breaks[next_break]);
      group.dispersion_centre = group.dispersion_lower = group.dispersion_upper = NAN;
      group.location_lower = group.location_upper = NAN;
      describe_values (input->values + at, (guint)(end - at), &group);
      g_array_append_val (groups, group);
      at = end;
    }
  return groups->len;
}

/* The last group may still be in the making: it changes nothing about the others. */
static gboolean
has_equal_groups (const TmChart *chart, guint size)
{
  for (guint i = 0; i + 1 < chart->n_groups; i++)
    if (chart->groups[i].n != 0 && chart->groups[i].n != size)
      return FALSE;
  return TRUE;
}

/* Of individuals: the range to the value before, none over a break. */
static void
fill_moving_ranges (const TmChartInput *input, TmChart *chart)
{
  guint next = 0;

  for (guint i = 1; i < chart->n_groups; i++)
    {
      TmChartGroup *group = &chart->groups[i];

      while (next < input->n_breaks && input->breaks[next] < group->from)
        next++;
      if (next == input->n_breaks || input->breaks[next] != group->from)
        group->dispersion = fabs (group->location - group[-1].location);
    }
}

static void
fill_dispersions (const TmChartInput *input, TmChart *chart)
{
  for (guint i = 0; i < chart->n_groups; i++)
    {
      TmChartGroup *group = &chart->groups[i];
      const double *values = input->values + group->from;
      guint end = i + 1 < chart->n_groups ? chart->groups[i + 1].from : (guint)input->n;

      if (group->n >= 2)
        group->dispersion = chart->kind == TM_CHART_RANGES
                                ? find_range (values, end - group->from)
                                : find_deviation (values, end - group->from, group);
    }
}

/* -------- Centre and spread -------- */

/* The ν whose c4(ν + 1)² is @share: the chi of ν degrees of freedom that has the mean and the variance of
 * the estimate (P. B. Patnaik, Biometrika 37, 1950). */
static double
solve_dof (double share)
{
  double low = 1e-3, high = 1e9;

  for (guint i = 0; i < 200; i++)
    {
      double middle = sqrt (low * high);
      double c4 = find_mean_root (middle);

      if (c4 * c4 < share)
        low = middle;
      else
        high = middle;
    }
  return sqrt (low * high);
}

/* How much one group's dispersion, over sigma, is on average, and its variance. */
static void
find_moments (TmChartKind kind, guint n, double *mean, double *variance)
{
  if (kind == TM_CHART_DEVIATIONS)
    {
      *mean = tm_chart_c4 (n);
      *variance = 1 - *mean * *mean;
      return;
    }
  tm_range_moments (kind == TM_CHART_INDIVIDUALS ? 2 : n, mean, variance);
  *variance *= *variance;
}

typedef struct {
  double weight;   /* Σ h */
  double sum;      /* Σ h · dispersion / mean */
  double variance; /* of the estimate over sigma, times weight² */
  guint n;
} Pool;

static void
pool_group (TmChartKind kind, const TmChartGroup *group, Pool *pool)
{
  double mean, variance, h;

  if (isnan (group->dispersion))
    return;
  find_moments (kind, group->n, &mean, &variance);
  h = mean * mean / variance; /* least variance (I. W. Burr, J. Quality Technology 1, 1969) */
  pool->sum += h * group->dispersion / mean;
  pool->weight += h;
  pool->variance += h * h * variance / (mean * mean);
  pool->n++;
}

static void
set_sigma (double sigma, double variance, TmChart *chart)
{
  chart->sigma = sigma;
  chart->sigma_dof = solve_dof (1 / (1 + variance));
  chart->status = sigma > 0 ? TM_CHART_OK : TM_CHART_NO_SPREAD;
}

static void
find_level (const TmChartInput *input, TmChart *chart)
{
  double first = NAN, sum = 0;
  guint n = 0, used = 0;
  Pool pool = { 0 };

  for (guint i = 0; i < chart->n_groups && (input->baseline == 0 || used < input->baseline); i++)
    {
      const TmChartGroup *group = &chart->groups[i];

      pool_group (chart->kind, group, &pool);
      if (group->n == 0)
        continue;
      if (used++ == 0)
        first = group->location;
      sum += (group->location - first) * group->n;
      n += group->n;
    }
  chart->baseline = used;
  chart->centre = n > 0 ? first + sum / n : NAN;
  if (pool.n < 2)
    chart->status = TM_CHART_TOO_FEW;
  else
    set_sigma (pool.sum / pool.weight, pool.variance / (pool.weight * pool.weight), chart);
}

/* -------- Individuals: from the values alone, without a group for each -------- */

typedef struct {
  double first; /* value; NAN: none */
  double sum;   /* of differences from it */
  double ranges;
  guint n, n_ranges, n_shared; /* values, ranges, ranges that share a value with the one before */
} Individuals;

/* Values @from to @end, none missing, which follow each other.  Four sums side by side: one after the other
 * they would wait for each other. */
static void
add_values (const double *values, gsize from, gsize end, Individuals *all)
{
  double sums[4] = { 0 }, ranges[4] = { 0 };
  gsize i = from;

  if (all->n == 0)
    all->first = values[from];
  for (; i + 4 < end; i += 4)
    for (guint k = 0; k < 4; k++)
      {
        sums[k] += values[i + k] - all->first;
        ranges[k] += fabs (values[i + k + 1] - values[i + k]);
      }
  for (; i < end; i++)
    {
      sums[0] += values[i] - all->first;
      if (i + 1 < end)
        ranges[0] += fabs (values[i + 1] - values[i]);
    }
  all->sum += (sums[0] + sums[1]) + (sums[2] + sums[3]);
  all->ranges += (ranges[0] + ranges[1]) + (ranges[2] + ranges[3]);
  all->n += (guint)(end - from);
  all->n_ranges += (guint)(end - from - 1);
  if (end - from > 2)
    all->n_shared += (guint)(end - from - 2);
}

static void
gather_individuals (const TmChartInput *input, Individuals *all)
{
  const guint most = input->baseline > 0 ? input->baseline : G_MAXUINT;
  gsize at = 0;
  guint next = 0;

  while (at < input->n && all->n < most)
    {
      gsize end, last = MIN (input->n, at + (most - all->n));

      if (isnan (input->values[at]))
        {
          at++;
          continue;
        }
      while (next < input->n_breaks && input->breaks[next] <= at)
        next++;
      if (next < input->n_breaks)
        last = MIN (last, input->breaks[next]);
      for (end = at + 1; end < last && !isnan (input->values[end]); end++)
        ;
      add_values (input->values, at, end, all);
      at = end;
    }
}

static void
find_level_of_individuals (const TmChartInput *input, TmChart *chart)
{
  Individuals all = { .first = NAN };
  double mean, variance;

  gather_individuals (input, &all);
  chart->baseline = all.n;
  chart->centre = all.n > 0 ? all.first + all.sum / all.n : NAN;
  if (all.n_ranges < 1)
    {
      chart->status = TM_CHART_TOO_FEW;
      return;
    }
  find_moments (TM_CHART_INDIVIDUALS, 1, &mean, &variance);
  variance = (all.n_ranges * variance + 2 * all.n_shared * SHARED_RANGES) / (mean * mean);
  set_sigma (all.ranges / all.n_ranges / mean, variance / all.n_ranges / all.n_ranges, chart);
}

static void
fill_limits (TmChart *chart, TmChartGroup *group)
{
  double mean, variance, half;

  if (group->n == 0)
    return;
  half = 3 * chart->sigma / sqrt (group->n);
  group->location_lower = chart->centre - half;
  group->location_upper = chart->centre + half;
  if (chart->kind != TM_CHART_INDIVIDUALS && group->n < 2)
    return;
  find_moments (chart->kind, group->n, &mean, &variance);
  group->dispersion_centre = mean * chart->sigma;
  group->dispersion_lower = MAX (0, mean - 3 * sqrt (variance)) * chart->sigma;
  group->dispersion_upper = (mean + 3 * sqrt (variance)) * chart->sigma;
}

static void
gather_groups (const TmChartInput *input, TmChart *chart)
{
  const gsize most = input->n / input->group_size + 1 + input->n_breaks;
  GArray *groups = g_array_sized_new (FALSE, FALSE, sizeof (TmChartGroup), (guint)most);

  chart->n_groups = count_groups (input, groups);
  chart->groups = (TmChartGroup *)(gpointer)g_array_free (groups, FALSE);
}

void
tm_chart_level (const TmChartInput *input, TmChart *out)
{
  g_return_if_fail (input != NULL && out != NULL && input->group_size >= 1);

  if (input->group_size > 1)
    {
      tm_chart (input, out);
      tm_chart_clear (out);
      return;
    }
  *out = (TmChart) { .kind = TM_CHART_INDIVIDUALS, .centre = NAN, .sigma = NAN, .sigma_dof = NAN };
  find_level_of_individuals (input, out);
}

void
tm_chart (const TmChartInput *input, TmChart *out)
{
  g_return_if_fail (input != NULL && out != NULL && input->group_size >= 1);

  *out = (TmChart) { .kind = TM_CHART_INDIVIDUALS, .centre = NAN, .sigma = NAN, .sigma_dof = NAN };
  gather_groups (input, out);
  if (input->group_size > 1)
    {
      out->kind = input->group_size <= TM_CHART_RANGES_MOST && has_equal_groups (out, input->group_size)
                      ? TM_CHART_RANGES
                      : TM_CHART_DEVIATIONS;
      fill_dispersions (input, out);
      find_level (input, out);
    }
  else
    {
      fill_moving_ranges (input, out);
      find_level_of_individuals (input, out);
    }
  if (out->status == TM_CHART_TOO_FEW)
    return;
  for (guint i = 0; i < out->n_groups; i++)
    fill_limits (out, &out->groups[i]);
}

void
tm_chart_clear (TmChart *chart)
{
  g_clear_pointer (&chart->groups, g_free);
  chart->n_groups = 0;
}
