/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-suitability.h"

#include <math.h>
#include <string.h>

#include "core-gauge-kind.h"
#include "core-method.h"
#include "core-temperature.h"

/* -------- Which gauge is made for which feature -------- */

static gboolean
is_word (const TmGaugeKind *kind, const char *const *words)
{
  return g_strv_contains (words, kind->word);
}

/* Blocks, rings and thermometers set or watch other gauges; pins and plugs do not read. */
static gboolean
has_reading (const TmGaugeKind *kind)
{
  static const char *const others[] = { "gauge blocks", "thermometer", "snap gauge", NULL };

  return kind == NULL
         || !(kind->transfer || kind->pins || kind->classed || kind->contact == TM_CONTACT_FULL_FORM
              || is_word (kind, others));
}

/* Gauges that read no length of a feature's own. */
static gboolean
reads_length (const TmGaugeKind *kind)
{
  static const char *const others[] = { "roughness tester", "hardness tester", "bevel protractor", NULL };

  return !is_word (kind, others);
}

static gboolean
fits_diameter (const TmGaugeKind *kind, TmCut cut)
{
  if (cut == TM_CUT_UNKNOWN)
    return kind->measures_inside || kind->measures_outside;
  return cut == TM_CUT_GROWS ? kind->measures_inside : kind->measures_outside;
}

static gboolean
fits_depth (const TmGaugeKind *kind)
{
  static const char *const with_rod[] = { "caliper", NULL };

  return reads_length (kind) && (kind->contact == TM_CONTACT_OTHER || is_word (kind, with_rod));
}

static gboolean
fits_kind (const TmGaugeKind *kind, const TmFeature *feature)
{
  static const char *const roughness[] = { "roughness tester", NULL };
  static const char *const hardness[] = { "hardness tester", NULL };
  static const char *const angle[] = { "bevel protractor", "CMM", NULL };

  switch (feature->kind)
    {
    case TM_KIND_BORE:
    case TM_KIND_SHAFT:
    case TM_KIND_DIAMETER:
      return fits_diameter (kind, tm_feature_cut (feature));
    case TM_KIND_DEPTH:
      return fits_depth (kind);
    case TM_KIND_ANGLE:
      return is_word (kind, angle);
    case TM_KIND_ROUGHNESS:
      return is_word (kind, roughness);
    case TM_KIND_HARDNESS:
      return is_word (kind, hardness);
    case TM_KIND_FORM:
      return reads_length (kind) && kind->contact == TM_CONTACT_OTHER;
    case TM_KIND_LENGTH:
    case TM_KIND_POSITION:
      return reads_length (kind);
    case TM_KIND_THREAD:
    case TM_KIND_ATTRIBUTE:
    case TM_KIND_NOTE:
    case TM_N_KINDS:
    default:
      return TRUE;
    }
}

/* -------- One method -------- */

static gboolean
reaches_feature (const TmGauge *gauge, const TmFeature *feature)
{
  gint64 length = tm_feature_length (feature);

  return length == 0 || !tm_feature_grows_warm (feature) || tm_gauge_reaches (gauge, length);
}

static int
rank_due (TmDue due)
{
  static const int ranks[TM_N_DUES]
      = { [TM_DUE_GOOD] = 0, [TM_DUE_UNKNOWN] = 1, [TM_DUE_SOON] = 2, [TM_DUE_OVERDUE] = 3 };

  return ranks[due];
}

static void
note_gauge (const TmJob *job, const TmFeature *feature, const char *at, const TmGauge *gauge,
            gboolean touches, TmSuitability *out)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);
  TmDue due = tm_gauge_due (job, gauge, at ? at : "");

  out->reaches = out->reaches && reaches_feature (gauge, feature);
  if (touches && kind != NULL)
    out->fits = fits_kind (kind, feature);
  if (rank_due (due) > rank_due (out->due))
    out->due = due;
}

double
tm_outlook_share (const TmFeature *feature, const TmOutlook *outlook)
{
  TmLimits limits = tm_feature_limits (feature);
  gint64 band = tm_limits_band (&limits);
  double share;

  if (band <= 0)
    return NAN;
  if (outlook->guard <= 0)
    return 2 * outlook->expanded / (double)band;
  share = (limits.zero_bounded ? 1.0 : 2.0) * (double)outlook->guard / (double)band;
  return outlook->settles == TM_SETTLES_CANNOT ? MAX (1, share) : share;
}

static TmSuitability
weigh_method (const TmJob *job, const TmFeature *feature, const char *name)
{
  TmMethodUse use = tm_method_use (job, feature, name);
  TmSuitability found = {
    .name = name,
    .method = use.method,
    .gauge = use.gauge,
    .share = NAN,
    .reaches = TRUE,
    .fits = TRUE,
    .due = TM_DUE_GOOD,
  };

  found.known = tm_judge_outlook (job, feature, name, &found.outlook);
  if (found.known)
    {
      found.share = tm_outlook_share (feature, &found.outlook);
      found.assumed = tm_method_rests_on_assumed (&use);
    }
  return found;
}

static void
add_method (const TmJob *job, const TmFeature *feature, const char *at, const TmMethod *method, GArray *all)
{
  TmSuitability found = weigh_method (job, feature, method->name);

  for (guint i = 0; i < MIN (method->gauges->len, 2); i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i));

      if (gauge != NULL)
        note_gauge (job, feature, at, gauge, i == 0, &found);
    }
  g_array_append_val (all, found);
}

static void
add_gauge (const TmJob *job, const TmFeature *feature, const char *at, const TmGauge *gauge, GArray *all)
{
  TmSuitability found = weigh_method (job, feature, gauge->tag);

  note_gauge (job, feature, at, gauge, TRUE, &found);
  g_array_append_val (all, found);
}

/* -------- All of them -------- */

static gboolean
is_in_a_method (const TmJob *job, const TmGauge *gauge)
{
  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);

      for (guint j = 0; j < method->gauges->len; j++)
        if (strcmp (g_ptr_array_index (method->gauges, j), gauge->tag) == 0)
          return TRUE;
    }
  return FALSE;
}

/* A method's name hides a gauge of the same tag: readings name the method then. */
static gboolean
is_used_alone (const TmJob *job, const TmFeature *feature, const TmGauge *gauge)
{
  if (strcmp (feature->method, gauge->tag) == 0)
    return tm_job_find_method (job, gauge->tag) == NULL;
  return !is_in_a_method (job, gauge) && has_reading (tm_gauge_kind_find (gauge->kind))
         && tm_job_find_method (job, gauge->tag) == NULL;
}

static int
get_group (const TmSuitability *one)
{
  if (one->fits && one->reaches)
    return one->known ? 0 : 1;
  return one->known ? 2 : 3;
}

static int
compare_cb (gconstpointer a, gconstpointer b)
{
  const TmSuitability *one = a, *other = b;
  int group = get_group (one) - get_group (other);
  double difference = one->known && other->known ? one->outlook.expanded - other->outlook.expanded : 0;

  if (group != 0)
    return group;
  if (difference < 0 || difference > 0)
    return difference < 0 ? -1 : 1;
  return strcmp (one->name, other->name);
}

GArray *
tm_suitability (const TmJob *job, const TmFeature *feature, const char *at)
{
  GArray *all = g_array_new (FALSE, TRUE, sizeof (TmSuitability));

  g_return_val_if_fail (job != NULL && feature != NULL, all);

  for (guint i = 0; i < job->methods->len; i++)
    add_method (job, feature, at, g_ptr_array_index (job->methods, i), all);
  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (job->gauges, i);

      if (is_used_alone (job, feature, gauge))
        add_gauge (job, feature, at, gauge, all);
    }
  g_array_sort (all, compare_cb);
  return all;
}

gboolean
tm_suitability_of (const TmJob *job, const TmFeature *feature, const char *name, const char *at,
                   TmSuitability *out)
{
  const TmMethod *method = tm_job_find_method (job, name);
  const TmGauge *gauge = method != NULL ? NULL : tm_job_find_gauge (job, name);
  g_autoptr (GArray) one = g_array_new (FALSE, TRUE, sizeof (TmSuitability));

  if (method != NULL)
    add_method (job, feature, at, method, one);
  else if (gauge != NULL)
    add_gauge (job, feature, at, gauge, one);
  else
    return FALSE;
  *out = g_array_index (one, TmSuitability, 0);
  return TRUE;
}
