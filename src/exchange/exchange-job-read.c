/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The job file into the model: the document, and the sections that are plain lists of facts.
 */

#include "exchange-job-read.h"

#include "exchange-job-id.h"

#include <glib/gi18n-lib.h>

#define MAX_NOTED 100

typedef struct {
  TmJob *job;
  TmJobNotes *notes; /* may be NULL */
} Reading;

void
tm_job_notes_clear (TmJobNotes *notes)
{
  g_clear_pointer (&notes->unknown, g_ptr_array_unref);
  notes->n_unknown = 0;
}

static void
reset_notes (TmJobNotes *notes)
{
  if (notes == NULL)
    return;
  notes->unknown = g_ptr_array_new_with_free_func (g_free);
  notes->n_unknown = 0;
}

static void
unknown_cb (const char *path, gpointer data)
{
  TmJobNotes *notes = ((Reading *)data)->notes;

  if (notes == NULL)
    return;
  if (notes->n_unknown++ < MAX_NOTED)
    g_ptr_array_add (notes->unknown, g_strdup (path));
}

static void
restart_cb (gpointer data)
{
  Reading *reading = data;

  tm_job_free (reading->job);
  reading->job = tm_job_new ();
  if (reading->notes != NULL)
    {
      g_ptr_array_set_size (reading->notes->unknown, 0);
      reading->notes->n_unknown = 0;
    }
}

static void
missing_cb (const char *source, guint section, GError **error)
{
  if (section == IN_FORMAT)
    tm_exchange_fail (
        error, TM_EXCHANGE_ERROR_NOT_A_JOB, source, NULL,
        _ ("this is JSON, but no job (it has no \"format\"); open a file that was exported as a job"));
  else
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_MISSING, source, NULL,
                      _ ("the member \"%s\" is missing; add it, or export the job again"),
                      tm_job_sections[section].key);
}

gboolean
tm_read_add_fail (TmMember member, TmAddStatus status, GError **error)
{
  g_autofree char *quoted = tm_exchange_quote (tm_member_text (member));

  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s: %s", quoted,
                         _ (tm_add_status_text (status)));
}

static gboolean
check_format (const TmJsonRow *row, GError **error)
{
  g_autofree char *quoted = tm_exchange_quote (tm_json_text (row, 0));

  if (g_str_equal (tm_json_text (row, 0), TM_JOB_FORMAT))
    return TRUE;
  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_A_JOB, row->source, "format",
                    _ ("%s is not a job (“%s”); open a file that was exported as a job"), quoted,
                    TM_JOB_FORMAT);
  return FALSE;
}

static gboolean
check_version (const TmJsonRow *row, GError **error)
{
  guint version = row->slots[0].whole;

  if (version == TM_JOB_VERSION)
    return TRUE;
  if (version > TM_JOB_VERSION)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_NEWER, row->source, "version",
                      _ ("%u is newer than this program reads (%d); update the program"), version,
                      TM_JOB_VERSION);
  else
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_BAD_VALUE, row->source, "version",
                      _ ("there is no version %u; write %d"), version, TM_JOB_VERSION);
  return FALSE;
}

static gboolean
take_job_unit (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmMember member = TM_OWN (row, JOB_UNIT);

  if (!row->slots[JOB_UNIT].given)
    return tm_member_fail (member, TM_EXCHANGE_ERROR_MISSING, error, _ ("missing; write mm or in"));
  if (!tm_unit_from_word (tm_member_text (member), &job->unit)
      || (job->unit != TM_UNIT_MM && job->unit != TM_UNIT_IN))
    return tm_member_fail_word (member, "mm, in", error);
  return TRUE;
}

static gboolean
take_first_article (TmJob *job, const TmJsonRow *row, GError **error)
{
  tm_take_text (TM_INNER (row, JOB_FIRST_ARTICLE, FIRST_ARTICLE_REASON), job, &job->first_article_reason);
  tm_take_text (TM_INNER (row, JOB_FIRST_ARTICLE, FIRST_ARTICLE_BASELINE), job, &job->first_article_baseline);
  job->first_article_extra = tm_job_intern (job, tm_json_inner_extra (row, JOB_FIRST_ARTICLE));
  return TM_TAKE_WORD (TM_INNER (row, JOB_FIRST_ARTICLE, FIRST_ARTICLE_KIND), tm_first_article_from_word,
                       "full, partial, re-inspection", &job->first_article, error);
}

static gboolean
take_rules (TmJob *job, const TmJsonRow *row, GError **error)
{
  return TM_TAKE_WORD (TM_OWN (row, JOB_STANDARD), tm_standard_from_word, "ISO, ASME", &job->standard, error)
         && TM_TAKE_WORD (TM_OWN (row, JOB_DECISION), tm_decision_from_word, "guarded, simple",
                          &job->decision, error)
         && tm_take_above_zero (TM_OWN (row, JOB_SIMPLE_RATIO), TM_UNIT_HARDNESS, "4", &job->simple_ratio,
                                error);
}

/* What the shop holds true of its room, its pins and its gauges. */
static gboolean
take_shop_rules (TmJob *job, const TmJsonRow *row, GError **error)
{
  const TmUnit plain = TM_UNIT_HARDNESS;

  return tm_take_not_negative (TM_OWN (row, JOB_PART_TEMP_LIMIT), TM_UNIT_CELSIUS, &job->part_temp_limit,
                               error)
         && tm_take_not_negative (TM_OWN (row, JOB_GAUGE_TEMP_LIMIT), TM_UNIT_CELSIUS, &job->gauge_temp_limit,
                                  error)
         && tm_take_not_negative (TM_OWN (row, JOB_THERMOMETER), TM_UNIT_CELSIUS, &job->thermometer, error)
         && tm_take_quantity (TM_OWN (row, JOB_EXPANSION), plain, &job->expansion, error)
         && tm_take_not_negative (TM_OWN (row, JOB_ENTRY_CLEARANCE), job->unit, &job->entry_clearance, error)
         && TM_TAKE_WORD (TM_OWN (row, JOB_DRIFT_RULE), tm_drift_rule_from_word, "ask", &job->drift_rule,
                          error)
         && tm_take_above_zero (TM_OWN (row, JOB_DRIFT_LIMIT), plain, "0.5", &job->drift_limit, error)
         && tm_take_above_zero (TM_OWN (row, JOB_CHECK_HOURS), plain, "8", &job->check_hours, error);
}

/* How cuts are planned: the accepted chance of metal gone, and what is aimed at. */
static gboolean
take_cut_rules (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmMember risk = TM_OWN (row, JOB_CUT_RISK);

  if (!tm_take_above_zero (risk, TM_UNIT_HARDNESS, "0.01", &job->cut_risk, error))
    return FALSE;
  if (job->cut_risk.given && job->cut_risk.count >= tm_unit_counts (TM_UNIT_HARDNESS))
    return tm_member_fail (risk, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is no chance to accept; write one below 1, like 0.01 for one in a hundred"));
  return TM_TAKE_WORD (TM_OWN (row, JOB_CUT_AIM), tm_aim_from_word, "in, proven", &job->cut_aim, error);
}

static gboolean
read_job (TmJob *job, const TmJsonRow *row, GError **error)
{
  if (!row->slots[JOB_PART_NUMBER].given)
    return tm_member_fail (TM_OWN (row, JOB_PART_NUMBER), TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("missing; write the part number"));
  tm_take_text (TM_OWN (row, JOB_PART_NAME), job, &job->part_name);
  tm_take_text (TM_OWN (row, JOB_REVISION), job, &job->revision);
  tm_take_text (TM_OWN (row, JOB_DRAWING), job, &job->drawing);
  tm_take_text (TM_OWN (row, JOB_DRAWING_REVISION), job, &job->drawing_revision);
  tm_take_text (TM_OWN (row, JOB_CUSTOMER), job, &job->customer);
  tm_take_text (TM_OWN (row, JOB_ORDER), job, &job->order);
  tm_take_text (TM_OWN (row, JOB_MATERIAL), job, &job->material);
  tm_take_text (TM_OWN (row, JOB_GENERAL_TOLERANCE), job, &job->general_tolerance);
  job->job_extra = tm_job_intern (job, row->extra->str);
  return tm_take_name (TM_OWN (row, JOB_ID), job, FALSE, &job->id, error)
         && tm_take_name (TM_OWN (row, JOB_PART_NUMBER), job, FALSE, &job->part_number, error)
         && take_job_unit (job, row, error) && take_rules (job, row, error)
         && take_shop_rules (job, row, error) && take_cut_rules (job, row, error)
         && take_first_article (job, row, error) && tm_take_report (job, row, error);
}

static gboolean
read_person (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmPerson *person = tm_person_new ();
  TmMember initials = TM_OWN (row, PERSON_INITIALS);
  TmAddStatus status;

  tm_take_text (TM_OWN (row, PERSON_NAME), job, &person->name);
  person->extra = tm_job_intern (job, row->extra->str);
  if (tm_take_name (initials, job, TRUE, &person->initials, error))
    {
      status = tm_job_add_person (job, person);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (initials, status, error);
    }
  tm_person_free (person);
  return FALSE;
}

/* What becomes of a piece that was held back. */
static gboolean
take_disposition (TmJob *job, const TmJsonRow *row, TmPiece *piece, GError **error)
{
  static const char *const words[] = { "", "hold", "measure", "release", "scrap", NULL };
  TmMember member = TM_OWN (row, PIECE_DISPOSITION);

  if (!g_strv_contains (words, tm_member_text (member)))
    return tm_member_fail_word (member, "hold, measure, release, scrap", error);
  tm_take_text (member, job, &piece->disposition);
  return TRUE;
}

static gboolean
read_piece (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmPiece *piece = tm_piece_new ();
  TmMember serial = TM_OWN (row, PIECE_SERIAL);
  TmAddStatus status;

  piece->first_article = row->slots[PIECE_FIRST_ARTICLE].truth;
  piece->extra = tm_job_intern (job, row->extra->str);
  tm_take_text (TM_OWN (row, PIECE_DISPOSITION_NOTE), job, &piece->disposition_note);
  if (take_disposition (job, row, piece, error) && tm_take_name (serial, job, TRUE, &piece->serial, error))
    {
      status = tm_job_add_piece (job, piece);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (serial, status, error);
    }
  tm_piece_free (piece);
  return FALSE;
}

/* What the event is about, and who saw to it. */
static gboolean
take_event_names (TmJob *job, const TmJsonRow *row, TmEvent *event, GError **error)
{
  return tm_take_name (TM_OWN (row, EVENT_FEATURE), job, FALSE, &event->feature, error)
         && tm_take_name (TM_OWN (row, EVENT_TOOL), job, FALSE, &event->tool, error)
         && tm_take_name (TM_OWN (row, EVENT_BY), job, FALSE, &event->by, error)
         && tm_take_moment (TM_OWN (row, EVENT_AT), job, &event->at, error);
}

static gboolean
read_event (TmJob *job, const TmJsonRow *row, GError **error)
{
  static const char *const kinds[] = { "", "tool", "offset", "lot", "other", NULL };
  TmMember kind = TM_OWN (row, EVENT_KIND);
  TmMember amount = TM_OWN (row, EVENT_AMOUNT);
  TmQuantity unused;
  TmEvent *event;

  if (!g_strv_contains (kinds, tm_member_text (kind)))
    return tm_member_fail_word (kind, "tool, offset, lot, other", error);
  if (!tm_take_quantity (amount, job->unit, &unused, error))
    return FALSE;
  event = tm_event_new ();
  tm_take_text (TM_OWN (row, EVENT_BEFORE_PIECE), job, &event->before_piece);
  tm_take_text (kind, job, &event->kind);
  tm_take_text (TM_OWN (row, EVENT_NOTE), job, &event->note);
  tm_take_text (amount, job, &event->amount);
  event->extra = tm_job_intern (job, row->extra->str);
  if (take_event_names (job, row, event, error))
    {
      tm_job_add_event (job, event);
      return TRUE;
    }
  tm_event_free (event);
  return FALSE;
}

typedef gboolean (*ReadRow) (TmJob *job, const TmJsonRow *row, GError **error);

static const ReadRow read_rows[] = {
  [IN_JOB] = read_job,
  [IN_PEOPLE] = read_person,
  [IN_GAUGES] = tm_read_gauge_row,
  [IN_CALIBRATIONS] = tm_read_calibration_row,
  [IN_CHECKS] = tm_read_check_row,
  [IN_PIN_SIZES] = tm_read_pin_size_row,
  [IN_METHODS] = tm_read_method_row,
  [IN_BUDGET_LINES] = tm_read_budget_line_row,
  [IN_TOOLS] = tm_read_tool_row,
  [IN_MATERIALS] = tm_read_material_row,
  [IN_SUPPLIES] = tm_read_supply_row,
  [IN_SUB_PARTS] = tm_read_sub_part_row,
  [IN_REPORT_FIELDS] = tm_read_report_field_row,
  [IN_FEATURES] = tm_read_feature_row,
  [IN_DRAWINGS] = tm_read_drawing_row,
  [IN_BALLOONS] = tm_read_balloon_row,
  [IN_PIECES] = read_piece,
  [IN_MATES] = tm_read_mate_size_row,
  [IN_READINGS] = tm_read_reading_row,
  [IN_PIN_TRIALS] = tm_read_trial_row,
  [IN_CUTS] = tm_read_cut_row,
  [IN_EVENTS] = read_event,
  [IN_NONCONFORMANCES] = tm_read_nonconformance_row,
  [IN_STUDIES] = tm_read_study_row,
  [IN_STUDY_READINGS] = tm_read_study_reading_row,
  [IN_SIGNATURES] = tm_read_signature_row,
};

static gboolean
take_cb (const TmJsonRow *row, guint section, gpointer data, GError **error)
{
  if (section == IN_FORMAT)
    return check_format (row, error);
  if (section == IN_VERSION)
    return check_version (row, error);
  return read_rows[section](((Reading *)data)->job, row, error);
}

TmJob *
tm_job_from_bytes (const char *data, gsize length, const char *place, TmJobNotes *notes,
                   TmExchangeProgress progress, gpointer user_data, GError **error)
{
  g_autoptr (GString) extra = g_string_new (NULL);
  Reading reading = { tm_job_new (), notes };
  TmJsonReader reader = { tm_job_sections, IN_JOB + 1, take_cb,   missing_cb, restart_cb,
                          unknown_cb,      progress,   user_data, &reading };
  gboolean done;

  reset_notes (notes);
  if (length > TM_EXCHANGE_MAX_BYTES)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, place, NULL,
                        _ ("larger than a job file may be (96 MiB); split the job"));
      done = FALSE;
    }
  else
    {
      done = tm_json_read (&reader, data, length, place, extra, error);
    }
  if (!done)
    {
      tm_job_free (reading.job);
      return NULL;
    }
  reading.job->extra = tm_job_intern (reading.job, extra->str);
  tm_job_derive_id (reading.job);
  return reading.job;
}
