/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every struct of these lists begins with the name of what it hangs on.
 */

#include "core-dependents.h"

#include "core-index.h"

typedef const char *Owner;

G_STATIC_ASSERT (G_STRUCT_OFFSET (TmCalibration, gauge) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (TmCheck, gauge) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (TmPinSize, gauge) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (TmBudgetLine, method) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (TmMateSize, feature) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (TmStudyReading, study) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (TmBalloonMark, drawing) == 0);

static void
follow (GPtrArray *list, const char *name, const char *to)
{
  for (guint i = list->len; i > 0; i--)
    {
      Owner *owner = g_ptr_array_index (list, i - 1);

      if (!g_str_equal (*owner, name))
        continue;
      if (to != NULL)
        *owner = to;
      else
        g_ptr_array_remove_index (list, i - 1);
    }
}

void
tm_follow_gauge (TmJob *job, const char *name, const char *to)
{
  follow (job->calibrations, name, to);
  follow (job->checks, name, to);
  follow (job->pin_sizes, name, to);
}

void
tm_follow_method (TmJob *job, const char *name, const char *to)
{
  follow (job->budget_lines, name, to);
}

static void
follow_marks (TmJob *job, const char *balloon, const char *to)
{
  for (guint i = job->balloon_marks->len; i > 0; i--)
    {
      TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i - 1);

      if (!g_str_equal (mark->feature, balloon))
        continue;
      if (to != NULL)
        mark->feature = to;
      else
        g_ptr_array_remove_index (job->balloon_marks, i - 1);
    }
}

void
tm_follow_places (TmJob *job, const TmFeature *feature)
{
  for (guint i = job->balloon_marks->len; i > 0; i--)
    {
      const TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i - 1);

      if (mark->place > feature->places && g_str_equal (mark->feature, feature->balloon))
        g_ptr_array_remove_index (job->balloon_marks, i - 1);
    }
}

void
tm_follow_feature (TmJob *job, const char *balloon, const char *to)
{
  follow (job->mate_sizes, balloon, to);
  follow_marks (job, balloon, to);
  for (guint i = 0; to != NULL && i < job->nonconformances->len; i++)
    {
      TmNonconformance *row = g_ptr_array_index (job->nonconformances, i);

      if (g_str_equal (row->feature, balloon))
        row->feature = to;
    }
  for (guint i = 0; to != NULL && i < job->events->len; i++)
    {
      TmEvent *event = g_ptr_array_index (job->events, i);

      if (g_str_equal (event->feature, balloon))
        event->feature = to;
    }
}

static TmAddStatus
add_if (GPtrArray *list, gpointer row, gboolean has_owner, TmAddStatus missing)
{
  if (!has_owner)
    return missing;
  g_ptr_array_add (list, row);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_add_calibration (TmJob *job, TmCalibration *calibration)
{
  g_return_val_if_fail (job != NULL && calibration != NULL, TM_ADD_NO_NAME);

  for (guint i = 0; i < job->calibrations->len; i++)
    {
      const TmCalibration *other = g_ptr_array_index (job->calibrations, i);

      if (g_str_equal (other->gauge, calibration->gauge) && g_str_equal (other->date, calibration->date))
        return TM_ADD_TAKEN;
    }
  return add_if (job->calibrations, calibration, tm_job_find_gauge (job, calibration->gauge) != NULL,
                 TM_ADD_NO_GAUGE);
}

TmAddStatus
tm_job_add_check (TmJob *job, TmCheck *check)
{
  g_return_val_if_fail (job != NULL && check != NULL, TM_ADD_NO_NAME);

  return add_if (job->checks, check, tm_job_find_gauge (job, check->gauge) != NULL, TM_ADD_NO_GAUGE);
}

TmAddStatus
tm_job_add_pin_size (TmJob *job, TmPinSize *pin)
{
  g_return_val_if_fail (job != NULL && pin != NULL, TM_ADD_NO_NAME);

  for (guint i = 0; i < job->pin_sizes->len; i++)
    {
      const TmPinSize *other = g_ptr_array_index (job->pin_sizes, i);

      if (g_str_equal (other->gauge, pin->gauge) && other->size.count == pin->size.count)
        return TM_ADD_TAKEN;
    }
  return add_if (job->pin_sizes, pin, tm_job_find_gauge (job, pin->gauge) != NULL, TM_ADD_NO_GAUGE);
}

TmAddStatus
tm_job_add_budget_line (TmJob *job, TmBudgetLine *line)
{
  g_return_val_if_fail (job != NULL && line != NULL, TM_ADD_NO_NAME);

  return add_if (job->budget_lines, line, tm_job_find_method (job, line->method) != NULL, TM_ADD_NO_METHOD);
}

TmAddStatus
tm_job_add_mate_size (TmJob *job, TmMateSize *mate)
{
  g_return_val_if_fail (job != NULL && mate != NULL, TM_ADD_NO_NAME);

  if (*mate->serial == '\0')
    return TM_ADD_NO_NAME;
  if (tm_job_find_mate_size (job, mate->feature, mate->serial) != NULL)
    return TM_ADD_TAKEN;
  return add_if (job->mate_sizes, mate, tm_job_find_feature (job, mate->feature) != NULL, TM_ADD_NO_FEATURE);
}

TmAddStatus
tm_job_add_study (TmJob *job, TmStudy *study)
{
  g_return_val_if_fail (job != NULL && study != NULL, TM_ADD_NO_NAME);

  if (*study->name == '\0')
    return TM_ADD_NO_NAME;
  if (tm_job_find_study (job, study->name) != NULL)
    return TM_ADD_TAKEN;
  if (tm_job_find_method (job, study->method) == NULL && tm_job_find_gauge (job, study->method) == NULL)
    return TM_ADD_NO_METHOD;
  g_ptr_array_add (job->studies, study);
  tm_index_insert (job->index, TM_INDEX_STUDY, study->name, study);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_add_drawing (TmJob *job, TmDrawing *drawing)
{
  g_return_val_if_fail (job != NULL && drawing != NULL, TM_ADD_NO_NAME);

  if (*drawing->name == '\0')
    return TM_ADD_NO_NAME;
  if (tm_job_find_drawing (job, drawing->name) != NULL)
    return TM_ADD_TAKEN;
  g_ptr_array_add (job->drawings, drawing);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_add_balloon_mark (TmJob *job, TmBalloonMark *mark)
{
  const TmFeature *feature;

  g_return_val_if_fail (job != NULL && mark != NULL, TM_ADD_NO_NAME);

  feature = tm_job_find_feature (job, mark->feature);
  if (feature == NULL)
    return TM_ADD_NO_FEATURE;
  if (mark->place > feature->places)
    return TM_ADD_BAD_PLACE;
  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      const TmBalloonMark *other = g_ptr_array_index (job->balloon_marks, i);

      if (g_str_equal (other->drawing, mark->drawing) && g_str_equal (other->feature, mark->feature)
          && other->place == mark->place)
        return TM_ADD_TAKEN;
    }
  return add_if (job->balloon_marks, mark, tm_job_find_drawing (job, mark->drawing) != NULL,
                 TM_ADD_NO_DRAWING);
}

static gboolean
names (const GPtrArray *texts, const char *text)
{
  return g_ptr_array_find_with_equal_func ((GPtrArray *)texts, text, g_str_equal, NULL);
}

TmAddStatus
tm_job_add_study_reading (TmJob *job, TmStudyReading *reading)
{
  const TmStudy *study;

  g_return_val_if_fail (job != NULL && reading != NULL, TM_ADD_NO_NAME);

  study = tm_job_find_study (job, reading->study);
  if (study == NULL || !names (study->pieces, reading->piece) || !names (study->people, reading->person)
      || reading->trial.count < 1 || reading->trial.count > study->repeats.count)
    return TM_ADD_NO_STUDY;
  for (guint i = 0; i < job->study_readings->len; i++)
    {
      const TmStudyReading *other = g_ptr_array_index (job->study_readings, i);

      if (g_str_equal (other->study, reading->study) && g_str_equal (other->piece, reading->piece)
          && g_str_equal (other->person, reading->person) && other->trial.count == reading->trial.count)
        return TM_ADD_TAKEN;
    }
  g_ptr_array_add (job->study_readings, reading);
  return TM_ADD_OK;
}

void
tm_job_remove_calibration (TmJob *job, TmCalibration *row)
{
  g_ptr_array_remove (job->calibrations, row);
}

void
tm_job_remove_check (TmJob *job, TmCheck *row)
{
  g_ptr_array_remove (job->checks, row);
}

void
tm_job_remove_pin_size (TmJob *job, TmPinSize *row)
{
  g_ptr_array_remove (job->pin_sizes, row);
}

void
tm_job_remove_budget_line (TmJob *job, TmBudgetLine *row)
{
  g_ptr_array_remove (job->budget_lines, row);
}

void
tm_job_remove_mate_size (TmJob *job, TmMateSize *row)
{
  g_ptr_array_remove (job->mate_sizes, row);
}

void
tm_job_remove_event (TmJob *job, TmEvent *event)
{
  g_ptr_array_remove (job->events, event);
}

void
tm_job_remove_supply (TmJob *job, TmSupply *row)
{
  g_ptr_array_remove (job->supplies, row);
}

void
tm_job_remove_sub_part (TmJob *job, TmSubPart *row)
{
  g_ptr_array_remove (job->sub_parts, row);
}

void
tm_job_remove_report_field (TmJob *job, TmReportField *row)
{
  g_ptr_array_remove (job->report_fields, row);
}

void
tm_job_remove_balloon_mark (TmJob *job, TmBalloonMark *row)
{
  g_ptr_array_remove (job->balloon_marks, row);
}

void
tm_job_remove_drawing (TmJob *job, TmDrawing *row)
{
  follow (job->balloon_marks, row->name, NULL);
  g_ptr_array_remove (job->drawings, row);
}

void
tm_job_remove_study (TmJob *job, TmStudy *row)
{
  follow (job->study_readings, row->name, NULL);
  tm_index_remove (job->index, TM_INDEX_STUDY, row->name);
  g_ptr_array_remove (job->studies, row);
}

void
tm_job_remove_study_reading (TmJob *job, TmStudyReading *row)
{
  g_ptr_array_remove (job->study_readings, row);
}
