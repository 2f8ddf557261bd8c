/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-support: small jobs for the tests of reports, with invented data.
 */

#pragma once

#include <string.h>

#include "report-content.h"

static inline TmQuantity
quantity (const char *text, TmUnit unit)
{
  TmQuantity result = TM_QUANTITY_NONE;

  if (text != NULL && *text != '\0')
    g_assert_cmpint (tm_quantity_read (text, unit, &result), ==, TM_READ_OK);
  return result;
}

static inline TmGauge *
add_gauge (TmJob *job, const char *tag, const char *resolution, const char *limit, const char *due)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tag;
  gauge->kind = "micrometer";
  gauge->unit = job->unit;
  gauge->resolution = quantity (resolution, job->unit);
  gauge->error_limit = quantity (limit, job->unit);
  gauge->calibrated = *due != '\0' ? "2026-01-05" : "";
  gauge->due = due;
  gauge->certificate = "K-1";
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  return gauge;
}

static inline TmMethod *
add_method (TmJob *job, const char *name, const char *first, const char *second)
{
  TmMethod *method = tm_method_new ();

  method->name = name;
  g_ptr_array_add (method->gauges, (gpointer)first);
  if (second != NULL)
    g_ptr_array_add (method->gauges, (gpointer)second);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  return method;
}

/* A picture of one pixel: what a drawing shows is tested elsewhere. */
static inline TmDrawing *
add_drawing (TmJob *job, const char *name)
{
  static const char svg[] = "<svg xmlns='http://www.w3.org/2000/svg' width='297mm' height='210mm'>"
                            "<rect x='9' y='9' width='90' height='60' fill='none' stroke='black'/></svg>";
  TmDrawing *drawing = tm_drawing_new ();

  drawing->name = name;
  drawing->sheet = "1";
  drawing->media = "image/svg+xml";
  drawing->content = g_bytes_new_static (svg, sizeof svg - 1);
  g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
  return drawing;
}

/* In the middle of the page, its tip in the upper left quarter. */
static inline TmBalloonMark *
add_mark (TmJob *job, const char *drawing, const char *feature, guint place)
{
  TmBalloonMark *mark = tm_balloon_mark_new ();

  mark->drawing = drawing;
  mark->feature = feature;
  mark->place = place;
  mark->x = quantity ("0.5", TM_UNIT_HARDNESS);
  mark->y = quantity ("0.5", TM_UNIT_HARDNESS);
  mark->to_x = quantity ("0.25", TM_UNIT_HARDNESS);
  mark->to_y = quantity ("0.25", TM_UNIT_HARDNESS);
  g_assert_cmpint (tm_job_add_balloon_mark (job, mark), ==, TM_ADD_OK);
  return mark;
}

/* With its balloon, where the job has a drawing. */
static inline TmFeature *
add_feature (TmJob *job, const char *balloon, TmKind kind, const char *nominal, const char *lower,
             const char *upper, const char *method)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = balloon;
  feature->kind = kind;
  feature->unit = tm_kind_is_attribute (kind) ? TM_UNIT_NONE : job->unit;
  feature->nominal = quantity (nominal, job->unit);
  feature->lower = quantity (lower, job->unit);
  feature->upper = quantity (upper, job->unit);
  feature->method = method;
  feature->places = 1;
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  if (job->drawings->len > 0)
    add_mark (job, ((const TmDrawing *)g_ptr_array_index (job->drawings, 0))->name, balloon, 0);
  return feature;
}

static inline TmPiece *
add_piece (TmJob *job, const char *serial, gboolean first_article)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = serial;
  piece->first_article = first_article;
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  return piece;
}

static inline TmReading *
add_reading (TmJob *job, TmPiece *piece, TmFeature *feature, const char *station, const char *value)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->row.by = "AB";
  reading->row.at = "2026-05-04T09:12:33Z";
  reading->place = 1;
  reading->station = station;
  reading->typed = value;
  if (strcmp (value, "pass") == 0)
    reading->outcome = TM_OUTCOME_PASS;
  else if (strcmp (value, "fail") == 0)
    reading->outcome = TM_OUTCOME_FAIL;
  else
    reading->value = quantity (value, feature->unit);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

static inline void
add_nonconformance (TmJob *job, const char *piece, const char *feature, const char *number)
{
  TmNonconformance *note = tm_nonconformance_new ();

  note->piece = piece;
  note->feature = feature;
  note->number = number;
  note->disposition = "use as is";
  tm_job_add_nonconformance (job, note);
}

static inline void
add_supply (TmJob *job, TmSupplyKind kind, const char *name, const char *certificate, TmApproval approval)
{
  TmSupply *supply = tm_supply_new ();

  supply->kind = kind;
  supply->name = name;
  supply->supplier = "Invented Mill";
  supply->certificate = certificate;
  supply->approval = approval;
  tm_job_add_supply (job, supply);
}

/* Of no job: what a record must give for the signature of make_whole_job() to hold. */
#define SIGNED_DIGEST "3f1c6a2b9d8e7f605142332415061728394a5b6c7d8e9fa0b1c2d3e4f5061728"

static inline TmSignature *
add_signature (TmJob *job, const char *by, const char *role, const char *at, const char *digest)
{
  TmSignature *signature = tm_signature_new ();

  signature->by = by;
  signature->role = role;
  signature->at = at;
  signature->digest = digest;
  signature->report = job->report_identifier;
  tm_job_add_signature (job, signature);
  return signature;
}

/* What the report says besides sizes: invented. */
static inline void
add_accountability (TmJob *job)
{
  TmSubPart *part = tm_sub_part_new ();
  TmReportField *field = tm_report_field_new ();

  g_ptr_array_set_size (job->supplies, 0);
  job->report_identifier = "FA-0815";
  job->drawing_revision = "C2";
  job->organisation = "Invented Works";
  job->supplier_code = "S-4711";
  job->manufacturing_record = "LOT-9";
  job->drawing_changes = "ECN-3";
  job->article = TM_ARTICLE_ASSEMBLY;
  job->first_article = TM_FIRST_ARTICLE_AGAIN;
  job->first_article_reason = "after-NC-14";
  add_supply (job, TM_SUPPLY_MATERIAL, "Bar-EN-1.4301", "Z-1", TM_APPROVAL_UNSAID);
  add_supply (job, TM_SUPPLY_PROCESS, "Passivation", "Z-2", TM_APPROVAL_YES);
  add_supply (job, TM_SUPPLY_TEST, "Leak-test", "Z-3", TM_APPROVAL_NOT_ASKED);
  part->number = "SUB-1";
  part->name = "Bush";
  part->report = "FA-0700";
  tm_job_add_sub_part (job, part);
  field->name = "Heat";
  field->value = "H-77";
  tm_job_add_report_field (job, field);
}

/* The first reading out, reworked under NC-14 on 2026-05-04, then in: invented. */
static inline void
rework_bore (TmJob *job)
{
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmReading *reading = g_ptr_array_index (job->readings, 0);
  TmNonconformance *note = tm_nonconformance_new ();

  reading->value = quantity ("24.990", TM_UNIT_MM);
  note->piece = "001";
  note->feature = "1";
  note->number = "NC-14";
  note->note = "bore under size";
  note->disposition = "rework";
  note->rework_by = "AB";
  note->rework_at = "2026-05-04T10:00:00Z";
  note->rework_after = reading->row.id;
  tm_job_add_nonconformance (job, note);
  tm_job_mark_rework (job, note);
  add_reading (job, reading->row.piece, bore, "", "25.010");
}

/* A job whose report lacks nothing: one bore, read once, in. */
static inline TmJob *
make_whole_job (void)
{
  TmJob *job = tm_job_new ();
  TmPiece *piece;
  TmFeature *bore;

  job->unit = TM_UNIT_MM;
  job->part_number = "P-1";
  job->part_name = "Sleeve";
  job->revision = "A";
  job->drawing = "D-1";
  job->customer = "Invented";
  job->order = "O-1";
  job->report_identifier = "FA-1";
  job->organisation = "Invented";
  add_drawing (job, "D-1");
  add_supply (job, TM_SUPPLY_MATERIAL, "Bar", "Z-0", TM_APPROVAL_UNSAID);
  add_gauge (job, "M-1", "0.001", "0.002", "2027-01-05");
  add_method (job, "micrometer", "M-1", NULL);
  bore = add_feature (job, "1", TM_KIND_BORE, "25", "25.000", "25.021", "micrometer");
  bore->requirement = "Ø25 H7";
  piece = add_piece (job, "001", TRUE);
  add_reading (job, piece, bore, "", "25.010");
  add_signature (job, "AB", "Measured by", "2026-05-05T10:00:00Z", SIGNED_DIGEST);
  return job;
}
