/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-take: gauges and methods of the book's other jobs, brought into this one.
 */

#include "app-edit.h"

/* Every text of a struct of another job, interned in this one. */
#define KEEP_TEXT(job, row, member) ((row)->member = tm_job_intern (job, (row)->member))

static TmGauge *
copy_gauge (TmJob *job, const TmGauge *from)
{
  TmGauge *gauge = g_memdup2 (from, sizeof *from);

  KEEP_TEXT (job, gauge, tag);
  KEEP_TEXT (job, gauge, kind);
  KEEP_TEXT (job, gauge, calibrated);
  KEEP_TEXT (job, gauge, due);
  KEEP_TEXT (job, gauge, certificate);
  KEEP_TEXT (job, gauge, serial);
  KEEP_TEXT (job, gauge, owner);
  KEEP_TEXT (job, gauge, place);
  KEEP_TEXT (job, gauge, pin_class);
  KEEP_TEXT (job, gauge, pin_sign);
  KEEP_TEXT (job, gauge, source);
  KEEP_TEXT (job, gauge, blocks);
  KEEP_TEXT (job, gauge, extra);
  return gauge;
}

static void
take_calibrations (TmJob *job, const TmJob *from, const char *tag)
{
  for (guint i = 0; i < from->calibrations->len; i++)
    {
      const TmCalibration *each = g_ptr_array_index (from->calibrations, i);
      TmCalibration *copy;

      if (!g_str_equal (each->gauge, tag))
        continue;
      copy = g_memdup2 (each, sizeof *each);
      KEEP_TEXT (job, copy, gauge);
      KEEP_TEXT (job, copy, date);
      KEEP_TEXT (job, copy, due);
      KEEP_TEXT (job, copy, certificate);
      KEEP_TEXT (job, copy, by);
      KEEP_TEXT (job, copy, outcome);
      KEEP_TEXT (job, copy, note);
      KEEP_TEXT (job, copy, extra);
      if (tm_job_add_calibration (job, copy) != TM_ADD_OK)
        tm_calibration_free (copy);
    }
}

static void
take_checks (TmJob *job, const TmJob *from, const char *tag)
{
  for (guint i = 0; i < from->checks->len; i++)
    {
      const TmCheck *each = g_ptr_array_index (from->checks, i);
      TmCheck *copy;

      if (!g_str_equal (each->gauge, tag))
        continue;
      copy = g_memdup2 (each, sizeof *each);
      KEEP_TEXT (job, copy, gauge);
      KEEP_TEXT (job, copy, by);
      KEEP_TEXT (job, copy, at);
      KEEP_TEXT (job, copy, note);
      KEEP_TEXT (job, copy, extra);
      if (tm_job_add_check (job, copy) != TM_ADD_OK)
        tm_check_free (copy);
    }
}

static void
take_pin_sizes (TmJob *job, const TmJob *from, const char *tag)
{
  for (guint i = 0; i < from->pin_sizes->len; i++)
    {
      const TmPinSize *each = g_ptr_array_index (from->pin_sizes, i);
      TmPinSize *copy;

      if (!g_str_equal (each->gauge, tag))
        continue;
      copy = g_memdup2 (each, sizeof *each);
      KEEP_TEXT (job, copy, gauge);
      KEEP_TEXT (job, copy, extra);
      if (tm_job_add_pin_size (job, copy) != TM_ADD_OK)
        tm_pin_size_free (copy);
    }
}

static gboolean
take_gauge (TmJob *job, const TmJob *from, const char *tag)
{
  const TmGauge *gauge = tm_job_find_gauge (from, tag);
  TmGauge *copy;

  if (gauge == NULL || tm_job_find_gauge (job, tag) != NULL)
    return FALSE;
  copy = copy_gauge (job, gauge);
  if (tm_job_add_gauge (job, copy) != TM_ADD_OK)
    {
      tm_gauge_free (copy);
      return FALSE;
    }
  take_calibrations (job, from, tag);
  take_checks (job, from, tag);
  take_pin_sizes (job, from, tag);
  return TRUE;
}

static void
take_budget_lines (TmJob *job, const TmJob *from, const char *name)
{
  for (guint i = 0; i < from->budget_lines->len; i++)
    {
      const TmBudgetLine *each = g_ptr_array_index (from->budget_lines, i);
      TmBudgetLine *copy;

      if (!g_str_equal (each->method, name))
        continue;
      copy = g_memdup2 (each, sizeof *each);
      KEEP_TEXT (job, copy, method);
      KEEP_TEXT (job, copy, name);
      KEEP_TEXT (job, copy, distribution);
      KEEP_TEXT (job, copy, source);
      KEEP_TEXT (job, copy, extra);
      if (tm_job_add_budget_line (job, copy) != TM_ADD_OK)
        tm_budget_line_free (copy);
    }
}

/* A method comes along when one of its gauges was taken and all of them are now here. */
static gboolean
is_wanted (const TmJob *job, const TmMethod *method, guint n_gauges_before)
{
  gboolean taken = FALSE;

  if (tm_job_find_method (job, method->name) != NULL)
    return FALSE;
  for (guint i = 0; i < method->gauges->len; i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i));
      guint at;

      if (gauge == NULL)
        return FALSE;
      taken = taken || (g_ptr_array_find (job->gauges, gauge, &at) && at >= n_gauges_before);
    }
  return taken;
}

static gboolean
take_method (TmJob *job, const TmJob *from, const TmMethod *method)
{
  TmMethod *copy = g_memdup2 (method, sizeof *method);

  copy->gauges = g_ptr_array_new ();
  for (guint i = 0; i < method->gauges->len; i++)
    g_ptr_array_add (copy->gauges, (gpointer)tm_job_intern (job, g_ptr_array_index (method->gauges, i)));
  KEEP_TEXT (job, copy, name);
  KEEP_TEXT (job, copy, repeatability_source);
  KEEP_TEXT (job, copy, extra);
  if (tm_job_add_method (job, copy) != TM_ADD_OK)
    {
      tm_method_free (copy);
      return FALSE;
    }
  take_budget_lines (job, from, copy->name);
  return TRUE;
}

/* Takes away what was added after the first so many; what hangs on them goes with them. */
static void
drop_after (TmJob *job, guint n_gauges, guint n_methods)
{
  while (job->methods->len > n_methods)
    tm_job_remove_method (job, ((TmMethod *)g_ptr_array_index (job->methods, job->methods->len - 1))->name);
  while (job->gauges->len > n_gauges)
    tm_job_remove_gauge (job, ((TmGauge *)g_ptr_array_index (job->gauges, job->gauges->len - 1))->tag);
}

gboolean
tm_edit_take_gauges (TmDocument *document, const TmJob *from, const char *const *tags, guint *n_gauges,
                     guint *n_methods, GError **error)
{
  TmJob *job = tm_document_job (document);
  guint gauges_before = job->gauges->len, methods_before = job->methods->len;

  for (guint i = 0; tags[i] != NULL; i++)
    take_gauge (job, from, tags[i]);
  for (guint i = 0; i < from->methods->len; i++)
    if (is_wanted (job, g_ptr_array_index (from->methods, i), gauges_before))
      take_method (job, from, g_ptr_array_index (from->methods, i));
  if (n_gauges != NULL)
    *n_gauges = job->gauges->len - gauges_before;
  if (n_methods != NULL)
    *n_methods = job->methods->len - methods_before;
  if (tm_document_save_definitions (document, error))
    return TRUE;
  drop_after (job, gauges_before, methods_before);
  return FALSE;
}
