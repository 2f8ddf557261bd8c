/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-random-job.h"

#include "core-callout.h"
#include "core-run-rules.h"

static const char *
pick_text (GRand *rand, TmJob *job)
{
  static const char *const texts[] = {
    "",        "plain", "=SUM(A1)", "quote \" and \\", "line\nbreak\ttab", "bell \a and \x7f", "Ø ± µ ⌖ 孔",
    "“curly”", " ",     "</x>"
  };

  return tm_job_intern (job, texts[g_rand_int_range (rand, 0, G_N_ELEMENTS (texts))]);
}

static TmQuantity
pick_quantity (GRand *rand, TmUnit unit)
{
  guint decimals = (guint)g_rand_int_range (rand, 0, 6);
  gint64 step = tm_unit_counts (unit);

  for (guint i = 0; i < decimals; i++)
    step = step % 10 == 0 ? step / 10 : step;
  return tm_quantity_new (step * g_rand_int_range (rand, -2000000, 2000000), unit, decimals);
}

/* A quantity at least @least, mostly given. */
static TmQuantity
maybe (GRand *rand, TmUnit unit, gint32 least)
{
  guint decimals = (guint)g_rand_int_range (rand, 0, 4);
  gint64 step = tm_unit_counts (unit);

  if (g_rand_int_range (rand, 0, 4) == 0)
    return TM_QUANTITY_NONE;
  for (guint i = 0; i < decimals; i++)
    step = step % 10 == 0 ? step / 10 : step;
  return tm_quantity_new (step * g_rand_int_range (rand, least, 2000), unit, decimals);
}

static const char *
pick_day (GRand *rand, TmJob *job, guint year)
{
  char day[16];

  g_snprintf (day, sizeof day, "%04u-%02d-%02d", year, g_rand_int_range (rand, 1, 13),
              g_rand_int_range (rand, 1, 29));
  return tm_job_intern (job, day);
}

static const char *
pick_moment (GRand *rand, TmJob *job)
{
  g_autofree char *moment = g_strconcat (pick_day (rand, job, 2026), "T09:12:33Z", NULL);

  return tm_job_intern (job, g_rand_boolean (rand) ? moment : "");
}

static const char *
number_text (TmJob *job, const char *word, guint number)
{
  char text[24];

  g_snprintf (text, sizeof text, "%s%u", word, number);
  return tm_job_intern (job, text);
}

static const char *
pick_class (GRand *rand, TmJob *job)
{
  static const char *const classes[] = { "", "XXX", "XX", "X", "Y", "Z", "ZZ" };

  return tm_job_intern (job, classes[g_rand_int_range (rand, 0, G_N_ELEMENTS (classes))]);
}

static void
add_random_history (GRand *rand, TmJob *job, const TmGauge *gauge)
{
  for (guint i = 0; i < 3; i++)
    {
      TmCalibration *calibration = tm_calibration_new ();
      TmCheck *check = tm_check_new ();

      calibration->gauge = check->gauge = gauge->tag;
      calibration->date = pick_day (rand, job, 2020 + i);
      calibration->due = g_rand_boolean (rand) ? pick_day (rand, job, 2024) : calibration->due;
      calibration->certificate = pick_text (rand, job);
      calibration->by = pick_text (rand, job);
      calibration->uncertainty = maybe (rand, gauge->unit, 0);
      calibration->coverage = maybe (rand, TM_UNIT_HARDNESS, 1);
      calibration->error = maybe (rand, gauge->unit, -2000);
      calibration->outcome = tm_job_intern (job, g_rand_boolean (rand) ? "bad" : "");
      calibration->note = pick_text (rand, job);
      check->standard = tm_quantity_new (tm_unit_counts (gauge->unit), gauge->unit, 0);
      check->reading = tm_quantity_new (tm_unit_counts (gauge->unit) / 10 * (9 + i), gauge->unit, 1);
      check->by = tm_job_intern (job, "RT");
      check->at = pick_moment (rand, job);
      check->note = pick_text (rand, job);
      g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
      g_assert_cmpint (tm_job_add_check (job, check), ==, TM_ADD_OK);
    }
}

static void
add_random_pins (GRand *rand, TmJob *job, TmGauge *gauge)
{
  gint64 one = tm_unit_counts (gauge->unit);

  for (guint i = 0; i < 2; i++)
    {
      TmPinSize *pin = tm_pin_size_new ();

      pin->gauge = gauge->tag;
      pin->size = tm_quantity_new (gauge->range_from.count + i * gauge->pin_step.count, gauge->unit, 3);
      pin->measured
          = tm_quantity_new (pin->size.count + one / 10000 * g_rand_int_range (rand, -9, 9), gauge->unit, 4);
      g_assert_cmpint (tm_job_add_pin_size (job, pin), ==, TM_ADD_OK);
    }
}

static void
add_random_gauge (GRand *rand, TmJob *job, guint index)
{
  TmGauge *gauge = tm_gauge_new ();
  gint64 one;

  gauge->tag = number_text (job, "G-", index);
  gauge->kind = pick_text (rand, job);
  gauge->unit = g_rand_boolean (rand) ? TM_UNIT_MM : TM_UNIT_IN;
  one = tm_unit_counts (gauge->unit);
  gauge->resolution = maybe (rand, gauge->unit, 1);
  gauge->error_limit = maybe (rand, gauge->unit, 0);
  gauge->calibrated = pick_day (rand, job, 2025);
  gauge->due = g_rand_boolean (rand) ? pick_day (rand, job, 2027) : gauge->due;
  gauge->certificate = pick_text (rand, job);
  gauge->serial = pick_text (rand, job);
  gauge->owner = pick_text (rand, job);
  gauge->place = pick_text (rand, job);
  gauge->feel = maybe (rand, gauge->unit, 0);
  gauge->expansion = maybe (rand, TM_UNIT_HARDNESS, -20);
  gauge->source = pick_text (rand, job);
  gauge->blocks = tm_job_intern (job, g_rand_boolean (rand) ? "1.001-1.009 by 0.001; 25" : "");
  gauge->range_from = tm_quantity_new (one / 2, gauge->unit, 1);
  gauge->range_to = tm_quantity_new (4 * one, gauge->unit, 0);
  gauge->pin_step = tm_quantity_new (one / 1000, gauge->unit, 3);
  gauge->pin_class = pick_class (rand, job);
  gauge->pin_sign = tm_job_intern (job, g_rand_boolean (rand) ? "plus" : "");
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  add_random_history (rand, job, gauge);
  add_random_pins (rand, job, gauge);
}

static void
add_random_method (GRand *rand, TmJob *job, guint index)
{
  static const char *const distributions[] = { "normal", "rectangular", "triangular", "u-shaped", "t" };
  TmMethod *method = tm_method_new ();
  const TmGauge *gauge = g_ptr_array_index (job->gauges, index % job->gauges->len);

  method->name = number_text (job, "method ", index);
  g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
  method->repeatability = maybe (rand, gauge->unit, 0);
  method->repeatability_dof = maybe (rand, TM_UNIT_COUNT, 1);
  method->repeatability_source = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  for (guint i = 0; i < 3; i++)
    {
      TmBudgetLine *line = tm_budget_line_new ();

      line->method = method->name;
      line->kind = (TmLineKind)g_rand_int_range (rand, 0, TM_N_LINE_KINDS);
      line->name = pick_text (rand, job);
      line->value = tm_quantity_new (tm_unit_counts (gauge->unit) / 1000, gauge->unit, 3);
      line->distribution
          = tm_job_intern (job, distributions[g_rand_int_range (rand, 0, G_N_ELEMENTS (distributions))]);
      line->divisor = maybe (rand, TM_UNIT_HARDNESS, 1);
      line->dof = tm_quantity_new (7500000, TM_UNIT_HARDNESS, 1);
      line->source = pick_text (rand, job);
      g_assert_cmpint (tm_job_add_budget_line (job, line), ==, TM_ADD_OK);
    }
}

static void
add_random_study_reading (GRand *rand, TmJob *job, const TmStudy *study, guint cell)
{
  TmStudyReading *reading = tm_study_reading_new ();

  reading->study = study->name;
  reading->piece = g_ptr_array_index (study->pieces, cell % study->pieces->len);
  reading->person = g_ptr_array_index (study->people, 0);
  reading->trial = tm_quantity_new (1 + cell / study->pieces->len % 2, TM_UNIT_COUNT, 0);
  reading->value = pick_quantity (rand, study->unit);
  reading->typed = pick_text (rand, job);
  reading->at = pick_moment (rand, job);
  g_assert_cmpint (tm_job_add_study_reading (job, reading), ==, TM_ADD_OK);
}

static void
add_random_study (GRand *rand, TmJob *job, guint index)
{
  TmStudy *study = tm_study_new ();
  const TmMethod *method = g_ptr_array_index (job->methods, 0);

  study->name = number_text (job, "study ", index);
  study->feature = tm_job_intern (job, g_rand_boolean (rand) ? "3" : "");
  study->method = method->name;
  study->unit = g_rand_boolean (rand) ? TM_UNIT_MM : TM_UNIT_IN;
  for (guint i = 0; i < 4; i++)
    g_ptr_array_add (study->pieces, (gpointer)number_text (job, "p", i));
  g_ptr_array_add (study->people, (gpointer)tm_job_intern (job, "RT"));
  if (g_rand_boolean (rand))
    g_ptr_array_add (study->people, (gpointer)tm_job_intern (job, "a \"b\""));
  study->repeats = tm_quantity_new (g_rand_int_range (rand, 2, 5), TM_UNIT_COUNT, 0);
  study->seed = maybe (rand, TM_UNIT_COUNT, 0);
  study->band = maybe (rand, study->unit, 1);
  study->at = pick_moment (rand, job);
  study->note = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_study (job, study), ==, TM_ADD_OK);
  for (guint i = 0; i < 5; i++)
    add_random_study_reading (rand, job, study, i);
}

static void
add_random_tool (GRand *rand, TmJob *job, guint index)
{
  TmTool *tool = tm_tool_new ();

  tool->name = number_text (job, "bar ", index);
  tool->unit = g_rand_boolean (rand) ? TM_UNIT_MM : TM_UNIT_IN;
  tool->reads = g_rand_boolean (rand) ? TM_READS_RADIUS : TM_READS_DIAMETER;
  tool->graduation = maybe (rand, tool->unit, 1);
  tool->least_cut = maybe (rand, tool->unit, 0);
  tool->backlash = maybe (rand, tool->unit, 0);
  if (g_rand_boolean (rand))
    tool->spring_passes = tm_quantity_new (g_rand_int_range (rand, 0, 6), TM_UNIT_COUNT, 0);
  tool->offset_step = maybe (rand, tool->unit, 1);
  tool->note = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
}

static void
add_random_material (GRand *rand, TmJob *job, guint index)
{
  TmShopMaterial *material = tm_shop_material_new ();

  material->name = number_text (job, "stuff ", index);
  material->modulus = maybe (rand, TM_UNIT_HARDNESS, 1);
  material->poisson = tm_quantity_new (g_rand_int_range (rand, -999999, 500001), TM_UNIT_HARDNESS, 6);
  material->yield = maybe (rand, TM_UNIT_HARDNESS, 1);
  material->expansion = maybe (rand, TM_UNIT_HARDNESS, -20);
  material->cold = maybe (rand, TM_UNIT_HARDNESS, -20);
  material->plastic = g_rand_boolean (rand);
  material->source = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_material (job, material), ==, TM_ADD_OK);
}

static void
set_random_mate (GRand *rand, TmJob *job, TmFeature *feature)
{
  TmMate *mate = &feature->mate;
  TmPress *press = &feature->press;

  mate->given = TRUE;
  mate->kind = feature->kind == TM_KIND_SHAFT ? TM_KIND_BORE : TM_KIND_SHAFT;
  mate->lower = tm_quantity_new (tm_unit_counts (feature->unit), feature->unit, 0);
  mate->wanted_least = maybe (rand, feature->unit, -2000);
  if (g_rand_boolean (rand))
    mate->wanted_most = tm_quantity_new (2000 * tm_unit_counts (feature->unit), feature->unit, 3);
  press->length = maybe (rand, feature->unit, 1);
  press->hub_outside = tm_quantity_new (5000 * tm_unit_counts (feature->unit), feature->unit, 1);
  press->shaft_inside = maybe (rand, feature->unit, 0);
  press->hub_material = tm_job_intern (job, g_rand_boolean (rand) ? "stuff 1" : "");
  press->shaft_material = pick_text (rand, job);
  press->friction_least = maybe (rand, TM_UNIT_HARDNESS, 0);
  press->friction_most = tm_quantity_new (2000000000, TM_UNIT_HARDNESS, 2);
  press->hub_roughness = maybe (rand, tm_kind_unit (TM_KIND_ROUGHNESS, feature->unit), 0);
  press->shaft_roughness = maybe (rand, TM_UNIT_UM, 0);
  press->gap = maybe (rand, feature->unit, 0);
}

static void
add_random_mate_size (GRand *rand, TmJob *job, const TmFeature *feature, guint index)
{
  TmMateSize *mate = tm_mate_size_new ();
  gint64 one = tm_unit_counts (feature->unit);

  mate->feature = feature->balloon;
  mate->serial = number_text (job, "B", index);
  mate->smallest = tm_quantity_new (one * g_rand_int_range (rand, 1, 50), feature->unit, 0);
  if (g_rand_boolean (rand))
    mate->largest = tm_quantity_new (mate->smallest.count + one / 1000, feature->unit, 3);
  mate->uncertainty = maybe (rand, feature->unit, 0);
  mate->piece = tm_job_intern (job, g_rand_boolean (rand) ? "001" : "");
  if (g_rand_boolean (rand))
    mate->place = tm_quantity_new (g_rand_int_range (rand, 1, 5), TM_UNIT_COUNT, 0);
  mate->by = tm_job_intern (job, "RT");
  mate->at = pick_moment (rand, job);
  mate->note = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_mate_size (job, mate), ==, TM_ADD_OK);
}

/* Words of run rules, in any order. */
static const char *
pick_rules (GRand *rand, TmJob *job)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (gint n = g_rand_int_range (rand, 0, 4); n > 0; n--)
    g_string_append_printf (words, "%s%s", words->len > 0 ? " " : "",
                            tm_run_rule_word ((TmRunRule)g_rand_int_range (rand, 0, TM_N_RUN_RULES)));
  return tm_job_intern (job, words->str);
}

static const char *
pick_disposition (GRand *rand, TmJob *job)
{
  static const char *const words[] = { "", "", "hold", "measure", "release", "scrap" };

  return tm_job_intern (job, words[g_rand_int_range (rand, 0, G_N_ELEMENTS (words))]);
}

static void
add_random_event (GRand *rand, TmJob *job)
{
  static const char *const kinds[] = { "", "tool", "offset", "lot", "other" };
  TmEvent *event = tm_event_new ();

  event->before_piece = tm_job_intern (job, g_rand_boolean (rand) ? "001" : "");
  event->kind = tm_job_intern (job, kinds[g_rand_int_range (rand, 0, G_N_ELEMENTS (kinds))]);
  event->note = pick_text (rand, job);
  event->amount = tm_job_intern (job, g_rand_boolean (rand) ? "-0.0100" : "");
  event->feature = tm_job_intern (job, g_rand_boolean (rand) ? "1" : "");
  event->tool = tm_job_intern (job, g_rand_boolean (rand) ? "bar 0" : "");
  event->by = tm_job_intern (job, g_rand_boolean (rand) ? "RT" : "");
  event->at = pick_moment (rand, job);
  tm_job_add_event (job, event);
}

static void
add_random_feature (GRand *rand, TmJob *job, guint index)
{
  static const char *const requirements[]
      = { "Ø25 H7", "1.250 ±.005",   "4X Ø6.5 ±0.1", "⌖ Ø0.2 Ⓜ A B C",  "Ra 1.6", "90° ±0.5°", "M8x1.25 6H",
          "12 max", "flatness 0.05", "40",           "ask the foreman", "20 h6" };
  TmFeature *feature = tm_feature_new ();
  g_autofree char *balloon = g_strdup_printf ("%u", index);

  feature->balloon = tm_job_intern (job, balloon);
  feature->requirement
      = tm_job_intern (job, requirements[g_rand_int_range (rand, 0, G_N_ELEMENTS (requirements))]);
  if (tm_callout_apply (job, feature) == TM_CALLOUT_OK && g_rand_boolean (rand))
    feature->places = (guint)g_rand_int_range (rand, 1, 6);
  if (feature->kind == TM_KIND_DIAMETER)
    feature->kind = g_rand_boolean (rand) ? TM_KIND_BORE : TM_KIND_SHAFT;
  feature->name = pick_text (rand, job);
  feature->zone = pick_text (rand, job);
  feature->tooling = pick_text (rand, job);
  feature->comment = pick_text (rand, job);
  feature->affected = g_rand_boolean (rand);
  feature->envelope = g_rand_boolean (rand);
  feature->group_size = (guint)g_rand_int_range (rand, 0, 6);
  feature->designator = tm_job_intern (job, g_rand_boolean (rand) ? "key" : "");
  feature->cut = (TmCut)g_rand_int_range (rand, 0, 3);
  feature->counts = g_rand_boolean (rand) ? TM_COUNTS_COMBINED : TM_COUNTS_ASSIGNED;
  if (tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH)
    {
      feature->form_unseen = maybe (rand, feature->unit, 0);
      if (g_rand_boolean (rand))
        set_random_mate (rand, job, feature);
    }
  feature->tool = tm_job_intern (job, g_rand_boolean (rand) ? "bar 0" : "");
  feature->chart_rules = pick_rules (rand, job);
  feature->chart_baseline = (guint)g_rand_int_range (rand, 0, 3) * 10;
  if (g_rand_boolean (rand))
    g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (job, "mouth/12"));
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  for (guint i = 0; feature->mate.given && i < 3; i++)
    add_random_mate_size (rand, job, feature, i);
}

static void
add_random_reading (GRand *rand, TmJob *job)
{
  static const TmUnit lengths[]
      = { TM_UNIT_MM, TM_UNIT_IN, TM_UNIT_UM, TM_UNIT_THOU, TM_UNIT_TENTH, TM_UNIT_UIN };
  TmReading *reading = tm_reading_new ();
  TmFeature *feature
      = g_ptr_array_index (job->features, g_rand_int_range (rand, 0, (gint32)job->features->len));
  TmUnit unit = feature->unit;

  reading->row.feature = feature;
  reading->row.piece = g_ptr_array_index (job->pieces, g_rand_int_range (rand, 0, (gint32)job->pieces->len));
  reading->row.reason = pick_text (rand, job);
  reading->row.at = tm_job_intern (job, g_rand_boolean (rand) ? "2026-05-04T09:12:33Z" : "");
  reading->place = (guint)g_rand_int_range (rand, 1, (gint32)feature->places + 1);
  reading->typed = pick_text (rand, job);
  reading->overdue_reason = pick_text (rand, job);
  if (tm_unit_dimension (unit) == TM_DIMENSION_LENGTH)
    unit = lengths[g_rand_int_range (rand, 0, G_N_ELEMENTS (lengths))];
  if (tm_kind_is_attribute (feature->kind))
    reading->outcome = g_rand_boolean (rand) ? TM_OUTCOME_PASS : TM_OUTCOME_FAIL;
  else
    reading->value = pick_quantity (rand, unit);
  if (feature->kind == TM_KIND_POSITION)
    {
      reading->dx = pick_quantity (rand, unit);
      reading->dy = pick_quantity (rand, unit);
    }
  reading->part_temp = g_rand_boolean (rand) ? pick_quantity (rand, TM_UNIT_CELSIUS) : TM_QUANTITY_NONE;
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  if (g_rand_int_range (rand, 0, 5) == 0)
    tm_job_withdraw (job, &reading->row, "RT", "", "not this one");
}

static gboolean
has_size (const TmFeature *feature)
{
  return tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH && !tm_kind_is_attribute (feature->kind);
}

static void
add_random_trial (GRand *rand, TmJob *job)
{
  TmFeature *feature
      = g_ptr_array_index (job->features, g_rand_int_range (rand, 0, (gint32)job->features->len));
  TmPinTrial *trial;

  if (!has_size (feature))
    return;
  trial = tm_pin_trial_new ();
  trial->row.feature = feature;
  trial->row.piece = g_ptr_array_index (job->pieces, 0);
  trial->row.at = pick_moment (rand, job);
  trial->place = (guint)g_rand_int_range (rand, 1, (gint32)feature->places + 1);
  trial->size = pick_quantity (rand, feature->unit);
  trial->measured = g_rand_boolean (rand) ? pick_quantity (rand, TM_UNIT_MM) : TM_QUANTITY_NONE;
  trial->pin_class = pick_class (rand, job);
  trial->sign = g_rand_boolean (rand) ? TM_PIN_PLUS : TM_PIN_MINUS;
  trial->went = g_rand_boolean (rand);
  trial->gauge = tm_job_intern (job, g_rand_boolean (rand) ? "G-1" : "");
  trial->overdue_reason = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  if (g_rand_int_range (rand, 0, 5) == 0)
    tm_job_withdraw (job, &trial->row, "RT", "", "the wrong pin");
}

static const char *
pick_after (GRand *rand, TmJob *job, const TmCutRow *cut)
{
  const GPtrArray *readings = tm_job_readings_at (job, cut->row.piece, cut->row.feature, cut->place);
  const TmReading *reading;

  if (readings == NULL)
    return tm_job_intern (job, g_rand_boolean (rand) ? "none" : "");
  reading = g_ptr_array_index (readings, g_rand_int_range (rand, 0, (gint32)readings->len));
  return reading->row.id;
}

static void
add_random_cut (GRand *rand, TmJob *job)
{
  TmFeature *feature
      = g_ptr_array_index (job->features, g_rand_int_range (rand, 0, (gint32)job->features->len));
  TmCutRow *cut;

  if (!has_size (feature))
    return;
  cut = tm_cut_row_new ();
  cut->row.feature = feature;
  cut->row.piece = g_ptr_array_index (job->pieces, g_rand_int_range (rand, 0, (gint32)job->pieces->len));
  cut->row.at = pick_moment (rand, job);
  cut->row.by = tm_job_intern (job, "RT");
  cut->place = (guint)g_rand_int_range (rand, 1, (gint32)feature->places + 1);
  cut->dialled = pick_quantity (rand, feature->unit);
  cut->reads = g_rand_boolean (rand) ? TM_READS_RADIUS : TM_READS_DIAMETER;
  cut->passes = (guint)g_rand_int_range (rand, 0, 5);
  cut->tool = tm_job_intern (job, g_rand_boolean (rand) ? "bar 1" : "");
  cut->after = pick_after (rand, job, cut);
  cut->note = pick_text (rand, job);
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
  if (g_rand_int_range (rand, 0, 5) == 0)
    tm_job_withdraw (job, &cut->row, "RT", "", "the wrong dial");
}

/* Materials, processes and tests, parts of the assembly, fields of the shop's own. */
static void
add_random_supply (GRand *rand, TmJob *job)
{
  TmSupply *supply = tm_supply_new ();
  TmSubPart *part = tm_sub_part_new ();
  TmReportField *field = tm_report_field_new ();

  supply->kind = (TmSupplyKind)g_rand_int_range (rand, 0, TM_N_SUPPLIES);
  supply->name = pick_text (rand, job);
  supply->specification = pick_text (rand, job);
  supply->code = pick_text (rand, job);
  supply->supplier = pick_text (rand, job);
  supply->approval = (TmApproval)g_rand_int_range (rand, 0, TM_APPROVAL_NOT_ASKED + 1);
  supply->certificate = pick_text (rand, job);
  supply->note = pick_text (rand, job);
  tm_job_add_supply (job, supply);
  part->number = pick_text (rand, job);
  part->name = pick_text (rand, job);
  part->serial = pick_text (rand, job);
  part->report = pick_text (rand, job);
  tm_job_add_sub_part (job, part);
  field->name = pick_text (rand, job);
  field->value = pick_text (rand, job);
  tm_job_add_report_field (job, field);
}

static TmQuantity
pick_share (GRand *rand)
{
  return tm_quantity_new (g_rand_int_range (rand, 0, 1000001), TM_UNIT_HARDNESS, 6);
}

/* A drawing of any bytes, with balloons on it. */
static void
add_random_drawing (GRand *rand, TmJob *job, guint index)
{
  static const char *const media[] = { "image/png", "image/jpeg", "image/svg+xml", "application/pdf" };
  TmDrawing *drawing = tm_drawing_new ();
  guint8 bytes[100];
  gsize length = (gsize)g_rand_int_range (rand, 1, sizeof bytes);
  g_autofree char *digest = NULL;

  for (gsize i = 0; i < length; i++)
    bytes[i] = (guint8)g_rand_int_range (rand, 0, 256);
  drawing->name = number_text (job, "sheet ", index);
  drawing->sheet = pick_text (rand, job);
  drawing->media = tm_job_intern (job, media[g_rand_int_range (rand, 0, G_N_ELEMENTS (media))]);
  drawing->page = (guint)g_rand_int_range (rand, 1, 4);
  drawing->content = g_bytes_new (bytes, length);
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  drawing->digest = tm_job_intern (job, digest);
  g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      TmBalloonMark *mark = tm_balloon_mark_new ();

      mark->drawing = drawing->name;
      mark->feature = feature->balloon;
      mark->place = (guint)g_rand_int_range (rand, 0, (gint32)feature->places + 1);
      mark->x = pick_share (rand);
      mark->y = pick_share (rand);
      if (g_rand_boolean (rand))
        {
          mark->to_x = pick_share (rand);
          mark->to_y = pick_share (rand);
        }
      g_assert_cmpint (tm_job_add_balloon_mark (job, mark), ==, TM_ADD_OK);
    }
}

static void
add_random_nonconformance (GRand *rand, TmJob *job)
{
  static const char *const words[] = { "", "use as is", "rework", "repair", "scrap", "return", "a\nb" };
  const TmReading *reading
      = g_ptr_array_index (job->readings, g_rand_int_range (rand, 0, (gint32)job->readings->len));
  TmNonconformance *row = tm_nonconformance_new ();

  row->piece = tm_job_intern (job, g_rand_boolean (rand) ? reading->row.piece->serial : "");
  row->feature = reading->row.feature->balloon;
  row->place = (guint)g_rand_int_range (rand, 0, (gint32)reading->row.feature->places + 1);
  row->number = pick_text (rand, job);
  row->note = pick_text (rand, job);
  row->disposition = tm_job_intern (job, words[g_rand_int_range (rand, 0, G_N_ELEMENTS (words))]);
  row->by = tm_job_intern (job, "RT");
  row->at = pick_moment (rand, job);
  row->rework_at = pick_moment (rand, job);
  if (*row->rework_at != '\0')
    {
      row->rework_by = tm_job_intern (job, "RT");
      row->rework_after = g_rand_boolean (rand) ? reading->row.id : tm_job_intern (job, "none");
    }
  tm_job_add_nonconformance (job, row);
}

static void
add_random_signature (GRand *rand, TmJob *job)
{
  g_autofree char *digest = g_compute_checksum_for_string (G_CHECKSUM_SHA256, "any", -1);
  TmSignature *signature = tm_signature_new ();

  signature->by = pick_text (rand, job);
  signature->role = pick_text (rand, job);
  signature->at = pick_moment (rand, job);
  signature->digest = tm_job_intern (job, digest);
  signature->report = pick_text (rand, job);
  signature->pages = tm_job_intern (job, g_rand_boolean (rand) ? digest : "");
  signature->workbook = tm_job_intern (job, g_rand_boolean (rand) ? digest : "");
  tm_job_add_signature (job, signature);
}

static void
set_random_report (GRand *rand, TmJob *job)
{
  job->drawing_revision = pick_text (rand, job);
  job->first_article = (TmFirstArticleKind)g_rand_int_range (rand, 0, TM_N_FIRST_ARTICLES);
  job->article = g_rand_boolean (rand) ? TM_ARTICLE_ASSEMBLY : TM_ARTICLE_DETAIL;
  job->report_identifier = tm_job_intern (job, g_rand_boolean (rand) ? "FA-31" : "");
  job->organisation = pick_text (rand, job);
  job->supplier_code = pick_text (rand, job);
  job->manufacturing_record = pick_text (rand, job);
  job->drawing_changes = pick_text (rand, job);
  job->language = tm_job_intern (job, g_rand_boolean (rand) ? "de" : "");
  job->second_language = tm_job_intern (job, g_rand_boolean (rand) ? "pt_BR" : "");
}

static void
set_random_rules (GRand *rand, TmJob *job)
{
  job->part_temp_limit = maybe (rand, TM_UNIT_CELSIUS, 0);
  job->gauge_temp_limit = maybe (rand, TM_UNIT_CELSIUS, 0);
  job->thermometer = maybe (rand, TM_UNIT_CELSIUS, 0);
  job->expansion = maybe (rand, TM_UNIT_HARDNESS, -20);
  job->entry_clearance = maybe (rand, job->unit, 0);
  job->drift_rule = g_rand_boolean (rand) ? TM_DRIFT_ASK : TM_DRIFT_WIDEN;
  job->drift_limit = maybe (rand, TM_UNIT_HARDNESS, 1);
  job->check_hours = maybe (rand, TM_UNIT_HARDNESS, 1);
  if (g_rand_boolean (rand))
    job->cut_risk = tm_quantity_new (g_rand_int_range (rand, 1, 1000000), TM_UNIT_HARDNESS, 6);
  job->cut_aim = g_rand_boolean (rand) ? TM_AIM_PROVEN : TM_AIM_IN;
}

TmJob *
tm_test_random_job (GRand *rand)
{
  TmJob *job = tm_job_new ();

  job->id = tm_job_intern (job, "random");
  job->part_number = tm_job_intern (job, "P");
  job->part_name = pick_text (rand, job);
  job->customer = pick_text (rand, job);
  job->unit = g_rand_boolean (rand) ? TM_UNIT_MM : TM_UNIT_IN;
  job->decision = (TmDecision)g_rand_int_range (rand, 0, 2);
  job->general_tolerance = tm_job_intern (job, g_rand_boolean (rand) ? "ISO 2768-m" : "");
  set_random_rules (rand, job);
  set_random_report (rand, job);
  for (guint i = 0; i < 2; i++)
    add_random_supply (rand, job);
  for (guint i = 0; i < 3; i++)
    add_random_gauge (rand, job, i);
  for (guint i = 0; i < 2; i++)
    add_random_method (rand, job, i);
  for (guint i = 0; i < 2; i++)
    add_random_tool (rand, job, i);
  for (guint i = 0; i < 2; i++)
    add_random_material (rand, job, i);
  for (guint i = 0; i < 8; i++)
    add_random_feature (rand, job, i);
  for (guint i = 0; i < 3; i++)
    {
      TmPiece *piece = tm_piece_new ();
      g_autofree char *serial = g_strdup_printf ("%03u", i);

      piece->serial = tm_job_intern (job, serial);
      piece->disposition = pick_disposition (rand, job);
      piece->disposition_note = pick_text (rand, job);
      g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
    }
  for (guint i = 0; i < 20; i++)
    add_random_reading (rand, job);
  for (guint i = 0; i < 8; i++)
    add_random_trial (rand, job);
  for (guint i = 0; i < 8; i++)
    add_random_cut (rand, job);
  for (guint i = 0; i < 4; i++)
    add_random_event (rand, job);
  for (guint i = 0; i < 2; i++)
    add_random_study (rand, job, i);
  for (guint i = 0; i < 2; i++)
    add_random_drawing (rand, job, i);
  for (guint i = 0; i < 3; i++)
    add_random_nonconformance (rand, job);
  for (guint i = 0; i < 2; i++)
    add_random_signature (rand, job);
  return job;
}
