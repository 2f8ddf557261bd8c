/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-fit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gboolean
has_want (const TmFeature *feature)
{
  return feature->mate.given && (feature->mate.wanted_least.given || feature->mate.wanted_most.given);
}

gboolean
tm_report_has_fits (const TmJob *job)
{
  for (guint i = 0; i < job->features->len; i++)
    if (has_want (g_ptr_array_index (job->features, i)))
      return TRUE;
  return job->mate_sizes->len > 0;
}

/* Whether a part can be shown: it was found, with or without its uncertainty. */
static gboolean
is_part (TmFitStatus status)
{
  return status == TM_FIT_OK || status == TM_FIT_NO_METHOD;
}

static void
check (TmReportFit *fit, TmFitStatus own, TmFitStatus other)
{
  TmFitStatus side;

  fit->check = (TmFitCheck) { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };
  fit->is_bore = tm_fit_feature_is_bore (fit->feature, &side);
  fit->want = tm_fit_wanted (fit->feature);
  if (!is_part (own))
    fit->own = (TmFitPart) { .alpha = NAN, .temp = 20 };
  if (!is_part (other))
    fit->other = (TmFitPart) { .alpha = NAN, .temp = 20 };
  fit->status = !is_part (own) ? own : !is_part (other) ? other : side;
  if (fit->status != TM_FIT_OK)
    return;
  fit->status = tm_fit_check (fit->is_bore ? &fit->own : &fit->other, fit->is_bore ? &fit->other : &fit->own,
                              &fit->want, &fit->check);
}

static void
add_by_limits (GArray *fits, const TmFeature *feature)
{
  TmReportFit fit = { .feature = feature };
  TmFitStatus own = tm_fit_part_by_limits (feature, &fit.own);
  TmFitStatus other = tm_fit_mate_by_limits (feature, &fit.other);

  check (&fit, own, other);
  g_array_append_val (fits, fit);
}

static void
add_measured (GArray *fits, const TmJob *job, const TmFeature *feature, const TmMateSize *mate)
{
  TmReportFit fit = { .feature = feature, .mate = mate };
  TmFitStatus own = TM_FIT_NOT_MEASURED;
  TmFitStatus other = tm_fit_mate_as_measured (mate, &fit.other);
  guint place = tm_fit_mate_place (mate);

  fit.piece = tm_job_find_piece (job, mate->piece);
  if (fit.piece != NULL && place >= 1 && place <= feature->places)
    {
      fit.place = place;
      own = tm_fit_part_as_measured (job, fit.piece, feature, fit.place, &fit.own);
    }
  check (&fit, own, other);
  g_array_append_val (fits, fit);
}

GArray *
tm_report_fits (const TmJob *job)
{
  GArray *fits = g_array_new (FALSE, FALSE, sizeof (TmReportFit));

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (feature->mate.given)
        add_by_limits (fits, feature);
      for (guint m = 0; m < job->mate_sizes->len; m++)
        {
          const TmMateSize *mate = g_ptr_array_index (job->mate_sizes, m);

          if (g_str_equal (mate->feature, feature->balloon))
            add_measured (fits, job, feature, mate);
        }
    }
  return fits;
}

/* ISO 286-1, 3.3: the three kinds of fit, where nothing is wanted beyond the sizes. */
static const char *
name_kind (const TmFitCheck *check)
{
  if (check->least - check->expanded >= 0)
    return _ ("clearance fit");
  return check->most + check->expanded <= 0 ? _ ("interference fit") : _ ("transition fit");
}

/* An end that is not wanted is never missed. */
static const char *
name_wanted (const TmReportFit *fit)
{
  const gboolean by_limits = fit->mate == NULL;

  if (fit->status == TM_FIT_NO_METHOD)
    return tm_fit_is_within (&fit->check, &fit->want) ? _ ("as wanted by what was read; uncertainty unknown")
                                                      : _ ("not as wanted by what was read");
  if (tm_fit_is_within (&fit->check, &fit->want))
    return by_limits ? _ ("every pair as wanted") : _ ("as wanted");
  if (fit->check.loose >= TM_FIT_PROVEN)
    return by_limits ? _ ("every pair too loose") : _ ("too loose");
  if (fit->check.tight >= TM_FIT_PROVEN)
    return by_limits ? _ ("every pair too tight") : _ ("too tight");
  return by_limits ? _ ("not every pair as wanted") : _ ("not proven as wanted");
}

const char *
tm_report_fit_word (const TmReportFit *fit)
{
  if (fit->mate != NULL && fit->place == 0)
    return _ ("meant for no piece yet");
  if (!is_part (fit->status))
    return g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (fit->status));
  if (fit->want.has_least || fit->want.has_most)
    return name_wanted (fit);
  return fit->status == TM_FIT_OK ? name_kind (&fit->check) : _ ("uncertainty unknown");
}

guint
tm_report_fit_decimals (const TmReportFit *fit)
{
  const TmFeature *feature = fit->feature;
  guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);

  decimals = MAX (decimals, MAX (feature->mate.lower.decimals, feature->mate.upper.decimals));
  if (fit->mate != NULL)
    decimals = MAX (decimals, fit->mate->smallest.decimals) + 1;
  return MIN (decimals, TM_MAX_DECIMALS);
}
