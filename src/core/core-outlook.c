/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-outlook: what is known of a feature before it is read: what a method would settle, and on
 * which pieces it is due.
 */

#include <math.h>
#include <string.h>

#include "core-judge.h"
#include "core-method.h"
#include "core-verdict.h"

gboolean
tm_judge_outlook (const TmJob *job, const TmFeature *feature, const char *method_name, TmOutlook *out)
{
  TmMethodUse use = tm_method_use (job, feature, method_name);
  TmLimits limits = tm_feature_limits (feature);
  /* Position is taken as two offsets, which is the less certain way. */
  TmLocalSize single = { .n = 1, .radial = feature->kind == TM_KIND_POSITION };
  TmUncertainty uncertainty;
  TmRule rule;
  gint64 band = tm_limits_band (&limits);

  if (!use.known || tm_kind_is_attribute (feature->kind))
    return FALSE;
  uncertainty = tm_method_uncertainty (&use, &single, NULL);
  tm_rule_init (&rule, job->decision, tm_job_simple_ratio (job), &limits, &uncertainty, single.radial);
  out->u = uncertainty.u;
  out->dof = uncertainty.dof;
  out->coverage = uncertainty.coverage;
  out->expanded = uncertainty.expanded;
  out->guard = job->decision == TM_DECISION_GUARDED ? rule.guard : 0;
  out->settles = rule.settles;
  out->blind_share = band > 0 ? use.resolution / (double)band : NAN;
  return TRUE;
}

/* "every N": N, or 0 when @check is none. */
static guint64
read_interval (const char *check)
{
  static const char prefix[] = "every ";
  guint64 interval = 0;

  if (g_str_has_prefix (check, prefix))
    g_ascii_string_to_unsigned (check + strlen (prefix), 10, 1, G_MAXUINT, &interval, NULL);
  return interval;
}

static gboolean
is_in_plan (const TmFeature *feature, guint index)
{
  guint64 interval = read_interval (feature->check);

  return interval == 0 || index % interval == 0;
}

gboolean
tm_job_feature_is_due (const TmJob *job, const TmFeature *feature, const TmPiece *piece, guint index)
{
  if (piece->first_article && !tm_job_feature_is_asked (job, feature))
    return FALSE;
  if (strcmp (feature->check, "first") == 0)
    return piece->first_article || (index == 0 && !tm_job_has_first_article (job));
  return is_in_plan (feature, index);
}
