/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The model as the canonical bytes of a job file: members in the order of
 * exchange-job-members.c, one row a line, what is empty or the default left out.
 */

#include "exchange-job-write.h"

#include "exchange-job-read.h"
#include "exchange-put.h"
#include "exchange-report-write.h"
#include "exchange-row-write.h"

static void
write_first_article (TmJsonObject *object, const TmJob *job)
{
  TmJsonObject inner;

  if (job->first_article == TM_FIRST_ARTICLE_FULL && *job->first_article_reason == '\0'
      && *job->first_article_baseline == '\0' && *job->first_article_extra == '\0')
    return;
  inner = tm_open_inner (object, JOB_FIRST_ARTICLE);
  tm_put_text (&inner, FIRST_ARTICLE_KIND, tm_first_article_word (job->first_article));
  tm_put_text (&inner, FIRST_ARTICLE_REASON, job->first_article_reason);
  tm_put_text (&inner, FIRST_ARTICLE_BASELINE, job->first_article_baseline);
  tm_close_inner (&inner, job->first_article_extra);
}

static void
write_shop_rules (TmJsonObject *object, const TmJob *job)
{
  const TmUnit plain = TM_UNIT_HARDNESS;

  tm_put_quantity (object, JOB_PART_TEMP_LIMIT, &job->part_temp_limit, TM_UNIT_CELSIUS);
  tm_put_quantity (object, JOB_GAUGE_TEMP_LIMIT, &job->gauge_temp_limit, TM_UNIT_CELSIUS);
  tm_put_quantity (object, JOB_THERMOMETER, &job->thermometer, TM_UNIT_CELSIUS);
  tm_put_quantity (object, JOB_EXPANSION, &job->expansion, plain);
  tm_put_quantity (object, JOB_ENTRY_CLEARANCE, &job->entry_clearance, job->unit);
  tm_put_text (object, JOB_DRIFT_RULE, tm_drift_rule_word (job->drift_rule));
  tm_put_quantity (object, JOB_DRIFT_LIMIT, &job->drift_limit, plain);
  tm_put_quantity (object, JOB_CHECK_HOURS, &job->check_hours, plain);
  tm_put_quantity (object, JOB_CUT_RISK, &job->cut_risk, plain);
  if (job->cut_aim != TM_AIM_IN)
    tm_put_text (object, JOB_CUT_AIM, tm_aim_word (job->cut_aim));
}

static void
write_job (GString *out, const TmJob *job)
{
  TmJsonObject object = { out, tm_job_sections[IN_JOB].inside, ",\n  ", FALSE };

  g_string_append_printf (out, ",\n \"%s\": {\n  ", tm_job_sections[IN_JOB].key);
  tm_put_text (&object, JOB_ID, job->id);
  tm_put_always (&object, JOB_PART_NUMBER, job->part_number);
  tm_put_text (&object, JOB_PART_NAME, job->part_name);
  tm_put_text (&object, JOB_REVISION, job->revision);
  tm_put_text (&object, JOB_DRAWING, job->drawing);
  tm_put_text (&object, JOB_DRAWING_REVISION, job->drawing_revision);
  tm_put_text (&object, JOB_CUSTOMER, job->customer);
  tm_put_text (&object, JOB_ORDER, job->order);
  tm_put_text (&object, JOB_UNIT, tm_unit_word (job->unit));
  tm_put_text (&object, JOB_MATERIAL, job->material);
  tm_put_text (&object, JOB_STANDARD, tm_standard_word (job->standard));
  tm_put_text (&object, JOB_DECISION, tm_decision_word (job->decision));
  tm_put_quantity (&object, JOB_SIMPLE_RATIO, &job->simple_ratio, TM_UNIT_HARDNESS);
  tm_put_text (&object, JOB_GENERAL_TOLERANCE, job->general_tolerance);
  write_shop_rules (&object, job);
  write_first_article (&object, job);
  tm_write_report (&object, job);
  tm_put_extra (&object, job->job_extra);
  g_string_append (out, "\n }");
}

static void
write_person (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmPerson *person = data;

  tm_put_text (object, PERSON_INITIALS, person->initials);
  tm_put_text (object, PERSON_NAME, person->name);
  tm_put_extra (object, person->extra);
}

static void
write_mate (TmJsonObject *object, const TmFeature *feature)
{
  const TmMate *mate = &feature->mate;
  TmJsonObject inner;

  if (!mate->given)
    return;
  inner = tm_open_inner (object, FEATURE_MATE);
  tm_put_text (&inner, MATE_KIND, tm_kind_word (mate->kind));
  tm_put_quantity (&inner, MATE_LOWER, &mate->lower, feature->unit);
  tm_put_quantity (&inner, MATE_UPPER, &mate->upper, feature->unit);
  tm_put_quantity (&inner, MATE_WANTED_LEAST, &mate->wanted_least, feature->unit);
  tm_put_quantity (&inner, MATE_WANTED_MOST, &mate->wanted_most, feature->unit);
  tm_close_inner (&inner, mate->extra);
}

static gboolean
has_press (const TmPress *press)
{
  return press->length.given || press->hub_outside.given || press->shaft_inside.given
         || *press->hub_material != '\0' || *press->shaft_material != '\0' || press->friction_least.given
         || press->friction_most.given || press->hub_roughness.given || press->shaft_roughness.given
         || press->gap.given || *press->extra != '\0';
}

static void
write_press (TmJsonObject *object, const TmFeature *feature)
{
  const TmPress *press = &feature->press;
  TmUnit rough = tm_kind_unit (TM_KIND_ROUGHNESS, feature->unit);
  TmJsonObject inner;

  if (!has_press (press))
    return;
  inner = tm_open_inner (object, FEATURE_PRESS);
  tm_put_quantity (&inner, PRESS_LENGTH, &press->length, feature->unit);
  tm_put_quantity (&inner, PRESS_HUB_OUTSIDE, &press->hub_outside, feature->unit);
  tm_put_quantity (&inner, PRESS_SHAFT_INSIDE, &press->shaft_inside, feature->unit);
  tm_put_text (&inner, PRESS_HUB_MATERIAL, press->hub_material);
  tm_put_text (&inner, PRESS_SHAFT_MATERIAL, press->shaft_material);
  tm_put_quantity (&inner, PRESS_FRICTION_LEAST, &press->friction_least, TM_UNIT_HARDNESS);
  tm_put_quantity (&inner, PRESS_FRICTION_MOST, &press->friction_most, TM_UNIT_HARDNESS);
  tm_put_quantity (&inner, PRESS_HUB_ROUGHNESS, &press->hub_roughness, rough);
  tm_put_quantity (&inner, PRESS_SHAFT_ROUGHNESS, &press->shaft_roughness, rough);
  tm_put_quantity (&inner, PRESS_GAP, &press->gap, feature->unit);
  tm_close_inner (&inner, press->extra);
}

/* A limit that no decimal text expresses is left to the requirement that gave it. */
static void
put_limit (TmJsonObject *object, guint member, const TmQuantity *limit, const TmFeature *feature)
{
  g_autofree char *text = NULL;
  TmQuantity again;

  if (limit->given && *feature->requirement != '\0'
      && tm_unit_dimension ((TmUnit)limit->unit) != TM_DIMENSION_LENGTH
      && !tm_is_exact (limit, &again, &text))
    return;
  tm_put_quantity (object, member, limit, feature->unit);
}

static void
write_requirement (TmJsonObject *object, const TmFeature *feature)
{
  tm_put_text (object, FEATURE_BALLOON, feature->balloon);
  tm_put_text (object, FEATURE_KIND, tm_kind_word (feature->kind));
  tm_put_text (object, FEATURE_NAME, feature->name);
  tm_put_text (object, FEATURE_REQUIREMENT, feature->requirement);
  tm_put_text (object, FEATURE_UNIT, tm_unit_word (feature->unit));
  put_limit (object, FEATURE_NOMINAL, &feature->nominal, feature);
  put_limit (object, FEATURE_LOWER, &feature->lower, feature);
  put_limit (object, FEATURE_UPPER, &feature->upper, feature);
  tm_put_text (object, FEATURE_CUT, tm_cut_word (feature->cut));
}

static void
write_feature (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmFeature *feature = data;
  TmCallout callout = { .status = TM_CALLOUT_EMPTY };
  gboolean reads;

  if (*feature->requirement != '\0')
    callout = tm_callout_read (feature->requirement, tm_callout_unit (job, feature->unit),
                               job->general_tolerance);
  reads = callout.status == TM_CALLOUT_OK;
  write_requirement (object, feature);
  /* The defaults too are said where the requirement says otherwise: it would be taken. */
  if (feature->envelope || (reads && callout.envelope))
    tm_put_truth (object, FEATURE_ENVELOPE, feature->envelope);
  tm_put_text (object, FEATURE_CLASS, feature->designator);
  if (feature->places != 1 || (reads && callout.places > 1))
    tm_put_whole (object, FEATURE_PLACES, feature->places);
  tm_put_list (object, FEATURE_STATIONS, feature->stations);
  tm_put_text (object, FEATURE_SIZE_FEATURE, feature->size_feature);
  tm_put_text (object, FEATURE_METHOD, feature->method);
  tm_put_text (object, FEATURE_CHECK, feature->check);
  if (feature->group_size > 0)
    tm_put_whole (object, FEATURE_GROUP_SIZE, feature->group_size);
  tm_put_text (object, FEATURE_SHEET, feature->sheet);
  tm_put_text (object, FEATURE_ZONE, feature->zone);
  tm_put_text (object, FEATURE_TOOLING, feature->tooling);
  tm_put_text (object, FEATURE_COMMENT, feature->comment);
  if (feature->affected)
    tm_put_truth (object, FEATURE_AFFECTED, TRUE);
  tm_put_text (object, FEATURE_COUNTS, tm_counts_word (feature->counts));
  tm_put_quantity (object, FEATURE_FORM_UNSEEN, &feature->form_unseen, feature->unit);
  tm_put_text (object, FEATURE_TOOL, feature->tool);
  tm_put_text (object, FEATURE_CHART_RULES, feature->chart_rules);
  if (feature->chart_baseline > 0)
    tm_put_whole (object, FEATURE_CHART_BASELINE, feature->chart_baseline);
  write_mate (object, feature);
  write_press (object, feature);
  tm_put_extra (object, feature->extra);
}

static void
write_piece (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmPiece *piece = data;

  tm_put_text (object, PIECE_SERIAL, piece->serial);
  if (piece->first_article)
    tm_put_truth (object, PIECE_FIRST_ARTICLE, TRUE);
  tm_put_text (object, PIECE_DISPOSITION, piece->disposition);
  tm_put_text (object, PIECE_DISPOSITION_NOTE, piece->disposition_note);
  tm_put_extra (object, piece->extra);
}

static void
write_entry_start (TmJsonObject *object, const TmEntryRow *row)
{
  tm_put_text (object, ROW_ID, row->id);
  tm_put_text (object, ROW_PIECE, row->piece->serial);
  tm_put_text (object, ROW_FEATURE, row->feature->balloon);
}

static void
write_entry_end (TmJsonObject *object, const TmEntryRow *row, const TmRowMembers *members)
{
  tm_put_text (object, members->replaces, row->replaces);
  tm_put_text (object, members->reason, row->reason);
  if (row->withdrawn != NULL)
    {
      TmJsonObject inner = tm_open_inner (object, members->withdrawn);

      tm_put_text (&inner, WITHDRAWN_BY, row->withdrawn->by);
      tm_put_text (&inner, WITHDRAWN_AT, row->withdrawn->at);
      tm_put_text (&inner, WITHDRAWN_REASON, row->withdrawn->reason);
      tm_close_inner (&inner, row->withdrawn->extra);
    }
  tm_put_extra (object, row->extra);
}

static void
write_reading (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmReading *reading = data;
  TmUnit unit = reading->row.feature->unit;

  write_entry_start (object, &reading->row);
  if (reading->place != 1)
    tm_put_whole (object, READING_PLACE, reading->place);
  tm_put_text (object, READING_STATION, reading->station);
  if (reading->outcome != TM_OUTCOME_NONE)
    tm_put_text (object, READING_VALUE, tm_outcome_word (reading->outcome));
  else
    tm_put_quantity (object, READING_VALUE, &reading->value, unit);
  tm_put_text (object, READING_TYPED, reading->typed);
  tm_put_quantity (object, READING_DX, &reading->dx, unit);
  tm_put_quantity (object, READING_DY, &reading->dy, unit);
  tm_put_text (object, READING_METHOD, reading->method);
  tm_put_text (object, READING_BY, reading->row.by);
  tm_put_text (object, READING_AT, reading->row.at);
  tm_put_quantity (object, READING_PART_TEMP, &reading->part_temp, TM_UNIT_CELSIUS);
  tm_put_quantity (object, READING_GAUGE_TEMP, &reading->gauge_temp, TM_UNIT_CELSIUS);
  tm_put_text (object, READING_OVERDUE_REASON, reading->overdue_reason);
  write_entry_end (object, &reading->row, &tm_reading_row_members);
}

static void
write_trial (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmPinTrial *trial = data;

  write_entry_start (object, &trial->row);
  if (trial->place != 1)
    tm_put_whole (object, TRIAL_PLACE, trial->place);
  tm_put_quantity (object, TRIAL_SIZE, &trial->size, trial->row.feature->unit);
  tm_put_text (object, TRIAL_CLASS, trial->pin_class);
  tm_put_text (object, TRIAL_SIGN, tm_pin_sign_word (trial->sign));
  tm_put_quantity (object, TRIAL_MEASURED, &trial->measured, trial->row.feature->unit);
  tm_put_text (object, TRIAL_GAUGE, trial->gauge);
  tm_put_truth (object, TRIAL_WENT, trial->went);
  tm_put_text (object, TRIAL_BY, trial->row.by);
  tm_put_text (object, TRIAL_AT, trial->row.at);
  tm_put_text (object, TRIAL_OVERDUE_REASON, trial->overdue_reason);
  write_entry_end (object, &trial->row, &tm_trial_row_members);
}

static void
write_cut (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmCutRow *cut = data;

  write_entry_start (object, &cut->row);
  if (cut->place != 1)
    tm_put_whole (object, CUT_PLACE, cut->place);
  tm_put_quantity (object, CUT_DIALLED, &cut->dialled, cut->row.feature->unit);
  if (cut->reads != TM_READS_DIAMETER)
    tm_put_text (object, CUT_READS, tm_reads_word (cut->reads));
  if (cut->passes > 0)
    tm_put_whole (object, CUT_PASSES, cut->passes);
  tm_put_text (object, CUT_TOOL, cut->tool);
  tm_put_text (object, CUT_AFTER, cut->after);
  tm_put_text (object, CUT_NOTE, cut->note);
  tm_put_text (object, CUT_BY, cut->row.by);
  tm_put_text (object, CUT_AT, cut->row.at);
  write_entry_end (object, &cut->row, &tm_cut_row_members);
}

static void
write_event (TmJsonObject *object, const TmJob *job, gconstpointer data)
{
  const TmEvent *event = data;

  tm_put_text (object, EVENT_BEFORE_PIECE, event->before_piece);
  tm_put_text (object, EVENT_KIND, event->kind);
  tm_put_text (object, EVENT_NOTE, event->note);
  tm_put_text (object, EVENT_AMOUNT, event->amount);
  tm_put_text (object, EVENT_FEATURE, event->feature);
  tm_put_text (object, EVENT_TOOL, event->tool);
  tm_put_text (object, EVENT_BY, event->by);
  tm_put_text (object, EVENT_AT, event->at);
  tm_put_extra (object, event->extra);
}

static void
write_rows (GString *out, const TmJob *job, guint section, const GPtrArray *rows, TmWriteRow write_row)
{
  if (rows->len == 0)
    return;
  g_string_append_printf (out, ",\n \"%s\": [", tm_job_sections[section].key);
  for (guint i = 0; i < rows->len; i++)
    {
      TmJsonObject object = { out, tm_job_sections[section].inside, ", ", FALSE };

      g_string_append (out, i > 0 ? ",\n  {" : "\n  {");
      write_row (&object, job, g_ptr_array_index (rows, i));
      g_string_append_c (out, '}');
    }
  g_string_append (out, "\n ]");
}

/* A guess at the length of the text, so that it need not grow often. */
static gsize
guess_length (const TmJob *job)
{
  return 4096 + 256 * (gsize)(job->features->len + job->gauges->len)
         + 232 * (gsize)(job->readings->len + job->pin_trials->len + job->cuts->len)
         + 128
               * (gsize)(job->calibrations->len + job->checks->len + job->study_readings->len
                         + job->mate_sizes->len)
         + 40 * (gsize)job->pieces->len;
}

/* What belongs to the pieces that were made. */
static void
write_record (GString *out, const TmJob *job)
{
  write_rows (out, job, IN_PIECES, job->pieces, write_piece);
  write_rows (out, job, IN_MATES, job->mate_sizes, tm_write_mate_size);
  write_rows (out, job, IN_READINGS, job->readings, write_reading);
  write_rows (out, job, IN_PIN_TRIALS, job->pin_trials, write_trial);
  write_rows (out, job, IN_CUTS, job->cuts, write_cut);
  write_rows (out, job, IN_EVENTS, job->events, write_event);
  write_rows (out, job, IN_NONCONFORMANCES, job->nonconformances, tm_write_nonconformance);
}

typedef enum {
  PART_RECORD = 1 << 0,
  PART_DRAWING_BYTES = 1 << 1,
  PART_SIGNATURES = 1 << 2,
} Parts;

static GString *
write_document (const TmJob *job, Parts parts)
{
  GString *out = g_string_sized_new (guess_length (job));

  g_string_append_printf (out, "{\n \"%s\": \"%s\",\n \"%s\": %d", tm_job_sections[IN_FORMAT].key,
                          TM_JOB_FORMAT, tm_job_sections[IN_VERSION].key, TM_JOB_VERSION);
  write_job (out, job);
  write_rows (out, job, IN_PEOPLE, job->people, write_person);
  write_rows (out, job, IN_GAUGES, job->gauges, tm_write_gauge);
  write_rows (out, job, IN_CALIBRATIONS, job->calibrations, tm_write_calibration);
  write_rows (out, job, IN_CHECKS, job->checks, tm_write_check);
  write_rows (out, job, IN_PIN_SIZES, job->pin_sizes, tm_write_pin_size);
  write_rows (out, job, IN_METHODS, job->methods, tm_write_method);
  write_rows (out, job, IN_BUDGET_LINES, job->budget_lines, tm_write_budget_line);
  write_rows (out, job, IN_TOOLS, job->tools, tm_write_tool);
  write_rows (out, job, IN_MATERIALS, job->materials, tm_write_material);
  write_rows (out, job, IN_SUPPLIES, job->supplies, tm_write_supply);
  write_rows (out, job, IN_SUB_PARTS, job->sub_parts, tm_write_sub_part);
  write_rows (out, job, IN_REPORT_FIELDS, job->report_fields, tm_write_report_field);
  write_rows (out, job, IN_FEATURES, job->features, write_feature);
  write_rows (out, job, IN_DRAWINGS, job->drawings,
              parts & PART_DRAWING_BYTES ? tm_write_drawing : tm_write_drawing_digest);
  write_rows (out, job, IN_BALLOONS, job->balloon_marks, tm_write_balloon_mark);
  if (parts & PART_RECORD)
    write_record (out, job);
  write_rows (out, job, IN_STUDIES, job->studies, tm_write_study);
  write_rows (out, job, IN_STUDY_READINGS, job->study_readings, tm_write_study_reading);
  if (parts & PART_SIGNATURES)
    write_rows (out, job, IN_SIGNATURES, job->signatures, tm_write_signature);
  if (*job->extra != '\0')
    g_string_append_printf (out, ",\n %s", job->extra);
  g_string_append (out, "\n}\n");
  return out;
}

GString *
tm_job_to_string (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, g_string_new (NULL));

  return write_document (job, PART_RECORD | PART_DRAWING_BYTES | PART_SIGNATURES);
}

GString *
tm_job_write_unsigned (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, g_string_new (NULL));

  return write_document (job, PART_RECORD | PART_DRAWING_BYTES);
}

GString *
tm_job_write_definitions (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, g_string_new (NULL));

  return write_document (job, 0);
}
