/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Judgements that rest on more than one method's readings: methods together, and pins.
 */

#include <math.h>
#include <string.h>

#include "core-judge-budget.h"
#include "method-support.h"

/* -------- Methods together -------- */

typedef struct {
  TmJob *job;
  TmFeature *bore;
} Shop;

static Shop
set_up (TmCounts counts)
{
  Shop shop = { make_job (TM_DECISION_GUARDED), NULL };

  add_gauge (shop.job, "G1", NULL, "0.000001");
  add_gauge (shop.job, "G2", NULL, "0.000001");
  add_method (shop.job, "A", "G1", "0.002", "40");
  add_method (shop.job, "B", "G2", "0.004", "40");
  shop.bore = add_feature (shop.job, "1", TM_KIND_BORE, "25.000", "25.021", "A");
  shop.bore->counts = counts;
  return shop;
}

/* Weights 1/u²: 25.010 of u 2 µm and 25.014 of u 4 µm make 25.0108 of u 1.789 µm, by hand; Meier's
 * correction (1953) widens a little. */
static void
test_combined (void)
{
  Shop shop = set_up (TM_COUNTS_COMBINED);
  g_auto (TmJudgement) judgement = { 0 };
  g_autofree char *text = NULL;

  read_size (shop.job, shop.bore, "", "25.010", "A");
  judge_one (shop.job, shop.bore, &judgement);
  g_assert_cmpint (judgement.counted, ==, TM_COUNTED_READINGS);
  assert_near (judgement.u, 2e6, 1e4);
  read_size (shop.job, shop.bore, "", "25.014", "B");
  judge_one (shop.job, shop.bore, &judgement);
  g_assert_cmpint (judgement.counted, ==, TM_COUNTED_COMBINED);
  assert_near ((double)judgement.combined_reference + judgement.combined_size, 25.0108e9, 2);
  g_assert_cmpfloat (judgement.u, >, 1.788e6);
  g_assert_cmpfloat (judgement.u, <, 1.9e6);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
  text = tm_judgement_size_text (&judgement);
  g_assert_cmpstr (text, ==, "25.0108");
  tm_job_free (shop.job);
}

/* The assigned method's alone. */
static void
test_assigned (void)
{
  Shop shop = set_up (TM_COUNTS_ASSIGNED);
  g_auto (TmJudgement) judgement = { 0 };

  read_size (shop.job, shop.bore, "", "25.010", "A");
  read_size (shop.job, shop.bore, "", "25.014", "B");
  judge_one (shop.job, shop.bore, &judgement);
  g_assert_cmpint (judgement.counted, ==, TM_COUNTED_READINGS);
  g_assert_cmpstr (judgement.method_name, ==, "A");
  assert_near (judgement.u, 2e6, 1e4);
  g_assert_true (isnan (judgement.combined_size));
  tm_job_free (shop.job);
}

/* 25.030 of u 4 µm against 25.006 of u 2 µm: 24 / √20 = 5.4. Said whichever value counts. */
static void
test_disagree (void)
{
  for (int counts = TM_COUNTS_ASSIGNED; counts <= TM_COUNTS_COMBINED; counts++)
    {
      Shop shop = set_up ((TmCounts)counts);
      g_auto (TmJudgement) judgement = { 0 };

      read_size (shop.job, shop.bore, "", "25.006", "A");
      read_size (shop.job, shop.bore, "", "25.030", "B");
      judge_one (shop.job, shop.bore, &judgement);
      g_assert_cmpint (judgement.why, ==, TM_WHY_METHODS_DISAGREE);
      g_assert_cmpint (judgement.verdict, ==,
                       counts == TM_COUNTS_COMBINED ? TM_VERDICT_TOO_CLOSE : TM_VERDICT_IN);
      tm_job_free (shop.job);
    }
}

/* Under N:1 a combined size that is too close is so because the methods together are not good enough; a pin
 * that contradicts a good one is another matter. */
static void
test_simple_reasons (void)
{
  Shop poor = set_up (TM_COUNTS_COMBINED), good = set_up (TM_COUNTS_COMBINED);
  g_auto (TmJudgement) judgement = { 0 };

  poor.job->decision = good.job->decision = TM_DECISION_SIMPLE;
  read_size (poor.job, poor.bore, "", "25.010", "A");
  read_size (poor.job, poor.bore, "", "25.012", "B");
  poor.job->simple_ratio = quantity ("6", TM_UNIT_HARDNESS);
  judge_one (poor.job, poor.bore, &judgement);
  g_assert_cmpint (judgement.counted, ==, TM_COUNTED_COMBINED);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judgement.why, ==, TM_WHY_METHOD_NOT_GOOD);
  good.job->simple_ratio = quantity ("2", TM_UNIT_HARDNESS);
  read_size (good.job, good.bore, "", "25.010", "A");
  add_trial (good.job, good.bore, "1.0000", "X", TM_PIN_PLUS, TRUE);
  judge_one (good.job, good.bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judgement.why, ==, TM_WHY_PINS_CONTRADICT);
  tm_job_free (poor.job);
  tm_job_free (good.job);
}

/* The smallest and the largest are those of the combined sizes. */
static void
test_combined_extremes (void)
{
  Shop shop = set_up (TM_COUNTS_COMBINED);
  g_auto (TmJudgement) judgement = { 0 };

  read_size (shop.job, shop.bore, "mouth", "25.010", "A");
  read_size (shop.job, shop.bore, "mouth", "25.005", "B");
  read_size (shop.job, shop.bore, "bottom", "25.0095", "A");
  judge_one (shop.job, shop.bore, &judgement);
  g_assert_cmpuint (judgement.sizes.smallest, ==, 0);
  g_assert_cmpuint (judgement.sizes.largest, ==, 1);
  assert_near (judgement.taper, 25.009e9 - 25.0095e9, 2);
  tm_job_free (shop.job);
}

/* -------- Pins alone -------- */

typedef struct {
  const char *size, *pin_class;
  TmPinSign sign;
  gboolean went;
} Trial;

static TmFeature *
make_bore (TmJob *job, const char *lower, const char *upper)
{
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, NULL, NULL, "");

  bore->unit = TM_UNIT_IN;
  bore->lower = quantity (lower, TM_UNIT_IN);
  bore->upper = quantity (upper, TM_UNIT_IN);
  return bore;
}

/* A band of 0.001 in.  Class X has 0.00004 in total, ZZ 0.0002 in (ASME B89.1.5, as published): X go plus
 * and no-go minus close it; a ZZ minus go pin may be smaller than the lower limit. */
static void
test_pins_alone (void)
{
  static const struct {
    Trial trials[2];
    TmVerdict verdict;
    TmSide side;
    TmWhy why;
    double probability;
  } cases[] = {
    { { { "0.4380", "X", TM_PIN_PLUS, TRUE }, { "0.4389", "X", TM_PIN_MINUS, FALSE } },
      TM_VERDICT_IN,
      TM_SIDE_NONE,
      TM_WHY_NONE,
      1 },
    { { { "0.4380", "ZZ", TM_PIN_MINUS, TRUE }, { "0.4389", "ZZ", TM_PIN_MINUS, FALSE } },
      TM_VERDICT_TOO_CLOSE,
      TM_SIDE_NONE,
      TM_WHY_PINS_OPEN,
      -1 },
    { { { "0.4392", "X", TM_PIN_PLUS, TRUE } }, TM_VERDICT_OUT, TM_SIDE_METAL_GONE, TM_WHY_NONE, 0 },
    { { { "0.4379", "X", TM_PIN_MINUS, FALSE } }, TM_VERDICT_OUT, TM_SIDE_METAL_LEFT, TM_WHY_NONE, 0 },
    { { { "0.4385", "X", TM_PIN_PLUS, TRUE }, { "0.4382", "X", TM_PIN_MINUS, FALSE } },
      TM_VERDICT_TOO_CLOSE,
      TM_SIDE_NONE,
      TM_WHY_PINS_CONTRADICT,
      -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *bore = make_bore (job, "0.4380", "0.4390");
      g_auto (TmJudgement) judgement = { 0 };

      for (guint k = 0; k < 2 && cases[i].trials[k].size; k++)
        add_trial (job, bore, cases[i].trials[k].size, cases[i].trials[k].pin_class, cases[i].trials[k].sign,
                   cases[i].trials[k].went);
      judge_one (job, bore, &judgement);
      g_test_message ("case %u", i);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpint (judgement.side, ==, cases[i].side);
      g_assert_cmpint (judgement.why, ==, cases[i].why);
      g_assert_cmpint (judgement.counted, ==, TM_COUNTED_PINS);
      if (cases[i].probability >= 0)
        assert_near (judgement.probability_in, cases[i].probability, 1e-12);
    }
}

/* Pins take no station: while one that the feature asks for is unread, in is not claimed. */
static void
test_pins_and_stations (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = make_bore (job, "0.4380", "0.4390");
  g_auto (TmJudgement) judgement = { 0 };
  g_autofree char *text = NULL;

  ask_stations (job, bore, "mouth");
  add_trial (job, bore, "0.4382", "X", TM_PIN_PLUS, TRUE);
  add_trial (job, bore, "0.4384", "X", TM_PIN_MINUS, FALSE);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);
  g_assert_cmpint (judgement.why, ==, TM_WHY_STATIONS_MISSING);
  text = tm_judgement_size_text (&judgement);
  g_assert_true (g_str_has_prefix (text, "0.4383"));
}

/* -------- Pins beside readings -------- */

/* A transfer that cannot settle the band; X pins close it, wherever they stand beside the readings. */
static void
test_pins_close (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = make_bore (job, "0.4380", "0.4390");
  g_auto (TmJudgement) before = { 0 }, after = { 0 };
  TmGauge *caliper = add_gauge (job, "IC", NULL, NULL);

  caliper->kind = "inside caliper";
  add_gauge (job, "MIC", "0.0001", "0.001");
  add_method (job, "caliper", "IC,MIC", NULL, NULL);
  bore->counts = TM_COUNTS_COMBINED;
  read_size (job, bore, "", "0.4387", "caliper");
  tm_judge (job, first_piece (job), bore, 1, &before);
  g_assert_cmpint (before.verdict, ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (before.settles, ==, TM_SETTLES_CANNOT);
  g_assert_cmpint (before.why, ==, TM_WHY_ASSUMED);
  add_trial (job, bore, "0.4381", "X", TM_PIN_PLUS, TRUE);
  add_trial (job, bore, "0.4387", "X", TM_PIN_MINUS, FALSE);
  tm_judge (job, first_piece (job), bore, 1, &after);
  g_assert_cmpint (after.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (after.counted, ==, TM_COUNTED_COMBINED);
  g_assert_true (after.pins_joined);
  g_assert_cmpfloat (after.u, <, before.u / 3);
  g_assert_cmpfloat (after.probability_in, >, 0.999);
}

/* ZZ minus pins leave the band open below; with a good reading the chance still decides. */
static void
test_pins_by_chance (void)
{
  static const struct {
    const char *value;
    TmVerdict verdict;
  } cases[] = { { "0.43850", TM_VERDICT_IN }, { "0.43803", TM_VERDICT_TOO_CLOSE } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *bore = make_bore (job, "0.4380", "0.4390");
      g_auto (TmJudgement) judgement = { 0 };

      add_gauge (job, "BG", NULL, "0.003");
      bore->counts = TM_COUNTS_COMBINED;
      bore->form_unseen = quantity ("0", TM_UNIT_IN);
      read_size (job, bore, "", cases[i].value, "BG");
      add_trial (job, bore, "0.4379", "ZZ", TM_PIN_MINUS, TRUE);
      judge_one (job, bore, &judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpfloat (judgement.probability_in, >=, cases[i].verdict == TM_VERDICT_IN ? 0.95 : 0.05);
    }
}

/* A method in whose uncertainty the whole band is lost proves nothing, neither in nor out: here the chance
 * of in is a fiftieth, that of out on either side no more than a half. */
static void
test_pins_and_lost_band (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = make_bore (job, "0.43800", "0.43805");
  g_auto (TmJudgement) judgement = { 0 };
  TmGauge *caliper = add_gauge (job, "IC", NULL, NULL);

  caliper->kind = "inside caliper";
  add_gauge (job, "MIC", "0.0001", "0.001");
  add_method (job, "caliper", "IC,MIC", NULL, NULL);
  bore->counts = TM_COUNTS_COMBINED;
  bore->form_unseen = quantity ("0", TM_UNIT_IN);
  read_size (job, bore, "", "0.4380", "caliper");
  add_trial (job, bore, "0.4340", "X", TM_PIN_PLUS, TRUE);
  judge_one (job, bore, &judgement);
  g_assert_cmpfloat (judgement.probability_in, <, 0.05);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judgement.side, ==, TM_SIDE_NONE);
}

/* A station that its readings prove out stays out: a no-go pin is stopped by the narrowest place. */
static void
test_pins_and_bell_mouth (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = make_bore (job, "0.4380", "0.4390");
  g_auto (TmJudgement) judgement = { 0 };

  add_gauge (job, "BG", NULL, "0.001");
  bore->counts = TM_COUNTS_COMBINED;
  read_size (job, bore, "mouth", "0.43950", "BG");
  read_size (job, bore, "bottom", "0.43850", "BG");
  add_trial (job, bore, "0.4382", "X", TM_PIN_PLUS, TRUE);
  add_trial (job, bore, "0.4388", "X", TM_PIN_MINUS, FALSE);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (judgement.side, ==, TM_SIDE_METAL_GONE);
}

/* Where the assigned method counts its readings decide; pins that cannot be true beside them are said. */
static void
test_pins_beside_assigned (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = make_bore (job, "0.4380", "0.4390");
  g_auto (TmJudgement) judgement = { 0 };

  add_gauge (job, "BG", NULL, "0.001");
  read_size (job, bore, "", "0.43850", "BG");
  add_trial (job, bore, "0.4383", "X", TM_PIN_PLUS, TRUE);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_NONE);
  g_assert_cmpint (judgement.counted, ==, TM_COUNTED_READINGS);
  add_trial (job, bore, "0.4392", "X", TM_PIN_PLUS, TRUE);
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (judgement.why, ==, TM_WHY_PINS_CONTRADICT);
  bore->counts = TM_COUNTS_COMBINED;
  judge_one (job, bore, &judgement);
  g_assert_cmpint (judgement.verdict, ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judgement.why, ==, TM_WHY_PINS_CONTRADICT);
}

/* The lines told are those that were judged by. */
static void
test_lines (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmComponent lines[TM_METHOD_MAX_LINES];
  TmFeature *bore;
  guint n;

  add_gauge (job, "G1", "0.001", "0.002");
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
  judge_one (job, bore, &judgement);
  g_assert_cmpuint (tm_judgement_lines (job, &judgement, lines), ==, 0);
  read_size (job, bore, "", "25.010", "");
  read_size (job, bore, "", "25.012", "");
  judge_one (job, bore, &judgement);
  n = tm_judgement_lines (job, &judgement, lines);
  g_assert_cmpuint (n, ==, 3);
  assert_near (tm_uncertainty_combine (lines, n, 0.95).u, judgement.u, 1e-6);
  assert_near (tm_component_share (&lines[2]), 1e6, 1e-3);
  g_assert_cmpstr (lines[2].source, ==, "these readings alone");
}

/* -------- Anything at all -------- */

static gint64
pick (GRand *rand)
{
  static const gint64 values[] = { 0,           1,           -1,           1000000,      25000000000,
                                   25010000000, 25021000000, -25000000000, TM_COUNT_MAX, -TM_COUNT_MAX };

  return values[g_rand_int_range (rand, 0, G_N_ELEMENTS (values))];
}

static TmQuantity
pick_quantity (GRand *rand, TmUnit unit)
{
  return g_rand_boolean (rand) ? tm_quantity_new (pick (rand), unit, 3) : TM_QUANTITY_NONE;
}

static void
add_hostile_rows (TmJob *job, TmFeature *bore, GRand *rand)
{
  static const char *const methods[] = { "A", "B", "G1", "nobody" }, *const stations[]
                                                                     = { "", "mouth", "bottom/3" };
  static const char *const classes[] = { "X", "ZZ", "none" };

  for (guint i = 0; i < 6; i++)
    {
      TmReading *reading = new_reading (job, bore, stations[g_rand_int_range (rand, 0, 3)],
                                        methods[g_rand_int_range (rand, 0, 4)]);
      TmPinTrial *trial;

      reading->value = tm_quantity_new (pick (rand), TM_UNIT_MM, 3);
      reading->part_temp = pick_quantity (rand, TM_UNIT_CELSIUS);
      reading->gauge_temp = pick_quantity (rand, TM_UNIT_CELSIUS);
      reading->row.at = g_rand_boolean (rand) ? "2026-05-04T09:12:33Z" : "";
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
      trial = add_trial (job, bore, "0.5", classes[g_rand_int_range (rand, 0, 3)],
                         g_rand_boolean (rand) ? TM_PIN_PLUS : TM_PIN_MINUS, g_rand_boolean (rand));
      trial->size.count = pick (rand);
      trial->measured = pick_quantity (rand, TM_UNIT_MM);
    }
}

static TmFeature *
make_hostile (TmJob *job, GRand *rand)
{
  TmGauge *gauges[] = { add_gauge (job, "G1", "0.001", NULL), add_gauge (job, "G2", NULL, "0.001") };
  TmFeature *bore;

  gauges[0]->kind = "telescoping gauge";
  for (guint i = 0; i < 2; i++)
    {
      TmCalibration *calibration = add_calibration (job, gauges[i]->tag, "2026-01-01", NULL, NULL);
      TmCheck *check = add_check (job, gauges[i]->tag, "2026-05-04T08:00:00Z", "1", "1");

      gauges[i]->error_limit = pick_quantity (rand, TM_UNIT_MM);
      gauges[i]->feel = pick_quantity (rand, TM_UNIT_MM);
      gauges[i]->expansion = pick_quantity (rand, TM_UNIT_HARDNESS);
      calibration->uncertainty = pick_quantity (rand, TM_UNIT_MM);
      calibration->coverage = pick_quantity (rand, TM_UNIT_HARDNESS);
      calibration->error = pick_quantity (rand, TM_UNIT_MM);
      check->reading.count = pick (rand);
    }
  add_method (job, "A", "G1,G2", "1", "1")->repeatability.count = pick (rand);
  add_method (job, "B", "G2", NULL, NULL);
  add_budget_line (job, "B", TM_LINE_OTHER, "x", "1", "t")->value.count = pick (rand);
  job->part_temp_limit = pick_quantity (rand, TM_UNIT_CELSIUS);
  job->thermometer = pick_quantity (rand, TM_UNIT_CELSIUS);
  job->expansion = pick_quantity (rand, TM_UNIT_HARDNESS);
  job->check_hours = pick_quantity (rand, TM_UNIT_HARDNESS);
  job->drift_rule = g_rand_boolean (rand) ? TM_DRIFT_ASK : TM_DRIFT_WIDEN;
  bore = add_feature (job, "1", TM_KIND_BORE, NULL, NULL, "A");
  bore->lower = pick_quantity (rand, TM_UNIT_MM);
  bore->upper = pick_quantity (rand, TM_UNIT_MM);
  bore->counts = g_rand_boolean (rand) ? TM_COUNTS_COMBINED : TM_COUNTS_ASSIGNED;
  bore->form_unseen = pick_quantity (rand, TM_UNIT_MM);
  add_hostile_rows (job, bore, rand);
  return bore;
}

/* The ends of what is counted, in every place: no crash, no overflow (under the sanitizers), a probability
 * that is one or none. */
static void
test_hostile (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261125);

  for (guint i = 0; i < 4000; i++)
    {
      g_autoptr (TmJob) job = make_job (i % 2 ? TM_DECISION_SIMPLE : TM_DECISION_GUARDED);
      TmFeature *bore = make_hostile (job, rand);
      const TmJudgeOptions options = { "G2", "2026-01-01", pick (rand) };
      g_auto (TmJudgement) judgement = { 0 };
      g_autofree char *text = NULL, *spread = NULL;
      TmComponent lines[TM_METHOD_MAX_LINES];

      tm_judge_with (job, first_piece (job), bore, 1, i % 3 ? &options : NULL, &judgement);
      tm_judgement_lines (job, &judgement, lines);
      text = tm_judgement_size_text (&judgement);
      spread = tm_judgement_spread_text (&judgement, judgement.expanded);
      g_assert_true (isnan (judgement.probability_in)
                     || (judgement.probability_in >= 0 && judgement.probability_in <= 1));
      g_assert_false (judgement.verdict == TM_VERDICT_NOT_MEASURED && judgement.why == TM_WHY_NONE);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/judge-together/combined", test_combined);
  g_test_add_func ("/core/judge-together/assigned", test_assigned);
  g_test_add_func ("/core/judge-together/disagree", test_disagree);
  g_test_add_func ("/core/judge-together/simple-reasons", test_simple_reasons);
  g_test_add_func ("/core/judge-together/combined-extremes", test_combined_extremes);
  g_test_add_func ("/core/judge-together/pins-alone", test_pins_alone);
  g_test_add_func ("/core/judge-together/pins-and-stations", test_pins_and_stations);
  g_test_add_func ("/core/judge-together/pins-close", test_pins_close);
  g_test_add_func ("/core/judge-together/pins-by-chance", test_pins_by_chance);
  g_test_add_func ("/core/judge-together/pins-and-lost-band", test_pins_and_lost_band);
  g_test_add_func ("/core/judge-together/pins-and-bell-mouth", test_pins_and_bell_mouth);
  g_test_add_func ("/core/judge-together/pins-beside-assigned", test_pins_beside_assigned);
  g_test_add_func ("/core/judge-together/lines", test_lines);
  g_test_add_func ("/core/judge-together/hostile", test_hostile);
  return g_test_run ();
}
