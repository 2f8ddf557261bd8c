/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-combine.h"

#include <math.h>
#include <string.h>

#include "core-correction.h"
#include "core-method.h"
#include "core-verdict.h"
#include "core-weighted.h"

/* More methods than this at one station are no measurement: the first ones stand, and the work stays
 * bounded. */
#define MOST_PARTS 32

/* What one method says at the station. */
typedef struct {
  const char *method;
  GPtrArray *readings; /* of it, at the station */
  TmLocalSize size;
  TmComponent lines[TM_METHOD_MAX_LINES];
  guint n_lines;
  TmUncertainty uncertainty;
} Source;

typedef struct {
  const TmJob *job;
  const TmFeature *feature;
  const char *station;
  const TmJudgeOptions *options;
  GPtrArray *sources; /* Source */
  TmCombined *out;
} Combiner;

static void
free_source (gpointer data)
{
  Source *source = data;

  g_ptr_array_unref (source->readings);
  g_free (source);
}

static Source *
get_source (const Combiner *self, guint index)
{
  return g_ptr_array_index (self->sources, index);
}

/* -------- Readings, by method -------- */

static Source *
find_source (Combiner *self, const char *method)
{
  Source *source;

  for (guint i = 0; i < self->sources->len; i++)
    if (strcmp (get_source (self, i)->method, method) == 0)
      return get_source (self, i);
  if (self->sources->len == MOST_PARTS)
    return NULL;
  source = g_new0 (Source, 1);
  source->method = method;
  source->readings = g_ptr_array_new ();
  g_ptr_array_add (self->sources, source);
  return source;
}

static void
collect_readings (Combiner *self, const GPtrArray *readings)
{
  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      TmReading *reading = g_ptr_array_index (readings, i);
      Source *source;

      if (!tm_row_counts (&reading->row)
          || !tm_station_same (reading->station, self->station, self->feature->unit))
        continue;
      source = find_source (self, reading->method[0] != '\0' ? reading->method : self->feature->method);
      if (source != NULL)
        g_ptr_array_add (source->readings, reading);
    }
}

/* FALSE when none of its readings has a number. */
static gboolean
measure_source (const Combiner *self, Source *source)
{
  g_auto (TmSizes) sizes = { 0 };
  TmUseWhen when;
  TmMethodUse use;

  tm_sizes_of (self->job, self->feature, source->readings, self->options, &sizes);
  if (sizes.n_stations == 0)
    return FALSE;
  source->size = sizes.stations[0];
  when = tm_use_when (source->size.last);
  use = tm_method_use_at (self->job, self->feature, source->method, &when);
  source->n_lines = tm_method_lines (&use, &source->size, NULL, source->lines);
  source->uncertainty = source->n_lines > 0 ? tm_uncertainty_combine (source->lines, source->n_lines, 0.95)
                                            : tm_uncertainty_unknown;
  return TRUE;
}

static void
measure_sources (Combiner *self)
{
  for (guint i = 0; i < self->sources->len;)
    if (measure_source (self, get_source (self, i)))
      i++;
    else
      g_ptr_array_remove_index (self->sources, i);
}

static TmSettles
find_settles (const Combiner *self, const Source *source)
{
  TmLimits limits = tm_feature_limits (self->feature);
  TmRule rule;

  tm_rule_init (&rule, self->job->decision, tm_job_simple_ratio (self->job), &limits, &source->uncertainty,
                source->size.radial);
  return rule.settles;
}

static void
list_parts (Combiner *self)
{
  TmCombined *out = self->out;

  out->n_parts = self->sources->len;
  out->parts = g_new0 (TmCombinePart, MAX (out->n_parts, 1));
  for (guint i = 0; i < out->n_parts; i++)
    {
      const Source *source = get_source (self, i);

      if (i == 0)
        out->reference = (gint64)(source->size.sum / source->size.n);
      out->parts[i] = (TmCombinePart) {
        .method_name = source->method,
        .n = source->size.n,
        .size = tm_local_size_beyond (&source->size, out->reference),
        .u = source->uncertainty.u,
        .dof = source->uncertainty.dof,
        .expanded = source->uncertainty.expanded,
        .apart = NAN,
        .settles = find_settles (self, source),
      };
    }
}

/* -------- Errors that methods share -------- */

static gboolean
is_same_error (const TmComponent *a, const TmComponent *b)
{
  return a->shared && b->shared && a->kind == b->kind && a->subject != NULL && b->subject != NULL
         && strcmp (a->subject, b->subject) == 0;
}

/* What the error of @line gives to @source's size. */
static double
find_share (const Source *source, const TmComponent *line)
{
  double share = 0;

  for (guint i = 0; i < source->n_lines; i++)
    if (is_same_error (&source->lines[i], line))
      share += tm_component_share (&source->lines[i]);
  return share;
}

static double
find_covariance (const Source *one, const Source *other)
{
  double covariance = 0;

  for (guint i = 0; i < one->n_lines; i++)
    covariance += tm_component_share (&one->lines[i]) * find_share (other, &one->lines[i]);
  return covariance;
}

/* -------- The weighted mean of the known parts -------- */

typedef struct {
  guint n;
  guint part[MOST_PARTS]; /* index of each known part */
  TmWeightedValue values[MOST_PARTS];
  double weights[MOST_PARTS];
  double apart[MOST_PARTS];
  TmWeighted result;
} Known;

static void
list_known (const Combiner *self, Known *known)
{
  for (guint i = 0; i < self->out->n_parts; i++)
    {
      const TmCombinePart *part = &self->out->parts[i];

      if (!(part->u > 0))
        continue;
      known->part[known->n] = i;
      known->values[known->n++] = (TmWeightedValue) { part->size, part->u, part->dof };
    }
}

/* NULL when no error is shared. */
static double *
make_covariance (const Combiner *self, const Known *known)
{
  g_autofree double *covariance = g_new0 (double, known->n * known->n);
  gboolean any = FALSE;

  for (guint i = 0; i < known->n; i++)
    for (guint j = 0; j < i; j++)
      {
        double shared
            = find_covariance (get_source (self, known->part[i]), get_source (self, known->part[j]));

        covariance[i * known->n + j] = covariance[j * known->n + i] = shared;
        any = any || shared > 0;
      }
  return any ? g_steal_pointer (&covariance) : NULL;
}

static gboolean
is_counted_before (const Combiner *self, const Known *known, guint index, const TmComponent *line)
{
  for (guint i = 0; i < index; i++)
    if (find_share (get_source (self, known->part[i]), line) > 0)
      return TRUE;
  return FALSE;
}

/* Welch-Satterthwaite over every line of every method, an error that several share as one. */
static double
find_dof (const Combiner *self, const Known *known)
{
  double sum = 0;

  for (guint i = 0; i < known->n; i++)
    {
      const Source *source = get_source (self, known->part[i]);

      for (guint k = 0; k < source->n_lines; k++)
        {
          const TmComponent *line = &source->lines[k];
          double share = known->weights[i] * tm_component_share (line);

          if (line->shared && line->subject != NULL)
            {
              if (is_counted_before (self, known, i, line))
                continue;
              for (guint j = i + 1; j < known->n; j++)
                share += known->weights[j] * find_share (get_source (self, known->part[j]), line);
            }
          share /= known->result.u_known;
          sum += share * share * share * share / MAX (line->dof, 1);
        }
    }
  return sum > 0 ? 1 / sum : INFINITY;
}

static void
copy_result (const Known *known, TmCombined *out)
{
  const TmWeighted *result = &known->result;

  for (guint i = 0; i < known->n; i++)
    {
      out->parts[known->part[i]].weight = known->weights[i];
      out->parts[known->part[i]].apart = known->apart[i];
    }
  out->size = result->mean;
  out->u = result->u;
  out->dof = result->dof;
  out->coverage = result->coverage;
  out->expanded = result->expanded;
  out->chi2 = result->chi2;
  out->p = result->p;
  out->birge = result->birge;
  out->disagree = result->disagree;
  out->apart = result->apart >= 0 ? (int)known->part[result->apart] : -1;
  out->best_alone = result->best_alone;
}

static void
weigh_parts (Combiner *self)
{
  Known known = { 0 };
  g_autofree double *covariance = NULL;

  list_known (self, &known);
  if (known.n == 0)
    return;
  covariance = make_covariance (self, &known);
  tm_weighted_mean (known.values, known.n, covariance, known.weights, known.apart, &known.result);
  tm_weighted_set_dof (&known.result, find_dof (self, &known));
  copy_result (&known, self->out);
}

static void
start_combined (const char *station, TmCombined *out)
{
  *out = (TmCombined) {
    .station = station,
    .size = NAN,
    .u = NAN,
    .dof = NAN,
    .coverage = NAN,
    .expanded = NAN,
    .chi2 = NAN,
    .p = NAN,
    .birge = NAN,
    .apart = -1,
  };
}

void
tm_combine (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
            const char *station, TmCombined *out)
{
  tm_combine_with (job, piece, feature, place, station, NULL, out);
}

void
tm_combine_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                 const char *station, const TmJudgeOptions *options, TmCombined *out)
{
  Combiner self
      = { .job = job, .feature = feature, .station = station ? station : "", .options = options, .out = out };

  g_return_if_fail (job != NULL && piece != NULL && feature != NULL && out != NULL);
  start_combined (self.station, out);
  if (tm_kind_is_attribute (feature->kind))
    return;
  self.sources = g_ptr_array_new_with_free_func (free_source);
  collect_readings (&self, tm_job_readings_at (job, piece, feature, place));
  measure_sources (&self);
  list_parts (&self);
  weigh_parts (&self);
  g_ptr_array_unref (self.sources);
}

void
tm_combined_clear (TmCombined *combined)
{
  g_clear_pointer (&combined->parts, g_free);
  combined->n_parts = 0;
}
