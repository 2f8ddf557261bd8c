/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-gauge: changes to the gauges and methods of a job.
 */

#include "app-edit-named.h"

/* What hangs on a gauge that is taken away, to be put back where it was when the book does not keep that. */
typedef struct {
  GPtrArray *list;
  guint at;
  gpointer row;
} Dependent;

static void
keep_dependents (GArray *kept, GPtrArray *list, const char *tag, gsize size)
{
  for (guint i = 0; i < list->len; i++)
    {
      gpointer row = g_ptr_array_index (list, i);
      Dependent dependent = { list, i, NULL };

      /* Each struct of these lists begins with the tag. */
      if (!g_str_equal (*(const char **)row, tag))
        continue;
      dependent.row = g_memdup2 (row, size);
      g_array_append_val (kept, dependent);
    }
}

static GArray *
copy_dependents (TmJob *job, const char *tag)
{
  GArray *kept = g_array_new (FALSE, FALSE, sizeof (Dependent));

  keep_dependents (kept, job->calibrations, tag, sizeof (TmCalibration));
  keep_dependents (kept, job->checks, tag, sizeof (TmCheck));
  keep_dependents (kept, job->pin_sizes, tag, sizeof (TmPinSize));
  return kept;
}

static void
restore_dependents (GArray *kept)
{
  for (guint i = 0; i < kept->len; i++)
    {
      Dependent *dependent = &g_array_index (kept, Dependent, i);

      g_ptr_array_insert (dependent->list, (int)dependent->at, g_steal_pointer (&dependent->row));
    }
}

static void
free_dependents (GArray *kept)
{
  for (guint i = 0; i < kept->len; i++)
    g_free (g_array_index (kept, Dependent, i).row);
  g_array_unref (kept);
}

TM_DEFINE_NAMED_KIND (gauges, gauge, tm_edit_copy_gauge, tm_gauge_free)

gboolean
tm_edit_put_gauge (TmDocument *document, const char *tag, TmGauge *gauge, GError **error)
{
  const char *new_tag = gauge->tag;
  TmGaugeFault fault = tm_gauge_fault (gauge);

  if (fault == TM_GAUGE_FINE && tag != NULL)
    fault = tm_gauge_history_fault (tm_document_job (document), tag, gauge);
  if (fault == TM_GAUGE_FINE)
    return tm_edit_put_named (document, &gauges, tag, gauge, error);
  tm_gauge_free (gauge);
  return tm_edit_refuse_fault (new_tag, fault, error);
}

TM_DEFINE_NAMED_KIND (methods, method, tm_edit_copy_method, tm_method_free)

gboolean
tm_edit_put_method (TmDocument *document, const char *name, TmMethod *method, GError **error)
{
  return tm_edit_put_named (document, &methods, name, method, error);
}

/* The book did not keep that @gauge is gone. */
static void
restore_gauge (TmDocument *document, TmGauge *gauge, guint at, GArray *dependents)
{
  TmJob *job = tm_document_job (document);

  tm_job_add_gauge (job, gauge);
  tm_edit_move_last (job->gauges, at);
  restore_dependents (dependents);
  tm_document_restored (document);
}

gboolean
tm_edit_remove_gauge (TmDocument *document, const char *tag, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmGauge *gauge = tm_job_find_gauge (job, tag);
  TmGauge *before = gauge != NULL ? tm_edit_copy_gauge (gauge) : NULL;
  GArray *dependents = copy_dependents (job, tag);
  TmAddStatus status;
  gboolean kept = FALSE;
  guint at = 0;

  g_ptr_array_find (job->gauges, gauge, &at);
  status = tm_job_remove_gauge (job, tag);
  if (status == TM_ADD_OK)
    kept = tm_document_save_definitions (document, error);
  else
    tm_edit_refuse (tag, status, error);
  if (status == TM_ADD_OK && !kept)
    restore_gauge (document, g_steal_pointer (&before), at, dependents);
  g_clear_pointer (&before, tm_gauge_free);
  free_dependents (dependents);
  return kept;
}

/* Copies of what a method takes along when it goes, each with its place in the job's list. */
static GPtrArray *
copy_budget (const TmJob *job, const char *name, GArray *places)
{
  GPtrArray *lines = g_ptr_array_new ();

  for (guint i = 0; i < job->budget_lines->len; i++)
    {
      const TmBudgetLine *line = g_ptr_array_index (job->budget_lines, i);

      if (!g_str_equal (line->method, name))
        continue;
      g_ptr_array_add (lines, tm_edit_copy_budget_line (line));
      g_array_append_val (places, i);
    }
  return lines;
}

static void
restore_budget (TmJob *job, const GPtrArray *lines, const GArray *places)
{
  for (guint i = 0; i < lines->len; i++)
    {
      tm_job_add_budget_line (job, g_ptr_array_index (lines, i));
      tm_edit_move_last (job->budget_lines, g_array_index (places, guint, i));
    }
}

gboolean
tm_edit_remove_method (TmDocument *document, const char *name, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmMethod *method = tm_job_find_method (job, name);
  TmMethod *before = method != NULL ? tm_edit_copy_method (method) : NULL;
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GPtrArray) lines = copy_budget (job, name, places);
  TmAddStatus status;
  guint at = 0;

  g_ptr_array_find (job->methods, method, &at);
  status = tm_job_remove_method (job, name);
  if (status == TM_ADD_OK && !tm_document_save_definitions (document, error))
    {
      tm_job_add_method (job, before);
      tm_edit_move_last (job->methods, at);
      restore_budget (job, lines, places);
      tm_document_restored (document);
      return FALSE;
    }
  g_ptr_array_foreach (lines, (GFunc)(GCallback)tm_budget_line_free, NULL);
  g_clear_pointer (&before, tm_method_free);
  return status == TM_ADD_OK || tm_edit_refuse (name, status, error);
}
