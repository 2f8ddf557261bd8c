/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-uncertainty.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

/* Above this many degrees of freedom t and normal agree beyond what a double's quantile shows. */
#define DOF_INFINITE 1e12

const TmUncertainty tm_uncertainty_unknown = { NAN, NAN, NAN, NAN, NAN, NAN };

TmComponent
tm_component (TmComponentKind kind, TmDistribution distribution, double value, double dof, gboolean shared)
{
  return (TmComponent) {
    .kind = kind, .distribution = distribution, .value = value, .sensitivity = 1, .dof = dof, .shared = shared
  };
}

static double
get_divisor (TmDistribution distribution)
{
  switch (distribution)
    {
    case TM_DISTRIBUTION_RECTANGULAR:
      return G_SQRT2 * sqrt (1.5);
    case TM_DISTRIBUTION_TRIANGULAR:
      return sqrt (6);
    case TM_DISTRIBUTION_U_SHAPED:
      return G_SQRT2;
    case TM_DISTRIBUTION_NORMAL:
    case TM_DISTRIBUTION_T:
    case TM_N_DISTRIBUTIONS:
    default:
      return 1;
    }
}

double
tm_component_divisor (const TmComponent *component)
{
  return component->divisor > 0 ? component->divisor : get_divisor (component->distribution);
}

double
tm_component_standard (const TmComponent *component)
{
  return fabs (component->value) / tm_component_divisor (component);
}

double
tm_component_share (const TmComponent *component)
{
  return fabs (component->sensitivity) * tm_component_standard (component);
}

/* Degrees of freedom are cut to a whole number (JCGM 100, G.6.4), never below one. */
static double
truncate_dof (double dof)
{
  return MAX (1, floor (dof));
}

/* Bit for bit: a cache key, not a comparison of measured values. */
static gboolean
is_same (double a, double b)
{
  return a <= b && a >= b;
}

static gboolean
is_normal (double dof)
{
  return dof > DOF_INFINITE;
}

/* Quantiles already found, by probability and degrees of freedom: a judgement asks for the same few
 * again and again.  A pure cache, one per thread. */
#define CACHE_SIZE 128

typedef struct {
  double probability, dof, quantile;
} Cached;

static double
find_quantile (double probability, double dof)
{
  static _Thread_local Cached cache[CACHE_SIZE];
  Cached *cached = &cache[((guint)MIN (dof, 1e9) * 2 + (probability > 0.96)) % CACHE_SIZE];

  if (!is_same (cached->probability, probability) || !is_same (cached->dof, dof))
    *cached = (Cached) { probability, dof, gsl_cdf_tdist_Pinv (probability, dof) };
  return cached->quantile;
}

double
tm_t_quantile (double probability, double dof)
{
  if (isnan (dof))
    return NAN;
  return is_normal (dof) ? gsl_cdf_ugaussian_Pinv (probability)
                         : find_quantile (probability, truncate_dof (dof));
}

double
tm_t_below (double x, double dof)
{
  if (isinf (x))
    return x > 0;
  return is_normal (dof) ? gsl_cdf_ugaussian_P (x) : gsl_cdf_tdist_P (x, truncate_dof (dof));
}

double
tm_t_above (double x, double dof)
{
  return tm_t_below (-x, dof);
}

/* Welch-Satterthwaite: u⁴ / Σ (c_i u_i)⁴ / ν_i (JCGM 100, G.2b), by ratios so that picometre counts
 * to the fourth power cannot run out of range. */
static double
combine_dof (const TmComponent *components, gsize n, double u)
{
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    {
      double ratio = tm_component_share (&components[i]) / u;

      sum += ratio * ratio * ratio * ratio / MAX (components[i].dof, 1);
    }
  return sum > 0 ? 1 / sum : INFINITY;
}

TmUncertainty
tm_uncertainty_combine (const TmComponent *components, gsize n, double coverage)
{
  TmUncertainty result = { 0 };
  double own = 0, shared = 0;

  for (gsize i = 0; i < n; i++)
    {
      double part = tm_component_share (&components[i]);

      *(components[i].shared ? &shared : &own) += part * part;
    }
  if (!(own + shared > 0))
    return tm_uncertainty_unknown;
  result.own = sqrt (own);
  result.shared = sqrt (shared);
  result.u = sqrt (own + shared);
  result.dof = combine_dof (components, n, result.u);
  result.coverage = tm_t_quantile (0.5 + coverage / 2, result.dof);
  result.expanded = result.coverage * result.u;
  return result;
}
