/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-method.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core-gauge-kind.h"
#include "core-method-private.h"
#include "core-temperature.h"

/* Lines that nobody measured matter from this share of the variance on. */
#define ASSUMED_SHARE 0.1

/* -------- Lines -------- */

static gboolean
fits_feature (const TmFeature *feature, const TmQuantity *quantity)
{
  return tm_unit_dimension (quantity->unit) == tm_unit_dimension (feature->unit);
}

double
tm_plain_number (const TmQuantity *quantity, double otherwise)
{
  return quantity->given ? tm_count_to_double (quantity->count, quantity->unit) : otherwise;
}

/* Two lines as one: their root sum of squares, with the degrees of freedom that follow. */
static TmComponent
merge_lines (const TmComponent *a, const TmComponent *b)
{
  const TmComponent both[] = { *a, *b };
  TmUncertainty sum = tm_uncertainty_combine (both, 2, 0.95);
  TmComponent merged = tm_component (TM_COMPONENT_OTHER, TM_DISTRIBUTION_NORMAL, isnan (sum.u) ? 0 : sum.u,
                                     isnan (sum.u) ? INFINITY : sum.dof, TRUE);

  merged.subject = N_ ("further lines");
  merged.assumed = a->assumed || b->assumed;
  return merged;
}

/* The last place is kept for the repeatability. */
void
tm_budget_add_line (TmMethodUse *use, const TmComponent *line)
{
  TmComponent *last = &use->components[TM_METHOD_MAX_COMPONENTS - 2];

  if (use->n_components < TM_METHOD_MAX_COMPONENTS - 1)
    use->components[use->n_components++] = *line;
  else
    *last = merge_lines (last, line);
}

/* FALSE when @quantity measures something else than the feature. */
gboolean
tm_budget_add (const TmBudget *self, const TmQuantity *quantity, const TmComponent *line)
{
  if (!quantity->given)
    return TRUE;
  if (!fits_feature (self->feature, quantity))
    return FALSE;
  tm_budget_add_line (self->use, line);
  return TRUE;
}

/* -------- Lines as written -------- */

static TmComponentKind
get_written_kind (TmLineKind kind)
{
  switch (kind)
    {
    case TM_LINE_FEEL:
      return TM_COMPONENT_FEEL;
    case TM_LINE_TEMPERATURE:
      return TM_COMPONENT_TEMPERATURE;
    case TM_LINE_FORM:
      return TM_COMPONENT_FORM;
    case TM_LINE_SETTING:
      return TM_COMPONENT_SETTING;
    case TM_LINE_PEOPLE:
      return TM_COMPONENT_PEOPLE;
    case TM_LINE_OTHER:
    case TM_N_LINE_KINDS:
    default:
      return TM_COMPONENT_OTHER;
    }
}

/* What a line says is the same error in every reading: repeats do not make it smaller. */
static gboolean
add_written (const TmBudget *self, const TmBudgetLine *row)
{
  TmDistribution distribution = TM_DISTRIBUTION_NORMAL;
  TmComponent line;

  tm_distribution_from_word (row->distribution, &distribution);
  line = tm_component (get_written_kind (row->kind), distribution, fabs ((double)row->value.count),
                       tm_plain_number (&row->dof, INFINITY), TRUE);
  line.divisor = tm_plain_number (&row->divisor, 0);
  line.subject = row->name[0] != '\0' ? row->name : row->method;
  line.source = row->source[0] != '\0' ? row->source : NULL;
  line.assumed = tm_gauge_source_is_assumed (row->source);
  return tm_budget_add (self, &row->value, &line);
}

static gboolean
add_all_written (const TmBudget *self)
{
  gboolean fits = TRUE;

  for (guint i = 0; i < self->job->budget_lines->len; i++)
    {
      const TmBudgetLine *row = g_ptr_array_index (self->job->budget_lines, i);

      if (strcmp (row->method, self->use->name) == 0)
        fits = add_written (self, row) && fits;
    }
  return fits;
}

static void
note_own_lines (TmBudget *self)
{
  for (guint i = 0; i < self->job->budget_lines->len; i++)
    {
      const TmBudgetLine *row = g_ptr_array_index (self->job->budget_lines, i);

      if (strcmp (row->method, self->use->name) != 0)
        continue;
      self->own_feel = self->own_feel || row->kind == TM_LINE_FEEL;
      self->own_temperature = self->own_temperature || row->kind == TM_LINE_TEMPERATURE;
    }
}

/* -------- The whole -------- */

/* None where it is written as zero: then the step hid it, which the line for the step holds, and nothing is
 * known of the feel. */
static gboolean
add_repeatability (const TmBudget *self, const TmMethod *method)
{
  TmMethodUse *use = self->use;
  TmComponent line
      = tm_component (TM_COMPONENT_REPEATABILITY, TM_DISTRIBUTION_T, (double)method->repeatability.count,
                      tm_plain_number (&method->repeatability_dof, INFINITY), FALSE);

  line.subject = method->name;
  line.source = method->repeatability_source[0] != '\0' ? method->repeatability_source : NULL;
  line.assumed = tm_gauge_source_is_assumed (line.source);
  if (!use->has_repeatability)
    return TRUE;
  if (!fits_feature (self->feature, &method->repeatability))
    return FALSE;
  use->components[use->n_components++] = line;
  return TRUE;
}

static gboolean
add_method (TmBudget *self, const TmMethod *method)
{
  gboolean fits;

  self->use->method = method;
  self->use->has_repeatability = method->repeatability.given && method->repeatability.count > 0;
  note_own_lines (self);
  for (guint i = 0; i < MIN (method->gauges->len, 2); i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (self->job, g_ptr_array_index (method->gauges, i));

      if (gauge == NULL || !tm_budget_add_gauge (self, gauge))
        return FALSE;
    }
  fits = add_all_written (self);
  tm_budget_add_temperature (self);
  return add_repeatability (self, method) && fits;
}

static gboolean
add_bare_gauge (const TmBudget *self, const TmGauge *gauge)
{
  if (!tm_budget_add_gauge (self, gauge))
    return FALSE;
  tm_budget_add_temperature (self);
  return TRUE;
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
tm_method_use_at (const TmJob *job, const TmFeature *feature, const char *name, const TmUseWhen *when)
{
  TmMethodUse use = { .name = name ? name : "", .resolution = NAN };
  TmBudget budget = { .use = &use, .job = job, .feature = feature, .when = when };
  const TmMethod *method;
  const TmGauge *gauge;

  if (use.name[0] == '\0')
    return use;
  method = tm_job_find_method (job, use.name);
  gauge = method ? NULL : tm_job_find_gauge (job, use.name);
  if (method)
    use.known = add_method (&budget, method);
  else if (gauge)
    use.known = add_bare_gauge (&budget, gauge);
  use.known = use.known && has_any (&use);
  return use;
}

TmMethodUse
tm_method_use (const TmJob *job, const TmFeature *feature, const char *name)
{
  const TmUseWhen when = { NULL };

  return tm_method_use_at (job, feature, name, &when);
}

TmUseWhen
tm_use_when (const TmReading *reading)
{
  TmUseWhen when = { NULL };

  if (reading == NULL)
    return when;
  when.at = reading->row.at;
  when.temperatures = reading->part_temp.given && reading->gauge_temp.given;
  when.part_temp = tm_plain_number (&reading->part_temp, 20);
  when.gauge_temp = tm_plain_number (&reading->gauge_temp, 20);
  /* Its own length serves as well as the reading, and gives every reading of the feature one budget. */
  when.size = tm_feature_length (reading->row.feature) == 0 ? reading->value.count : 0;
  return when;
}

/* -------- What follows from it -------- */

/* Repeatability of the mean of n; returns whether there is any. */
static gboolean
make_repeatability (const TmMethodUse *use, const TmLocalSize *size, TmComponent *out)
{
  guint n = MAX (size->n, 1);

  if (use->has_repeatability)
    *out = use->components[use->n_components - 1];
  else if (n > 1)
    {
      *out = tm_component (TM_COMPONENT_REPEATABILITY, TM_DISTRIBUTION_T, size->spread, n - 1, FALSE);
      out->subject = use->name;
      out->source = N_ ("these readings alone");
    }
  else
    return FALSE;
  out->value /= sqrt (n);
  return TRUE;
}

guint
tm_method_lines (const TmMethodUse *use, const TmLocalSize *size, const TmComponent *extra,
                 TmComponent *lines)
{
  guint n = use->n_components - (use->has_repeatability ? 1 : 0);

  if (!use->known)
    return 0;
  memcpy (lines, use->components, n * sizeof *lines);
  if (make_repeatability (use, size, &lines[n]))
    n++;
  for (guint i = 0; i < n; i++)
    lines[i].sensitivity = size->radial ? 2 : 1;
  if (extra)
    lines[n++] = *extra;
  return n;
}

TmUncertainty
tm_method_uncertainty (const TmMethodUse *use, const TmLocalSize *size, const TmComponent *extra)
{
  TmComponent lines[TM_METHOD_MAX_LINES];
  guint n = tm_method_lines (use, size, extra, lines);

  return n > 0 ? tm_uncertainty_combine (lines, n, 0.95) : tm_uncertainty_unknown;
}

gboolean
tm_method_rests_on_assumed (const TmMethodUse *use)
{
  double all = 0, assumed = 0;

  for (guint i = 0; i < use->n_components; i++)
    {
      double share = tm_component_share (&use->components[i]);

      all += share * share;
      assumed += use->components[i].assumed ? share * share : 0;
    }
  return use->known && all > 0 && assumed >= ASSUMED_SHARE * all;
}
