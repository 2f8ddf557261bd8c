/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-size.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-combine.h"
#include "core-method.h"

static TmSizeMark
make_mark (const TmJob *job, const TmLimits *limits, const TmLocalSize *size,
           const TmUncertainty *uncertainty)
{
  TmSizeMark mark = { TM_VERDICT_NOT_MEASURED, uncertainty->expanded, FALSE };
  TmRule rule;

  tm_rule_init (&rule, job->decision, tm_job_simple_ratio (job), limits, uncertainty, size->radial);
  if (limits->has_lower || limits->has_upper)
    mark.verdict = tm_rule_verdict (&rule, size);
  return mark;
}

TmSizeMark
tm_size_mark (const TmJob *job, const TmFeature *feature, const TmLimits *limits, const TmLocalSize *size,
              const char *method)
{
  const TmUseWhen when = tm_use_when (size->last);
  const TmMethodUse use = tm_method_use_at (job, feature, method, &when);
  const TmUncertainty uncertainty = tm_method_uncertainty (&use, size, NULL);

  return make_mark (job, limits, size, &uncertainty);
}

/* FALSE where one method alone counts. */
static gboolean
find_combined_mark (const TmJob *job, const TmJudgement *judgement, const TmLocalSize *size, TmSizeMark *mark)
{
  g_auto (TmCombined) combined = { 0 };
  TmUncertainty uncertainty;

  if (judgement->feature->counts != TM_COUNTS_COMBINED || !size->several_methods || size->radial)
    return FALSE;
  tm_combine (job, judgement->piece, judgement->feature, judgement->place, size->station, &combined);
  if (isnan (combined.u) || combined.n_parts < 2)
    return FALSE;
  uncertainty
      = (TmUncertainty) { combined.u, combined.u, 0, combined.dof, combined.coverage, combined.expanded };
  *mark = make_mark (job, &judgement->limits, size, &uncertainty);
  mark->combined = TRUE;
  return TRUE;
}

TmSizeMark
tm_station_mark (const TmJob *job, const TmJudgement *judgement, guint index)
{
  const TmLocalSize *size = &judgement->sizes.stations[index];
  TmSizeMark mark;

  if (!find_combined_mark (job, judgement, size, &mark))
    mark = tm_size_mark (job, judgement->feature, &judgement->limits, size, size->method_name);
  if (index != judgement->deciding || judgement->counted != TM_COUNTED_READINGS)
    return mark;
  mark.uncertainty = judgement->expanded;
  if (judgement->verdict != TM_VERDICT_NOT_MEASURED)
    mark.verdict = judgement->verdict;
  return mark;
}

char *
tm_station_number (const TmJudgement *judgement, guint index, guint decimals)
{
  const TmLocalSize *size = &judgement->sizes.stations[index];
  const TmUnit unit = judgement->feature->unit;

  /* With pins the judgement's size is the mating size, which is none of a station. */
  if (index == judgement->deciding && !judgement->pins_joined)
    return tm_judgement_size_text (judgement);
  decimals = MAX (decimals, size->unit == unit ? size->decimals : decimals + 1);
  if (size->n > 1 || size->sum != size->raw_sum)
    decimals++;
  return tm_mean_format (size->sum, size->n, unit, MIN (decimals, TM_MAX_DECIMALS));
}

char *
tm_form_number (const TmJudgement *judgement, double counts)
{
  const TmFeature *feature = judgement->feature;
  guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  g_autofree char *number = NULL;

  for (guint i = 0; i < judgement->sizes.n_stations; i++)
    decimals = MAX (decimals, judgement->sizes.stations[i].decimals);
  number = tm_count_format ((gint64)llround (counts), feature->unit, MIN (decimals, TM_MAX_DECIMALS));
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (feature->unit));
}

char *
tm_taper_words (const TmJudgement *judgement)
{
  const gboolean opens_to_mouth = judgement->taper > 0;
  g_autofree char *taper = NULL;

  if (!judgement->has_taper)
    return NULL;
  if (fabs (judgement->taper) < 0.5)
    return g_strdup (_ ("no taper seen"));
  taper = tm_form_number (judgement, fabs (judgement->taper));
  if (tm_feature_cut (judgement->feature) == TM_CUT_SHRINKS)
    return g_strdup_printf (
        opens_to_mouth ? _ ("taper %s, larger at the mouth") : _ ("taper %s, larger at the bottom"), taper);
  return g_strdup_printf (
      opens_to_mouth ? _ ("taper %s, opens to the mouth") : _ ("taper %s, opens to the bottom"), taper);
}

guint
tm_round_enlargement (double wished)
{
  static const guint steps[] = { 1, 2, 3, 4, 5, 6, 8 };
  guint best = 0;

  for (guint decade = 1; decade <= 1000000; decade *= 10)
    for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
      if (wished >= (double)(steps[i] * decade))
        best = steps[i] * decade;
  return best > 1 ? best : 0;
}
