/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a gauge study puts into the uncertainty budget of its method.
 */

#include "core-study.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DIGITS                                                                                 \
  5 /* of a standard deviation: more than any study knows, so that nothing is lost by rounding \
     */

/* The most decimals that every count of @unit can be written with. */
static guint
find_most_decimals (TmUnit unit)
{
  gint64 counts = tm_unit_counts (unit);
  guint decimals = 0;

  while (counts > 1 && counts % 10 == 0 && decimals < TM_MAX_DECIMALS)
    {
      counts /= 10;
      decimals++;
    }
  return decimals;
}

/* @value of @unit rounded to DIGITS digits, or to what the unit can hold. */
static TmQuantity
make_quantity (double value, TmUnit unit)
{
  const double places = DIGITS - 1 - floor (log10 (value));
  const guint decimals = (guint)CLAMP (places, 0, (double)find_most_decimals (unit));
  gint64 step = tm_unit_counts (unit);

  for (guint i = 0; i < decimals; i++)
    step /= 10;
  return tm_quantity_new ((gint64)rint (value * (double)tm_unit_counts (unit) / (double)step) * step, unit,
                          decimals);
}

/* A method keeps its repeatability in the unit of its first gauge. */
static TmUnit
find_unit (const TmJob *job, const TmMethod *method, TmUnit unit)
{
  const TmGauge *gauge
      = method->gauges->len > 0 ? tm_job_find_gauge (job, g_ptr_array_index (method->gauges, 0)) : NULL;

  return gauge != NULL && tm_unit_dimension (gauge->unit) == tm_unit_dimension (unit) ? gauge->unit : unit;
}

/* It has no name of its own: lines of one kind and name are one error in all methods that have them, and
 * people handle one gauge otherwise than another. */
static TmBudgetLine *
make_people_line (TmJob *job, const TmStudy *study, const TmStudyResult *result, const char *source)
{
  TmBudgetLine *line = tm_budget_line_new ();
  const gint64 point = tm_unit_counts (TM_UNIT_HARDNESS) / 100; /* two decimals of a plain number */

  line->method = study->method;
  line->kind = TM_LINE_PEOPLE;
  line->value = make_quantity (result->between, study->unit);
  line->distribution = tm_job_intern (job, "t");
  line->dof = tm_quantity_new ((gint64)rint (result->between_dof * 100) * point, TM_UNIT_HARDNESS, 2);
  line->source = source;
  return line;
}

static TmStudyBudgetStatus
check_result (const TmJob *job, const TmStudy *study, const TmStudyResult *result)
{
  if (tm_job_find_method (job, study->method) == NULL)
    return TM_STUDY_BUDGET_NO_METHOD;
  if (result->status == TM_STUDY_NO_SPREAD)
    return TM_STUDY_BUDGET_NO_SPREAD;
  if (result->status != TM_STUDY_OK && result->status != TM_STUDY_ONE_PERSON)
    return TM_STUDY_BUDGET_NO_RESULT;
  return result->ev.sd > 0 ? TM_STUDY_BUDGET_OK : TM_STUDY_BUDGET_NO_SPREAD;
}

TmStudyBudgetStatus
tm_study_budget (TmJob *job, const TmStudy *study, const TmStudyResult *result, TmStudyBudget *out)
{
  const TmStudyBudgetStatus status = check_result (job, study, result);
  g_autofree char *source = NULL;
  TmUnit unit;

  *out = (TmStudyBudget) { .source = "" };
  if (status != TM_STUDY_BUDGET_OK)
    return status;
  unit = find_unit (job, tm_job_find_method (job, study->method), study->unit);
  source = g_strdup_printf ("study %s", study->name);
  out->source = tm_job_intern (job, source);
  out->repeatability = make_quantity (
      result->ev.sd * (double)tm_unit_counts (study->unit) / (double)tm_unit_counts (unit), unit);
  out->repeatability_dof = tm_quantity_new ((gint64)result->ev_dof, TM_UNIT_COUNT, 0);
  if (result->between > 0)
    out->people = make_people_line (job, study, result, out->source);
  return TM_STUDY_BUDGET_OK;
}

const char *
tm_study_budget_status_text (TmStudyBudgetStatus status)
{
  static const char *const texts[] = {
    [TM_STUDY_BUDGET_OK] = N_ ("The study is in the method's budget."),
    [TM_STUDY_BUDGET_NO_METHOD]
    = N_ ("The study was made with a gauge alone: make a method of it, then study the method."),
    [TM_STUDY_BUDGET_NO_RESULT] = N_ ("The study is not complete: take what is missing first."),
    [TM_STUDY_BUDGET_NO_SPREAD] = N_ ("No repeat differs from another: the step of the gauge hides its "
                                      "repeatability, and the budget's line for the step holds it."),
  };

  G_STATIC_ASSERT (G_N_ELEMENTS (texts) == TM_N_STUDY_BUDGET_STATUSES);
  g_return_val_if_fail (status < TM_N_STUDY_BUDGET_STATUSES, "");
  return texts[status];
}
