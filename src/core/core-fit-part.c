/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-fit-part: the two parts of a fit, from the limits and from the record.
 */

#include "core-fit-check.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-elastic.h"
#include "core-material.h"

static TmFitPart
make_part (gint64 smallest, gint64 largest, double u)
{
  return (TmFitPart) { smallest, largest, u, NAN, 0, 20 };
}

/* Only what has a size goes into, or onto, something. */
static gboolean
has_size (const TmFeature *feature)
{
  return feature->kind <= TM_KIND_DEPTH && tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH;
}

static TmFitStatus
take_limits (const TmQuantity *lower, const TmQuantity *upper, TmFitPart *out)
{
  if (!lower->given || !upper->given)
    return TM_FIT_NO_LIMITS;
  *out = make_part (lower->count, upper->count, 0);
  return out->smallest > 0 && out->smallest <= out->largest ? TM_FIT_OK : TM_FIT_BAD_PART;
}

TmFitStatus
tm_fit_part_by_limits (const TmFeature *feature, TmFitPart *out)
{
  g_return_val_if_fail (feature != NULL && out != NULL, TM_FIT_NO_LIMITS);

  if (!has_size (feature))
    return TM_FIT_NO_LIMITS;
  return take_limits (&feature->lower, &feature->upper, out);
}

TmFitStatus
tm_fit_mate_by_limits (const TmFeature *feature, TmFitPart *out)
{
  g_return_val_if_fail (feature != NULL && out != NULL, TM_FIT_NO_MATE);

  if (!feature->mate.given)
    return TM_FIT_NO_MATE;
  return take_limits (&feature->mate.lower, &feature->mate.upper, out);
}

/* -------- As measured -------- */

/* The mean of a station to a whole count, towards less or more. */
static gint64
round_size (const TmLocalSize *size, gboolean up)
{
  gint64 whole = (gint64)(size->sum / size->n);

  return up && size->sum % size->n != 0 ? whole + 1 : whole;
}

static gboolean
has_estimate (const TmJudgement *judgement)
{
  return judgement->counted != TM_COUNTED_READINGS && judgement->pins_joined
         && isfinite (judgement->combined_size);
}

static gint64
get_estimate (const TmJudgement *judgement)
{
  return judgement->combined_reference + llround (judgement->combined_size);
}

/* The normal distribution with the judgement's 95 % interval: few degrees of freedom make it wider. */
static double
get_normal_u (const TmJudgement *judgement)
{
  double widened = judgement->expanded / gsl_cdf_ugaussian_Pinv (0.975);

  return widened > judgement->u ? widened : judgement->u;
}

static TmFitStatus
take_judgement (const TmJudgement *judgement, TmFitPart *out)
{
  const TmSizes *sizes = &judgement->sizes;
  gint64 smallest, largest;

  if (sizes->n_stations == 0 && !has_estimate (judgement))
    return TM_FIT_NOT_MEASURED;
  if (sizes->n_stations == 0)
    {
      smallest = largest = get_estimate (judgement);
    }
  else
    {
      smallest = round_size (&sizes->stations[sizes->smallest], FALSE);
      largest = round_size (&sizes->stations[sizes->largest], TRUE);
      if (has_estimate (judgement))
        smallest = get_estimate (judgement);
      largest = MAX (smallest, largest);
    }
  *out = make_part (smallest, largest, get_normal_u (judgement));
  if (smallest <= 0)
    return TM_FIT_BAD_PART;
  return isnan (judgement->u) ? TM_FIT_NO_METHOD : TM_FIT_OK;
}

TmFitStatus
tm_fit_part_as_measured (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                         TmFitPart *out)
{
  g_auto (TmJudgement) judgement = { NULL };

  g_return_val_if_fail (job != NULL && piece != NULL && feature != NULL && out != NULL, TM_FIT_NOT_MEASURED);

  if (!has_size (feature) || place < 1 || place > feature->places)
    return TM_FIT_NOT_MEASURED;
  tm_judge (job, piece, feature, place, &judgement);
  if (judgement.verdict == TM_VERDICT_NOT_MEASURED)
    return TM_FIT_NOT_MEASURED;
  return take_judgement (&judgement, out);
}

TmFitStatus
tm_fit_mate_as_measured (const TmMateSize *mate, TmFitPart *out)
{
  g_return_val_if_fail (mate != NULL && out != NULL, TM_FIT_NOT_MEASURED);

  if (!mate->smallest.given)
    return TM_FIT_NOT_MEASURED;
  *out = make_part (mate->smallest.count, mate->largest.given ? mate->largest.count : mate->smallest.count,
                    mate->uncertainty.given ? (double)mate->uncertainty.count / 2 : (double)NAN);
  if (out->smallest <= 0 || out->smallest > out->largest || out->u < 0)
    return TM_FIT_BAD_PART;
  return mate->uncertainty.given ? TM_FIT_OK : TM_FIT_NO_METHOD;
}

/* -------- What belongs to the pair -------- */

TmFitWant
tm_fit_wanted (const TmFeature *feature)
{
  const TmMate *mate;

  g_return_val_if_fail (feature != NULL, (TmFitWant) { FALSE });

  mate = &feature->mate;
  return (TmFitWant) { mate->wanted_least.given, mate->wanted_most.given, mate->wanted_least.count,
                       mate->wanted_most.count };
}

guint
tm_fit_mate_place (const TmMateSize *mate)
{
  g_return_val_if_fail (mate != NULL, 1);

  return mate->place.given ? (guint)CLAMP (mate->place.count, 0, G_MAXUINT) : 1;
}

TmMateSize *
tm_fit_find_mate (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_return_val_if_fail (job != NULL && piece != NULL && feature != NULL, NULL);

  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);

      if (g_str_equal (mate->feature, feature->balloon) && g_str_equal (mate->piece, piece->serial)
          && tm_fit_mate_place (mate) == place)
        return mate;
    }
  return NULL;
}

gboolean
tm_fit_feature_is_bore (const TmFeature *feature, TmFitStatus *status)
{
  TmFitStatus ignored;
  const TmMate *mate;

  if (status == NULL)
    status = &ignored;
  *status = TM_FIT_NO_SIDE;
  g_return_val_if_fail (feature != NULL, FALSE);

  mate = &feature->mate;
  if (!has_size (feature))
    return FALSE;
  *status = TM_FIT_OK;
  if (feature->kind == TM_KIND_BORE || feature->kind == TM_KIND_SHAFT)
    return feature->kind == TM_KIND_BORE;
  if (tm_feature_cut (feature) != TM_CUT_UNKNOWN)
    return tm_feature_cut (feature) == TM_CUT_GROWS;
  if (mate->given && (mate->kind == TM_KIND_BORE || mate->kind == TM_KIND_SHAFT))
    return mate->kind == TM_KIND_SHAFT;
  *status = TM_FIT_NO_SIDE;
  return FALSE;
}

static gboolean
find_expansion (const TmJob *job, const char *material, TmExpansion *out)
{
  TmElastic known;

  if (!tm_elastic_find (job, material, &known) || isnan (known.expansion.value))
    return FALSE;
  *out = (TmExpansion) { .value = known.expansion.value,
                         .low = known.expansion.low,
                         .high = known.expansion.high };
  return TRUE;
}

gboolean
tm_fit_part_warm (const TmJob *job, const TmFeature *feature, gboolean of_mate, double temp, TmFitPart *part)
{
  gboolean is_hub;
  const char *material;
  TmExpansion expansion;
  gboolean known;

  g_return_val_if_fail (job != NULL && feature != NULL && part != NULL, FALSE);

  is_hub = tm_fit_feature_is_bore (feature, NULL) != of_mate;
  material = is_hub ? feature->press.hub_material : feature->press.shaft_material;
  if (*material != '\0')
    known = find_expansion (job, material, &expansion);
  else if (of_mate)
    known = FALSE;
  else
    known = job->expansion.given ? tm_job_expansion (job, &expansion)
                                 : find_expansion (job, job->material, &expansion);
  part->temp = temp;
  part->alpha = known ? expansion.value : (double)NAN;
  part->alpha_half_width = known ? tm_expansion_half_width (&expansion) : 0;
  return known;
}
