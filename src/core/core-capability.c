/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-capability.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sort.h>
#include <math.h>

#include "core-chi-square.h"
#include "core-normality.h"
#include "core-statistics.h"

#define Z         1.959963984540054 /* 95 %, two-sided */
#define LOW       0.00135           /* shares beyond 3 sigma of a normal distribution (ISO 22514-2) */
#define HIGH      0.99865
#define FIFTH     0.2
#define USUAL     (4.0 / 3) /* the index that n_wanted takes where none is known */
#define MOST      1e100     /* beyond it squares overflow */
#define LEAST_DOF 0.99      /* of an estimate that carries an index: one, but for rounding */
#define N_TAIL    20        /* one in twenty of the values is the tail of an empirical quantile */
#define NO_INDEX  ((TmIndex) { NAN, NAN, NAN })

static const char *const words[TM_N_CAPABLE_STATUSES] = {
  [TM_CAPABLE_OK] = NC_ ("capability", "carried by the data"),
  [TM_CAPABLE_TOO_FEW] = NC_ ("capability", "too few pieces"),
  [TM_CAPABLE_NO_SPREAD] = NC_ ("capability", "all readings are equal"),
  [TM_CAPABLE_NO_LIMITS] = NC_ ("capability", "no limits"),
  [TM_CAPABLE_MEASURING] = NC_ ("capability", "measuring spreads as much as the pieces"),
};

const char *
tm_capable_status_word (TmCapableStatus status)
{
  g_return_val_if_fail (status < TM_N_CAPABLE_STATUSES, NULL);
  return words[status];
}

/* What the indexes are taken from: the values that are there, measuring taken out. */
typedef struct {
  double *values; /* sorted */
  gsize n;
  double lower, upper, target;
  double mean, overall;
  double kept; /* share of the overall variance that measuring leaves */
  TmFittedShape fit;
  TmCapability *out;
} Case;

static TmIndex
set_chi (double value, double dof)
{
  if (!(value > 0) || !(dof > 0))
    return NO_INDEX;
  return (TmIndex) { value, value * sqrt (tm_chi_square_quantile (0.025, dof) / dof),
                     value * sqrt (tm_chi_square_quantile (0.975, dof) / dof) };
}

static TmIndex
set_normal (double value, double variance)
{
  return (TmIndex) { value, value - Z * sqrt (variance), value + Z * sqrt (variance) };
}

/* Of the band over a spread, which cannot be below zero. */
static TmIndex
set_spread (double value, double variance)
{
  TmIndex index = set_normal (value, variance);

  index.low = fmax (index.low, 0);
  return index;
}

static gboolean
has_both (const Case *c)
{
  return isfinite (c->lower) && isfinite (c->upper);
}

/* Distance from the mean to the nearer limit over 3 sigma. */
static double
find_nearer (const Case *c, double sigma)
{
  return fmin (c->upper - c->mean, c->mean - c->lower) / (3 * sigma);
}

static void
fill_within (const Case *c, const TmCapabilityInput *input)
{
  double u = isnan (input->measuring) ? 0 : input->measuring, kept, sigma, dof, value;

  if (!has_both (c) || input->zero_bounded || !(input->within > 0) || !isfinite (input->within)
      || !(input->within_dof > 0))
    return;
  kept = 1 - u * u / (input->within * input->within);
  dof = input->within_dof * kept * kept;
  c->out->within_lost = !(kept > 0 && dof >= LEAST_DOF);
  if (c->out->within_lost)
    return;
  sigma = input->within * sqrt (kept);
  value = find_nearer (c, sigma);
  c->out->cp = set_chi ((c->upper - c->lower) / (6 * sigma), dof);
  c->out->cpk = set_normal (value, 1 / (9 * (double)c->n * kept) + value * value / (2 * dof));
}

/* Cpm = (U - L) / (6 τ), τ² = s² + (mean - T)²; τ²/τ0² as χ² by n (1 + ξ²)² / (1 + 2 ξ²) degrees of freedom,
 * ξ = (mean - T) / s. */
static void
fill_target (const Case *c)
{
  double xi = (c->mean - c->target) / c->overall;
  double dof = (double)(c->n) * (1 + xi * xi) * (1 + xi * xi) / (1 + 2 * xi * xi) * c->kept * c->kept;

  if (has_both (c))
    c->out->cpm = set_chi ((c->upper - c->lower) / (6 * c->overall * sqrt (1 + xi * xi)), dof);
}

static void
fill_overall_normal (const Case *c)
{
  double dof = (double)(c->n - 1) * c->kept * c->kept, value = find_nearer (c, c->overall);

  if (has_both (c))
    c->out->pp = set_chi ((c->upper - c->lower) / (6 * c->overall), dof);
  c->out->ppk = set_normal (value, 1 / (9 * (double)c->n * c->kept) + value * value / (2 * dof));
  c->out->expected_out = gsl_cdf_ugaussian_P ((c->lower - c->mean) / c->overall)
                         + gsl_cdf_ugaussian_Q ((c->upper - c->mean) / c->overall);
}

typedef struct {
  double low, middle, high;
} Quantiles;

static double
find_spread_index (const Case *c, const Quantiles *q)
{
  return (c->upper - c->lower) / (q->high - q->low);
}

static double
find_nearer_index (const Case *c, const Quantiles *q)
{
  return fmin ((c->upper - q->middle) / (q->high - q->middle), (q->middle - c->lower) / (q->middle - q->low));
}

static Quantiles
take_quantiles (const TmFittedShape *fit)
{
  return (Quantiles) { tm_shape_quantile (fit, LOW), tm_shape_quantile (fit, 0.5),
                       tm_shape_quantile (fit, HIGH) };
}

static double
find_variance (const double *values, guint n)
{
  TmSummary summary;

  if (tm_summary (values, n, &summary) != TM_SUMMARY_OK)
    return 0;
  return summary.standard_deviation * summary.standard_deviation;
}

/* Σ x²/σ² of a Rayleigh distribution is χ² with 2 n degrees of freedom: exact. */
static TmIndex
set_rayleigh (const Case *c)
{
  double dof = 2 * (double)c->n * c->kept * c->kept, index[3];

  for (guint i = 0; i < 3; i++)
    {
      static const double shares[] = { 0.5, 0.025, 0.975 };
      TmFittedShape fit = c->fit;
      Quantiles q;

      if (i > 0)
        fit.a *= sqrt (dof / tm_chi_square_quantile (shares[i], dof));
      q = take_quantiles (&fit);
      index[i] = find_nearer_index (c, &q);
    }
  return (TmIndex) { index[0], index[1], index[2] };
}

/* The indexes of fits to drawn samples scatter as this one does. */
static void
find_by_shape (const Case *c, TmBound bound, TmIndex *pp, TmIndex *ppk)
{
  Quantiles q = take_quantiles (&c->fit);
  TmShapeTrial trials[TM_SHAPE_TRIALS];
  double spread[TM_SHAPE_TRIALS], nearer[TM_SHAPE_TRIALS];
  double wider = 1 / (c->kept * c->kept);
  guint n = 0;

  tm_shape_try (&c->fit, c->n, bound, trials);
  for (guint t = 0; t < TM_SHAPE_TRIALS; t++)
    {
      Quantiles again = take_quantiles (&trials[t].fit);

      if (isnan (again.low) || isnan (again.high))
        continue;
      spread[n] = find_spread_index (c, &again);
      nearer[n++] = find_nearer_index (c, &again);
    }
  *pp = has_both (c) && bound == TM_BOUND_NONE
            ? set_spread (find_spread_index (c, &q), wider * find_variance (spread, n))
            : NO_INDEX;
  *ppk = set_normal (find_nearer_index (c, &q), wider * find_variance (nearer, n));
}

static void
widen (TmIndex *index, const TmIndex *other)
{
  index->low = fmin (index->low, other->low);
  index->high = fmax (index->high, other->high);
}

/* What the values cannot tell apart both have their say. */
static void
widen_by_rival (const Case *c, TmBound bound)
{
  Case other = *c;
  TmIndex pp, ppk;

  if (!tm_shape_rival (c->values, c->n, bound, &c->fit, &other.fit))
    return;
  find_by_shape (&other, bound, &pp, &ppk);
  widen (&c->out->pp, &pp);
  widen (&c->out->ppk, &ppk);
}

static void
fill_by_shape (const Case *c, TmBound bound)
{
  find_by_shape (c, bound, &c->out->pp, &c->out->ppk);
  if (c->fit.shape == TM_SHAPE_RAYLEIGH)
    c->out->ppk = set_rayleigh (c);
  else
    widen_by_rival (c, bound);
  c->out->expected_out = isfinite (c->lower) ? tm_shape_below (&c->fit, c->lower) : 0;
  c->out->expected_out += isfinite (c->upper) ? 1 - tm_shape_below (&c->fit, c->upper) : 0;
}

/* By rank (n + 1) P. */
static double
find_ranked (const double *sorted, gsize n, double probability)
{
  double rank = CLAMP (probability * ((double)n + 1) - 1, 0, (double)n - 1);
  gsize at = MIN ((gsize)rank, n - 2);

  return sorted[at] + (rank - (double)at) * (sorted[at + 1] - sorted[at]);
}

/* Variance of an extreme quantile: density there = share beyond / mean excess of the tail. */
static double
find_tail_variance (const double *sorted, gsize n, gboolean upper)
{
  gsize tail = n / N_TAIL, edge = upper ? n - 1 - tail : tail;
  double excess = 0;

  for (gsize i = 0; i < tail; i++)
    excess += fabs (sorted[upper ? n - 1 - i : i] - sorted[edge]) / (double)tail;
  return excess * excess / ((double)n * LOW);
}

/* C = a / b, b scattering by @tail and both by the median. */
static TmIndex
set_side (double distance, double spread, double tail, double median)
{
  double value = distance / spread;

  return set_normal (value, (value * value * tail + (value - 1) * (value - 1) * median) / (spread * spread));
}

static gboolean
is_out (const Case *c, double value)
{
  return value < c->lower || value > c->upper;
}

static void
fill_empiric (const Case *c, gboolean zero_bounded)
{
  Quantiles q = { find_ranked (c->values, c->n, LOW), find_ranked (c->values, c->n, 0.5),
                  find_ranked (c->values, c->n, HIGH) };
  double low = find_tail_variance (c->values, c->n, FALSE), high = find_tail_variance (c->values, c->n, TRUE);
  double median = G_PI / 2 * c->overall * c->overall / (double)c->n, value;
  TmIndex above, below;
  gsize beyond = 0;

  if (!(q.high > q.middle && q.middle > q.low)) /* half of the values are equal */
    {
      c->out->unshaped = TRUE;
      return;
    }
  above = set_side (c->upper - q.middle, q.high - q.middle, high, median);
  below = set_side (q.middle - c->lower, q.middle - q.low, low, median);
  c->out->ppk = above.value < below.value ? above : below;
  value = find_spread_index (c, &q);
  if (has_both (c) && !zero_bounded)
    c->out->pp = set_spread (value, value * value * (low + high) / ((q.high - q.low) * (q.high - q.low)));
  for (gsize i = 0; i < c->n; i++)
    beyond += is_out (c, c->values[i]) ? 1 : 0;
  c->out->expected_out = (double)beyond / (double)c->n;
}

static void
fill_overall (Case *c, TmBound bound)
{
  const TmFittedShape normal = { .shape = TM_SHAPE_NORMAL, .p = c->out->normality_p };

  if (bound == TM_BOUND_NONE && !tm_shape_is_doubted (&normal))
    {
      c->out->shape_p = c->out->normality_p;
      c->out->fit = (TmFittedShape) { TM_SHAPE_NORMAL, 0, c->mean, c->overall, c->out->normality_p };
      fill_overall_normal (c);
      return;
    }
  if (c->n >= TM_CAPABLE_EMPIRIC)
    {
      c->out->shape = c->out->fit.shape = TM_SHAPE_EMPIRIC;
      fill_empiric (c, bound != TM_BOUND_NONE);
      return;
    }
  c->out->fit = c->fit = tm_shape_fit (c->values, c->n, bound);
  c->out->shape = c->fit.shape;
  c->out->shape_p = c->fit.p;
  c->out->unshaped = isnan (c->fit.a) || tm_shape_is_doubted (&c->fit);
  if (!c->out->unshaped)
    fill_by_shape (c, bound);
}

/* The half width of an interval goes by 1/√n. */
static guint
find_wanted (const TmIndex *ppk, gsize n)
{
  double value = fmax (ppk->value, 0.1), half = (ppk->high - ppk->low) / 2, wanted;

  if (isnan (ppk->value))
    {
      wanted = Z * Z * (1 / (9 * USUAL * USUAL) + 0.5) / (FIFTH * FIFTH);
      return (double)n >= wanted ? 0 : (guint)ceil (wanted);
    }
  wanted = (double)n * (half / (FIFTH * value)) * (half / (FIFTH * value));
  return wanted <= (double)n ? 0 : (guint)ceil (fmin (wanted, 1e6));
}

/* Sorted and finite; one scale for all so that nothing overflows. */
static double
take_values (Case *c, const double *values, gsize n, const TmCapabilityInput *input)
{
  double greatest = 0, scale;

  c->values = g_new (double, MAX (n, 1));
  for (gsize i = 0; i < n; i++)
    if (isfinite (values[i]))
      {
        c->values[c->n++] = values[i];
        greatest = fmax (greatest, fabs (values[i]));
      }
  scale = greatest > MOST ? greatest : 1;
  for (gsize i = 0; i < c->n; i++)
    c->values[i] /= scale;
  gsl_sort (c->values, 1, c->n);
  c->lower = isnan (input->lower) ? -INFINITY : input->lower / scale;
  c->upper = isnan (input->upper) ? INFINITY : input->upper / scale;
  if (input->zero_bounded)
    c->lower = -INFINITY;
  c->target = isfinite (input->target) ? input->target / scale : (c->lower + c->upper) / 2;
  return scale;
}

/* What is left of the values when measuring is taken out: drawn in towards their mean. */
static TmCapableStatus
take_out_measuring (Case *c, double measuring)
{
  double share = isnan (measuring) ? 0 : measuring / c->overall;

  c->kept = 1 - share * share;
  if (!(c->kept > 0 && (double)(c->n - 1) * c->kept * c->kept >= LEAST_DOF))
    return TM_CAPABLE_MEASURING;
  c->overall *= sqrt (c->kept);
  if (c->kept < 1)
    for (gsize i = 0; i < c->n; i++)
      c->values[i] = c->mean + (c->values[i] - c->mean) * sqrt (c->kept);
  return TM_CAPABLE_OK;
}

static TmCapableStatus
prepare (Case *c, double measuring)
{
  TmSummary summary;
  TmSummaryStatus status = tm_summary (c->values, c->n, &summary);

  if (status != TM_SUMMARY_EMPTY)
    c->out->mean = c->mean = summary.mean;
  if (status == TM_SUMMARY_OK)
    c->out->overall = c->overall = summary.standard_deviation;
  if (c->n < TM_CAPABLE_LEAST)
    return TM_CAPABLE_TOO_FEW;
  if (status != TM_SUMMARY_OK || !(c->overall > 0))
    return TM_CAPABLE_NO_SPREAD;
  tm_normality (c->values, c->n, &c->out->a_squared, &c->out->normality_p);
  if (take_out_measuring (c, measuring) != TM_CAPABLE_OK)
    return TM_CAPABLE_MEASURING;
  c->out->overall = c->overall;
  if (!isfinite (c->lower) && !isfinite (c->upper))
    return TM_CAPABLE_NO_LIMITS;
  return TM_CAPABLE_OK;
}

void
tm_capability (const double *values, gsize n, const TmCapabilityInput *input, TmCapability *out)
{
  Case c = { .out = out };
  TmCapabilityInput scaled = *input;
  double scale = take_values (&c, values, n, input);

  *out = (TmCapability) { .n = c.n, .shape = TM_SHAPE_NORMAL, .fit = { TM_SHAPE_NORMAL, 0, NAN, NAN, NAN } };
  out->mean = out->overall = out->expected_out = out->a_squared = out->normality_p = out->shape_p = NAN;
  out->cp = out->cpk = out->pp = out->ppk = out->cpm = out->cm = out->cmk = NO_INDEX;
  scaled.within /= scale;
  scaled.measuring /= scale;
  out->status = prepare (&c, scaled.measuring);
  if (out->status == TM_CAPABLE_OK)
    {
      fill_within (&c, &scaled);
      if (!input->zero_bounded)
        fill_target (&c);
      fill_overall (&c, !input->zero_bounded ? TM_BOUND_NONE
                        : input->position    ? TM_BOUND_POSITION
                                             : TM_BOUND_ZERO);
      if (has_both (&c) && c.n >= TM_CAPABLE_MACHINE && !input->drifting && !input->gaps)
        {
          out->cm = out->pp;
          out->cmk = out->ppk;
        }
    }
  out->n_wanted = find_wanted (&out->ppk, c.n);
  if (scale > 1) /* its parameters are of the scaled values */
    out->fit.a = out->fit.b = NAN;
  out->mean *= scale;
  if (!isnan (out->overall))
    out->overall = fmin (out->overall * scale, G_MAXDOUBLE);
  g_free (c.values);
}
