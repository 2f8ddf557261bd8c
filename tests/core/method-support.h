/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * method-support: calibrations, checks and budget lines for the tests of methods.
 */

#pragma once

#include "core-method.h"
#include "judge-support.h"

static inline TmCalibration *
add_calibration (TmJob *job, const char *tag, const char *date, const char *uncertainty, const char *error)
{
  TmCalibration *row = tm_calibration_new ();

  row->gauge = tm_job_intern (job, tag);
  row->date = tm_job_intern (job, date);
  row->uncertainty = quantity (uncertainty, TM_UNIT_MM);
  row->error = quantity (error, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_calibration (job, row), ==, TM_ADD_OK);
  return row;
}

static inline TmCheck *
add_check (TmJob *job, const char *tag, const char *at, const char *standard, const char *reading)
{
  TmCheck *row = tm_check_new ();

  row->gauge = tm_job_intern (job, tag);
  row->at = tm_job_intern (job, at);
  row->standard = quantity (standard, TM_UNIT_MM);
  row->reading = quantity (reading, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_check (job, row), ==, TM_ADD_OK);
  return row;
}

static inline TmBudgetLine *
add_budget_line (TmJob *job, const char *method, TmLineKind kind, const char *name, const char *value,
                 const char *distribution)
{
  TmBudgetLine *row = tm_budget_line_new ();

  row->method = tm_job_intern (job, method);
  row->kind = kind;
  row->name = tm_job_intern (job, name);
  row->value = quantity (value, TM_UNIT_MM);
  row->distribution = tm_job_intern (job, distribution);
  g_assert_cmpint (tm_job_add_budget_line (job, row), ==, TM_ADD_OK);
  return row;
}

/* The one line of @kind in a budget; fails when there is none or a second one. */
static inline const TmComponent *
only_line (const TmMethodUse *use, TmComponentKind kind)
{
  const TmComponent *found = NULL;

  for (guint i = 0; i < use->n_components; i++)
    if (use->components[i].kind == kind)
      {
        g_assert_null (found);
        found = &use->components[i];
      }
  g_assert_nonnull (found);
  return found;
}

static inline guint
count_lines (const TmMethodUse *use, TmComponentKind kind)
{
  guint n = 0;

  for (guint i = 0; i < use->n_components; i++)
    n += use->components[i].kind == kind;
  return n;
}

static inline TmPinTrial *
add_trial (TmJob *job, TmFeature *feature, const char *size, const char *pin_class, TmPinSign sign,
           gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = feature;
  trial->place = 1;
  trial->size = quantity (size, TM_UNIT_IN);
  trial->pin_class = tm_job_intern (job, pin_class);
  trial->sign = sign;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  return trial;
}
