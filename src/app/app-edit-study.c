/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-study.h"

#include <glib/gi18n-lib.h>

gboolean
tm_edit_add_study (TmDocument *document, TmStudy *study, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status = tm_job_add_study (job, study);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (study->name, status, error);
      tm_study_free (study);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_study (job, study);
  return FALSE;
}

static TmStudy *
copy_study (const TmStudy *study)
{
  TmStudy *copy = g_memdup2 (study, sizeof *study);

  copy->pieces = g_ptr_array_copy (study->pieces, NULL, NULL);
  copy->people = g_ptr_array_copy (study->people, NULL, NULL);
  return copy;
}

/* Copies of all readings of the job, so that their order comes back too. */
static GPtrArray *
copy_readings (const TmJob *job)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_study_reading_free);

  for (guint i = 0; i < job->study_readings->len; i++)
    g_ptr_array_add (copies, g_memdup2 (g_ptr_array_index (job->study_readings, i), sizeof (TmStudyReading)));
  return copies;
}

static void
restore_study (TmJob *job, TmStudy *study, guint at, GPtrArray *readings)
{
  tm_job_add_study (job, study);
  g_ptr_array_insert (job->studies, (int)at, g_ptr_array_steal_index (job->studies, job->studies->len - 1));
  g_ptr_array_set_size (job->study_readings, 0);
  while (readings->len > 0)
    tm_job_add_study_reading (job, g_ptr_array_steal_index (readings, 0));
}

gboolean
tm_edit_remove_study (TmDocument *document, TmStudy *study, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmStudy *before = copy_study (study);
  g_autoptr (GPtrArray) readings = copy_readings (job);
  guint at = 0;

  g_ptr_array_find (job->studies, study, &at);
  tm_job_remove_study (job, study);
  if (tm_document_save_definitions (document, error))
    {
      tm_study_free (before);
      return TRUE;
    }
  restore_study (job, before, at, readings);
  tm_document_restored (document);
  return FALSE;
}

static TmStudyReading *
make_reading (TmJob *job, const TmStudy *study, TmStudyCell cell, const TmQuantity *value, const char *typed)
{
  TmStudyReading *reading = tm_study_reading_new ();
  g_autofree char *at = tm_now_utc ();

  reading->study = study->name;
  reading->piece = g_ptr_array_index (study->pieces, cell.piece);
  reading->person = g_ptr_array_index (study->people, cell.person);
  reading->trial = tm_quantity_new (cell.trial + 1, TM_UNIT_COUNT, 0);
  reading->value = *value;
  reading->typed = tm_job_intern (job, typed);
  reading->at = tm_job_intern (job, at);
  return reading;
}

gboolean
tm_edit_add_study_reading (TmDocument *document, const TmStudy *study, TmStudyCell cell,
                           const TmQuantity *value, const char *typed, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmStudyReading *reading = make_reading (job, study, cell, value, typed);
  TmAddStatus status = tm_job_add_study_reading (job, reading);

  if (status != TM_ADD_OK)
    {
      tm_study_reading_free (reading);
      return tm_edit_refuse (study->name, status, error);
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_study_reading (job, reading);
  return FALSE;
}

TmStudyReading *
tm_edit_last_study_reading (TmDocument *document, const TmStudy *study)
{
  const GPtrArray *readings = tm_document_job (document)->study_readings;

  for (guint i = readings->len; i > 0; i--)
    {
      TmStudyReading *reading = g_ptr_array_index (readings, i - 1);

      if (g_str_equal (reading->study, study->name))
        return reading;
    }
  return NULL;
}

static void
free_reading (gpointer row)
{
  tm_study_reading_free (row);
}

gboolean
tm_edit_take_back_study_reading (TmDocument *document, const TmStudy *study, GError **error)
{
  TmStudyReading *last = tm_edit_last_study_reading (document, study);

  return last != NULL
         && tm_edit_remove_row (document, tm_document_job (document)->study_readings, last, free_reading,
                                error);
}

static gboolean
is_people_line (const TmBudgetLine *line, const char *method)
{
  return line->kind == TM_LINE_PEOPLE && g_str_equal (line->method, method);
}

static GPtrArray *
copy_people_lines (const TmJob *job, const char *method)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_budget_line_free);

  for (guint i = 0; i < job->budget_lines->len; i++)
    {
      const TmBudgetLine *line = g_ptr_array_index (job->budget_lines, i);

      if (is_people_line (line, method))
        g_ptr_array_add (copies, g_memdup2 (line, sizeof *line));
    }
  return copies;
}

/* @lines are taken, and stand where the first of the old ones stood; with none the method has no line for
 * people. */
static void
replace_people_lines (TmJob *job, const char *method, GPtrArray *lines)
{
  GPtrArray *all = job->budget_lines;
  guint at = all->len;

  for (guint i = all->len; i > 0; i--)
    {
      TmBudgetLine *line = g_ptr_array_index (all, i - 1);

      if (is_people_line (line, method))
        {
          tm_job_remove_budget_line (job, line);
          at = i - 1;
        }
    }
  at = MIN (at, all->len);
  while (lines->len > 0)
    {
      tm_job_add_budget_line (job, g_ptr_array_steal_index (lines, lines->len - 1));
      g_ptr_array_insert (all, (int)at, g_ptr_array_steal_index (all, all->len - 1));
    }
}

void
tm_budget_undo_clear (TmBudgetUndo *undo)
{
  g_clear_pointer (&undo->method, g_free);
  g_clear_pointer (&undo->before, tm_method_free);
  g_clear_pointer (&undo->lines_before, g_ptr_array_unref);
}

/* Only what a study puts there: what else was changed on the method since stays. */
static void
restore_method (TmJob *job, TmBudgetUndo *undo)
{
  TmMethod *method = tm_edit_copy_method (tm_job_find_method (job, undo->method));

  method->repeatability = undo->before->repeatability;
  method->repeatability_dof = undo->before->repeatability_dof;
  method->repeatability_source = undo->before->repeatability_source;
  tm_job_replace_method (job, undo->method, method);
  replace_people_lines (job, undo->method, undo->lines_before);
  tm_budget_undo_clear (undo);
}

/* What stands in the budget of the method now. */
static TmBudgetUndo
note_method (const TmJob *job, const char *name)
{
  return (TmBudgetUndo) { g_strdup (name), tm_edit_copy_method (tm_job_find_method (job, name)),
                          copy_people_lines (job, name) };
}

static void
apply_budget (TmJob *job, const char *name, TmStudyBudget *budget)
{
  TmMethod *method = tm_edit_copy_method (tm_job_find_method (job, name));
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_budget_line_free);

  method->repeatability = budget->repeatability;
  method->repeatability_dof = budget->repeatability_dof;
  method->repeatability_source = budget->source;
  tm_job_replace_method (job, name, method);
  if (budget->people != NULL)
    g_ptr_array_add (lines, g_steal_pointer (&budget->people));
  replace_people_lines (job, name, lines);
}

gboolean
tm_edit_put_study_into_method (TmDocument *document, const TmStudy *study, const TmStudyResult *result,
                               TmBudgetUndo *undo, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmStudyBudget budget;
  TmStudyBudgetStatus status = tm_study_budget (job, study, result, &budget);
  TmBudgetUndo before;

  if (status != TM_STUDY_BUDGET_OK)
    {
      g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, "%s: %s", study->name,
                   g_dgettext (GETTEXT_PACKAGE, tm_study_budget_status_text (status)));
      return FALSE;
    }
  before = note_method (job, study->method);
  apply_budget (job, before.method, &budget);
  if (!tm_document_save_definitions (document, error))
    {
      restore_method (job, &before);
      tm_document_restored (document);
      return FALSE;
    }
  tm_budget_undo_clear (undo);
  *undo = before;
  return TRUE;
}

gboolean
tm_edit_undo_study_in_method (TmDocument *document, TmBudgetUndo *undo, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmBudgetUndo now;

  if (undo->method == NULL || tm_job_find_method (job, undo->method) == NULL)
    return FALSE;
  now = note_method (job, undo->method);
  restore_method (job, undo);
  if (tm_document_save_definitions (document, error))
    {
      tm_budget_undo_clear (&now);
      return TRUE;
    }
  *undo = note_method (job, now.method);
  restore_method (job, &now);
  tm_document_restored (document);
  return FALSE;
}
