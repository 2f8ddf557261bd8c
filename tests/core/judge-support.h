/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge-support: small jobs for the tests of stations, methods and verdicts.
 */

#pragma once

#include "core-judge.h"
#include "core-model.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

static inline TmQuantity
quantity (const char *text, TmUnit unit)
{
  TmQuantity result = TM_QUANTITY_NONE;

  if (text != NULL)
    g_assert_cmpint (tm_quantity_read (text, unit, &result), ==, TM_READ_OK);
  return result;
}

static inline TmJob *
make_job (TmDecision decision)
{
  TmJob *job = tm_job_new ();
  TmPiece *piece = tm_piece_new ();

  job->unit = TM_UNIT_MM;
  job->decision = decision;
  piece->serial = tm_job_intern (job, "001");
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  return job;
}

static inline TmPiece *
first_piece (const TmJob *job)
{
  return g_ptr_array_index (job->pieces, 0);
}

static inline TmGauge *
add_gauge (TmJob *job, const char *tag, const char *resolution, const char *error_limit)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tm_job_intern (job, tag);
  gauge->unit = TM_UNIT_MM;
  gauge->resolution = quantity (resolution, TM_UNIT_MM);
  gauge->error_limit = quantity (error_limit, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  return gauge;
}

/* @tags: one or two, separated by a comma, or "". */
static inline TmMethod *
add_method (TmJob *job, const char *name, const char *tags, const char *repeatability, const char *dof)
{
  TmMethod *method = tm_method_new ();
  g_auto (GStrv) each = g_strsplit (tags, ",", -1);

  method->name = tm_job_intern (job, name);
  for (guint i = 0; each[i] != NULL; i++)
    g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, each[i]));
  method->repeatability = quantity (repeatability, TM_UNIT_MM);
  method->repeatability_dof = quantity (dof, TM_UNIT_COUNT);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  return method;
}

static inline TmFeature *
add_feature (TmJob *job, const char *balloon, TmKind kind, const char *lower, const char *upper,
             const char *method)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = tm_job_intern (job, balloon);
  feature->kind = kind;
  feature->unit = TM_UNIT_MM;
  feature->lower = quantity (lower, TM_UNIT_MM);
  feature->upper = quantity (upper, TM_UNIT_MM);
  feature->method = tm_job_intern (job, method);
  feature->places = 1;
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  return feature;
}

static inline void
ask_stations (TmJob *job, TmFeature *feature, const char *stations)
{
  g_auto (GStrv) each = g_strsplit (stations, " ", -1);

  for (guint i = 0; each[i] != NULL; i++)
    g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (job, each[i]));
}

static inline TmReading *
new_reading (TmJob *job, TmFeature *feature, const char *station, const char *method)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = first_piece (job);
  reading->row.feature = feature;
  reading->place = 1;
  reading->station = tm_job_intern (job, station);
  reading->method = tm_job_intern (job, method);
  return reading;
}

static inline TmReading *
read_size (TmJob *job, TmFeature *feature, const char *station, const char *value, const char *method)
{
  TmReading *reading = new_reading (job, feature, station, method);

  reading->value = quantity (value, feature->unit);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

static inline TmReading *
read_offsets (TmJob *job, TmFeature *feature, const char *dx, const char *dy)
{
  TmReading *reading = new_reading (job, feature, "", "");

  reading->dx = quantity (dx, feature->unit);
  reading->dy = quantity (dy, feature->unit);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

static inline TmReading *
read_outcome (TmJob *job, TmFeature *feature, TmOutcome outcome)
{
  TmReading *reading = new_reading (job, feature, "", "");

  reading->outcome = outcome;
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

/* A gauge whose standard uncertainty is 1 µm: only an error limit, a/√3 = 1 µm. */
static inline void
add_one_micron (TmJob *job)
{
  TmGauge *gauge = add_gauge (job, "G1", NULL, "0.001732051");

  g_assert_true (gauge->error_limit.given);
}

/* One reading of one feature, judged. */
static inline void
judge_one (TmJob *job, TmFeature *feature, TmJudgement *out)
{
  tm_judgement_clear (out);
  tm_judge (job, first_piece (job), feature, 1, out);
}
