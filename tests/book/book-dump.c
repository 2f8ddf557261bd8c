/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-dump: a job as text, member by member, written without the tables that the book uses: a
 * member that those forget shows here.
 */

#include "book-fixture.h"

static void
put (GString *out, const char *name, const char *text)
{
  g_string_append_printf (out, " %s=<%s>", name, text);
}

static void
put_quantity (GString *out, const char *name, TmQuantity quantity)
{
  g_string_append_printf (out, " %s=%" G_GINT64_FORMAT "/%u/%u/%u", name, quantity.count, quantity.unit,
                          quantity.decimals, quantity.given);
}

static void
put_int (GString *out, const char *name, guint number)
{
  g_string_append_printf (out, " %s=%u", name, number);
}

static void
dump_facts (GString *out, const TmJob *job)
{
  put (out, "id", job->id);
  put (out, "part_number", job->part_number);
  put (out, "part_name", job->part_name);
  put (out, "revision", job->revision);
  put (out, "drawing", job->drawing);
  put (out, "customer", job->customer);
  put (out, "order", job->order);
  put_int (out, "unit", job->unit);
  put (out, "material", job->material);
  put_int (out, "standard", job->standard);
  put_int (out, "decision", job->decision);
  put_quantity (out, "simple_ratio", job->simple_ratio);
  put (out, "general_tolerance", job->general_tolerance);
  put_int (out, "first_article", job->first_article);
  put (out, "first_article_reason", job->first_article_reason);
  put (out, "first_article_baseline", job->first_article_baseline);
  put (out, "first_article_extra", job->first_article_extra);
  put (out, "extra", job->extra);
  put (out, "job_extra", job->job_extra);
  put_quantity (out, "part_temp_limit", job->part_temp_limit);
  put_quantity (out, "gauge_temp_limit", job->gauge_temp_limit);
  put_quantity (out, "thermometer", job->thermometer);
  put_quantity (out, "expansion", job->expansion);
  put_quantity (out, "entry_clearance", job->entry_clearance);
  put_int (out, "drift_rule", job->drift_rule);
  put_quantity (out, "drift_limit", job->drift_limit);
  put_quantity (out, "check_hours", job->check_hours);
  put_quantity (out, "cut_risk", job->cut_risk);
  put_int (out, "cut_aim", job->cut_aim);
  put (out, "drawing_revision", job->drawing_revision);
  put_int (out, "article", job->article);
  put (out, "report_identifier", job->report_identifier);
  put (out, "organisation", job->organisation);
  put (out, "supplier_code", job->supplier_code);
  put (out, "manufacturing_record", job->manufacturing_record);
  put (out, "drawing_changes", job->drawing_changes);
  put (out, "language", job->language);
  put (out, "second_language", job->second_language);
  put (out, "report_extra", job->report_extra);
}

static void
dump_people_and_gauges (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->people->len; i++)
    {
      const TmPerson *person = g_ptr_array_index (job->people, i);

      g_string_append (out, "\nperson");
      put (out, "initials", person->initials);
      put (out, "name", person->name);
      put (out, "extra", person->extra);
    }
  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (job->gauges, i);

      g_string_append (out, "\ngauge");
      put (out, "tag", gauge->tag);
      put (out, "kind", gauge->kind);
      put_int (out, "unit", gauge->unit);
      put_quantity (out, "resolution", gauge->resolution);
      put_quantity (out, "error_limit", gauge->error_limit);
      put (out, "calibrated", gauge->calibrated);
      put (out, "due", gauge->due);
      put (out, "certificate", gauge->certificate);
      put (out, "extra", gauge->extra);
      put (out, "serial", gauge->serial);
      put (out, "owner", gauge->owner);
      put (out, "place", gauge->place);
      put_quantity (out, "range_from", gauge->range_from);
      put_quantity (out, "range_to", gauge->range_to);
      put_quantity (out, "feel", gauge->feel);
      put_quantity (out, "expansion", gauge->expansion);
      put_quantity (out, "pin_step", gauge->pin_step);
      put (out, "pin_class", gauge->pin_class);
      put (out, "pin_sign", gauge->pin_sign);
      put (out, "source", gauge->source);
      put (out, "blocks", gauge->blocks);
    }
  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);

      g_string_append (out, "\nmethod");
      put (out, "name", method->name);
      for (guint k = 0; k < method->gauges->len; k++)
        put (out, "gauge", g_ptr_array_index (method->gauges, k));
      put_quantity (out, "repeatability", method->repeatability);
      put_quantity (out, "dof", method->repeatability_dof);
      put (out, "repeatability_source", method->repeatability_source);
      put (out, "extra", method->extra);
    }
}

static void
dump_press (GString *out, const TmFeature *feature)
{
  const TmPress *press = &feature->press;

  put (out, "tool", feature->tool);
  put_int (out, "affected", (guint)feature->affected);
  put (out, "tooling", feature->tooling);
  put (out, "comment", feature->comment);
  put_quantity (out, "wanted_least", feature->mate.wanted_least);
  put_quantity (out, "wanted_most", feature->mate.wanted_most);
  put_quantity (out, "length", press->length);
  put_quantity (out, "hub_outside", press->hub_outside);
  put_quantity (out, "shaft_inside", press->shaft_inside);
  put (out, "hub_material", press->hub_material);
  put (out, "shaft_material", press->shaft_material);
  put_quantity (out, "friction_least", press->friction_least);
  put_quantity (out, "friction_most", press->friction_most);
  put_quantity (out, "hub_roughness", press->hub_roughness);
  put_quantity (out, "shaft_roughness", press->shaft_roughness);
  put_quantity (out, "gap", press->gap);
  put (out, "press_extra", press->extra);
}

static void
dump_feature (GString *out, const TmFeature *feature)
{
  g_string_append (out, "\nfeature");
  put (out, "balloon", feature->balloon);
  put_int (out, "kind", feature->kind);
  put (out, "name", feature->name);
  put (out, "requirement", feature->requirement);
  put_int (out, "unit", feature->unit);
  put_quantity (out, "nominal", feature->nominal);
  put_quantity (out, "lower", feature->lower);
  put_quantity (out, "upper", feature->upper);
  put_int (out, "cut", feature->cut);
  put_int (out, "envelope", (guint)feature->envelope);
  put (out, "designator", feature->designator);
  put_int (out, "places", feature->places);
  for (guint k = 0; k < feature->stations->len; k++)
    put (out, "station", g_ptr_array_index (feature->stations, k));
  put (out, "size_feature", feature->size_feature);
  put (out, "method", feature->method);
  put (out, "check", feature->check);
  put_int (out, "group_size", feature->group_size);
  put (out, "sheet", feature->sheet);
  put (out, "zone", feature->zone);
  put_int (out, "mate", (guint)feature->mate.given);
  put_int (out, "mate_kind", feature->mate.kind);
  put_quantity (out, "mate_lower", feature->mate.lower);
  put_quantity (out, "mate_upper", feature->mate.upper);
  put (out, "mate_extra", feature->mate.extra);
  put_int (out, "zone_diameter", (guint)feature->zone_diameter);
  put_int (out, "modifier", feature->modifier);
  put (out, "datums", feature->datums);
  put_int (out, "counts", feature->counts);
  put_quantity (out, "form_unseen", feature->form_unseen);
  dump_press (out, feature);
  put (out, "chart_rules", feature->chart_rules);
  put_int (out, "chart_baseline", feature->chart_baseline);
  put (out, "extra", feature->extra);
}

static void
dump_row (GString *out, const char *kind, const TmEntryRow *row)
{
  g_string_append_printf (out, "\n%s", kind);
  put (out, "id", row->id);
  put (out, "piece", row->piece->serial);
  put (out, "feature", row->feature->balloon);
  put (out, "by", row->by);
  put (out, "at", row->at);
  put (out, "replaces", row->replaces);
  put (out, "reason", row->reason);
  put (out, "extra", row->extra);
  put_int (out, "before_cut", (guint)row->before_cut);
  put (out, "replaced_by", row->replaced_by != NULL ? ((const TmEntryRow *)row->replaced_by)->id : "-");
  put_int (out, "withdrawn", row->withdrawn != NULL);
  if (row->withdrawn == NULL)
    return;
  put (out, "w.by", row->withdrawn->by);
  put (out, "w.at", row->withdrawn->at);
  put (out, "w.reason", row->withdrawn->reason);
  put (out, "w.extra", row->withdrawn->extra);
}

static void
dump_reading (GString *out, const TmReading *reading)
{
  dump_row (out, "reading", &reading->row);
  put_int (out, "place", reading->place);
  put (out, "station", reading->station);
  put_quantity (out, "value", reading->value);
  put_int (out, "outcome", reading->outcome);
  put_quantity (out, "dx", reading->dx);
  put_quantity (out, "dy", reading->dy);
  put (out, "typed", reading->typed);
  put (out, "method", reading->method);
  put_quantity (out, "part_temp", reading->part_temp);
  put_quantity (out, "gauge_temp", reading->gauge_temp);
  put (out, "overdue_reason", reading->overdue_reason);
}

static void
dump_record (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->readings->len; i++)
    dump_reading (out, g_ptr_array_index (job->readings, i));
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);

      dump_row (out, "trial", &trial->row);
      put_quantity (out, "size", trial->size);
      put (out, "class", trial->pin_class);
      put_int (out, "sign", trial->sign);
      put_int (out, "went", (guint)trial->went);
      put_int (out, "place", trial->place);
      put (out, "gauge", trial->gauge);
      put_quantity (out, "measured", trial->measured);
      put (out, "overdue_reason", trial->overdue_reason);
    }
  for (guint i = 0; i < job->cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (job->cuts, i);

      dump_row (out, "cut", &cut->row);
      put_quantity (out, "dialled", cut->dialled);
      put_int (out, "passes", cut->passes);
      put_int (out, "reads", cut->reads);
      put_int (out, "place", cut->place);
      put (out, "tool", cut->tool);
      put (out, "after", cut->after);
      put (out, "note", cut->note);
    }
}

static void
dump_the_rest (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->events->len; i++)
    {
      const TmEvent *event = g_ptr_array_index (job->events, i);

      g_string_append (out, "\nevent");
      put (out, "before", event->before_piece);
      put (out, "kind", event->kind);
      put (out, "note", event->note);
      put (out, "amount", event->amount);
      put (out, "feature", event->feature);
      put (out, "tool", event->tool);
      put (out, "by", event->by);
      put (out, "at", event->at);
      put (out, "extra", event->extra);
    }
  for (guint i = 0; i < job->nonconformances->len; i++)
    {
      const TmNonconformance *row = g_ptr_array_index (job->nonconformances, i);

      g_string_append (out, "\nnonconformance");
      put (out, "piece", row->piece);
      put (out, "feature", row->feature);
      put (out, "number", row->number);
      put (out, "note", row->note);
      put (out, "disposition", row->disposition);
      put_int (out, "place", row->place);
      put (out, "by", row->by);
      put (out, "at", row->at);
      put (out, "rework_by", row->rework_by);
      put (out, "rework_at", row->rework_at);
      put (out, "rework_after", row->rework_after);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->signatures->len; i++)
    {
      const TmSignature *signature = g_ptr_array_index (job->signatures, i);

      g_string_append (out, "\nsignature");
      put (out, "by", signature->by);
      put (out, "role", signature->role);
      put (out, "at", signature->at);
      put (out, "digest", signature->digest);
      put (out, "report", signature->report);
      put (out, "pages", signature->pages);
      put (out, "workbook", signature->workbook);
      put (out, "extra", signature->extra);
    }
}

static void
dump_history (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->calibrations->len; i++)
    {
      const TmCalibration *row = g_ptr_array_index (job->calibrations, i);

      g_string_append (out, "\ncalibration");
      put (out, "gauge", row->gauge);
      put (out, "date", row->date);
      put (out, "due", row->due);
      put (out, "certificate", row->certificate);
      put (out, "by", row->by);
      put_quantity (out, "uncertainty", row->uncertainty);
      put_quantity (out, "coverage", row->coverage);
      put_quantity (out, "error", row->error);
      put (out, "outcome", row->outcome);
      put (out, "note", row->note);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->checks->len; i++)
    {
      const TmCheck *row = g_ptr_array_index (job->checks, i);

      g_string_append (out, "\ncheck");
      put (out, "gauge", row->gauge);
      put_quantity (out, "standard", row->standard);
      put_quantity (out, "reading", row->reading);
      put (out, "by", row->by);
      put (out, "at", row->at);
      put (out, "note", row->note);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->pin_sizes->len; i++)
    {
      const TmPinSize *row = g_ptr_array_index (job->pin_sizes, i);

      g_string_append (out, "\npin size");
      put (out, "gauge", row->gauge);
      put_quantity (out, "size", row->size);
      put_quantity (out, "measured", row->measured);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->budget_lines->len; i++)
    {
      const TmBudgetLine *row = g_ptr_array_index (job->budget_lines, i);

      g_string_append (out, "\nline");
      put (out, "method", row->method);
      put_int (out, "kind", row->kind);
      put (out, "name", row->name);
      put_quantity (out, "value", row->value);
      put (out, "distribution", row->distribution);
      put_quantity (out, "divisor", row->divisor);
      put_quantity (out, "dof", row->dof);
      put (out, "source", row->source);
      put (out, "extra", row->extra);
    }
}

static void
dump_studies (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->studies->len; i++)
    {
      const TmStudy *row = g_ptr_array_index (job->studies, i);

      g_string_append (out, "\nstudy");
      put (out, "name", row->name);
      put (out, "feature", row->feature);
      put (out, "method", row->method);
      put_int (out, "unit", row->unit);
      for (guint k = 0; k < row->pieces->len; k++)
        put (out, "pieces", g_ptr_array_index (row->pieces, k));
      for (guint k = 0; k < row->people->len; k++)
        put (out, "people", g_ptr_array_index (row->people, k));
      put_quantity (out, "repeats", row->repeats);
      put_quantity (out, "seed", row->seed);
      put_quantity (out, "band", row->band);
      put (out, "at", row->at);
      put (out, "note", row->note);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->study_readings->len; i++)
    {
      const TmStudyReading *row = g_ptr_array_index (job->study_readings, i);

      g_string_append (out, "\nstudy reading");
      put (out, "study", row->study);
      put (out, "piece", row->piece);
      put (out, "person", row->person);
      put_quantity (out, "trial", row->trial);
      put_quantity (out, "value", row->value);
      put (out, "typed", row->typed);
      put (out, "at", row->at);
      put (out, "extra", row->extra);
    }
}

static void
dump_tools (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->tools->len; i++)
    {
      const TmTool *tool = g_ptr_array_index (job->tools, i);

      g_string_append (out, "\ntool");
      put (out, "name", tool->name);
      put_int (out, "unit", tool->unit);
      put_int (out, "reads", tool->reads);
      put_quantity (out, "graduation", tool->graduation);
      put_quantity (out, "least_cut", tool->least_cut);
      put_quantity (out, "backlash", tool->backlash);
      put_quantity (out, "spring_passes", tool->spring_passes);
      put_quantity (out, "offset_step", tool->offset_step);
      put (out, "note", tool->note);
      put (out, "extra", tool->extra);
    }
  for (guint i = 0; i < job->materials->len; i++)
    {
      const TmShopMaterial *material = g_ptr_array_index (job->materials, i);

      g_string_append (out, "\nmaterial");
      put (out, "name", material->name);
      put_quantity (out, "modulus", material->modulus);
      put_quantity (out, "poisson", material->poisson);
      put_quantity (out, "yield", material->yield);
      put_quantity (out, "expansion", material->expansion);
      put_quantity (out, "cold", material->cold);
      put_int (out, "plastic", (guint)material->plastic);
      put (out, "source", material->source);
      put (out, "extra", material->extra);
    }
}

static void
dump_mates (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      const TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);

      g_string_append (out, "\nmate");
      put (out, "feature", mate->feature);
      put (out, "serial", mate->serial);
      put_quantity (out, "smallest", mate->smallest);
      put_quantity (out, "largest", mate->largest);
      put_quantity (out, "uncertainty", mate->uncertainty);
      put (out, "piece", mate->piece);
      put_quantity (out, "place", mate->place);
      put (out, "by", mate->by);
      put (out, "at", mate->at);
      put (out, "note", mate->note);
      put (out, "extra", mate->extra);
    }
}

static void
dump_supplies (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->supplies->len; i++)
    {
      const TmSupply *row = g_ptr_array_index (job->supplies, i);

      g_string_append (out, "\nsupply");
      put_int (out, "kind", row->kind);
      put (out, "name", row->name);
      put (out, "specification", row->specification);
      put (out, "code", row->code);
      put (out, "supplier", row->supplier);
      put_int (out, "approval", row->approval);
      put (out, "certificate", row->certificate);
      put (out, "note", row->note);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->sub_parts->len; i++)
    {
      const TmSubPart *row = g_ptr_array_index (job->sub_parts, i);

      g_string_append (out, "\nsub part");
      put (out, "number", row->number);
      put (out, "name", row->name);
      put (out, "serial", row->serial);
      put (out, "report", row->report);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->report_fields->len; i++)
    {
      const TmReportField *row = g_ptr_array_index (job->report_fields, i);

      g_string_append (out, "\nfield");
      put (out, "name", row->name);
      put (out, "value", row->value);
      put (out, "extra", row->extra);
    }
}

static void
dump_drawings (GString *out, const TmJob *job)
{
  for (guint i = 0; i < job->drawings->len; i++)
    {
      const TmDrawing *row = g_ptr_array_index (job->drawings, i);
      gsize length = 0;
      const guchar *bytes = row->content != NULL ? g_bytes_get_data (row->content, &length) : NULL;
      g_autofree char *content = g_base64_encode (bytes, length);

      g_string_append (out, "\ndrawing");
      put (out, "name", row->name);
      put (out, "sheet", row->sheet);
      put (out, "media", row->media);
      put_int (out, "page", row->page);
      put (out, "digest", row->digest);
      put (out, "content", content);
      put (out, "extra", row->extra);
    }
  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      const TmBalloonMark *row = g_ptr_array_index (job->balloon_marks, i);

      g_string_append (out, "\nballoon");
      put (out, "drawing", row->drawing);
      put (out, "feature", row->feature);
      put_int (out, "place", row->place);
      put_quantity (out, "x", row->x);
      put_quantity (out, "y", row->y);
      put_quantity (out, "to_x", row->to_x);
      put_quantity (out, "to_y", row->to_y);
      put (out, "extra", row->extra);
    }
}

char *
dump_job (const TmJob *job)
{
  GString *out = g_string_new ("job");

  dump_facts (out, job);
  dump_people_and_gauges (out, job);
  for (guint i = 0; i < job->features->len; i++)
    dump_feature (out, g_ptr_array_index (job->features, i));
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);

      g_string_append (out, "\npiece");
      put (out, "serial", piece->serial);
      put_int (out, "first_article", (guint)piece->first_article);
      put (out, "disposition", piece->disposition);
      put (out, "disposition_note", piece->disposition_note);
      put (out, "extra", piece->extra);
    }
  dump_record (out, job);
  dump_the_rest (out, job);
  dump_history (out, job);
  dump_studies (out, job);
  dump_tools (out, job);
  dump_mates (out, job);
  dump_supplies (out, job);
  dump_drawings (out, job);
  return g_string_free (out, FALSE);
}
