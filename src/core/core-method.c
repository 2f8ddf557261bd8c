/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-method.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core-temperature.h"

/* 95 % of a normal distribution, as limits of feel are given. */
#define FEEL_DIVISOR 1.96
/* Where no thermometer's limit is stated: ± °C, assumed (common practice). */
#define THERMOMETER_ASSUMED 0.5
/* Of a part whose material nobody stated, 1e-6 / °C: that of the commonest metal that moves most. */
#define EXPANSION_UNKNOWN 23.6
/* Lines that nobody measured matter from this share of the variance on. */
#define ASSUMED_SHARE  0.1
#define ASSUMED_PREFIX "assumed"

typedef struct {
  TmMethodUse *use;
  const TmJob *job;
  const TmFeature *feature;
  const TmUseWhen *when;
  gboolean own_feel;        /* the method has a line of its own for it */
  gboolean own_temperature; /* likewise */
} Budget;

/* -------- Lines -------- */

static gboolean
fits_feature (const TmFeature *feature, const TmQuantity *quantity)
{
  return tm_unit_dimension (quantity->unit) == tm_unit_dimension (feature->unit);
}

static gboolean
is_assumed (const char *source)
{
  return source != NULL && g_str_has_prefix (source, ASSUMED_PREFIX);
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
static void
add_line (TmMethodUse *use, const TmComponent *line)
{
  TmComponent *last = &use->components[TM_METHOD_MAX_COMPONENTS - 2];

  if (use->n_components < TM_METHOD_MAX_COMPONENTS - 1)
    use->components[use->n_components++] = *line;
  else
    *last = merge_lines (last, line);
}

/* FALSE when @quantity measures something else than the feature. */
static gboolean
add_quantity (const Budget *self, const TmQuantity *quantity, const TmComponent *line)
{
  if (!quantity->given)
    return TRUE;
  if (!fits_feature (self->feature, quantity))
    return FALSE;
  add_line (self->use, line);
  return TRUE;
}

/* -------- Gauges -------- */

static TmComponent
make_gauge_line (const TmGauge *gauge, TmComponentKind kind, TmDistribution distribution, double value,
                 gboolean shared)
{
  TmComponent line = tm_component (kind, distribution, value, INFINITY, shared);

  line.subject = gauge->tag;
  line.source = gauge->source[0] != '\0' ? gauge->source : NULL;
  line.assumed = is_assumed (gauge->source);
  return line;
}

/* Half a step either way, of each reading by itself. */
static gboolean
add_resolution (const Budget *self, const TmGauge *gauge)
{
  TmComponent line = make_gauge_line (gauge, TM_COMPONENT_RESOLUTION, TM_DISTRIBUTION_RECTANGULAR,
                                      (double)gauge->resolution.count / 2, FALSE);

  return add_quantity (self, &gauge->resolution, &line);
}

/* The limit of error, which repeats share. */
static gboolean
add_error_limit (const Budget *self, const TmGauge *gauge)
{
  TmComponent line = make_gauge_line (gauge, TM_COMPONENT_ERROR_LIMIT, TM_DISTRIBUTION_RECTANGULAR,
                                      (double)gauge->error_limit.count, TRUE);

  return add_quantity (self, &gauge->error_limit, &line);
}

/* A hand leans the same way each time, so repeats are not taken to average its feel. */
static gboolean
add_feel (const Budget *self, const TmGauge *gauge)
{
  TmComponent line
      = make_gauge_line (gauge, TM_COMPONENT_FEEL, TM_DISTRIBUTION_NORMAL, (double)gauge->feel.count, TRUE);

  line.divisor = FEEL_DIVISOR;
  if (self->own_feel || (line.assumed && self->use->has_repeatability))
    return TRUE;
  return add_quantity (self, &gauge->feel, &line);
}

static gboolean
add_gauge (const Budget *self, const TmGauge *gauge)
{
  self->use->gauge = gauge;
  self->use->resolution = gauge->resolution.given ? (double)gauge->resolution.count : NAN;
  return add_resolution (self, gauge) && add_error_limit (self, gauge) && add_feel (self, gauge);
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

static double
read_plain (const TmQuantity *quantity, double otherwise)
{
  return quantity->given ? tm_count_to_double (quantity->count, quantity->unit) : otherwise;
}

/* What a line says is the same error in every reading: repeats do not make it smaller. */
static gboolean
add_written (const Budget *self, const TmBudgetLine *row)
{
  TmDistribution distribution = TM_DISTRIBUTION_NORMAL;
  TmComponent line;

  tm_distribution_from_word (row->distribution, &distribution);
  line = tm_component (get_written_kind (row->kind), distribution, fabs ((double)row->value.count),
                       read_plain (&row->dof, INFINITY), TRUE);
  line.divisor = read_plain (&row->divisor, 0);
  line.subject = row->name[0] != '\0' ? row->name : row->method;
  line.source = row->source[0] != '\0' ? row->source : NULL;
  line.assumed = is_assumed (row->source);
  return add_quantity (self, &row->value, &line);
}

static gboolean
add_all_written (const Budget *self)
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
note_own_lines (Budget *self)
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

/* -------- Temperature -------- */

/* One side, with what is said of it. */
typedef struct {
  TmWarmth warmth;
  const char *subject;
  const char *source; /* of the temperature */
  gboolean assumed;
  const char *expansion_source;
} Side;

static void
add_side (const Budget *self, const Side *side, double length)
{
  TmComponent lines[] = {
    tm_component (TM_COMPONENT_TEMPERATURE, TM_DISTRIBUTION_RECTANGULAR,
                  tm_warmth_temperature (&side->warmth, length), INFINITY, TRUE),
    tm_component (TM_COMPONENT_EXPANSION, TM_DISTRIBUTION_RECTANGULAR,
                  tm_warmth_expansion (&side->warmth, length), INFINITY, TRUE),
  };

  lines[0].source = side->source;
  lines[0].assumed = side->assumed;
  lines[1].source = side->expansion_source;
  lines[1].assumed = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      lines[i].subject = side->subject;
      if (lines[i].value > 0)
        add_line (self->use, &lines[i]);
    }
}

/* A temperature that was taken, and corrected for: the thermometer's limit is left.  Where the part's
 * material is not known nothing is corrected, and all of the distance from 20 °C is left. */
static void
set_taken (const Budget *self, double temperature, gboolean corrected, Side *side)
{
  gboolean stated = self->job->thermometer.given;
  double limit = fabs (read_plain (&self->job->thermometer, THERMOMETER_ASSUMED));

  side->source
      = stated ? N_ ("the thermometer's limit") : N_ ("assumed: thermometer ± 0.5 °C, common practice");
  side->assumed = !stated;
  side->warmth.half_width = limit;
  if (corrected)
    side->warmth.away = temperature - 20;
  else
    side->warmth.half_width += fabs (temperature - 20);
}

static void
set_limit (const TmQuantity *limit, Side *side)
{
  side->source = N_ ("the job's limit for it");
  side->warmth.half_width = fabs (read_plain (limit, 0));
}

static gboolean
has_temperature (const Budget *self)
{
  if (self->own_temperature || !tm_feature_grows_warm (self->feature))
    return FALSE;
  return self->when->temperatures || self->job->part_temp_limit.given || self->job->gauge_temp_limit.given;
}

static double
get_length (const Budget *self)
{
  return (double)(self->when->size != 0 ? self->when->size : tm_feature_length (self->feature));
}

static void
add_temperature (const Budget *self)
{
  TmExpansion part = { "",
                       EXPANSION_UNKNOWN,
                       EXPANSION_UNKNOWN,
                       EXPANSION_UNKNOWN,
                       N_ ("assumed: material not known, taken as aluminium"),
                       NULL };
  TmExpansion own = tm_gauge_expansion (self->use->gauge);
  gboolean known = tm_job_expansion (self->job, &part);
  Side sides[] = {
    { { part.value, tm_expansion_half_width (&part), 0, 0 }, "part", NULL, FALSE, part.source },
    { { own.value, tm_expansion_half_width (&own), 0, 0 },
      self->use->gauge ? self->use->gauge->tag : NULL,
      NULL,
      FALSE,
      own.source },
  };

  if (self->when->temperatures)
    {
      set_taken (self, self->when->part_temp, known, &sides[0]);
      set_taken (self, self->when->gauge_temp, known, &sides[1]);
    }
  else
    {
      set_limit (&self->job->part_temp_limit, &sides[0]);
      set_limit (&self->job->gauge_temp_limit, &sides[1]);
    }
  add_side (self, &sides[0], get_length (self));
  add_side (self, &sides[1], get_length (self));
}

/* -------- The whole -------- */

static gboolean
add_repeatability (const Budget *self, const TmMethod *method)
{
  TmMethodUse *use = self->use;
  TmComponent line
      = tm_component (TM_COMPONENT_REPEATABILITY, TM_DISTRIBUTION_T, (double)method->repeatability.count,
                      read_plain (&method->repeatability_dof, INFINITY), FALSE);

  line.subject = method->name;
  line.source = method->repeatability_source[0] != '\0' ? method->repeatability_source : NULL;
  line.assumed = is_assumed (line.source);
  if (!method->repeatability.given)
    return TRUE;
  if (!fits_feature (self->feature, &method->repeatability))
    return FALSE;
  use->components[use->n_components++] = line;
  return TRUE;
}

static gboolean
add_method (Budget *self, const TmMethod *method)
{
  gboolean fits;

  self->use->method = method;
  self->use->has_repeatability = method->repeatability.given;
  note_own_lines (self);
  for (guint i = 0; i < MIN (method->gauges->len, 2); i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (self->job, g_ptr_array_index (method->gauges, i));

      if (gauge == NULL || !add_gauge (self, gauge))
        return FALSE;
    }
  fits = add_all_written (self);
  if (has_temperature (self))
    add_temperature (self);
  return add_repeatability (self, method) && fits;
}

static gboolean
add_bare_gauge (const Budget *self, const TmGauge *gauge)
{
  if (!add_gauge (self, gauge))
    return FALSE;
  if (has_temperature (self))
    add_temperature (self);
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
  Budget budget = { .use = &use, .job = job, .feature = feature, .when = when };
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
  when.part_temp = read_plain (&reading->part_temp, 20);
  when.gauge_temp = read_plain (&reading->gauge_temp, 20);
  when.size = reading->value.count;
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
