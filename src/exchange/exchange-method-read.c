/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of "methods" and "budget_lines".
 */

#include "exchange-job-read.h"

#include <glib/gi18n-lib.h>

/* Degrees of freedom; @unit says whether they are a whole number. */
static gboolean
take_dof (TmMember member, TmUnit unit, TmQuantity *out, GError **error)
{
  if (!tm_take_quantity (member, unit, out, error))
    return FALSE;
  return !out->given || out->count >= tm_unit_counts (unit)
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("must be at least 1; leave it out when it is not known"));
}

static gboolean
take_method_gauges (TmJob *job, const TmJsonRow *row, TmMethod *method, GError **error)
{
  TmMember member = TM_OWN (row, METHOD_GAUGES);
  guint n = tm_json_list_length (row, METHOD_GAUGES);

  if (n < 1 || n > 2)
    return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("a method has one gauge, or a transfer gauge and the one that reads it; "
                              "name their tags"));
  for (guint i = 0; i < n; i++)
    {
      const char *tag = tm_json_list_text (row, METHOD_GAUGES, i);
      const TmGauge *gauge = tm_job_find_gauge (job, tag);
      g_autofree char *quoted = tm_exchange_quote (tag);

      if (gauge == NULL)
        return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("%s: there is no such gauge; add it to \"gauges\" or correct the tag"),
                               quoted);
      g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
    }
  return TRUE;
}

static gboolean
take_method (TmJob *job, const TmJsonRow *row, TmMethod *method, GError **error)
{
  const TmGauge *gauge;

  method->extra = tm_job_intern (job, row->extra->str);
  tm_take_text (TM_OWN (row, METHOD_REPEATABILITY_SOURCE), job, &method->repeatability_source);
  if (!tm_take_name (TM_OWN (row, METHOD_NAME), job, TRUE, &method->name, error)
      || !take_method_gauges (job, row, method, error))
    return FALSE;
  gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, 0));
  return tm_take_spread_not_negative (TM_OWN (row, METHOD_REPEATABILITY), gauge->unit, &method->repeatability,
                                      error)
         && take_dof (TM_OWN (row, METHOD_REPEATABILITY_DOF), TM_UNIT_COUNT, &method->repeatability_dof,
                      error);
}

gboolean
tm_read_method_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmMethod *method = tm_method_new ();
  TmAddStatus status;

  if (take_method (job, row, method, error))
    {
      status = tm_job_add_method (job, method);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, METHOD_NAME), status, error);
    }
  tm_method_free (method);
  return FALSE;
}

static gboolean
take_distribution (TmJob *job, const TmJsonRow *row, TmBudgetLine *line, GError **error)
{
  static const char *const words[] = { "normal", "rectangular", "triangular", "u-shaped", "t", NULL };
  TmMember member = TM_OWN (row, LINE_DISTRIBUTION);

  if (!tm_member_is_given (member))
    return TRUE;
  if (!g_strv_contains (words, tm_member_text (member)))
    return tm_member_fail_word (member, "normal, rectangular, triangular, u-shaped, t", error);
  tm_take_text (member, job, &line->distribution);
  return TRUE;
}

static gboolean
take_budget_line (TmJob *job, const TmJsonRow *row, TmBudgetLine *line, GError **error)
{
  TmMember name = TM_OWN (row, LINE_METHOD);
  TmMember value = TM_OWN (row, LINE_VALUE);
  const TmMethod *method;
  const TmGauge *gauge;

  tm_take_text (TM_OWN (row, LINE_NAME), job, &line->name);
  tm_take_text (TM_OWN (row, LINE_SOURCE), job, &line->source);
  line->extra = tm_job_intern (job, row->extra->str);
  if (!tm_take_name (name, job, TRUE, &line->method, error)
      || !TM_TAKE_WORD (TM_OWN (row, LINE_KIND), tm_line_kind_from_word,
                        "other, feel, temperature, form, setting, people", &line->kind, error)
      || !take_distribution (job, row, line, error))
    return FALSE;
  method = tm_job_find_method (job, line->method);
  if (method == NULL)
    return tm_read_add_fail (name, TM_ADD_NO_METHOD, error);
  gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, 0));
  if (!tm_member_is_given (value))
    return tm_member_fail (value, TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("missing; write how much the line adds"));
  return tm_take_spread_not_negative (value, gauge->unit, &line->value, error)
         && tm_take_above_zero (TM_OWN (row, LINE_DIVISOR), TM_UNIT_HARDNESS, "2", &line->divisor, error)
         && take_dof (TM_OWN (row, LINE_DOF), TM_UNIT_HARDNESS, &line->dof, error);
}

gboolean
tm_read_budget_line_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmBudgetLine *line = tm_budget_line_new ();

  if (take_budget_line (job, row, line, error))
    {
      TmAddStatus status = tm_job_add_budget_line (job, line);

      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, LINE_METHOD), status, error);
    }
  tm_budget_line_free (line);
  return FALSE;
}
