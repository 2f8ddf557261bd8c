/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <math.h>
#include <string.h>

#include "judge-support.h"

/* J8: bore 25.000…25.021 (H7), u 1 µm: acceptance 25.00165…25.01935 under the guarded rule. Inputs and
 * answers recomputed; the 1.65 factor is ISO 14253-1:2017. */
static void
test_j8_guarded (void)
{
  static const struct {
    const char *value;
    TmVerdict verdict;
    TmSide side;
    double probability;
  } cases[] = {
    { "25.0195", TM_VERDICT_TOO_CLOSE, TM_SIDE_NONE, 0.93319 },
    { "25.0230", TM_VERDICT_OUT, TM_SIDE_METAL_GONE, 0.02275 },
    { "25.0193", TM_VERDICT_IN, TM_SIDE_NONE, 0.95543 },
    { "25.0017", TM_VERDICT_IN, TM_SIDE_NONE, 0.95543 },
    { "24.9980", TM_VERDICT_OUT, TM_SIDE_METAL_LEFT, 0.02275 },
    { "24.9990", TM_VERDICT_TOO_CLOSE, TM_SIDE_NONE, 0.15866 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore;

      add_one_micron (job);
      bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
      read_size (job, bore, "", cases[i].value, "");
      tm_judge (job, first_piece (job), bore, 1, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpint (judgement.side, ==, cases[i].side);
      assert_near (judgement.probability_in, cases[i].probability, 1e-5);
      g_assert_cmpint (judgement.settles, ==, TM_SETTLES);
    }
}

/* The same bore under the simple rule: 21 µm against 4 · 2U = 15.7 µm: good enough; at the limit is in. */
static void
test_j8_simple (void)
{
  static const struct {
    const char *value;
    TmVerdict verdict;
    TmSide side;
  } cases[] = {
    { "25.0195", TM_VERDICT_IN, TM_SIDE_NONE },
    { "25.021", TM_VERDICT_IN, TM_SIDE_NONE },
    { "25.021000001", TM_VERDICT_OUT, TM_SIDE_METAL_GONE },
    { "25.000", TM_VERDICT_IN, TM_SIDE_NONE },
    { "24.999999999", TM_VERDICT_OUT, TM_SIDE_METAL_LEFT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore;

      add_one_micron (job);
      bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
      read_size (job, bore, "", cases[i].value, "");
      judge_one (job, bore, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpint (judgement.side, ==, cases[i].side);
      g_assert_cmpint (judgement.guard, ==, 0);
      g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
    }
}

/* Without the gauge's limit of error the uncertainty is too good to be true, and the judgement says
 * so; the verdict stands on what is known. */
static void
test_no_error_limit (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;

  add_gauge (job, "G2", "0.001", NULL);
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G2");
  read_size (job, bore, "", "25.010", "");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NO_ERROR_LIMIT);
  tm_job_find_gauge (job, "G2")->error_limit = quantity ("0.002", TM_UNIT_MM);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
}

/* N is the shop's: at 6:1 the same method is not good enough. */
static void
test_simple_not_good (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;

  add_one_micron (job);
  job->simple_ratio = quantity ("6", TM_UNIT_HARDNESS);
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
  read_size (job, bore, "", "25.010", "");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judgement.why, ==, TM_WHY_METHOD_NOT_GOOD);
  g_assert_cmpint (judgement.settles, ==, TM_SETTLES_CANNOT);
}

/* Limits are absolute (Y14.5 as quoted; file of drawing rules): 14.004 against 14.00, 35.11 against
 * 35.0 ± 0.1, 0.50004 against 0.5000 are out; the printed size shows it. */
static void
test_absolute_limits (void)
{
  static const struct {
    const char *lower, *upper, *value;
    TmVerdict verdict;
    const char *text;
  } cases[] = {
    { NULL, "14.00", "14.004", TM_VERDICT_OUT, "14.004" },
    { "34.9", "35.1", "35.11", TM_VERDICT_OUT, "35.11" },
    { NULL, "0.5000", "0.50004", TM_VERDICT_OUT, "0.50004" },
    { NULL, "0.5000", "0.50005", TM_VERDICT_OUT, "0.50005" },
    { NULL, "0.5000", "0.5", TM_VERDICT_IN, "0.5" },
    { "12.2", "12.4", "12.2000", TM_VERDICT_IN, "12.2000" },
  };

  for (int decision = TM_DECISION_GUARDED; decision <= TM_DECISION_SIMPLE; decision++)
    for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
      {
        g_autoptr (TmJob) job = make_job ((TmDecision)decision);
        g_auto (TmJudgement) judgement = { 0 };
        TmFeature *length = add_feature (job, "1", TM_KIND_LENGTH, cases[i].lower, cases[i].upper, "");
        g_autofree char *text = NULL;

        read_size (job, length, "", cases[i].value, "somebody's own");
        judge_one (job, length, &judgement);
        text = tm_judgement_size_text (&judgement);
        g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
        g_assert_cmpint (judgement.why, ==, TM_WHY_NO_METHOD);
        g_assert_cmpstr (text, ==, cases[i].text);
        g_assert_cmpint (judgement.settles, ==, TM_SETTLES_UNKNOWN);
        g_assert_true (isnan (judgement.u) && isnan (judgement.expanded) && isnan (judgement.probability_in));
        g_assert_cmpstr (judgement.method_name, ==, "somebody's own");
        g_assert_cmpint (judgement.side, ==, TM_SIDE_NONE);
      }
}

/* A bore grows, a shaft shrinks, a depth grows; a length only when somebody said so. */
static void
test_side (void)
{
  static const struct {
    TmKind kind;
    TmCut cut;
    const char *value;
    TmSide side;
  } cases[] = {
    { TM_KIND_BORE, TM_CUT_UNKNOWN, "9.9", TM_SIDE_METAL_LEFT },
    { TM_KIND_BORE, TM_CUT_UNKNOWN, "10.3", TM_SIDE_METAL_GONE },
    { TM_KIND_SHAFT, TM_CUT_UNKNOWN, "9.9", TM_SIDE_METAL_GONE },
    { TM_KIND_SHAFT, TM_CUT_UNKNOWN, "10.3", TM_SIDE_METAL_LEFT },
    { TM_KIND_DEPTH, TM_CUT_UNKNOWN, "9.9", TM_SIDE_METAL_LEFT },
    { TM_KIND_LENGTH, TM_CUT_UNKNOWN, "9.9", TM_SIDE_NONE },
    { TM_KIND_LENGTH, TM_CUT_SHRINKS, "9.9", TM_SIDE_METAL_GONE },
    { TM_KIND_LENGTH, TM_CUT_GROWS, "9.9", TM_SIDE_METAL_LEFT },
    { TM_KIND_DIAMETER, TM_CUT_UNKNOWN, "10.3", TM_SIDE_NONE },
    { TM_KIND_DIAMETER, TM_CUT_GROWS, "10.3", TM_SIDE_METAL_GONE },
    { TM_KIND_ROUGHNESS, TM_CUT_UNKNOWN, "10.3", TM_SIDE_NONE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *feature = add_feature (job, "1", cases[i].kind, "10.0", "10.2", "");

      feature->cut = cases[i].cut;
      read_size (job, feature, "", cases[i].value, "");
      judge_one (job, feature, &judgement);
      g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_OUT);
      g_assert_cmpint (judgement.side, ==, cases[i].side);
    }
}

/* Both the smallest and the largest must conform; the worst station decides, metal gone before metal
 * left. */
static void
test_deciding_station (void)
{
  static const struct {
    const char *first, *second, *third;
    TmVerdict verdict;
    guint deciding;
    TmSide side;
  } cases[] = {
    { "25.010", "25.012", "25.009", TM_VERDICT_IN, 1, TM_SIDE_NONE },
    { "25.010", "25.012", "25.008", TM_VERDICT_IN, 2, TM_SIDE_NONE },
    { "25.010", "25.0200", "25.004", TM_VERDICT_TOO_CLOSE, 1, TM_SIDE_NONE },
    { "25.0005", "25.0200", "25.030", TM_VERDICT_OUT, 2, TM_SIDE_METAL_GONE },
    { "24.990", "25.0200", "25.023", TM_VERDICT_OUT, 2, TM_SIDE_METAL_GONE },
    { "24.990", "24.980", "25.010", TM_VERDICT_OUT, 1, TM_SIDE_METAL_LEFT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore;

      add_one_micron (job);
      bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
      read_size (job, bore, "mouth/12", cases[i].first, "");
      read_size (job, bore, "middle/12", cases[i].second, "");
      read_size (job, bore, "bottom/12", cases[i].third, "");
      judge_one (job, bore, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpuint (judgement.deciding, ==, cases[i].deciding);
      g_assert_cmpint (judgement.side, ==, cases[i].side);
      g_assert_true (judgement.has_taper && !judgement.has_out_of_round);
    }
}

/* "In" is not claimed while a station is unread; out and too close stand. */
static void
test_stations_missing (void)
{
  static const struct {
    const char *value;
    TmVerdict verdict;
    TmWhy why;
  } cases[] = {
    { "25.010", TM_VERDICT_NOT_MEASURED, TM_WHY_STATIONS_MISSING },
    { "25.020", TM_VERDICT_TOO_CLOSE, TM_WHY_STATIONS_MISSING },
    { "25.040", TM_VERDICT_OUT, TM_WHY_STATIONS_MISSING },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore;

      add_one_micron (job);
      bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
      ask_stations (job, bore, "mouth/12 bottom/12");
      judge_one (job, bore, &judgement);
      g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);
      g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
      read_size (job, bore, "mouth/12", cases[i].value, "");
      judge_one (job, bore, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpint (judgement.why, ==, cases[i].why);
      read_size (job, bore, "bottom/12", "25.010", "");
      judge_one (job, bore, &judgement);
      g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
      g_assert_cmpint (judgement.verdict == TM_VERDICT_NOT_MEASURED, ==, FALSE);
    }
}

/* Pass/fail: as entered. A note that nobody checked is not measured. */
static void
test_outcomes (void)
{
  static const TmKind kinds[] = { TM_KIND_THREAD, TM_KIND_ATTRIBUTE, TM_KIND_NOTE };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *feature = add_feature (job, "1", kinds[i], NULL, NULL, "");
      g_autofree char *pass = NULL, *fail = NULL, *none = NULL;

      judge_one (job, feature, &judgement);
      none = tm_judgement_size_text (&judgement);
      g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);
      g_assert_cmpstr (none, ==, "");
      read_outcome (job, feature, TM_OUTCOME_FAIL);
      judge_one (job, feature, &judgement);
      fail = tm_judgement_size_text (&judgement);
      g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_OUT);
      g_assert_cmpstr (fail, ==, "fail");
      read_outcome (job, feature, TM_OUTCOME_PASS);
      judge_one (job, feature, &judgement);
      pass = tm_judgement_size_text (&judgement);
      g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
      g_assert_cmpstr (pass, ==, "pass");
      g_assert_true (isnan (judgement.probability_in));
    }
}

static void
test_no_limits (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *length = add_feature (job, "1", TM_KIND_LENGTH, NULL, NULL, "");
  g_autofree char *text = NULL;

  read_size (job, length, "", "12.3", "");
  judge_one (job, length, &judgement);
  text = tm_judgement_size_text (&judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NO_LIMITS);
  g_assert_cmpstr (text, ==, "12.3");
}

/* Under ten degrees of freedom the judgement says so, and k is t's (t table: 4 → 2.7764). */
static void
test_few_readings (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;

  add_method (job, "studied", "", "0.001", "4");
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "studied");
  read_size (job, bore, "", "25.010", "");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_FEW_READINGS);
  assert_near (judgement.coverage, 2.7764, 5e-5);
  assert_near (judgement.dof, 4, 1e-9);
  g_assert_cmpstr (judgement.method->name, ==, "studied");
  g_assert_null (judgement.gauge);
}

/* Two readings that happen to agree make a scatter of nearly nothing, and by Welch-Satterthwaite degrees of
 * freedom without number: the judgement still says how little it rests on. */
static void
test_few_that_agree (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;

  add_gauge (job, "MIC", "0.001", "0.002");
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "MIC");
  read_size (job, bore, "", "25.010", "");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
  read_size (job, bore, "", "25.0101", "");
  judge_one (job, bore, &judgement);
  g_assert_cmpfloat (judgement.dof, >, 1000);
  g_assert_cmpint (judgement.why, ==, TM_WHY_FEW_READINGS);
  for (guint i = 0; i < 9; i++)
    read_size (job, bore, "", "25.0101", "");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
}

/* P(all in) of two stations lies between that of independent sizes and that of the worse one. */
static void
test_probability_over_stations (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) one = { 0 }, two = { 0 };
  TmFeature *bore;
  double alone;

  add_gauge (job, "MIC", NULL, "0.002");
  add_method (job, "M", "MIC", "0.001", NULL);
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "M");
  read_size (job, bore, "mouth", "25.020", "");
  judge_one (job, bore, &one);
  read_size (job, bore, "bottom", "25.020", "");
  judge_one (job, bore, &two);
  alone = one.probability_in;
  /* u² = 4/3 + 1 µm²: one µm from the limit is 0.6547 u; Φ = 0.74364 (recomputed). */
  assert_near (alone, 0.74364, 1e-4);
  g_assert_cmpfloat (two.probability_in, <, alone - 0.05);
  g_assert_cmpfloat (two.probability_in, >, alone * alone + 0.02);
}

/* -------- Places, plan and outlook -------- */

/* The worst over the places: out, then too close, then not measured, then in. */
static void
test_places (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  const char *values[] = { "25.010", "25.011", "25.030" };
  const TmVerdict worst[] = { TM_VERDICT_NOT_MEASURED, TM_VERDICT_NOT_MEASURED, TM_VERDICT_OUT };
  guint measured;

  bore->places = 3;
  for (guint i = 0; i < 3; i++)
    {
      TmReading *reading = new_reading (job, bore, "", "");

      reading->place = i + 1;
      reading->value = quantity (values[i], TM_UNIT_MM);
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
      g_assert_cmpint (tm_judge_feature (job, first_piece (job), bore, &measured), ==, worst[i]);
      g_assert_cmpuint (measured, ==, i + 1);
    }
}

static void
test_due (void)
{
  static const struct {
    const char *check;
    gboolean marked;
    guint index;
    gboolean due;
  } cases[] = {
    { "", FALSE, 7, TRUE },
    { "each", FALSE, 7, TRUE },
    { "first", FALSE, 0, TRUE },
    { "first", FALSE, 1, FALSE },
    { "first", TRUE, 1, TRUE },
    { "every 5", FALSE, 0, TRUE },
    { "every 5", FALSE, 4, FALSE },
    { "every 5", FALSE, 5, TRUE },
    { "every 1", FALSE, 3, TRUE },
    { "every 0", FALSE, 3, TRUE },
    { "every x", FALSE, 3, TRUE },
    { "every -2", FALSE, 3, TRUE },
    { "every 99999999999999999999", FALSE, 3, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
      TmPiece *piece = first_piece (job);

      feature->check = cases[i].check;
      piece->first_article = cases[i].marked;
      g_assert_cmpint (tm_job_feature_is_due (job, feature, piece, cases[i].index), ==, cases[i].due);
    }
}

/* The first piece stands in only while none is marked. */
static void
test_due_first_article_elsewhere (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  TmPiece *second = tm_piece_new ();

  feature->check = "first";
  second->serial = "002";
  g_assert_cmpint (tm_job_add_piece (job, second), ==, TM_ADD_OK);
  g_assert_true (tm_job_feature_is_due (job, feature, first_piece (job), 0));
  second->first_article = TRUE;
  g_assert_false (tm_job_feature_is_due (job, feature, first_piece (job), 0));
  g_assert_true (tm_job_feature_is_due (job, feature, second, 1));
}

/* What one more reading would be worth is what it is worth once read. */
static void
test_outlook (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;
  TmOutlook outlook;

  add_gauge (job, "MIC", "0.001", "0.002");
  add_method (job, "M", "MIC", "0.001", "12");
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "M");
  g_assert_false (tm_judge_outlook (job, bore, "nobody", &outlook));
  g_assert_true (tm_judge_outlook (job, bore, "M", &outlook));
  read_size (job, bore, "", "25.010", "");
  judge_one (job, bore, &judgement);
  assert_near (outlook.u, judgement.u, 1e-6);
  assert_near (outlook.dof, judgement.dof, 1e-9);
  assert_near (outlook.expanded, judgement.expanded, 1e-6);
  g_assert_cmpint (outlook.guard, ==, judgement.guard);
  g_assert_cmpint (outlook.settles, ==, judgement.settles);
  assert_near (outlook.blind_share, 1.0 / 21, 1e-12);
}

/* -------- Hostile numbers -------- */

static const gint64 extremes[] = { 0, 1, -1, 21000000, TM_COUNT_MAX, -TM_COUNT_MAX };

static gint64
pick (GRand *rand)
{
  return extremes[g_rand_int_range (rand, 0, G_N_ELEMENTS (extremes))];
}

static void
fill_hostile (TmJob *job, TmFeature *feature, GRand *rand)
{
  static const char *const stations[] = { "", "mouth/12", "mouth/3", "bottom", "5", "nonsense" };

  for (guint i = 0; i < 4; i++)
    {
      TmReading *reading = new_reading (job, feature, stations[g_rand_int_range (rand, 0, 6)], "");

      if (g_rand_boolean (rand))
        reading->value = tm_quantity_new (pick (rand), TM_UNIT_MM, 3);
      if (g_rand_boolean (rand))
        reading->dx = tm_quantity_new (pick (rand), TM_UNIT_MM, 12);
      if (g_rand_boolean (rand))
        reading->dy = tm_quantity_new (pick (rand), TM_UNIT_MM, 0);
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
}

static TmFeature *
make_hostile (TmJob *job, GRand *rand)
{
  TmGauge *gauge = add_gauge (job, "G", "1", "1");
  TmMethod *method = add_method (job, "M", "G", "1", "1");
  TmFeature *size = add_feature (job, "1", TM_KIND_BORE, NULL, NULL, "M");
  TmFeature *feature
      = add_feature (job, "2", (TmKind)g_rand_int_range (rand, 0, TM_N_KINDS), NULL, NULL, "M");

  gauge->resolution.count = pick (rand);
  gauge->error_limit.count = pick (rand);
  method->repeatability.count = pick (rand);
  method->repeatability_dof.count = pick (rand);
  size->lower = feature->lower = tm_quantity_new (pick (rand), TM_UNIT_MM, 3);
  size->upper = feature->upper = tm_quantity_new (pick (rand), TM_UNIT_MM, 3);
  feature->lower.given = g_rand_boolean (rand);
  feature->modifier = (TmModifier)g_rand_int_range (rand, 0, 3);
  feature->size_feature = "1";
  fill_hostile (job, size, rand);
  fill_hostile (job, feature, rand);
  return feature;
}

/* Limits, gauges and readings at the ends of what is counted, and crossed: no crash, no overflow (under
 * the sanitizers), a probability that is one or none, and a printed size that is a number. */
static void
test_hostile (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260504);

  for (guint i = 0; i < 20000; i++)
    {
      g_autoptr (TmJob) job = make_job (i % 2 ? TM_DECISION_SIMPLE : TM_DECISION_GUARDED);
      TmFeature *feature = make_hostile (job, rand);
      g_auto (TmJudgement) judgement = { 0 };
      g_autofree char *text = NULL, *spread = NULL;
      TmOutlook outlook;

      tm_judge (job, first_piece (job), feature, 1, &judgement);
      tm_judge_outlook (job, feature, "M", &outlook);
      text = tm_judgement_size_text (&judgement);
      spread = tm_judgement_spread_text (&judgement, judgement.expanded);
      g_assert_true (isnan (judgement.probability_in)
                     || (judgement.probability_in >= 0 && judgement.probability_in <= 1));
      if (judgement.sizes.n_stations > 0 && !tm_kind_is_attribute (feature->kind))
        g_assert_true (g_ascii_isdigit (text[strlen (text) - 1]));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/judge/j8-guarded", test_j8_guarded);
  g_test_add_func ("/core/judge/j8-simple", test_j8_simple);
  g_test_add_func ("/core/judge/simple-not-good", test_simple_not_good);
  g_test_add_func ("/judge/no-error-limit", test_no_error_limit);
  g_test_add_func ("/core/judge/absolute-limits", test_absolute_limits);
  g_test_add_func ("/core/judge/side", test_side);
  g_test_add_func ("/core/judge/deciding-station", test_deciding_station);
  g_test_add_func ("/core/judge/stations-missing", test_stations_missing);
  g_test_add_func ("/core/judge/outcomes", test_outcomes);
  g_test_add_func ("/core/judge/no-limits", test_no_limits);
  g_test_add_func ("/core/judge/few-readings", test_few_readings);
  g_test_add_func ("/core/judge/few-that-agree", test_few_that_agree);
  g_test_add_func ("/core/judge/probability-over-stations", test_probability_over_stations);
  g_test_add_func ("/core/judge/places", test_places);
  g_test_add_func ("/core/judge/due", test_due);
  g_test_add_func ("/core/judge/due-first-article-elsewhere", test_due_first_article_elsewhere);
  g_test_add_func ("/core/judge/outlook", test_outlook);
  g_test_add_func ("/core/judge/hostile", test_hostile);
  return g_test_run ();
}