/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-model.h"

#include "core-index.h"

static const char no_text[] = "";

TmJob *
tm_job_new (void)
{
  TmJob *job = g_new0 (TmJob, 1);

  job->unit = TM_UNIT_MM;
  job->id = job->part_number = job->part_name = job->revision = job->drawing = no_text;
  job->customer = job->order = job->general_tolerance = job->extra = job->job_extra = no_text;
  job->material = job->first_article_reason = job->first_article_baseline = job->first_article_extra
      = no_text;
  job->drawing_revision = job->report_identifier = job->organisation = job->supplier_code = no_text;
  job->manufacturing_record = job->drawing_changes = job->language = job->second_language = no_text;
  job->report_extra = no_text;
  job->people = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_person_free);
  job->gauges = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_gauge_free);
  job->methods = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_method_free);
  job->features = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_feature_free);
  job->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_piece_free);
  job->readings = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_reading_free);
  job->pin_trials = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_pin_trial_free);
  job->cuts = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_cut_row_free);
  job->events = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_event_free);
  job->nonconformances = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_nonconformance_free);
  job->signatures = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_signature_free);
  job->calibrations = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_calibration_free);
  job->checks = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_check_free);
  job->pin_sizes = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_pin_size_free);
  job->budget_lines = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_budget_line_free);
  job->studies = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_study_free);
  job->study_readings = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_study_reading_free);
  job->tools = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_tool_free);
  job->materials = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_shop_material_free);
  job->mate_sizes = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_mate_size_free);
  job->supplies = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_supply_free);
  job->sub_parts = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_sub_part_free);
  job->report_fields = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_report_field_free);
  job->drawings = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_drawing_free);
  job->balloon_marks = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_balloon_mark_free);
  job->texts = g_string_chunk_new (64 * 1024);
  job->index = tm_index_new ();
  return job;
}

void
tm_job_free (TmJob *job)
{
  GPtrArray *lists[] = {
    job->people,     job->gauges,         job->methods,       job->features,  job->pieces,
    job->readings,   job->pin_trials,     job->cuts,          job->events,    job->nonconformances,
    job->signatures, job->calibrations,   job->checks,        job->pin_sizes, job->budget_lines,
    job->studies,    job->study_readings, job->tools,         job->materials, job->mate_sizes,
    job->supplies,   job->sub_parts,      job->report_fields, job->drawings,  job->balloon_marks,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (lists); i++)
    g_ptr_array_unref (lists[i]);
  tm_index_free (job->index);
  g_string_chunk_free (job->texts);
  g_free (job);
}

const char *
tm_job_intern (TmJob *job, const char *text)
{
  g_return_val_if_fail (job != NULL, no_text);

  if (text == NULL || *text == '\0')
    return no_text;
  return g_string_chunk_insert_const (job->texts, text);
}

static void
blank_entry_row (TmEntryRow *row)
{
  row->id = row->by = row->at = row->replaces = row->reason = row->extra = no_text;
}

TmPerson *
tm_person_new (void)
{
  TmPerson *person = g_new0 (TmPerson, 1);

  person->initials = person->name = person->extra = no_text;
  return person;
}

TmGauge *
tm_gauge_new (void)
{
  TmGauge *gauge = g_new0 (TmGauge, 1);

  gauge->tag = gauge->kind = gauge->calibrated = gauge->due = gauge->certificate = no_text;
  gauge->serial = gauge->owner = gauge->place = gauge->pin_class = gauge->pin_sign = no_text;
  gauge->source = gauge->blocks = gauge->extra = no_text;
  gauge->unit = TM_UNIT_MM;
  return gauge;
}

TmMethod *
tm_method_new (void)
{
  TmMethod *method = g_new0 (TmMethod, 1);

  method->name = method->repeatability_source = method->extra = no_text;
  method->gauges = g_ptr_array_new ();
  return method;
}

TmFeature *
tm_feature_new (void)
{
  TmFeature *feature = g_new0 (TmFeature, 1);

  feature->balloon = feature->name = feature->requirement = feature->designator = feature->size_feature
      = no_text;
  feature->method = feature->check = feature->sheet = feature->zone = feature->mate.extra = no_text;
  feature->tooling = feature->comment = no_text;
  feature->datums = feature->tool = feature->chart_rules = feature->extra = no_text;
  feature->press.hub_material = feature->press.shaft_material = feature->press.extra = no_text;
  feature->kind = TM_KIND_NOTE;
  feature->places = 1;
  feature->stations = g_ptr_array_new ();
  return feature;
}

TmPiece *
tm_piece_new (void)
{
  TmPiece *piece = g_new0 (TmPiece, 1);

  piece->serial = piece->disposition = piece->disposition_note = piece->extra = no_text;
  return piece;
}

TmReading *
tm_reading_new (void)
{
  TmReading *reading = g_new0 (TmReading, 1);

  blank_entry_row (&reading->row);
  reading->station = reading->typed = reading->method = reading->overdue_reason = no_text;
  reading->place = 1;
  return reading;
}

TmPinTrial *
tm_pin_trial_new (void)
{
  TmPinTrial *trial = g_new0 (TmPinTrial, 1);

  blank_entry_row (&trial->row);
  trial->pin_class = trial->gauge = trial->overdue_reason = no_text;
  trial->place = 1;
  return trial;
}

TmCutRow *
tm_cut_row_new (void)
{
  TmCutRow *cut = g_new0 (TmCutRow, 1);

  blank_entry_row (&cut->row);
  cut->tool = cut->after = cut->note = no_text;
  cut->place = 1;
  return cut;
}

TmEvent *
tm_event_new (void)
{
  TmEvent *event = g_new0 (TmEvent, 1);

  event->before_piece = event->kind = event->note = event->amount = no_text;
  event->feature = event->tool = event->by = event->at = event->extra = no_text;
  return event;
}

TmNonconformance *
tm_nonconformance_new (void)
{
  TmNonconformance *nonconformance = g_new0 (TmNonconformance, 1);

  nonconformance->piece = nonconformance->feature = nonconformance->number = nonconformance->note
      = nonconformance->disposition = no_text;
  nonconformance->by = nonconformance->at = nonconformance->rework_by = nonconformance->rework_at
      = nonconformance->rework_after = no_text;
  nonconformance->extra = no_text;
  return nonconformance;
}

TmSignature *
tm_signature_new (void)
{
  TmSignature *signature = g_new0 (TmSignature, 1);

  signature->by = signature->role = signature->at = signature->digest = signature->extra = no_text;
  signature->report = signature->pages = signature->workbook = no_text;
  return signature;
}

TmCalibration *
tm_calibration_new (void)
{
  TmCalibration *calibration = g_new0 (TmCalibration, 1);

  calibration->gauge = calibration->date = calibration->due = calibration->certificate = no_text;
  calibration->by = calibration->outcome = calibration->note = calibration->extra = no_text;
  return calibration;
}

TmCheck *
tm_check_new (void)
{
  TmCheck *check = g_new0 (TmCheck, 1);

  check->gauge = check->by = check->at = check->note = check->extra = no_text;
  return check;
}

TmPinSize *
tm_pin_size_new (void)
{
  TmPinSize *pin = g_new0 (TmPinSize, 1);

  pin->gauge = pin->extra = no_text;
  return pin;
}

TmBudgetLine *
tm_budget_line_new (void)
{
  TmBudgetLine *line = g_new0 (TmBudgetLine, 1);

  line->method = line->name = line->source = line->extra = no_text;
  line->distribution = "normal";
  return line;
}

TmStudy *
tm_study_new (void)
{
  TmStudy *study = g_new0 (TmStudy, 1);

  study->name = study->feature = study->method = study->at = study->note = study->extra = no_text;
  study->unit = TM_UNIT_MM;
  study->pieces = g_ptr_array_new ();
  study->people = g_ptr_array_new ();
  return study;
}

TmStudyReading *
tm_study_reading_new (void)
{
  TmStudyReading *reading = g_new0 (TmStudyReading, 1);

  reading->study = reading->piece = reading->person = reading->typed = reading->at = reading->extra = no_text;
  return reading;
}

TmTool *
tm_tool_new (void)
{
  TmTool *tool = g_new0 (TmTool, 1);

  tool->name = tool->note = tool->extra = no_text;
  tool->unit = TM_UNIT_MM;
  return tool;
}

TmShopMaterial *
tm_shop_material_new (void)
{
  TmShopMaterial *material = g_new0 (TmShopMaterial, 1);

  material->name = material->source = material->extra = no_text;
  return material;
}

TmMateSize *
tm_mate_size_new (void)
{
  TmMateSize *mate = g_new0 (TmMateSize, 1);

  mate->feature = mate->serial = mate->piece = mate->by = mate->at = mate->note = mate->extra = no_text;
  return mate;
}

TmSupply *
tm_supply_new (void)
{
  TmSupply *supply = g_new0 (TmSupply, 1);

  supply->name = supply->specification = supply->code = supply->supplier = no_text;
  supply->certificate = supply->note = supply->extra = no_text;
  return supply;
}

TmSubPart *
tm_sub_part_new (void)
{
  TmSubPart *part = g_new0 (TmSubPart, 1);

  part->number = part->name = part->serial = part->report = part->extra = no_text;
  return part;
}

TmReportField *
tm_report_field_new (void)
{
  TmReportField *field = g_new0 (TmReportField, 1);

  field->name = field->value = field->extra = no_text;
  return field;
}

TmDrawing *
tm_drawing_new (void)
{
  TmDrawing *drawing = g_new0 (TmDrawing, 1);

  drawing->name = drawing->sheet = drawing->media = drawing->digest = drawing->extra = no_text;
  drawing->page = 1;
  return drawing;
}

TmBalloonMark *
tm_balloon_mark_new (void)
{
  TmBalloonMark *mark = g_new0 (TmBalloonMark, 1);

  mark->drawing = mark->feature = mark->extra = no_text;
  return mark;
}

void
tm_person_free (TmPerson *person)
{
  g_free (person);
}

void
tm_gauge_free (TmGauge *gauge)
{
  g_free (gauge);
}

void
tm_method_free (TmMethod *method)
{
  g_ptr_array_unref (method->gauges);
  g_free (method);
}

void
tm_feature_free (TmFeature *feature)
{
  g_ptr_array_unref (feature->stations);
  g_free (feature);
}

void
tm_piece_free (TmPiece *piece)
{
  g_free (piece);
}

void
tm_reading_free (TmReading *reading)
{
  g_free (reading->row.withdrawn);
  g_free (reading);
}

void
tm_pin_trial_free (TmPinTrial *trial)
{
  g_free (trial->row.withdrawn);
  g_free (trial);
}

void
tm_cut_row_free (TmCutRow *cut)
{
  g_free (cut->row.withdrawn);
  g_free (cut);
}

void
tm_event_free (TmEvent *event)
{
  g_free (event);
}

void
tm_nonconformance_free (TmNonconformance *nonconformance)
{
  g_free (nonconformance);
}

void
tm_signature_free (TmSignature *signature)
{
  g_free (signature);
}

void
tm_calibration_free (TmCalibration *calibration)
{
  g_free (calibration);
}

void
tm_check_free (TmCheck *check)
{
  g_free (check);
}

void
tm_pin_size_free (TmPinSize *pin)
{
  g_free (pin);
}

void
tm_budget_line_free (TmBudgetLine *line)
{
  g_free (line);
}

void
tm_study_free (TmStudy *study)
{
  g_ptr_array_unref (study->pieces);
  g_ptr_array_unref (study->people);
  g_free (study);
}

void
tm_study_reading_free (TmStudyReading *reading)
{
  g_free (reading);
}

void
tm_tool_free (TmTool *tool)
{
  g_free (tool);
}

void
tm_shop_material_free (TmShopMaterial *material)
{
  g_free (material);
}

void
tm_mate_size_free (TmMateSize *mate)
{
  g_free (mate);
}

void
tm_supply_free (TmSupply *supply)
{
  g_free (supply);
}

void
tm_sub_part_free (TmSubPart *part)
{
  g_free (part);
}

void
tm_report_field_free (TmReportField *field)
{
  g_free (field);
}

void
tm_drawing_free (TmDrawing *drawing)
{
  g_clear_pointer (&drawing->content, g_bytes_unref);
  g_free (drawing);
}

void
tm_balloon_mark_free (TmBalloonMark *mark)
{
  g_free (mark);
}
