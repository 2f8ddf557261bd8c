/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of "studies" and "study_readings".
 */

#include "exchange-job-read.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#define MAX_REPEATS 100
/* Pieces times people times repeats: nobody enters more at a bench. */
#define MAX_CELLS 10000

/* Takes a list of names, each once, at least @least of them. */
static gboolean
take_names (TmJob *job, const TmJsonRow *row, guint member, guint least, GPtrArray *out, GError **error)
{
  guint n = tm_json_list_length (row, member);

  for (guint i = 0; i < n; i++)
    {
      const char *text = tm_json_list_text (row, member, i);
      g_autofree char *quoted = tm_exchange_quote (text);

      if (*text == '\0')
        return tm_member_fail (TM_OWN (row, member), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("one of the names is empty; give it a text"));
      if (g_ptr_array_find_with_equal_func (out, text, g_str_equal, NULL))
        return tm_member_fail (TM_OWN (row, member), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("%s stands twice; keep one of them"), quoted);
      g_ptr_array_add (out, (gpointer)tm_job_intern (job, text));
    }
  if (n < least)
    return tm_member_fail (TM_OWN (row, member), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           ngettext ("a study needs at least %u of them, and there are %u; name the rest",
                                     "a study needs at least %u of them, and there are %u; name the rest",
                                     least),
                           least, n);
  return TRUE;
}

static gboolean
take_repeats (const TmJsonRow *row, TmStudy *study, GError **error)
{
  TmMember repeats = TM_OWN (row, STUDY_REPEATS);
  gint64 n;

  if (!tm_member_is_given (repeats))
    return tm_member_fail (repeats, TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("missing; write how often each piece is taken"));
  if (!tm_take_quantity (repeats, TM_UNIT_COUNT, &study->repeats, error))
    return FALSE;
  n = study->repeats.count;
  if (n < 2 || n > MAX_REPEATS)
    return tm_member_fail (repeats, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("%" PRId64 " is out of range; use a number from %d to %d"), n, 2, MAX_REPEATS);
  if ((gint64)study->pieces->len * study->people->len * n > MAX_CELLS)
    return tm_member_fail (repeats, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("the study would take more than %d readings; split it"), MAX_CELLS);
  return TRUE;
}

static gboolean
take_study_unit (const TmJob *job, const TmJsonRow *row, TmStudy *study, GError **error)
{
  const TmFeature *feature = tm_job_find_feature (job, study->feature);
  TmMember unit = TM_OWN (row, STUDY_UNIT);

  study->unit = feature != NULL && feature->unit != TM_UNIT_NONE ? feature->unit : job->unit;
  if (!TM_TAKE_WORD (unit, tm_unit_from_word, "mm, in, um, uin, deg, points", &study->unit, error))
    return FALSE;
  return tm_unit_dimension (study->unit) == TM_DIMENSION_LENGTH
         || tm_unit_dimension (study->unit) == TM_DIMENSION_ANGLE
         || tm_unit_dimension (study->unit) == TM_DIMENSION_HARDNESS
         || tm_member_fail_word (unit, "mm, in, um, uin, deg, points", error);
}

/* What the study is about.  A feature that has left the job may still be named. */
static gboolean
take_subject (TmJob *job, const TmJsonRow *row, TmStudy *study, GError **error)
{
  return tm_take_name (TM_OWN (row, STUDY_NAME), job, TRUE, &study->name, error)
         && tm_take_name (TM_OWN (row, STUDY_FEATURE), job, FALSE, &study->feature, error)
         && tm_take_name (TM_OWN (row, STUDY_METHOD), job, TRUE, &study->method, error)
         && take_study_unit (job, row, study, error);
}

static gboolean
take_study (TmJob *job, const TmJsonRow *row, TmStudy *study, GError **error)
{
  TmMember band = TM_OWN (row, STUDY_BAND);

  tm_take_text (TM_OWN (row, STUDY_NOTE), job, &study->note);
  study->extra = tm_job_intern (job, row->extra->str);
  if (!take_subject (job, row, study, error) || !take_names (job, row, STUDY_PIECES, 2, study->pieces, error)
      || !take_names (job, row, STUDY_PEOPLE, 1, study->people, error) || !take_repeats (row, study, error)
      || !tm_take_not_negative (TM_OWN (row, STUDY_SEED), TM_UNIT_COUNT, &study->seed, error))
    return FALSE;
  return tm_take_above_zero (band, study->unit, "0.021", &study->band, error)
         && tm_take_moment (TM_OWN (row, STUDY_AT), job, &study->at, error);
}

/* The member to blame when the model refuses a study. */
static guint
blame_study (TmAddStatus status)
{
  return status == TM_ADD_NO_METHOD ? STUDY_METHOD : STUDY_NAME;
}

gboolean
tm_read_study_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmStudy *study = tm_study_new ();
  TmAddStatus status;

  if (take_study (job, row, study, error))
    {
      status = tm_job_add_study (job, study);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, blame_study (status)), status, error);
    }
  tm_study_free (study);
  return FALSE;
}

/* The member of a study reading that its study does not know. */
static guint
blame_study_reading (const TmJob *job, const TmStudyReading *reading)
{
  const TmStudy *study = tm_job_find_study (job, reading->study);

  if (study == NULL)
    return STUDY_READING_STUDY;
  if (!g_ptr_array_find_with_equal_func (study->pieces, reading->piece, g_str_equal, NULL))
    return STUDY_READING_PIECE;
  if (!g_ptr_array_find_with_equal_func (study->people, reading->person, g_str_equal, NULL))
    return STUDY_READING_PERSON;
  return STUDY_READING_TRIAL;
}

static gboolean
fail_study_reading (const TmJob *job, const TmJsonRow *row, const TmStudyReading *reading, TmAddStatus status,
                    GError **error)
{
  if (status == TM_ADD_TAKEN)
    return tm_member_fail (TM_OWN (row, STUDY_READING_TRIAL), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("this piece, person and trial has a reading already; keep one of them"));
  return tm_read_add_fail (TM_OWN (row, blame_study_reading (job, reading)), status, error);
}

static gboolean
take_study_reading (TmJob *job, const TmJsonRow *row, TmStudyReading *reading, GError **error)
{
  TmMember value = TM_OWN (row, STUDY_READING_VALUE);
  const TmStudy *study;

  tm_take_text (TM_OWN (row, STUDY_READING_TYPED), job, &reading->typed);
  reading->extra = tm_job_intern (job, row->extra->str);
  if (!tm_take_name (TM_OWN (row, STUDY_READING_STUDY), job, TRUE, &reading->study, error)
      || !tm_take_name (TM_OWN (row, STUDY_READING_PIECE), job, TRUE, &reading->piece, error)
      || !tm_take_name (TM_OWN (row, STUDY_READING_PERSON), job, TRUE, &reading->person, error)
      || !tm_take_quantity (TM_OWN (row, STUDY_READING_TRIAL), TM_UNIT_COUNT, &reading->trial, error)
      || !tm_take_moment (TM_OWN (row, STUDY_READING_AT), job, &reading->at, error))
    return FALSE;
  study = tm_job_find_study (job, reading->study);
  if (study == NULL)
    return fail_study_reading (job, row, reading, TM_ADD_NO_STUDY, error);
  if (!tm_member_is_given (value))
    return tm_member_fail (value, TM_EXCHANGE_ERROR_MISSING, error, _ ("missing; write what was read"));
  return tm_take_quantity (value, study->unit, &reading->value, error);
}

gboolean
tm_read_study_reading_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmStudyReading *reading = tm_study_reading_new ();
  TmAddStatus status;

  if (take_study_reading (job, row, reading, error))
    {
      status = tm_job_add_study_reading (job, reading);
      if (status == TM_ADD_OK)
        return TRUE;
      fail_study_reading (job, row, reading, status, error);
    }
  tm_study_reading_free (reading);
  return FALSE;
}
