/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-fixture.h"

#include <gio/gio.h>
#include <glib/gstdio.h>

#include "support-template.h"

void
place_set_up (Place *place, gconstpointer data)
{
  GError *error = NULL;

  place->folder = g_dir_make_tmp ("tenthmark-book-XXXXXX", &error);
  g_assert_no_error (error);
  place->path = g_build_filename (place->folder, "shop.book", NULL);
}

void
place_tear_down (Place *place, gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place->path);
}

static TmQuantity
read_quantity (const char *text, TmUnit unit)
{
  TmQuantity quantity = TM_QUANTITY_NONE;

  g_assert_cmpint (tm_quantity_read (text, unit, &quantity), ==, TM_READ_OK);
  return quantity;
}

static void
add_people_and_gauges (TmJob *job)
{
  TmPerson *person = tm_person_new ();
  TmGauge *gauge = tm_gauge_new ();
  TmGauge *reader = tm_gauge_new ();
  TmMethod *method = tm_method_new ();

  person->initials = "RW";
  person->name = "R. Wren";
  person->extra = "\"badge\": 7";
  g_assert_cmpint (tm_job_add_person (job, person), ==, TM_ADD_OK);
  gauge->tag = "TG-1";
  gauge->kind = "telescoping gauge";
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  reader->tag = "M-25";
  reader->kind = "micrometer";
  reader->unit = TM_UNIT_IN;
  reader->resolution = read_quantity ("0.0001", TM_UNIT_IN);
  reader->error_limit = read_quantity ("0.00010", TM_UNIT_IN);
  reader->calibrated = "2026-03-01";
  reader->due = "2027-03-01";
  reader->certificate = "C-\\1187\nsecond line";
  reader->extra = "\"colour\": \"red\",\n\"n\": [1,2]";
  g_assert_cmpint (tm_job_add_gauge (job, reader), ==, TM_ADD_OK);
  method->name = "transfer";
  g_ptr_array_add (method->gauges, (gpointer) "TG-1");
  g_ptr_array_add (method->gauges, (gpointer) "M-25");
  method->repeatability = read_quantity ("0.003", TM_UNIT_MM);
  method->repeatability_dof = read_quantity ("30", TM_UNIT_COUNT);
  method->extra = "\"x\": 1";
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
}

static TmFeature *
add_feature (TmJob *job, const char *balloon, TmKind kind)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = balloon;
  feature->kind = kind;
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  return feature;
}

static void
add_features (TmJob *job)
{
  TmFeature *feature = add_feature (job, "10", TM_KIND_BORE);

  feature->name = "bearing bore";
  feature->requirement = "Ø25 H7";
  feature->unit = TM_UNIT_MM;
  feature->nominal = read_quantity ("25", TM_UNIT_MM);
  feature->lower = read_quantity ("25.000", TM_UNIT_MM);
  feature->upper = read_quantity ("25.021", TM_UNIT_MM);
  feature->cut = TM_CUT_GROWS;
  feature->envelope = TRUE;
  feature->designator = "critical";
  feature->places = 4;
  g_ptr_array_add (feature->stations, (gpointer) "mouth/12");
  g_ptr_array_add (feature->stations, (gpointer) "odd\nstation \\ here");
  g_ptr_array_add (feature->stations, (gpointer) "");
  feature->method = "transfer";
  feature->check = "every 5";
  feature->group_size = 5;
  feature->sheet = "1";
  feature->zone = "B4";
  feature->mate.given = TRUE;
  feature->mate.kind = TM_KIND_SHAFT;
  feature->mate.lower = read_quantity ("24.980", TM_UNIT_MM);
  feature->mate.upper = read_quantity ("24.99", TM_UNIT_MM);
  feature->mate.extra = "\"m\": null";
  feature->extra = "\"f\": true";
  feature = add_feature (job, "2", TM_KIND_POSITION);
  feature->unit = TM_UNIT_IN;
  feature->upper = read_quantity ("0.0080", TM_UNIT_IN);
  feature->size_feature = "10";
  feature->zone_diameter = TRUE;
  feature->modifier = TM_MODIFIER_MMC;
  feature->datums = "A B C";
  feature->cut = TM_CUT_SHRINKS;
  add_feature (job, "1", TM_KIND_NOTE)->requirement = "break edges";
}

static void
add_pieces (TmJob *job)
{
  for (guint i = 3; i > 0; i--)
    {
      TmPiece *piece = tm_piece_new ();

      piece->serial = i == 3 ? "003" : i == 2 ? "002" : "001";
      piece->first_article = i == 2;
      piece->extra = i == 1 ? "\"melt\": \"77\"" : "";
      g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
    }
}

static void
fill_row (TmJob *job, TmEntryRow *row, const char *id, const char *serial, const char *balloon)
{
  row->id = id;
  row->piece = tm_job_find_piece (job, serial);
  row->feature = tm_job_find_feature (job, balloon);
  row->by = "RW";
  row->at = "2026-05-04T09:12:33Z";
}

static void
add_readings (TmJob *job)
{
  TmReading *reading = tm_reading_new ();

  fill_row (job, &reading->row, "b-7", "002", "10");
  reading->place = 3;
  reading->station = "mouth/12";
  reading->value = read_quantity (".9843 in", TM_UNIT_MM);
  reading->typed = ".9843 in";
  reading->method = "M-25";
  reading->part_temp = read_quantity ("22.5", TM_UNIT_CELSIUS);
  reading->gauge_temp = read_quantity ("-0.50", TM_UNIT_CELSIUS);
  reading->row.extra = "\"r\": 1";
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  reading = tm_reading_new ();
  fill_row (job, &reading->row, "1", "002", "10");
  reading->value = read_quantity ("25.0120", TM_UNIT_MM);
  reading->row.replaces = "b-7";
  reading->row.reason = "wrong place";
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  reading = tm_reading_new ();
  fill_row (job, &reading->row, "2", "001", "2");
  reading->dx = read_quantity ("0.0011", TM_UNIT_IN);
  reading->dy = read_quantity ("-0.002", TM_UNIT_IN);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  reading = tm_reading_new ();
  fill_row (job, &reading->row, "9", "003", "1");
  reading->outcome = TM_OUTCOME_FAIL;
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (job, &reading->row, "RW", "2026-05-04T10:00:00Z", "read the wrong piece"),
                   ==, TM_ADD_OK);
  reading->row.withdrawn->extra = "\"w\": {}";
}

static void
add_trials_and_cuts (TmJob *job)
{
  TmPinTrial *trial = tm_pin_trial_new ();
  TmCutRow *cut = tm_cut_row_new ();

  fill_row (job, &trial->row, "1", "001", "10");
  trial->size = read_quantity ("25.000", TM_UNIT_MM);
  trial->pin_class = "Z";
  trial->sign = TM_PIN_PLUS;
  trial->went = TRUE;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (job, &trial->row, "", "", "dirty pin"), ==, TM_ADD_OK);
  fill_row (job, &cut->row, "1", "003", "10");
  cut->dialled = read_quantity ("0.150", TM_UNIT_MM);
  cut->passes = 4;
  cut->row.extra = "\"spring\": 2";
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
}

static void
add_the_rest (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmEvent *event = tm_event_new ();

      event->before_piece = "002";
      event->kind = "tool";
      event->note = "new insert"; /* twice the same, on purpose */
      event->amount = "0.0050";
      event->extra = "\"e\": 0.10";
      tm_job_add_event (job, event);
    }
  for (guint i = 0; i < 2; i++)
    {
      TmNonconformance *nonconformance = tm_nonconformance_new ();

      nonconformance->piece = i == 0 ? "003" : "";
      nonconformance->feature = "1";
      nonconformance->number = "NC-14";
      nonconformance->note = i == 0 ? "edge not broken" : "";
      nonconformance->disposition = "rework";
      nonconformance->extra = "\"q\": \"ü\"";
      tm_job_add_nonconformance (job, nonconformance);
    }
  TmSignature *signature = tm_signature_new ();

  signature->by = "R. Wren";
  signature->role = "inspector";
  signature->at = "2026-05-04T11:00:00Z";
  signature->digest = "00ff";
  signature->extra = "\"s\": []";
  tm_job_add_signature (job, signature);
}

TmJob *
make_old_job (const char *id)
{
  TmJob *job = tm_job_new ();

  job->id = tm_job_intern (job, id);
  job->part_number = "INV-1001";
  job->part_name = "Housing “A”";
  job->revision = "C";
  job->drawing = "D-1001";
  job->customer = "Invented Works";
  job->order = "PO 5";
  job->unit = TM_UNIT_IN;
  job->material = "steel";
  job->standard = TM_STANDARD_ASME;
  job->decision = TM_DECISION_SIMPLE;
  job->simple_ratio = read_quantity ("4.0", TM_UNIT_HARDNESS);
  job->general_tolerance = ".X .1, .XX .01";
  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  job->first_article_reason = "new revision";
  job->first_article_baseline = "B";
  job->first_article_extra = "\"fa\": 1";
  job->extra = "\"top\": {\n  \"deep\": \"\\n\"\n}";
  job->job_extra = "\"colour\": \"blue\"";
  add_people_and_gauges (job);
  add_features (job);
  add_pieces (job);
  add_readings (job);
  add_trials_and_cuts (job);
  add_the_rest (job);
  return job;
}

static void
add_history (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmCalibration *calibration = tm_calibration_new ();
      TmCheck *check = tm_check_new ();
      TmPinSize *pin = tm_pin_size_new ();

      calibration->gauge = "M-25";
      calibration->date = i == 0 ? "2025-03-01" : "2026-03-01";
      calibration->due = i == 0 ? "" : "2027-03-01";
      calibration->certificate = "C-\\1187";
      calibration->by = "Invented Laboratory";
      calibration->uncertainty = read_quantity ("0.00003", TM_UNIT_IN);
      calibration->coverage = read_quantity ("2.00", TM_UNIT_HARDNESS);
      calibration->error = read_quantity ("-0.00005", TM_UNIT_IN);
      calibration->outcome = i == 0 ? "bad" : "";
      calibration->note = "thimble\nreset";
      calibration->extra = "\"c\": 1";
      check->gauge = "M-25"; /* twice the same, on purpose */
      check->standard = read_quantity ("1.0000", TM_UNIT_IN);
      check->reading = read_quantity ("1.0001", TM_UNIT_IN);
      check->by = "RW";
      check->at = "2026-05-04T09:00:00Z";
      check->note = "warm";
      check->extra = "\"k\": 1";
      pin->gauge = "PS-1";
      pin->size = read_quantity (i == 0 ? "25.00" : "25.01", TM_UNIT_MM);
      pin->measured = read_quantity ("25.0003", TM_UNIT_MM);
      pin->extra = "\"p\": 1";
      g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
      g_assert_cmpint (tm_job_add_check (job, check), ==, TM_ADD_OK);
      g_assert_cmpint (tm_job_add_pin_size (job, pin), ==, TM_ADD_OK);
    }
}

static void
add_pin_set (TmJob *job)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = "PS-1";
  gauge->kind = "pin set";
  gauge->serial = "77-B";
  gauge->owner = "the shop";
  gauge->place = "drawer 3";
  gauge->range_from = read_quantity ("24.00", TM_UNIT_MM);
  gauge->range_to = read_quantity ("26.00", TM_UNIT_MM);
  gauge->feel = read_quantity ("0.001", TM_UNIT_MM);
  gauge->expansion = read_quantity ("11.5", TM_UNIT_HARDNESS);
  gauge->pin_step = read_quantity ("0.01", TM_UNIT_MM);
  gauge->pin_class = "X";
  gauge->pin_sign = "plus";
  gauge->source = "assumed";
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
}

static void
add_lines (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmBudgetLine *line = tm_budget_line_new ();

      line->method = "transfer";
      line->kind = i == 0 ? TM_LINE_PEOPLE : TM_LINE_OTHER;
      line->name = "between people";
      line->value = read_quantity ("0.0020", TM_UNIT_MM);
      line->distribution = i == 0 ? "t" : "normal";
      line->divisor = read_quantity ("1.5", TM_UNIT_HARDNESS);
      line->dof = read_quantity ("12.5", TM_UNIT_HARDNESS);
      line->source = "study one";
      line->extra = "\"l\": 1";
      g_assert_cmpint (tm_job_add_budget_line (job, line), ==, TM_ADD_OK);
    }
}

static void
add_study (TmJob *job)
{
  TmStudy *study = tm_study_new ();

  study->name = "one";
  study->feature = "10";
  study->method = "transfer";
  study->unit = TM_UNIT_IN;
  g_ptr_array_add (study->pieces, (gpointer) "a\nb");
  g_ptr_array_add (study->pieces, (gpointer) "c");
  g_ptr_array_add (study->people, (gpointer) "RW");
  study->repeats = read_quantity ("3", TM_UNIT_COUNT);
  study->seed = read_quantity ("12345", TM_UNIT_COUNT);
  study->band = read_quantity ("0.0010", TM_UNIT_IN);
  study->at = "2026-05-04T08:00:00Z";
  study->note = "quiet room";
  study->extra = "\"s\": 1";
  g_assert_cmpint (tm_job_add_study (job, study), ==, TM_ADD_OK);
  for (gint64 i = 1; i <= 3; i++)
    {
      TmStudyReading *reading = tm_study_reading_new ();

      reading->study = "one";
      reading->piece = "c";
      reading->person = "RW";
      reading->trial = tm_quantity_new (i, TM_UNIT_COUNT, 0);
      reading->value = read_quantity ("0.98430", TM_UNIT_IN);
      reading->typed = ".9843";
      reading->at = "2026-05-04T08:01:00Z";
      reading->extra = "\"v\": 1";
      g_assert_cmpint (tm_job_add_study_reading (job, reading), ==, TM_ADD_OK);
    }
}

static void
add_rules (TmJob *job)
{
  TmFeature *bore = tm_job_find_feature (job, "10");

  job->part_temp_limit = read_quantity ("3", TM_UNIT_CELSIUS);
  job->gauge_temp_limit = read_quantity ("2.0", TM_UNIT_CELSIUS);
  job->thermometer = read_quantity ("0.5", TM_UNIT_CELSIUS);
  job->expansion = read_quantity ("23.6", TM_UNIT_HARDNESS);
  job->entry_clearance = read_quantity ("0.00004", TM_UNIT_IN);
  job->drift_rule = TM_DRIFT_ASK;
  job->drift_limit = read_quantity ("0.5", TM_UNIT_HARDNESS);
  job->check_hours = read_quantity ("8", TM_UNIT_HARDNESS);
  bore->counts = TM_COUNTS_COMBINED;
  bore->form_unseen = read_quantity ("0.003", TM_UNIT_MM);
  tm_job_find_method (job, "transfer")->repeatability_source = "study one";
  tm_job_find_reading (job, "1")->overdue_reason = "no other gauge that day";
}

static void
add_placed_trial (TmJob *job)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  fill_row (job, &trial->row, "2", "001", "10");
  trial->size = read_quantity ("25.01", TM_UNIT_MM);
  trial->pin_class = "X";
  trial->place = 4;
  trial->gauge = "PS-1";
  trial->measured = read_quantity ("25.0103", TM_UNIT_MM);
  trial->overdue_reason = "no other set";
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
}

TmJob *
make_later_job (const char *id)
{
  TmJob *job = make_old_job (id);

  add_pin_set (job);
  add_history (job);
  add_lines (job);
  add_study (job);
  add_rules (job);
  add_placed_trial (job);
  return job;
}

static void
add_tools_and_materials (TmJob *job)
{
  TmTool *tool = tm_tool_new ();
  TmShopMaterial *material = tm_shop_material_new ();

  tool->name = "boring bar 16";
  tool->unit = TM_UNIT_IN;
  tool->reads = TM_READS_RADIUS;
  tool->graduation = read_quantity ("0.0010", TM_UNIT_IN);
  tool->least_cut = read_quantity ("0.0005", TM_UNIT_IN);
  tool->backlash = read_quantity ("0.005", TM_UNIT_IN);
  tool->spring_passes = read_quantity ("2", TM_UNIT_COUNT);
  tool->note = "lathe 2\nkeyed";
  tool->extra = "\"t\": 1";
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  material->name = "bush bronze";
  material->modulus = read_quantity ("105", TM_UNIT_HARDNESS);
  material->poisson = read_quantity ("0.34", TM_UNIT_HARDNESS);
  material->yield = read_quantity ("150", TM_UNIT_HARDNESS);
  material->expansion = read_quantity ("18.0", TM_UNIT_HARDNESS);
  material->cold = read_quantity ("16.5", TM_UNIT_HARDNESS);
  material->plastic = TRUE;
  material->source = "invented";
  material->extra = "\"b\": 1";
  g_assert_cmpint (tm_job_add_material (job, material), ==, TM_ADD_OK);
}

static void
set_press (TmFeature *bore)
{
  bore->tool = "boring bar 16";
  bore->mate.wanted_least = read_quantity ("-0.035", TM_UNIT_MM);
  bore->mate.wanted_most = read_quantity ("-0.0100", TM_UNIT_MM);
  bore->press.length = read_quantity ("20", TM_UNIT_MM);
  bore->press.hub_outside = read_quantity ("50.0", TM_UNIT_MM);
  bore->press.shaft_inside = read_quantity ("0.5", TM_UNIT_IN);
  bore->press.hub_material = "steel";
  bore->press.shaft_material = "bush bronze";
  bore->press.friction_least = read_quantity ("0.08", TM_UNIT_HARDNESS);
  bore->press.friction_most = read_quantity ("0.150", TM_UNIT_HARDNESS);
  bore->press.hub_roughness = read_quantity ("3.2", TM_UNIT_UM);
  bore->press.shaft_roughness = read_quantity ("1.6", TM_UNIT_UM);
  bore->press.gap = read_quantity ("0.02", TM_UNIT_MM);
  bore->press.extra = "\"pr\": 1";
}

static void
add_mates (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmMateSize *mate = tm_mate_size_new ();

      mate->feature = i == 0 ? "10" : "2"; /* one serial at two features */
      mate->serial = "B1";
      mate->smallest = read_quantity ("25.0240", TM_UNIT_MM);
      mate->largest = read_quantity ("25.026", TM_UNIT_MM);
      mate->uncertainty = read_quantity ("0.002", TM_UNIT_MM);
      mate->piece = "003";
      mate->place = read_quantity ("4", TM_UNIT_COUNT);
      mate->by = "RW";
      mate->at = "2026-05-04T09:30:00Z";
      mate->note = "at the collar";
      mate->extra = "\"mt\": 1";
      g_assert_cmpint (tm_job_add_mate_size (job, mate), ==, TM_ADD_OK);
    }
}

static void
add_placed_cuts (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmCutRow *cut = tm_cut_row_new ();

      fill_row (job, &cut->row, i == 0 ? "2" : "3", "002", "10");
      cut->dialled = read_quantity (i == 0 ? "0.0020" : "0.0015", TM_UNIT_IN);
      cut->reads = TM_READS_RADIUS;
      cut->passes = 2;
      cut->place = 3;
      cut->tool = "boring bar 16";
      cut->after = i == 0 ? "none" : "b-7";
      cut->note = "after the roughing cut";
      g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
      if (i == 0)
        g_assert_cmpint (tm_job_withdraw (job, &cut->row, "RW", "2026-05-04T09:20:00Z", "not made"), ==,
                         TM_ADD_OK);
    }
}

TmJob *
make_tooled_job (const char *id)
{
  TmJob *job = make_later_job (id);

  job->cut_risk = read_quantity ("0.001", TM_UNIT_HARDNESS);
  job->cut_aim = TM_AIM_PROVEN;
  tm_job_find_gauge (job, "PS-1")->blocks = "1.001-1.009 by 0.001";
  add_tools_and_materials (job);
  set_press (tm_job_find_feature (job, "10"));
  add_mates (job);
  add_placed_cuts (job);
  return job;
}

/* An offset that was recorded, pieces held back, and how the charts are drawn. */
static void
add_batch (TmJob *job)
{
  TmEvent *event = tm_event_new ();
  TmPiece *held = tm_job_find_piece (job, "002");
  TmFeature *feature = tm_job_find_feature (job, "10");

  event->kind = "offset";
  event->amount = "-0.0004";
  event->note = "recentred\nafter 002";
  event->feature = feature->balloon;
  event->tool = "boring bar 16";
  event->by = "RW";
  event->at = "2026-05-04T11:12:33Z";
  tm_job_add_event (job, event);
  held->disposition = "hold";
  held->disposition_note = "made after \\ the shift";
  tm_job_find_piece (job, "003")->disposition = "scrap";
  feature->chart_rules = "beyond-3s 8-one-side";
  feature->chart_baseline = 12;
  tm_job_find_tool (job, "boring bar 16")->offset_step = read_quantity ("0.00005", TM_UNIT_IN);
}

TmJob *
make_batch_job (const char *id)
{
  TmJob *job = make_tooled_job (id);

  add_batch (job);
  return job;
}

static void
set_report (TmJob *job)
{
  TmFeature *feature = tm_job_find_feature (job, "10");
  TmNonconformance *row = g_ptr_array_index (job->nonconformances, 0);

  job->drawing_revision = "C1";
  job->article = TM_ARTICLE_ASSEMBLY;
  job->report_identifier = "FA-0031";
  job->organisation = "Invented Shop";
  job->supplier_code = "S-77";
  job->manufacturing_record = "traveller 12\n(two sheets)";
  job->drawing_changes = "note 4 struck out";
  job->language = "de";
  job->second_language = "en";
  job->report_extra = "\"r\": 1";
  feature->affected = TRUE;
  feature->tooling = "ring gauge R-9";
  feature->comment = "seat for the bearing";
  row->place = 1;
  row->by = "RW";
  row->at = "2026-05-04T09:30:00Z";
  row->rework_by = "MF";
  row->rework_at = "2026-05-04T10:30:00Z";
  row->rework_after = "none";
}

/* Twice the same supply, on purpose. */
static void
add_supplies (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmSupply *supply = tm_supply_new ();
      TmSubPart *part = tm_sub_part_new ();
      TmReportField *field = tm_report_field_new ();

      supply->kind = TM_SUPPLY_PROCESS;
      supply->name = "anodise";
      supply->specification = "invented 12";
      supply->code = "A2";
      supply->supplier = "Invented Plating";
      supply->approval = TM_APPROVAL_NOT_ASKED;
      supply->certificate = "P-\\9";
      supply->note = "clear";
      supply->extra = "\"u\": 1";
      tm_job_add_supply (job, supply);
      part->number = i == 0 ? "INV-7" : "INV-8";
      part->name = "bush";
      part->serial = "B1";
      part->report = "FA-0030";
      part->extra = "\"a\": 1";
      tm_job_add_sub_part (job, part);
      field->name = "traceability";
      field->value = i == 0 ? "lot 5" : "";
      field->extra = "\"f\": 1";
      tm_job_add_report_field (job, field);
    }
}

static void
add_drawings (TmJob *job)
{
  for (guint i = 0; i < 2; i++)
    {
      TmDrawing *drawing = tm_drawing_new ();
      TmBalloonMark *mark = tm_balloon_mark_new ();
      g_autofree char *digest = NULL;

      drawing->name = i == 0 ? "sheet 1" : "sheet 2";
      drawing->sheet = "1";
      drawing->media = "application/pdf";
      drawing->page = i + 1;
      drawing->content = g_bytes_new ("no\0 PDF", 7); /* one file, two pages of it */
      digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
      drawing->digest = tm_job_intern (job, digest);
      drawing->extra = "\"d\": 1";
      g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
      mark->drawing = drawing->name;
      mark->feature = "10";
      mark->place = i;
      mark->x = read_quantity ("0.25", TM_UNIT_HARDNESS);
      mark->y = read_quantity ("0.5000", TM_UNIT_HARDNESS);
      if (i == 0)
        {
          mark->to_x = read_quantity ("1", TM_UNIT_HARDNESS);
          mark->to_y = read_quantity ("0", TM_UNIT_HARDNESS);
        }
      mark->extra = "\"m\": 1";
      g_assert_cmpint (tm_job_add_balloon_mark (job, mark), ==, TM_ADD_OK);
    }
}

static void
add_report_signature (TmJob *job)
{
  TmSignature *signature = tm_signature_new ();

  signature->by = "M. Fell";
  signature->role = "customer";
  signature->at = "2026-05-04T12:00:00Z";
  signature->digest = "22ff";
  signature->report = "FA-0031";
  signature->pages = "33ff";
  signature->workbook = "44ff";
  tm_job_add_signature (job, signature);
}

TmJob *
make_rich_job (const char *id)
{
  TmJob *job = make_batch_job (id);

  set_report (job);
  add_supplies (job);
  add_drawings (job);
  add_report_signature (job);
  tm_job_mark_reworks (job);
  return job;
}

TmPinTrial *
make_trial (TmJob *job, const char *id, const char *serial, const char *size)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  fill_row (job, &trial->row, tm_job_intern (job, id), serial, "1");
  trial->size = read_quantity (size, TM_UNIT_MM);
  trial->pin_class = "X";
  return trial;
}

TmCutRow *
make_cut (TmJob *job, const char *id, const char *serial, const char *tool)
{
  TmCutRow *cut = tm_cut_row_new ();

  fill_row (job, &cut->row, tm_job_intern (job, id), serial, "1");
  cut->dialled = read_quantity ("0.020", TM_UNIT_MM);
  cut->tool = tm_job_intern (job, tool);
  return cut;
}

TmJob *
make_bench_job (const char *id, guint n_pieces)
{
  TmJob *job = tm_job_new ();
  TmFeature *feature;

  job->id = tm_job_intern (job, id);
  job->part_number = "INV-2002";
  job->revision = "A";
  feature = add_feature (job, "1", TM_KIND_BORE);
  feature->unit = TM_UNIT_MM;
  feature->places = 4;
  for (guint i = 1; i <= n_pieces; i++)
    {
      TmPiece *piece = tm_piece_new ();
      g_autofree char *serial = g_strdup_printf ("%03u", i);

      piece->serial = tm_job_intern (job, serial);
      g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
    }
  return job;
}

TmReading *
make_reading (TmJob *job, const char *id, const char *serial, const char *value)
{
  TmReading *reading = tm_reading_new ();

  fill_row (job, &reading->row, tm_job_intern (job, id), serial, "1");
  reading->station = "mouth/12";
  reading->value = read_quantity (value, TM_UNIT_MM);
  reading->typed = tm_job_intern (job, value);
  return reading;
}

void
assert_same_job (const TmJob *a, const TmJob *b)
{
  g_autofree char *left = dump_job (a);
  g_autofree char *right = dump_job (b);

  g_assert_cmpstr (left, ==, right);
}

void
assert_clean (const char *path)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (GPtrArray) faults = NULL;

  g_assert_no_error (error);
  faults = tm_book_verify (book, NULL, &error);
  g_assert_no_error (error);
  if (faults->len > 0)
    {
      const TmBookFault *fault = g_ptr_array_index (faults, 0);

      g_error ("%u faults in %s, first: %s, %s: %s", faults->len, path, fault->what, fault->where,
               fault->how);
    }
}

void
put_job (const char *path, const TmJob *job)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  gboolean added = FALSE;

  g_assert_no_error (error);
  tm_book_add_job (book, job, NULL, NULL, &added, &error);
  g_assert_no_error (error);
  g_assert_true (added);
}

void
put_template (const char *path)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  g_autoptr (TmTemplate) template = tm_test_template ();

  g_assert_no_error (error);
  tm_book_save_template (book, template, "RW", "2026-05-04T09:12:33Z", &error);
  g_assert_no_error (error);
}

TmJob *
take_job (const char *path, const char *id)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  TmJob *job;

  g_assert_no_error (error);
  job = tm_book_load_job (book, id, NULL, NULL, &error);
  g_assert_no_error (error);
  return job;
}

static sqlite3 *
open_behind (const char *path)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READWRITE, NULL), ==, SQLITE_OK);
  sqlite3_busy_timeout (db, 3000);
  return db;
}

void
tamper (const char *path, const char *sql)
{
  sqlite3 *db = open_behind (path);
  char *message = NULL;

  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

gint64
ask_file (const char *path, const char *sql)
{
  sqlite3 *db = open_behind (path);
  sqlite3_stmt *statement = NULL;
  gint64 number;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (statement), ==, SQLITE_ROW);
  number = sqlite3_column_int64 (statement, 0);
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return number;
}
