/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-row-write.h"

#include "exchange-job-members.h"

/* What a spread of the gauge @tag is written in. */
static TmUnit
find_unit (const TmJob *job, const char *tag)
{
  const TmGauge *gauge = tm_job_find_gauge (job, tag);

  return gauge != NULL ? gauge->unit : job->unit;
}

static TmUnit
find_method_unit (const TmJob *job, const TmMethod *method)
{
  return method != NULL && method->gauges->len > 0 ? find_unit (job, g_ptr_array_index (method->gauges, 0))
                                                   : job->unit;
}

void
tm_write_gauge (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmGauge *gauge = row;

  tm_put_text (object, GAUGE_TAG, gauge->tag);
  tm_put_text (object, GAUGE_KIND, gauge->kind);
  tm_put_text (object, GAUGE_UNIT, tm_unit_word (gauge->unit));
  tm_put_quantity (object, GAUGE_RESOLUTION, &gauge->resolution, gauge->unit);
  tm_put_quantity (object, GAUGE_ERROR_LIMIT, &gauge->error_limit, gauge->unit);
  tm_put_text (object, GAUGE_CALIBRATED, gauge->calibrated);
  tm_put_text (object, GAUGE_DUE, gauge->due);
  tm_put_text (object, GAUGE_CERTIFICATE, gauge->certificate);
  tm_put_text (object, GAUGE_SERIAL, gauge->serial);
  tm_put_text (object, GAUGE_OWNER, gauge->owner);
  tm_put_text (object, GAUGE_PLACE, gauge->place);
  tm_put_quantity (object, GAUGE_RANGE_FROM, &gauge->range_from, gauge->unit);
  tm_put_quantity (object, GAUGE_RANGE_TO, &gauge->range_to, gauge->unit);
  tm_put_quantity (object, GAUGE_FEEL, &gauge->feel, gauge->unit);
  tm_put_quantity (object, GAUGE_EXPANSION, &gauge->expansion, TM_UNIT_HARDNESS);
  tm_put_quantity (object, GAUGE_PIN_STEP, &gauge->pin_step, gauge->unit);
  tm_put_text (object, GAUGE_PIN_CLASS, gauge->pin_class);
  tm_put_text (object, GAUGE_PIN_SIGN, gauge->pin_sign);
  tm_put_text (object, GAUGE_BLOCKS, gauge->blocks);
  tm_put_text (object, GAUGE_SOURCE, gauge->source);
  tm_put_extra (object, gauge->extra);
}

void
tm_write_calibration (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmCalibration *calibration = row;
  TmUnit unit = find_unit (job, calibration->gauge);

  tm_put_text (object, CALIBRATION_GAUGE, calibration->gauge);
  tm_put_text (object, CALIBRATION_DATE, calibration->date);
  tm_put_text (object, CALIBRATION_DUE, calibration->due);
  tm_put_text (object, CALIBRATION_CERTIFICATE, calibration->certificate);
  tm_put_text (object, CALIBRATION_BY, calibration->by);
  tm_put_quantity (object, CALIBRATION_UNCERTAINTY, &calibration->uncertainty, unit);
  tm_put_quantity (object, CALIBRATION_COVERAGE, &calibration->coverage, TM_UNIT_HARDNESS);
  tm_put_quantity (object, CALIBRATION_ERROR, &calibration->error, unit);
  tm_put_text (object, CALIBRATION_OUTCOME, calibration->outcome);
  tm_put_text (object, CALIBRATION_NOTE, calibration->note);
  tm_put_extra (object, calibration->extra);
}

void
tm_write_check (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmCheck *check = row;
  TmUnit unit = find_unit (job, check->gauge);

  tm_put_text (object, CHECK_GAUGE, check->gauge);
  tm_put_quantity (object, CHECK_STANDARD, &check->standard, unit);
  tm_put_quantity (object, CHECK_READING, &check->reading, unit);
  tm_put_text (object, CHECK_BY, check->by);
  tm_put_text (object, CHECK_AT, check->at);
  tm_put_text (object, CHECK_NOTE, check->note);
  tm_put_extra (object, check->extra);
}

void
tm_write_pin_size (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmPinSize *pin = row;
  TmUnit unit = find_unit (job, pin->gauge);

  tm_put_text (object, PIN_SIZE_GAUGE, pin->gauge);
  tm_put_quantity (object, PIN_SIZE_SIZE, &pin->size, unit);
  tm_put_quantity (object, PIN_SIZE_MEASURED, &pin->measured, unit);
  tm_put_extra (object, pin->extra);
}

void
tm_write_method (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmMethod *method = row;

  tm_put_text (object, METHOD_NAME, method->name);
  tm_put_list (object, METHOD_GAUGES, method->gauges);
  tm_put_quantity (object, METHOD_REPEATABILITY, &method->repeatability, find_method_unit (job, method));
  tm_put_quantity (object, METHOD_REPEATABILITY_DOF, &method->repeatability_dof, TM_UNIT_COUNT);
  tm_put_text (object, METHOD_REPEATABILITY_SOURCE, method->repeatability_source);
  tm_put_extra (object, method->extra);
}

void
tm_write_budget_line (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmBudgetLine *line = row;
  TmUnit unit = find_method_unit (job, tm_job_find_method (job, line->method));

  tm_put_text (object, LINE_METHOD, line->method);
  if (line->kind != TM_LINE_OTHER)
    tm_put_text (object, LINE_KIND, tm_line_kind_word (line->kind));
  tm_put_text (object, LINE_NAME, line->name);
  tm_put_quantity (object, LINE_VALUE, &line->value, unit);
  if (!g_str_equal (line->distribution, "normal"))
    tm_put_text (object, LINE_DISTRIBUTION, line->distribution);
  tm_put_quantity (object, LINE_DIVISOR, &line->divisor, TM_UNIT_HARDNESS);
  tm_put_quantity (object, LINE_DOF, &line->dof, TM_UNIT_HARDNESS);
  tm_put_text (object, LINE_SOURCE, line->source);
  tm_put_extra (object, line->extra);
}

/* A whole number that may be absent. */
static void
put_count (TmJsonObject *object, guint member, const TmQuantity *count)
{
  if (count->given)
    tm_put_whole (object, member, (guint)CLAMP (count->count, 0, G_MAXINT));
}

void
tm_write_tool (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmTool *tool = row;

  tm_put_text (object, TOOL_NAME, tool->name);
  tm_put_text (object, TOOL_UNIT, tm_unit_word (tool->unit));
  if (tool->reads != TM_READS_DIAMETER)
    tm_put_text (object, TOOL_READS, tm_reads_word (tool->reads));
  tm_put_quantity (object, TOOL_GRADUATION, &tool->graduation, tool->unit);
  tm_put_quantity (object, TOOL_LEAST_CUT, &tool->least_cut, tool->unit);
  tm_put_quantity (object, TOOL_BACKLASH, &tool->backlash, tool->unit);
  put_count (object, TOOL_SPRING_PASSES, &tool->spring_passes);
  tm_put_quantity (object, TOOL_OFFSET_STEP, &tool->offset_step, tool->unit);
  tm_put_text (object, TOOL_NOTE, tool->note);
  tm_put_extra (object, tool->extra);
}

void
tm_write_material (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmShopMaterial *material = row;
  const TmUnit plain = TM_UNIT_HARDNESS;

  tm_put_text (object, MATERIAL_NAME, material->name);
  tm_put_quantity (object, MATERIAL_MODULUS, &material->modulus, plain);
  tm_put_quantity (object, MATERIAL_POISSON, &material->poisson, plain);
  tm_put_quantity (object, MATERIAL_YIELD, &material->yield, plain);
  tm_put_quantity (object, MATERIAL_EXPANSION, &material->expansion, plain);
  tm_put_quantity (object, MATERIAL_COLD, &material->cold, plain);
  if (material->plastic)
    tm_put_truth (object, MATERIAL_PLASTIC, TRUE);
  tm_put_text (object, MATERIAL_SOURCE, material->source);
  tm_put_extra (object, material->extra);
}

void
tm_write_mate_size (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmMateSize *mate = row;
  const TmFeature *feature = tm_job_find_feature (job, mate->feature);
  TmUnit unit = feature != NULL ? feature->unit : job->unit;

  tm_put_text (object, MATE_SIZE_FEATURE, mate->feature);
  tm_put_text (object, MATE_SIZE_SERIAL, mate->serial);
  tm_put_quantity (object, MATE_SIZE_SMALLEST, &mate->smallest, unit);
  tm_put_quantity (object, MATE_SIZE_LARGEST, &mate->largest, unit);
  tm_put_quantity (object, MATE_SIZE_UNCERTAINTY, &mate->uncertainty, unit);
  tm_put_text (object, MATE_SIZE_PIECE, mate->piece);
  put_count (object, MATE_SIZE_PLACE, &mate->place);
  tm_put_text (object, MATE_SIZE_BY, mate->by);
  tm_put_text (object, MATE_SIZE_AT, mate->at);
  tm_put_text (object, MATE_SIZE_NOTE, mate->note);
  tm_put_extra (object, mate->extra);
}

void
tm_write_study (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmStudy *study = row;

  tm_put_text (object, STUDY_NAME, study->name);
  tm_put_text (object, STUDY_FEATURE, study->feature);
  tm_put_text (object, STUDY_METHOD, study->method);
  tm_put_text (object, STUDY_UNIT, tm_unit_word (study->unit));
  tm_put_list (object, STUDY_PIECES, study->pieces);
  tm_put_list (object, STUDY_PEOPLE, study->people);
  tm_put_quantity (object, STUDY_REPEATS, &study->repeats, TM_UNIT_COUNT);
  tm_put_quantity (object, STUDY_SEED, &study->seed, TM_UNIT_COUNT);
  tm_put_quantity (object, STUDY_BAND, &study->band, study->unit);
  tm_put_text (object, STUDY_AT, study->at);
  tm_put_text (object, STUDY_NOTE, study->note);
  tm_put_extra (object, study->extra);
}

void
tm_write_study_reading (TmJsonObject *object, const TmJob *job, gconstpointer row)
{
  const TmStudyReading *reading = row;
  const TmStudy *study = tm_job_find_study (job, reading->study);

  tm_put_text (object, STUDY_READING_STUDY, reading->study);
  tm_put_text (object, STUDY_READING_PIECE, reading->piece);
  tm_put_text (object, STUDY_READING_PERSON, reading->person);
  tm_put_quantity (object, STUDY_READING_TRIAL, &reading->trial, TM_UNIT_COUNT);
  tm_put_quantity (object, STUDY_READING_VALUE, &reading->value, study != NULL ? study->unit : job->unit);
  tm_put_text (object, STUDY_READING_TYPED, reading->typed);
  tm_put_text (object, STUDY_READING_AT, reading->at);
  tm_put_extra (object, reading->extra);
}
