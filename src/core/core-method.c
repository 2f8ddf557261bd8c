/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-method.h"

#include <math.h>

static gboolean
fits_feature (const TmFeature *feature, const TmQuantity *quantity)
{
  return tm_unit_dimension (quantity->unit) == tm_unit_dimension (feature->unit);
}

static gboolean
add_component (TmMethodUse *use, const TmFeature *feature, const TmQuantity *quantity, TmComponent component)
{
  if (!quantity->given)
    return TRUE;
  if (!fits_feature (feature, quantity))
    return FALSE;
  use->components[use->n_components++] = component;
  return TRUE;
}

/* Half a step either way, of each reading by itself; the limit of error, which repeats share. */
static gboolean
add_gauge (TmMethodUse *use, const TmFeature *feature, const TmGauge *gauge)
{
  TmComponent resolution = tm_component (TM_COMPONENT_RESOLUTION, TM_DISTRIBUTION_RECTANGULAR,
                                         (double)gauge->resolution.count / 2, INFINITY, FALSE);
  TmComponent error = tm_component (TM_COMPONENT_ERROR_LIMIT, TM_DISTRIBUTION_RECTANGULAR,
                                    (double)gauge->error_limit.count, INFINITY, TRUE);

  use->gauge = gauge;
  use->resolution = gauge->resolution.given ? (double)gauge->resolution.count : NAN;
  return add_component (use, feature, &gauge->resolution, resolution)
         && add_component (use, feature, &gauge->error_limit, error);
}

static gboolean
add_method (TmMethodUse *use, const TmJob *job, const TmFeature *feature, const TmMethod *method)
{
  double dof = method->repeatability_dof.given ? (double)method->repeatability_dof.count : INFINITY;
  TmComponent repeatability = tm_component (TM_COMPONENT_REPEATABILITY, TM_DISTRIBUTION_T,
                                            (double)method->repeatability.count, dof, FALSE);

  use->method = method;
  for (guint i = 0; i < MIN (method->gauges->len, 2); i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i));

      if (gauge == NULL || !add_gauge (use, feature, gauge))
        return FALSE;
    }
  use->has_repeatability = method->repeatability.given;
  return add_component (use, feature, &method->repeatability, repeatability);
}

static gboolean
has_any (const TmMethodUse *use)
{
  for (guint i = 0; i < use->n_components; i++)
    if (use->components[i].value > 0)
      return TRUE;
  return FALSE;
}

TmMethodUse
tm_method_use (const TmJob *job, const TmFeature *feature, const char *name)
{
  TmMethodUse use = { .name = name ? name : "", .resolution = NAN };
  const TmMethod *method;
  const TmGauge *gauge;

  if (use.name[0] == '\0')
    return use;
  method = tm_job_find_method (job, use.name);
  gauge = method ? NULL : tm_job_find_gauge (job, use.name);
  if (method)
    use.known = add_method (&use, job, feature, method);
  else if (gauge)
    use.known = add_gauge (&use, feature, gauge);
  use.known = use.known && has_any (&use);
  return use;
}

/* Repeatability of the mean of n; returns whether there is any. */
static gboolean
make_repeatability (const TmMethodUse *use, const TmLocalSize *size, TmComponent *out)
{
  guint n = MAX (size->n, 1);

  if (use->has_repeatability)
    *out = use->components[use->n_components - 1];
  else if (n > 1)
    *out = tm_component (TM_COMPONENT_REPEATABILITY, TM_DISTRIBUTION_T, size->spread, n - 1, FALSE);
  else
    return FALSE;
  out->value /= sqrt (n);
  return TRUE;
}

TmUncertainty
tm_method_uncertainty (const TmMethodUse *use, const TmLocalSize *size, const TmComponent *extra)
{
  TmComponent components[TM_METHOD_MAX_COMPONENTS + 2];
  guint n = use->n_components - (use->has_repeatability ? 1 : 0);

  if (!use->known)
    return tm_uncertainty_unknown;
  for (guint i = 0; i < n; i++)
    components[i] = use->components[i];
  if (make_repeatability (use, size, &components[n]))
    n++;
  for (guint i = 0; i < n; i++)
    components[i].sensitivity = size->radial ? 2 : 1;
  if (extra)
    components[n++] = *extra;
  return tm_uncertainty_combine (components, n, 0.95);
}
