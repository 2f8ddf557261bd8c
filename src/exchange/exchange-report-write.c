/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-report-write.h"

#include "exchange-job-members.h"

static gboolean
has_report (const TmJob *job)
{
  const char *texts[]
      = { job->report_identifier, job->organisation, job->supplier_code,   job->manufacturing_record,
          job->drawing_changes,   job->language,     job->second_language, job->report_extra };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      if (*texts[i] != '\0')
        return TRUE;
    }
  return job->article != TM_ARTICLE_DETAIL;
}

void
tm_write_report (TmJsonObject *object, const TmJob *job)
{
  TmJsonObject inner;

  if (!has_report (job))
    return;
  inner = tm_open_inner (object, JOB_REPORT);
  tm_put_text (&inner, REPORT_IDENTIFIER, job->report_identifier);
  tm_put_text (&inner, REPORT_ORGANISATION, job->organisation);
  tm_put_text (&inner, REPORT_SUPPLIER_CODE, job->supplier_code);
  tm_put_text (&inner, REPORT_MANUFACTURING_RECORD, job->manufacturing_record);
  tm_put_text (&inner, REPORT_DRAWING_CHANGES, job->drawing_changes);
  if (job->article != TM_ARTICLE_DETAIL)
    tm_put_text (&inner, REPORT_ARTICLE, tm_article_word (job->article));
  tm_put_text (&inner, REPORT_LANGUAGE, job->language);
  tm_put_text (&inner, REPORT_SECOND_LANGUAGE, job->second_language);
  tm_close_inner (&inner, job->report_extra);
}

void
tm_write_supply (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmSupply *supply = row;

  tm_put_text (object, SUPPLY_KIND, tm_supply_kind_word (supply->kind));
  tm_put_text (object, SUPPLY_NAME, supply->name);
  tm_put_text (object, SUPPLY_SPECIFICATION, supply->specification);
  tm_put_text (object, SUPPLY_CODE, supply->code);
  tm_put_text (object, SUPPLY_SUPPLIER, supply->supplier);
  tm_put_text (object, SUPPLY_APPROVAL, tm_approval_word (supply->approval));
  tm_put_text (object, SUPPLY_CERTIFICATE, supply->certificate);
  tm_put_text (object, SUPPLY_NOTE, supply->note);
  tm_put_extra (object, supply->extra);
}

void
tm_write_sub_part (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmSubPart *part = row;

  tm_put_text (object, SUB_PART_NUMBER, part->number);
  tm_put_text (object, SUB_PART_NAME, part->name);
  tm_put_text (object, SUB_PART_SERIAL, part->serial);
  tm_put_text (object, SUB_PART_REPORT, part->report);
  tm_put_extra (object, part->extra);
}

void
tm_write_report_field (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmReportField *field = row;

  tm_put_text (object, REPORT_FIELD_NAME, field->name);
  tm_put_text (object, REPORT_FIELD_VALUE, field->value);
  tm_put_extra (object, field->extra);
}

/* The digest follows from the content, and is written only in its stead. */
static void
write_drawing (TmJsonObject *object, const TmDrawing *drawing, gboolean bytes_too)
{
  tm_put_text (object, DRAWING_NAME, drawing->name);
  tm_put_text (object, DRAWING_SHEET, drawing->sheet);
  tm_put_text (object, DRAWING_MEDIA, drawing->media);
  if (drawing->page != 1)
    tm_put_whole (object, DRAWING_PAGE, drawing->page);
  if (drawing->content == NULL || !bytes_too)
    {
      tm_put_text (object, DRAWING_DIGEST, drawing->digest);
    }
  else
    {
      gsize length;
      const guchar *bytes = g_bytes_get_data (drawing->content, &length);
      g_autofree char *text = g_base64_encode (bytes, length);

      tm_put_text (object, DRAWING_CONTENT, text);
    }
  tm_put_extra (object, drawing->extra);
}

void
tm_write_drawing (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  write_drawing (object, row, TRUE);
}

void
tm_write_drawing_digest (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  write_drawing (object, row, FALSE);
}

void
tm_write_balloon_mark (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmBalloonMark *mark = row;

  tm_put_text (object, BALLOON_DRAWING, mark->drawing);
  tm_put_text (object, BALLOON_FEATURE, mark->feature);
  if (mark->place != 0)
    tm_put_whole (object, BALLOON_PLACE, mark->place);
  tm_put_quantity (object, BALLOON_X, &mark->x, TM_UNIT_HARDNESS);
  tm_put_quantity (object, BALLOON_Y, &mark->y, TM_UNIT_HARDNESS);
  tm_put_quantity (object, BALLOON_TO_X, &mark->to_x, TM_UNIT_HARDNESS);
  tm_put_quantity (object, BALLOON_TO_Y, &mark->to_y, TM_UNIT_HARDNESS);
  tm_put_extra (object, mark->extra);
}

void
tm_write_nonconformance (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmNonconformance *nonconformance = row;

  tm_put_text (object, NONCONFORMANCE_PIECE, nonconformance->piece);
  tm_put_text (object, NONCONFORMANCE_FEATURE, nonconformance->feature);
  if (nonconformance->place != 0)
    tm_put_whole (object, NONCONFORMANCE_PLACE, nonconformance->place);
  tm_put_text (object, NONCONFORMANCE_NUMBER, nonconformance->number);
  tm_put_text (object, NONCONFORMANCE_NOTE, nonconformance->note);
  tm_put_text (object, NONCONFORMANCE_DISPOSITION, nonconformance->disposition);
  tm_put_text (object, NONCONFORMANCE_BY, nonconformance->by);
  tm_put_text (object, NONCONFORMANCE_AT, nonconformance->at);
  tm_put_text (object, NONCONFORMANCE_REWORK_BY, nonconformance->rework_by);
  tm_put_text (object, NONCONFORMANCE_REWORK_AT, nonconformance->rework_at);
  tm_put_text (object, NONCONFORMANCE_REWORK_AFTER, nonconformance->rework_after);
  tm_put_extra (object, nonconformance->extra);
}

void
tm_write_signature (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmSignature *signature = row;

  tm_put_text (object, SIGNATURE_BY, signature->by);
  tm_put_text (object, SIGNATURE_ROLE, signature->role);
  tm_put_text (object, SIGNATURE_AT, signature->at);
  tm_put_text (object, SIGNATURE_DIGEST, signature->digest);
  tm_put_text (object, SIGNATURE_REPORT, signature->report);
  tm_put_text (object, SIGNATURE_PAGES, signature->pages);
  tm_put_text (object, SIGNATURE_WORKBOOK, signature->workbook);
  tm_put_extra (object, signature->extra);
}
