/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-position.h"

#include <gsl/gsl_integration.h>
#include <gsl/gsl_sf_bessel.h>
#include <math.h>

#include "core-combine.h"
#include "core-correction.h"
#include "core-method.h"

#define RICE_POINTS 32
/* Beyond this many standard deviations a normal tail is under 1e-18. */
#define RICE_REACH 9.0

/* Sums at or beyond this (4600 km) cannot be squared within 127 bits. */
#define SQUARABLE ((TmWide)1 << 62)

TmWide
tm_position_diametral (TmWide dx, TmWide dy)
{
  return (TmWide)roundl (2 * hypotl ((long double)dx, (long double)dy));
}

gint64
tm_position_deviation (const TmReading *reading)
{
  if (!reading->dx.given && !reading->dy.given)
    return reading->value.count;
  return (gint64)MIN (tm_position_diametral (reading->dx.count, reading->dy.count), TM_COUNT_MAX);
}

static TmWide
get_magnitude (TmWide value)
{
  return value < 0 ? -value : value;
}

int
tm_position_compare (TmWide dx_sum, TmWide dy_sum, guint n, gint64 limit)
{
  TmWide x = get_magnitude (dx_sum), y = get_magnitude (dy_sum);
  TmWide bound = (TmWide)limit * n;
  unsigned __int128 found, allowed;

  if (limit < 0)
    return 1;
  if (2 * MAX (x, y) > bound)
    return 1;
  if (2 * (x + y) < bound)
    return -1;
  if (bound >= SQUARABLE)
    return tm_mean_compare (tm_position_diametral (x, y), n, limit);
  found = 4 * ((unsigned __int128)(x * x) + (unsigned __int128)(y * y));
  allowed = (unsigned __int128)bound * (unsigned __int128)bound;
  return (found > allowed) - (found < allowed);
}

/* Density of the distance r from zero when the centre lies at distance v, both in standard
 * deviations of one offset: r exp(-(r² + v²)/2) I0(r v), written with the scaled Bessel function. */
static double
get_rice_density (double r, double v)
{
  double difference = r - v;

  return r * exp (-difference * difference / 2) * gsl_sf_bessel_I0_scaled (r * v);
}

static double
integrate_rice (double from, double to, double v)
{
  gsl_integration_glfixed_table *table = gsl_integration_glfixed_table_alloc (RICE_POINTS);
  double sum = 0;

  for (gsize i = 0; i < RICE_POINTS; i++)
    {
      double r, weight;

      gsl_integration_glfixed_point (from, to, i, &r, &weight, table);
      sum += weight * get_rice_density (r, v);
    }
  gsl_integration_glfixed_table_free (table);
  return sum;
}

double
tm_position_probability (double deviation, double allowed, double u)
{
  double v = deviation / u, rho = allowed / u;
  double from = MAX (0, v - RICE_REACH);

  if (!(rho > from))
    return 0;
  if (rho >= v + RICE_REACH)
    return 1;
  return MIN (1, integrate_rice (from, rho, v));
}

/* -------- Bonus -------- */

static TmWide
round_down (TmWide sum, guint n)
{
  return sum % n < 0 ? sum / n - 1 : sum / n;
}

static gint64
get_most_bonus (const TmLimits *size)
{
  return size->has_lower && size->has_upper ? MAX (0, size->upper - size->lower) : G_MAXINT64;
}

/* TRUE when the bonus is counted from the lower limit: MMC of a bore, LMC of a shaft. */
static gboolean
counts_from_lower (gboolean internal, TmModifier modifier)
{
  return internal == (modifier != TM_MODIFIER_LMC);
}

gint64
tm_position_bonus (const TmLimits *size, gboolean internal, TmModifier modifier, TmWide sum, guint n)
{
  gboolean from_lower = counts_from_lower (internal, modifier);
  TmWide away;

  if (modifier == TM_MODIFIER_NONE || (from_lower ? !size->has_lower : !size->has_upper))
    return 0;
  away = from_lower ? sum - (TmWide)size->lower * n : (TmWide)size->upper * n - sum;
  return (gint64)CLAMP (round_down (away, n), 0, get_most_bonus (size));
}

gint64
tm_position_virtual_condition (const TmLimits *size, gboolean internal, gint64 tolerance)
{
  return internal ? size->lower - tolerance : size->upper + tolerance;
}

static guint
get_size_place (const TmFeature *size, guint place)
{
  return size->places == 1 ? 1 : place;
}

static void
measure_bonus (const TmJob *job, const TmFeature *feature, const TmSizes *sizes, gboolean internal,
               TmBonus *out)
{
  TmLimits limits = tm_feature_limits (out->feature);
  gboolean from_lower = counts_from_lower (internal, feature->modifier);
  const TmLocalSize *size = &sizes->stations[from_lower ? sizes->smallest : sizes->largest];
  TmUseWhen when = tm_use_when (size->last);
  TmMethodUse use = tm_method_use_at (job, out->feature, size->method_name, &when);
  TmUncertainty uncertainty = tm_method_uncertainty (&use, size, NULL);

  out->measured = TRUE;
  out->station = size->station;
  out->bonus = tm_position_bonus (&limits, internal, feature->modifier, size->sum, size->n);
  if (out->bonus > 0 && out->bonus < out->most)
    {
      out->u = uncertainty.u;
      out->dof = uncertainty.dof;
    }
}

/* The size that a mating part meets, where pins tell it; FALSE where they do not.  At LMC it is no matter of
 * mating. */
static gboolean
measure_mating_bonus (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                      const TmJudgeOptions *options, TmBonus *out)
{
  TmLimits limits = tm_feature_limits (out->feature);
  g_auto (TmPinEvidence) evidence = { 0 };
  const TmPinResult *pins = &evidence.result;

  if (feature->modifier != TM_MODIFIER_MMC || tm_job_pin_trials_at (job, piece, out->feature, place) == NULL
      || !tm_pin_evidence_with (job, piece, out->feature, place, TRUE, options, &evidence)
      || !pins->has_estimate || pins->contradiction)
    return FALSE;
  out->measured = out->mating = TRUE;
  out->bonus = tm_position_bonus (&limits, TRUE, feature->modifier,
                                  (TmWide)pins->reference + (TmWide)floor (pins->estimate), 1);
  if (out->bonus > 0 && out->bonus < out->most)
    out->u = pins->u;
  return TRUE;
}

TmBonus
tm_position_bonus_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                        const TmJudgeOptions *options)
{
  TmBonus bonus = { .dof = INFINITY, .station = "" };
  const TmFeature *size = feature->size_feature[0] ? tm_job_find_feature (job, feature->size_feature) : NULL;
  TmCut cut = size ? tm_feature_cut (size) : TM_CUT_UNKNOWN;
  g_auto (TmSizes) sizes = { 0 };
  TmLimits limits;

  if (feature->modifier == TM_MODIFIER_NONE || cut == TM_CUT_UNKNOWN || tm_kind_is_attribute (size->kind))
    return bonus;
  bonus.feature = size;
  limits = tm_feature_limits (size);
  bonus.most = get_most_bonus (&limits);
  if (measure_mating_bonus (job, piece, feature, get_size_place (size, place), options, &bonus))
    return bonus;
  tm_sizes_at (job, piece, size, get_size_place (size, place), options, &sizes);
  if (sizes.n_stations > 0)
    measure_bonus (job, feature, &sizes, cut == TM_CUT_GROWS, &bonus);
  return bonus;
}

TmBonus
tm_position_bonus_of (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  return tm_position_bonus_with (job, piece, feature, place, NULL);
}
