/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-budget-gaps: what one would expect in a budget and nobody has stated; why there is none.
 */

#include <glib/gi18n-lib.h>

#include "app-budget-words.h"
#include "core-form.h"
#include "core-gauge-kind.h"
#include "core-temperature.h"

typedef struct {
  const TmComponent *lines;
  guint n;
  GPtrArray *out; /* char * */
} Gaps;

static gboolean
has_line (const Gaps *gaps, TmComponentKind kind, const char *subject)
{
  for (guint i = 0; i < gaps->n; i++)
    if (gaps->lines[i].kind == kind && (subject == NULL || g_strcmp0 (gaps->lines[i].subject, subject) == 0))
      return TRUE;
  return FALSE;
}

static gboolean
is_transfer (const TmGauge *gauge)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);

  return kind != NULL && kind->transfer;
}

static void
add_gap (const Gaps *gaps, char *line)
{
  g_ptr_array_add (gaps->out, line);
}

/* A transfer gauge has no scale of its own: what counts is the feel. */
static void
find_gauge_gaps (const Gaps *gaps, const TmGauge *gauge)
{
  if (is_transfer (gauge))
    {
      if (!has_line (gaps, TM_COMPONENT_FEEL, NULL))
        add_gap (gaps, g_strdup_printf (has_line (gaps, TM_COMPONENT_REPEATABILITY, NULL)
                                            ? _ ("Transfer feel of %s: taken as within the repeatability.")
                                            : _ ("Transfer feel of %s: not stated, left out."),
                                        gauge->tag));
      return;
    }
  if (!has_line (gaps, TM_COMPONENT_RESOLUTION, gauge->tag))
    add_gap (gaps, g_strdup_printf (_ ("Resolution of %s: not stated, left out."), gauge->tag));
  if (!has_line (gaps, TM_COMPONENT_ERROR_LIMIT, gauge->tag)
      && !has_line (gaps, TM_COMPONENT_CERTIFICATE, gauge->tag))
    add_gap (gaps,
             g_strdup_printf (_ ("Limit of error of %s: neither it nor a certificate is stated, left out."),
                              gauge->tag));
}

static void
find_temperature_gap (const Gaps *gaps, const TmJob *job, const TmFeature *feature)
{
  if (!tm_feature_grows_warm (feature) || has_line (gaps, TM_COMPONENT_TEMPERATURE, NULL))
    return;
  if (job->part_temp_limit.given || job->gauge_temp_limit.given)
    return;
  add_gap (gaps, g_strdup (_ ("Temperature: no limits are stated in the shop rules, left out.")));
}

static void
find_gaps_of_lines (const Gaps *gaps, const TmJob *job, const TmFeature *feature, const TmMethodUse *use)
{
  if (!has_line (gaps, TM_COMPONENT_REPEATABILITY, NULL))
    add_gap (gaps, g_strdup (use->method != NULL
                                 ? _ ("Repeatability: not stated; the spread of repeats stands in for it.")
                                 : _ ("Repeatability: a gauge alone has none; make a method of it to state "
                                      "one.")));
  find_temperature_gap (gaps, job, feature);
  if (tm_feature_is_diameter (feature) && !has_line (gaps, TM_COMPONENT_FORM, NULL))
    add_gap (gaps, g_strdup (_ ("Form that the method does not see: not stated, left out.")));
}

char **
tm_words_left_out (const TmJob *job, const TmFeature *feature, const char *method_name)
{
  TmMethodUse use = tm_method_use (job, feature, method_name);
  GPtrArray *out = g_ptr_array_new ();
  Gaps gaps = { use.components, use.n_components, out };

  if (use.known && use.method == NULL && use.gauge != NULL)
    find_gauge_gaps (&gaps, use.gauge);
  for (guint i = 0; use.known && use.method != NULL && i < use.method->gauges->len; i++)
    find_gauge_gaps (&gaps, tm_job_find_gauge (job, g_ptr_array_index (use.method->gauges, i)));
  if (use.known)
    find_gaps_of_lines (&gaps, job, feature, &use);
  g_ptr_array_add (out, NULL);
  return (char **)g_ptr_array_free (out, FALSE);
}

char *
tm_words_method_gauges (const TmMethod *method)
{
  const char *first = method->gauges->len > 0 ? g_ptr_array_index (method->gauges, 0) : "";

  if (method->gauges->len > 1)
    return g_strdup_printf (_ ("%s, read with %s"), first,
                            (const char *)g_ptr_array_index (method->gauges, 1));
  return g_strdup (first);
}

static const char *
find_missing_gauge (const TmJob *job, const TmMethod *method)
{
  for (guint i = 0; i < method->gauges->len; i++)
    if (tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i)) == NULL)
      return g_ptr_array_index (method->gauges, i);
  return NULL;
}

char *
tm_words_no_budget (const TmJob *job, const TmFeature *feature, const char *method_name)
{
  TmMethodUse use = tm_method_use (job, feature, method_name);
  const char *missing = use.method != NULL ? find_missing_gauge (job, use.method) : NULL;

  if (use.known)
    return g_strdup ("");
  if (missing != NULL)
    return g_strdup_printf (_ ("%s: its gauge %s is not in the register."), method_name, missing);
  if (use.method == NULL && use.gauge == NULL)
    return g_strdup_printf (_ ("%s is neither a method nor a gauge of this job."), method_name);
  if (use.n_components == 0 && use.gauge != NULL && !use.gauge->resolution.given)
    return g_strdup_printf (_ ("Nothing is stated of %s: give its gauge a resolution and a limit of error."),
                            method_name);
  return g_strdup_printf (_ ("%s measures something else than this feature."), method_name);
}
