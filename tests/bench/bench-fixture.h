/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-fixture: a small invented job and a recorder that notes what it was given and can fail.
 */

#pragma once

#include <gio/gio.h>

#include "bench-session.h"

#define AT "2026-05-04T09:12:33Z"

typedef struct {
  guint n_readings;
  guint n_trials;
  guint n_cuts;
  guint n_withdrawals;
  gboolean failing;
  char *last_id;
  char *last_typed;
} Keeper;

static gboolean
keep_fact (Keeper *keeper, guint *n, GError **error)
{
  if (keeper->failing)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE, "the disk is full");
      return FALSE;
    }
  (*n)++;
  return TRUE;
}

static gboolean
keep_reading_cb (gpointer self, const TmReading *reading, GError **error)
{
  Keeper *keeper = self;

  g_free (keeper->last_id);
  g_free (keeper->last_typed);
  keeper->last_id = g_strdup (reading->row.id);
  keeper->last_typed = g_strdup (reading->typed);
  return keep_fact (keeper, &keeper->n_readings, error);
}

static gboolean
keep_trial_cb (gpointer self, const TmPinTrial *trial, GError **error)
{
  Keeper *keeper = self;

  g_assert_cmpstr (trial->row.id, !=, "");
  g_free (keeper->last_id);
  keeper->last_id = g_strdup (trial->row.id);
  return keep_fact (keeper, &keeper->n_trials, error);
}

static gboolean
keep_cut_cb (gpointer self, const TmCutRow *cut, GError **error)
{
  Keeper *keeper = self;

  g_assert_cmpstr (cut->row.id, !=, "");
  g_free (keeper->last_id);
  keeper->last_id = g_strdup (cut->row.id);
  return keep_fact (keeper, &keeper->n_cuts, error);
}

static gboolean
keep_withdrawal_cb (gpointer self, const char *id, const TmWithdrawal *withdrawal, GError **error)
{
  Keeper *keeper = self;

  g_assert_cmpstr (withdrawal->reason, !=, "");
  g_free (keeper->last_id);
  keeper->last_id = g_strdup (id);
  return keep_fact (keeper, &keeper->n_withdrawals, error);
}

static inline TmRecorder
make_recorder (Keeper *keeper)
{
  return (TmRecorder) { .self = keeper,
                        .record_reading = keep_reading_cb,
                        .record_pin_trial = keep_trial_cb,
                        .record_cut = keep_cut_cb,
                        .withdraw_reading = keep_withdrawal_cb,
                        .withdraw_pin_trial = keep_withdrawal_cb,
                        .withdraw_cut = keep_withdrawal_cb };
}

static inline void
clear_keeper (Keeper *keeper)
{
  g_clear_pointer (&keeper->last_id, g_free);
  g_clear_pointer (&keeper->last_typed, g_free);
}

static inline TmFeature *
add_feature (TmJob *job, const char *balloon, TmKind kind, TmUnit unit, const char *nominal,
             const char *lower, const char *upper)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = tm_job_intern (job, balloon);
  feature->kind = kind;
  feature->unit = unit;
  if (nominal != NULL)
    g_assert_cmpint (tm_quantity_read (nominal, unit, &feature->nominal), ==, TM_READ_OK);
  if (lower != NULL)
    g_assert_cmpint (tm_quantity_read (lower, unit, &feature->lower), ==, TM_READ_OK);
  if (upper != NULL)
    g_assert_cmpint (tm_quantity_read (upper, unit, &feature->upper), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  return feature;
}

static inline TmPiece *
add_piece (TmJob *job, const char *serial)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = tm_job_intern (job, serial);
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  return piece;
}

/* A bore micrometer and a method with it. */
static inline void
add_method (TmJob *job, const char *name, const char *resolution, const char *error_limit,
            const char *repeatability)
{
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();

  gauge->tag = tm_job_intern (job, name);
  gauge->kind = tm_job_intern (job, "bore micrometer");
  gauge->unit = TM_UNIT_MM;
  g_assert_cmpint (tm_quantity_read (resolution, TM_UNIT_MM, &gauge->resolution), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read (error_limit, TM_UNIT_MM, &gauge->error_limit), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  method->name = tm_job_intern (job, name);
  g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, name));
  g_assert_cmpint (tm_quantity_read (repeatability, TM_UNIT_MM, &method->repeatability), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
}

/* A set of pins, @from to @to in steps of 0.002 mm. */
static inline TmGauge *
add_pin_set (TmJob *job, const char *tag, const char *from, const char *to, const char *pin_class,
             const char *sign)
{
  TmGauge *set = tm_gauge_new ();

  set->tag = tm_job_intern (job, tag);
  set->kind = tm_job_intern (job, "pin set");
  set->unit = TM_UNIT_MM;
  g_assert_cmpint (tm_quantity_read (from, TM_UNIT_MM, &set->range_from), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read (to, TM_UNIT_MM, &set->range_to), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("0.002", TM_UNIT_MM, &set->pin_step), ==, TM_READ_OK);
  set->pin_class = tm_job_intern (job, pin_class);
  set->pin_sign = tm_job_intern (job, sign);
  g_assert_cmpint (tm_job_add_gauge (job, set), ==, TM_ADD_OK);
  return set;
}

/* A tool with a dial in millimetres. */
static inline TmTool *
add_tool (TmJob *job, const char *name, TmReads reads, const char *graduation)
{
  TmTool *tool = tm_tool_new ();

  tool->name = tm_job_intern (job, name);
  tool->unit = TM_UNIT_MM;
  tool->reads = reads;
  g_assert_cmpint (tm_quantity_read (graduation, TM_UNIT_MM, &tool->graduation), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  return tool;
}

/* Feature 1: a 25 H7 bore with two stations; 2: a length; 3: a thread; pieces 001 and 002. */
static inline TmJob *
make_job (void)
{
  TmJob *job = tm_job_new ();
  TmFeature *bore;

  job->part_number = tm_job_intern (job, "TEST-1");
  job->unit = TM_UNIT_MM;
  bore = add_feature (job, "1", TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");
  g_ptr_array_add (bore->stations, (gpointer)tm_job_intern (job, "mouth/12"));
  g_ptr_array_add (bore->stations, (gpointer)tm_job_intern (job, "bottom/12"));
  add_feature (job, "2", TM_KIND_LENGTH, TM_UNIT_MM, "40", "39.7", "40.3");
  add_feature (job, "3", TM_KIND_THREAD, TM_UNIT_NONE, NULL, NULL, NULL);
  add_piece (job, "001");
  add_piece (job, "002");
  return job;
}

/* Types @text and presses Enter. */
static inline TmSubmit
enter (TmBench *bench, const char *text, gint64 now_ms)
{
  g_autoptr (GError) error = NULL;

  tm_bench_set_text (bench, text);
  return tm_bench_submit (bench, AT, now_ms, &error);
}

static inline void
assert_spot (TmBench *bench, const char *serial, const char *balloon, guint place, const char *station)
{
  const TmSpot *spot = tm_bench_spot (bench);

  g_assert_cmpstr (spot->piece->serial, ==, serial);
  g_assert_cmpstr (spot->feature->balloon, ==, balloon);
  g_assert_cmpuint (spot->place, ==, place);
  g_assert_cmpstr (spot->station, ==, station);
}
