/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Correction to 20 °C (ISO 1; NIST engineering metrology toolbox), and expansion by handbooks.
 */

#include <math.h>

#include "core-correction.h"
#include "core-temperature.h"
#include "method-support.h"

/* 72 typed for degrees Fahrenheit is no temperature that a length is taken at. */
static void
test_may_be (void)
{
  static const struct {
    const char *text;
    gboolean may_be;
  } cases[] = { { "-20", TRUE },   { "20", TRUE },  { "60", TRUE },
                { "60.1", FALSE }, { "72", FALSE }, { "-21", FALSE } };
  const TmQuantity none = TM_QUANTITY_NONE;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmQuantity temperature = quantity (cases[i].text, TM_UNIT_CELSIUS);

      g_assert_cmpint (tm_temperature_may_be (&temperature), ==, cases[i].may_be);
    }
  g_assert_true (tm_temperature_may_be (&none));
}

/* T1: aluminium 6061 and a steel micrometer, both at 25 °C, 100.0000 indicated: 99.993951.  T4: a steel
 * part at 30 °C, micrometer at 20 °C, 50.0000 indicated: 49.994251.  (Recomputed cases.) */
static void
test_correction (void)
{
  static const struct {
    double length, part_alpha, gauge_alpha, part, gauge, corrected;
  } cases[] = {
    { 100, 23.6, 11.5, 25, 25, 99.993951 },
    { 50, 11.5, 11.5, 30, 20, 49.994251 },
    { 50, 11.5, 11.5, 30, 30, 50 },
    { 50, 23.6, 11.5, 20, 20, 50 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_near (cases[i].length
                     + tm_temperature_correction (cases[i].length, cases[i].part_alpha, cases[i].gauge_alpha,
                                                  cases[i].part, cases[i].gauge),
                 cases[i].corrected, 5e-7);
}

/* 300 mm of steel warmed by 10 °C grows "more than 30 µm" (published); 34.5 µm recomputed.  T6: a steel pin
 * in an aluminium bore of 25 mm gains 0.00605 mm of clearance from 20 to 40 °C. */
static void
test_growth (void)
{
  const TmWarmth steel = { 11.5, 0, 0, 10 };

  assert_near (tm_warmth_temperature (&steel, 300), 0.0345, 1e-9);
  assert_near (-tm_temperature_correction (25, 23.6, 11.5, 40, 40), 0.00605, 5e-6);
}

/* JCGM 100, H.1.7: with second order the coefficient's own part does not vanish at 20 °C:
 * ls · u(αs) · u(δθ) = 50 mm · 1.1547e-6 · 0.0288675 = 1.667 nm (published 1.7, from memory). */
static void
test_second_order (void)
{
  const TmWarmth standard = { 11.5, 2, 0, 0.05 };

  assert_near (tm_warmth_expansion (&standard, 50e6) / sqrt (3), 1.667, 1e-3);
}

/* Callister, table B.6; Swyt 1994; where sources differ both stand. */
static void
test_materials (void)
{
  static const struct {
    const char *text;
    double value, low, high;
  } cases[] = {
    { "6061-T6", 23.6, 23.6, 23.6 },
    { "Aluminum 6061", 23.6, 23.6, 23.6 },
    { "EN AW-7075", 23.4, 23.4, 23.4 },
    { "ALUMINIUM", 23.1, 23.1, 23.6 },
    { "steel", 11.5, 11.5, 11.7 },
    { "4140 steel, pre-hard", 12.3, 12.3, 12.3 },
    { "316L stainless", 15.9, 15.9, 15.9 },
    { "stainless steel", 13.7, 10.2, 17.2 },
    { "Ti-6Al-4V", 8.6, 8.6, 9.5 },
    { "grey cast iron", 11.4, 11.4, 11.4 },
    { "Free-cutting brass C36000", 20.5, 20.5, 20.5 },
    { "peek", 78.5, 72, 85 },
    { "acetal", 106.5, 106.5, 106.5 },
    { "acetal, glass-filled", 39.4, 39.4, 39.4 },
    { "17-7 PH", 11.0, 11.0, 11.0 },
  };
  TmExpansion found;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].text);
      g_assert_true (tm_material_expansion (cases[i].text, &found));
      assert_near (found.value, cases[i].value, 1e-9);
      assert_near (found.low, cases[i].low, 1e-9);
      assert_near (found.high, cases[i].high, 1e-9);
      g_assert_cmpint (found.other_source != NULL, ==, found.high - found.low > 0);
      g_assert_true (tm_expansion_half_width (&found) >= found.value * 0.0999);
      g_assert_true (tm_expansion_half_width (&found) >= found.high - found.value - 1e-9);
    }
  g_assert_false (tm_material_expansion ("", &found));
  g_assert_false (tm_material_expansion (NULL, &found));
  g_assert_false (tm_material_expansion ("oak", &found));
  g_assert_false (tm_material_expansion ("60610", &found));
}

/* -------- A reading corrected -------- */

static TmReading *
read_warm (TmJob *job, TmFeature *feature, const char *value, const char *part, const char *gauge)
{
  TmReading *reading = new_reading (job, feature, "", "");

  reading->value = quantity (value, TM_UNIT_MM);
  reading->part_temp = quantity (part, TM_UNIT_CELSIUS);
  reading->gauge_temp = quantity (gauge, TM_UNIT_CELSIUS);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

/* T1 through a job: corrected only when both temperatures were taken; the record keeps what was read. */
static void
test_reading (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  g_autofree char *text = NULL;
  TmFeature *length;
  TmReading *both, *one;

  job->material = "6061-T6";
  add_gauge (job, "MIC", NULL, "0.0005");
  length = add_feature (job, "1", TM_KIND_SHAFT, "99.990", "100.010", "MIC");
  both = read_warm (job, length, "100.0000", "25", "25");
  one = read_warm (job, length, "100.0000", "25", NULL);
  assert_near ((double)tm_reading_correction (job, both, NULL).total, -6.0493e6, 100);
  g_assert_cmpint (tm_reading_correction (job, one, NULL).total, ==, 0);
  g_assert_cmpint (tm_job_withdraw (job, &one->row, "", "", "again"), ==, TM_ADD_OK);
  judge_one (job, length, &judgement);
  text = tm_judgement_size_text (&judgement);
  g_assert_cmpstr (text, ==, "99.99395");
  assert_near (judgement.correction, -6.0493e6, 100);
  g_assert_cmpint ((gint64)judgement.sizes.stations[0].raw_sum, ==, G_GINT64_CONSTANT (100000000000));
  g_assert_cmpint (both->value.count, ==, G_GINT64_CONSTANT (100000000000));
}

/* The job's own coefficient goes before the table's, the gauge's before steel's; what is unknown is not
 * corrected. */
static void
test_reading_coefficients (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *gauge = add_gauge (job, "MIC", NULL, "0.0005");
  TmFeature *length = add_feature (job, "1", TM_KIND_SHAFT, "99.990", "100.010", "MIC");
  TmReading *reading = read_warm (job, length, "100.0000", "30", "20");

  g_assert_cmpint (tm_reading_correction (job, reading, NULL).total, ==, 0);
  job->expansion = quantity ("20", TM_UNIT_HARDNESS);
  assert_near ((double)tm_reading_correction (job, reading, NULL).total, -100e9 * 200e-6 / 1.0002, 1);
  gauge->expansion = quantity ("0", TM_UNIT_HARDNESS);
  reading->gauge_temp = quantity ("40", TM_UNIT_CELSIUS);
  assert_near ((double)tm_reading_correction (job, reading, NULL).total, -100e9 * 200e-6 / 1.0002, 1);
}

/* The known error of the calibration in force is taken off, by the reading's own date. */
static void
test_known_error (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore;
  TmReading *old, *new;

  add_gauge (job, "MIC", NULL, "0.002");
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "MIC");
  add_calibration (job, "MIC", "2026-02-01", "0.001", "0.003");
  add_calibration (job, "MIC", "2026-06-01", "0.001", "-0.001");
  old = read_size (job, bore, "mouth", "25.010", "");
  old->row.at = "2026-05-01T10:00:00Z";
  new = read_size (job, bore, "bottom", "25.010", "");
  new->row.at = "2026-06-01T10:00:00Z";
  g_assert_cmpint (tm_reading_correction (job, old, NULL).total, ==, -3000000);
  g_assert_cmpint (tm_reading_correction (job, new, NULL).total, ==, 1000000);
  judge_one (job, bore, &judgement);
  g_assert_cmpint ((gint64)judgement.sizes.stations[0].sum, ==, G_GINT64_CONSTANT (25007000000));
  g_assert_cmpint ((gint64)judgement.sizes.stations[1].sum, ==, G_GINT64_CONSTANT (25011000000));
  assert_near (judgement.taper, -4e6, 1e-3);
}

/* A supposed error stands in place of the certificate's, from its day on and for rows without a time. */
static void
test_supposed_error (void)
{
  static const struct {
    const char *at;
    gint64 total;
  } cases[] = {
    { "2026-04-30T23:59:59Z", -3000000 },
    { "2026-05-01T00:00:00Z", 9000000 },
    { "", 9000000 },
  };
  const TmJudgeOptions options = { "MIC", "2026-05-01", -9000000 }, other = { "OTHER", "", 5 };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) before = { 0 }, after = { 0 };
  TmFeature *bore;
  TmReading *reading;

  add_gauge (job, "TELE", NULL, "0.001");
  add_gauge (job, "MIC", NULL, "0.001");
  add_method (job, "transfer", "TELE,MIC", "0.0005", NULL);
  bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "transfer");
  add_calibration (job, "MIC", "2026-02-01", "0.001", "0.003");
  reading = read_size (job, bore, "", "25.014", "");
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      reading->row.at = cases[i].at;
      g_assert_cmpint (tm_reading_correction (job, reading, &options).total, ==, cases[i].total);
      g_assert_cmpint (tm_reading_correction (job, reading, &other).total, ==, -3000000);
    }
  tm_judge (job, first_piece (job), bore, 1, &before);
  tm_judge_with (job, first_piece (job), bore, 1, &options, &after);
  g_assert_cmpint (before.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (after.verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (after.side, ==, TM_SIDE_METAL_GONE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/temperature/correction", test_correction);
  g_test_add_func ("/core/temperature/may-be", test_may_be);
  g_test_add_func ("/core/temperature/growth", test_growth);
  g_test_add_func ("/core/temperature/second-order", test_second_order);
  g_test_add_func ("/core/temperature/materials", test_materials);
  g_test_add_func ("/core/temperature/reading", test_reading);
  g_test_add_func ("/core/temperature/reading-coefficients", test_reading_coefficients);
  g_test_add_func ("/core/temperature/known-error", test_known_error);
  g_test_add_func ("/core/temperature/supposed-error", test_supposed_error);
  return g_test_run ();
}
