/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a first-article report says besides sizes: its facts, materials, processes and tests, the parts of an
 * assembly, nonconformances, signatures.
 */

#include "exchange-job-read.h"

#include <glib/gi18n-lib.h>

#include <string.h>

#define MAX_PLACES   1000
#define MAX_LANGUAGE 15

/* "de" or "pt_BR": what a catalogue of translations may be called, and never a path. */
static gboolean
take_language (TmMember member, TmJob *job, const char **out, GError **error)
{
  const char *text = tm_member_text (member);

  if (strlen (text) > MAX_LANGUAGE
      || strspn (text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_@") != strlen (text))
    return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is no code of a language; write one like en, de or pt_BR"));
  tm_take_text (member, job, out);
  return TRUE;
}

gboolean
tm_take_report (TmJob *job, const TmJsonRow *row, GError **error)
{
  tm_take_text (TM_INNER (row, JOB_REPORT, REPORT_ORGANISATION), job, &job->organisation);
  tm_take_text (TM_INNER (row, JOB_REPORT, REPORT_SUPPLIER_CODE), job, &job->supplier_code);
  tm_take_text (TM_INNER (row, JOB_REPORT, REPORT_MANUFACTURING_RECORD), job, &job->manufacturing_record);
  tm_take_text (TM_INNER (row, JOB_REPORT, REPORT_DRAWING_CHANGES), job, &job->drawing_changes);
  job->report_extra = tm_job_intern (job, tm_json_inner_extra (row, JOB_REPORT));
  return tm_take_name (TM_INNER (row, JOB_REPORT, REPORT_IDENTIFIER), job, FALSE, &job->report_identifier,
                       error)
         && TM_TAKE_WORD (TM_INNER (row, JOB_REPORT, REPORT_ARTICLE), tm_article_from_word,
                          "detail, assembly", &job->article, error)
         && take_language (TM_INNER (row, JOB_REPORT, REPORT_LANGUAGE), job, &job->language, error)
         && take_language (TM_INNER (row, JOB_REPORT, REPORT_SECOND_LANGUAGE), job, &job->second_language,
                           error);
}

gboolean
tm_read_supply_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmSupply *supply = tm_supply_new ();

  tm_take_text (TM_OWN (row, SUPPLY_NAME), job, &supply->name);
  tm_take_text (TM_OWN (row, SUPPLY_SPECIFICATION), job, &supply->specification);
  tm_take_text (TM_OWN (row, SUPPLY_CODE), job, &supply->code);
  tm_take_text (TM_OWN (row, SUPPLY_SUPPLIER), job, &supply->supplier);
  tm_take_text (TM_OWN (row, SUPPLY_CERTIFICATE), job, &supply->certificate);
  tm_take_text (TM_OWN (row, SUPPLY_NOTE), job, &supply->note);
  supply->extra = tm_job_intern (job, row->extra->str);
  if (TM_TAKE_WORD (TM_OWN (row, SUPPLY_KIND), tm_supply_kind_from_word, "material, process, test",
                    &supply->kind, error)
      && TM_TAKE_WORD (TM_OWN (row, SUPPLY_APPROVAL), tm_approval_from_word, "yes, no, not asked",
                       &supply->approval, error))
    {
      tm_job_add_supply (job, supply);
      return TRUE;
    }
  tm_supply_free (supply);
  return FALSE;
}

gboolean
tm_read_sub_part_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmSubPart *part = tm_sub_part_new ();

  tm_take_text (TM_OWN (row, SUB_PART_NUMBER), job, &part->number);
  tm_take_text (TM_OWN (row, SUB_PART_NAME), job, &part->name);
  tm_take_text (TM_OWN (row, SUB_PART_SERIAL), job, &part->serial);
  tm_take_text (TM_OWN (row, SUB_PART_REPORT), job, &part->report);
  part->extra = tm_job_intern (job, row->extra->str);
  tm_job_add_sub_part (job, part);
  return TRUE;
}

gboolean
tm_read_report_field_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmReportField *field = tm_report_field_new ();

  tm_take_text (TM_OWN (row, REPORT_FIELD_NAME), job, &field->name);
  tm_take_text (TM_OWN (row, REPORT_FIELD_VALUE), job, &field->value);
  field->extra = tm_job_intern (job, row->extra->str);
  tm_job_add_report_field (job, field);
  return TRUE;
}

/* Who raised it and when, and the rework that was done. */
static gboolean
take_rework (TmJob *job, const TmJsonRow *row, TmNonconformance *nonconformance, GError **error)
{
  TmMember after = TM_OWN (row, NONCONFORMANCE_REWORK_AFTER);

  if (!tm_take_whole (TM_OWN (row, NONCONFORMANCE_PLACE), 0, MAX_PLACES, &nonconformance->place, error)
      || !tm_take_name (TM_OWN (row, NONCONFORMANCE_BY), job, FALSE, &nonconformance->by, error)
      || !tm_take_moment (TM_OWN (row, NONCONFORMANCE_AT), job, &nonconformance->at, error)
      || !tm_take_name (TM_OWN (row, NONCONFORMANCE_REWORK_BY), job, FALSE, &nonconformance->rework_by, error)
      || !tm_take_moment (TM_OWN (row, NONCONFORMANCE_REWORK_AT), job, &nonconformance->rework_at, error)
      || !tm_take_name (after, job, FALSE, &nonconformance->rework_after, error))
    return FALSE;
  return *nonconformance->rework_after == '\0' || *nonconformance->rework_at != '\0'
         || tm_member_fail (after, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("stands without \"rework_at\"; write when the rework was done"));
}

gboolean
tm_read_nonconformance_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmNonconformance *nonconformance = tm_nonconformance_new ();

  tm_take_text (TM_OWN (row, NONCONFORMANCE_PIECE), job, &nonconformance->piece);
  tm_take_text (TM_OWN (row, NONCONFORMANCE_FEATURE), job, &nonconformance->feature);
  tm_take_text (TM_OWN (row, NONCONFORMANCE_NUMBER), job, &nonconformance->number);
  tm_take_text (TM_OWN (row, NONCONFORMANCE_NOTE), job, &nonconformance->note);
  tm_take_text (TM_OWN (row, NONCONFORMANCE_DISPOSITION), job, &nonconformance->disposition);
  nonconformance->extra = tm_job_intern (job, row->extra->str);
  if (take_rework (job, row, nonconformance, error))
    {
      tm_job_add_nonconformance (job, nonconformance);
      return TRUE;
    }
  tm_nonconformance_free (nonconformance);
  return FALSE;
}

gboolean
tm_take_digest (TmMember member, TmJob *job, const char **out, GError **error)
{
  const char *text = tm_member_text (member);

  if (*text != '\0' && (strlen (text) != 64 || strspn (text, "0123456789abcdef") != 64))
    return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is no SHA-256; write its 64 digits 0 to 9 and a to f"));
  tm_take_text (member, job, out);
  return TRUE;
}

gboolean
tm_read_signature_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmSignature *signature = tm_signature_new ();

  tm_take_text (TM_OWN (row, SIGNATURE_BY), job, &signature->by);
  tm_take_text (TM_OWN (row, SIGNATURE_ROLE), job, &signature->role);
  tm_take_text (TM_OWN (row, SIGNATURE_REPORT), job, &signature->report);
  signature->extra = tm_job_intern (job, row->extra->str);
  if (tm_take_digest (TM_OWN (row, SIGNATURE_DIGEST), job, &signature->digest, error)
      && tm_take_digest (TM_OWN (row, SIGNATURE_PAGES), job, &signature->pages, error)
      && tm_take_digest (TM_OWN (row, SIGNATURE_WORKBOOK), job, &signature->workbook, error)
      && tm_take_moment (TM_OWN (row, SIGNATURE_AT), job, &signature->at, error))
    {
      tm_job_add_signature (job, signature);
      return TRUE;
    }
  tm_signature_free (signature);
  return FALSE;
}
