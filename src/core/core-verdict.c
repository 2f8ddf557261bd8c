/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-verdict.h"

#include <math.h>
#include <string.h>

#include "core-position.h"
#include "core-probability.h"

#define CONFORMANCE 0.95
/* The one-sided factor as ISO 14253-1:2017 prints it (z 0.95 is 1.6449). */
#define FACTOR_ONE_SIDED 1.65
/* Band in standard uncertainties under which no value is proven in: 2 z 0.975, as printed. */
#define BAND_LEAST 3.92
/* What double arithmetic may add to a guard or take from an N:1 ratio without meaning it. */
#define NOISE 1e-12

/* The band seen in standard uncertainties. */
typedef struct {
  double band;        /* T / u */
  double dof;         /* >= 1; 0 marks an empty slot of the cache */
  gboolean from_zero; /* zero-bounded */
  gboolean radial;
} Scale;

static double
get_one_sided (double dof)
{
  return MAX (FACTOR_ONE_SIDED, tm_t_quantile (CONFORMANCE, dof));
}

/* How far P(in) at g = x·u is above 0.95, for a band with two limits. */
static double
get_excess_two_sided (const Scale *scale, double x)
{
  return tm_t_below (x, scale->dof) - tm_t_below (x - scale->band, scale->dof) - CONFORMANCE;
}

/* The same for a density cut at zero. */
static double
get_excess_from_zero (const Scale *scale, double x)
{
  return 1 - tm_t_above (x, scale->dof) / tm_t_below (scale->band - x, scale->dof) - CONFORMANCE;
}

/* With few degrees of freedom the spread is widened so that the one-sided 95 % point is that of t. */
static double
get_widening (double dof)
{
  return tm_t_quantile (CONFORMANCE, dof) / tm_t_quantile (CONFORMANCE, INFINITY);
}

static double
get_excess_radial (const Scale *scale, double x)
{
  return tm_position_probability (scale->band - x, scale->band, get_widening (scale->dof)) - CONFORMANCE;
}

/* The least x in [@least, @most] whose excess is not negative, given that it is not negative at
 * @most: false position (Illinois variant), to a billionth of u, ending on the safe side. */
static double
find_guard (double (*excess) (const Scale *, double), const Scale *scale, double least, double most)
{
  double short_by = excess (scale, least), over_by = excess (scale, most);
  int last = 0;

  if (short_by >= 0)
    return least;
  while (most - least > 1e-9 && excess (scale, most) > NOISE)
    {
      double middle = least + (most - least) * short_by / (short_by - over_by);
      double found = excess (scale, middle);

      if (found >= 0)
        {
          short_by = last > 0 ? short_by / 2 : short_by;
          most = middle, over_by = found, last = 1;
        }
      else
        {
          over_by = last < 0 ? over_by / 2 : over_by;
          least = middle, short_by = found, last = -1;
        }
    }
  return most;
}

static gint64
round_up (double guard)
{
  double counts = ceil (guard * (1 - NOISE));

  return counts >= (double)TM_COUNT_MAX ? TM_COUNT_MAX : (gint64)counts;
}

static gboolean
has_band (const TmLimits *limits)
{
  return (limits->has_lower && limits->has_upper) || limits->zero_bounded;
}

/* Two limits: the band must hold twice the two-sided 95 % point. */
static double
solve_two_sided (const Scale *scale)
{
  if (scale->band < MAX (BAND_LEAST, 2 * tm_t_quantile (0.5 + CONFORMANCE / 2, scale->dof)))
    return INFINITY;
  return find_guard (get_excess_two_sided, scale, get_one_sided (scale->dof), scale->band / 2);
}

static double
solve_from_zero (const Scale *scale)
{
  double (*excess) (const Scale *, double) = scale->radial ? get_excess_radial : get_excess_from_zero;
  double one_sided = get_one_sided (scale->dof);

  if (scale->band < one_sided || excess (scale, scale->band) < 0)
    return INFINITY;
  return find_guard (excess, scale, one_sided, scale->band);
}

/* Guards already solved: the pieces of a job ask for the same few again and again.  A pure cache,
 * one per thread. */
#define CACHE_SIZE 512

typedef struct {
  Scale scale;
  double guard;
} Solved;

static gboolean
is_same_scale (const Scale *a, const Scale *b)
{
  return memcmp (&a->band, &b->band, sizeof a->band) == 0 && memcmp (&a->dof, &b->dof, sizeof a->dof) == 0
         && a->from_zero == b->from_zero && a->radial == b->radial;
}

static guint
hash_scale (const Scale *scale)
{
  return (g_int64_hash (&scale->band) * 31 + g_int64_hash (&scale->dof)) % CACHE_SIZE;
}

/* g in standard uncertainties, or INFINITY where nothing can be proven in. */
static double
solve_guard (const Scale *scale)
{
  static _Thread_local Solved cache[CACHE_SIZE];
  Solved *solved = &cache[hash_scale (scale)];

  if (!is_same_scale (&solved->scale, scale))
    *solved = (Solved) { *scale, scale->from_zero ? solve_from_zero (scale) : solve_two_sided (scale) };
  return solved->guard;
}

/* Share of the band that the guards take: two of them, one where zero needs none.  The simple rule has none:
 * where N:1 is met it settles each reading. */
static TmSettles
grade_share (const TmRule *rule)
{
  double taken = rule->limits.zero_bounded ? (double)rule->guard : 2 * (double)rule->guard;
  double share = taken / (double)tm_limits_band (&rule->limits);

  if (!has_band (&rule->limits))
    return TM_SETTLES_UNKNOWN;
  if (!rule->can_prove_in)
    return TM_SETTLES_CANNOT;
  if (rule->decision == TM_DECISION_SIMPLE || share <= 0.2)
    return TM_SETTLES;
  return share <= 0.6 ? TM_SETTLES_MOSTLY : TM_SETTLES_SELDOM;
}

static void
set_guards (TmRule *rule)
{
  double u = rule->uncertainty.u;
  Scale scale = { (double)tm_limits_band (&rule->limits) / u, rule->uncertainty.dof,
                  rule->limits.zero_bounded, rule->radial };
  double one_sided = get_one_sided (scale.dof);
  double guard = has_band (&rule->limits) ? solve_guard (&scale) : one_sided;

  rule->can_prove_in = isfinite (guard);
  rule->guard_out = round_up (one_sided * u);
  rule->guard = rule->can_prove_in ? round_up (guard * u) : rule->guard_out;
  if (rule->limits.has_lower && rule->limits.has_upper && rule->guard > tm_limits_band (&rule->limits) / 2)
    rule->can_prove_in = FALSE;
}

static gboolean
meets_ratio (const TmRule *rule, double ratio)
{
  if (!has_band (&rule->limits))
    return TRUE;
  return (double)tm_limits_band (&rule->limits) * (1 + NOISE) >= ratio * 2 * rule->uncertainty.expanded;
}

void
tm_rule_init (TmRule *rule, TmDecision decision, double ratio, const TmLimits *limits,
              const TmUncertainty *uncertainty, gboolean radial)
{
  *rule = (TmRule) { .decision = decision, .limits = *limits, .uncertainty = *uncertainty, .radial = radial };
  if (isnan (uncertainty->u))
    return;
  set_guards (rule);
  if (decision == TM_DECISION_SIMPLE)
    rule->can_prove_in = meets_ratio (rule, ratio);
  rule->settles = grade_share (rule);
}

/* -------- Verdict -------- */

/* TRUE when @size is at least @inset inside each limit; a negative inset reaches outside. */
static gboolean
is_within (const TmLimits *limits, const TmLocalSize *size, gint64 inset)
{
  if (limits->has_lower && tm_local_size_compare (size, limits->lower + inset) < 0)
    return FALSE;
  return !limits->has_upper || tm_local_size_compare (size, limits->upper - inset) <= 0;
}

TmVerdict
tm_rule_verdict (const TmRule *rule, const TmLocalSize *size)
{
  gboolean plain = isnan (rule->uncertainty.u) || rule->decision == TM_DECISION_SIMPLE;

  if (!isnan (rule->uncertainty.u) && plain && !rule->can_prove_in)
    return TM_VERDICT_TOO_CLOSE;
  if (plain)
    return is_within (&rule->limits, size, 0) ? TM_VERDICT_IN : TM_VERDICT_OUT;
  if (!is_within (&rule->limits, size, -rule->guard_out))
    return TM_VERDICT_OUT;
  if (rule->can_prove_in && is_within (&rule->limits, size, rule->guard))
    return TM_VERDICT_IN;
  return TM_VERDICT_TOO_CLOSE;
}

double
tm_rule_probability (const TmRule *rule, const TmLocalSize *size)
{
  const TmLimits *limits = &rule->limits;
  const TmUncertainty *uncertainty = &rule->uncertainty;
  TmMargin margin = { INFINITY, INFINITY, limits->zero_bounded, 0 };

  if (isnan (uncertainty->u))
    return NAN;
  if (rule->radial && limits->has_upper)
    return tm_position_probability (tm_local_size_beyond (size, 0), (double)limits->upper,
                                    uncertainty->u * get_widening (uncertainty->dof));
  if (limits->has_lower || limits->zero_bounded)
    margin.below = tm_local_size_beyond (size, limits->lower);
  if (limits->has_upper)
    margin.above = -tm_local_size_beyond (size, limits->upper);
  return tm_probability_in (&margin, uncertainty->u, uncertainty->dof);
}

double
tm_rule_room (const TmRule *rule, const TmLocalSize *size)
{
  double room = INFINITY;

  if (rule->limits.has_lower)
    room = tm_local_size_beyond (size, rule->limits.lower);
  if (rule->limits.has_upper)
    room = MIN (room, -tm_local_size_beyond (size, rule->limits.upper));
  return isnan (rule->uncertainty.u) ? room : room / rule->uncertainty.u;
}

double
tm_job_simple_ratio (const TmJob *job)
{
  if (!job->simple_ratio.given || job->simple_ratio.count <= 0)
    return 4;
  return tm_count_to_double (job->simple_ratio.count, job->simple_ratio.unit);
}
