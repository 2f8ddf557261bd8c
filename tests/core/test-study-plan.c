/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The random order of a study, what it puts into a budget, and methods compared in pairs.
 */

#include <math.h>

#include "core-study.h"

static void
add_text (TmJob *job, GPtrArray *texts, const char *text)
{
  g_ptr_array_add (texts, (gpointer)tm_job_intern (job, text));
}

static TmStudy *
add_study (TmJob *job, const char *method, guint pieces, guint people, const char *repeats)
{
  TmStudy *study = tm_study_new ();

  study->name = "first";
  study->method = method;
  study->unit = TM_UNIT_MM;
  for (guint i = 0; i < pieces; i++)
    {
      g_autofree char *name = g_strdup_printf ("P%u", i + 1);
      add_text (job, study->pieces, name);
    }
  for (guint i = 0; i < people; i++)
    {
      const char name[] = { (char)('A' + i), '\0' };
      add_text (job, study->people, name);
    }
  g_assert_cmpint (tm_quantity_read (repeats, TM_UNIT_COUNT, &study->repeats), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("42", TM_UNIT_COUNT, &study->seed), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_study (job, study), ==, TM_ADD_OK);
  return study;
}

static TmJob *
make_job (void)
{
  TmJob *job = tm_job_new ();
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();

  gauge->tag = "BM-2";
  gauge->unit = TM_UNIT_IN;
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  method->name = "bore micrometer";
  g_ptr_array_add (method->gauges, (gpointer) "BM-2");
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  return job;
}

static void
put (TmJob *job, const TmStudy *study, TmStudyCell cell, const char *value)
{
  TmStudyReading *reading = tm_study_reading_new ();

  reading->study = study->name;
  reading->piece = g_ptr_array_index (study->pieces, cell.piece);
  reading->person = g_ptr_array_index (study->people, cell.person);
  reading->trial = tm_quantity_new (cell.trial + 1, TM_UNIT_COUNT, 0);
  g_assert_cmpint (tm_quantity_read (value, study->unit, &reading->value), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_study_reading (job, reading), ==, TM_ADD_OK);
}

/* Worked out apart, with SplitMix64 checked by its published first numbers for the seed 1234567
 * (6457827717110365317, 3203168211198807973; from memory). */
static void
test_order_is_fixed (void)
{
  static const guint expected[4][5] = {
    { 1, 3, 2, 4, 0 },
    { 2, 0, 3, 4, 1 },
    { 0, 2, 1, 4, 3 },
    { 4, 3, 2, 0, 1 },
  };
  g_autoptr (TmJob) job = make_job ();
  const TmStudy *study = add_study (job, "BM-2", 5, 2, "2");

  for (guint n = 0; n < 20; n++)
    {
      const TmStudyCell cell = tm_study_cell (study, n);

      g_assert_cmpuint (cell.piece, ==, expected[n / 5][n % 5]);
      g_assert_cmpuint (cell.person, ==, n / 5 % 2);
      g_assert_cmpuint (cell.trial, ==, n / 10);
    }
}

/* Each cell comes once; another seed gives another order; no piece stands first more often than chance
 * allows (400 runs of 10: 40 ± 4.5 standard deviations of 6). */
static void
test_order_is_random (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmStudy *study = add_study (job, "BM-2", 10, 3, "3");
  guint first[10] = { 0 }, seen[90] = { 0 };

  g_assert_cmpuint (tm_study_n_cells (study), ==, 90);
  for (guint n = 0; n < 90; n++)
    {
      const TmStudyCell cell = tm_study_cell (study, n);
      seen[(cell.piece * 3 + cell.person) * 3 + cell.trial]++;
    }
  for (guint i = 0; i < 90; i++)
    g_assert_cmpuint (seen[i], ==, 1);
  for (guint seed = 0; seed < 400; seed++)
    {
      study->seed = tm_quantity_new (seed, TM_UNIT_COUNT, 0);
      first[tm_study_cell (study, 0).piece]++;
    }
  for (guint i = 0; i < 10; i++)
    {
      g_assert_cmpuint (first[i], >, 13);
      g_assert_cmpuint (first[i], <, 67);
    }
}

static void
test_next (void)
{
  g_autoptr (TmJob) job = make_job ();
  const TmStudy *study = add_study (job, "BM-2", 3, 2, "2");
  g_autofree double *values = NULL;
  TmStudyCell cell;
  guint n;

  put (job, study, tm_study_cell (study, 1), "25.012");
  for (guint i = 0; i < 11; i++)
    {
      g_assert_true (tm_study_next (job, study, &cell, &n));
      g_assert_cmpuint (n, ==, i == 0 ? 0 : i + 1);
      put (job, study, cell, "25.010");
    }
  g_assert_false (tm_study_next (job, study, &cell, &n));
  g_assert_cmpuint (tm_study_n_done (job, study), ==, 12);
  values = tm_study_values (job, study);
  cell = tm_study_cell (study, 1);
  g_assert_cmpfloat_with_epsilon (values[(cell.piece * 2 + cell.person) * 2 + cell.trial], 25.012, 1e-12);
}

static void
test_band (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmStudy *study = add_study (job, "BM-2", 2, 1, "2");
  TmFeature *bore = tm_feature_new ();

  g_assert_cmpfloat (tm_study_band (job, study), ==, 0);
  bore->balloon = "1";
  bore->kind = TM_KIND_BORE;
  bore->unit = TM_UNIT_IN;
  tm_quantity_read ("1.0000", TM_UNIT_IN, &bore->lower);
  tm_quantity_read ("1.0010", TM_UNIT_IN, &bore->upper);
  g_assert_cmpint (tm_job_add_feature (job, bore), ==, TM_ADD_OK);
  study->feature = "1";
  g_assert_cmpfloat_with_epsilon (tm_study_band (job, study), 0.0254, 1e-15);
  tm_quantity_read ("0.010", TM_UNIT_MM, &study->band);
  g_assert_cmpfloat_with_epsilon (tm_study_band (job, study), 0.010, 1e-15);
}

/* A damaged file may ask for more than anyone takes. */
static void
test_endless (void)
{
  g_autoptr (TmJob) job = make_job ();
  const TmStudy *study = add_study (job, "BM-2", 3, 2, "999999999999");
  TmStudyResult result;
  TmStudyCell cell;
  guint n;

  g_assert_cmpuint (tm_study_n_cells (study), ==, 0);
  g_assert_false (tm_study_next (job, study, &cell, &n));
  tm_study_result (job, study, &result);
  g_assert_cmpint (result.status, ==, TM_STUDY_TOO_SMALL);
}

static const TmStudyResult found = {
  .status = TM_STUDY_OK,
  .ev = { 0.002539995, 0, 0 },
  .ev_dof = 78,
  .between = 0.00123456789,
  .between_dof = 1.9002770951,
};

/* Two pieces, one person, two repeats would do; the figures are handed in. */
static void
test_budget (void)
{
  g_autoptr (TmJob) job = make_job ();
  const TmStudy *study = add_study (job, "bore micrometer", 2, 2, "2");
  TmStudyBudget budget;
  g_autofree char *repeatability = NULL, *dof = NULL, *people = NULL, *people_dof = NULL;

  g_assert_cmpint (tm_study_budget (job, study, &found, &budget), ==, TM_STUDY_BUDGET_OK);
  repeatability = tm_quantity_format (&budget.repeatability);
  dof = tm_quantity_format (&budget.repeatability_dof);
  people = tm_quantity_format (&budget.people->value);
  people_dof = tm_quantity_format (&budget.people->dof);
  /* 0.002539995 mm is 0.0000999998 in; an inch is held to eight decimals. */
  g_assert_cmpstr (repeatability, ==, "0.00010000");
  g_assert_cmpint (budget.repeatability.unit, ==, TM_UNIT_IN);
  g_assert_cmpstr (dof, ==, "78");
  g_assert_cmpstr (budget.source, ==, "study first");
  g_assert_cmpstr (people, ==, "0.0012346");
  g_assert_cmpint (budget.people->value.unit, ==, TM_UNIT_MM);
  g_assert_cmpstr (people_dof, ==, "1.90");
  g_assert_cmpint (budget.people->kind, ==, TM_LINE_PEOPLE);
  g_assert_cmpstr (budget.people->name, ==, "");
  g_assert_cmpstr (budget.people->distribution, ==, "t");
  g_assert_cmpstr (budget.people->source, ==, "study first");
  g_assert_cmpint (tm_job_add_budget_line (job, budget.people), ==, TM_ADD_OK);
}

static void
test_budget_refused (void)
{
  g_autoptr (TmJob) job = make_job (), other = make_job ();
  const TmStudy *study = add_study (job, "bore micrometer", 2, 2, "2");
  const TmStudy *bare = add_study (other, "BM-2", 2, 2, "2");
  TmStudyResult result = found;
  TmStudyBudget budget;

  g_assert_cmpint (tm_study_budget (other, bare, &result, &budget), ==, TM_STUDY_BUDGET_NO_METHOD);
  result.status = TM_STUDY_ONE_PERSON;
  result.between = NAN;
  g_assert_cmpint (tm_study_budget (job, study, &result, &budget), ==, TM_STUDY_BUDGET_OK);
  g_assert_null (budget.people);
  result.between = 0;
  g_assert_cmpint (tm_study_budget (job, study, &result, &budget), ==, TM_STUDY_BUDGET_OK);
  g_assert_null (budget.people);
  result.ev.sd = 0;
  g_assert_cmpint (tm_study_budget (job, study, &result, &budget), ==, TM_STUDY_BUDGET_NO_SPREAD);
  result.status = TM_STUDY_MISSING;
  g_assert_cmpint (tm_study_budget (job, study, &result, &budget), ==, TM_STUDY_BUDGET_NO_RESULT);
  for (guint i = 0; i < TM_N_STUDY_BUDGET_STATUSES; i++)
    g_assert_cmpstr (tm_study_budget_status_text (i), !=, "");
}

/* Bland and Altman, Lancet 1986: peak expiratory flow by two meters, l/min (data and figures from memory:
 * mean -2.1, standard deviation 38.8, mean from -22.0 to 17.8; limits with 2 s -79.7 and 75.5, with 1.96 s
 * -78.1 and 73.9; their standard error, rounded as √(3 s²/n), 16.3, so that the lower one lies between
 * -114.3 and -45.1). */
static void
test_paired (void)
{
  static const double large[]
      = { 494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427 };
  static const double mini[]
      = { 512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451 };
  TmPaired paired;

  g_assert_true (tm_paired (large, mini, 17, &paired));
  g_assert_cmpfloat_with_epsilon (paired.mean, -2.1, 0.05);
  g_assert_cmpfloat_with_epsilon (paired.sd, 38.8, 0.05);
  g_assert_cmpfloat_with_epsilon (paired.mean_low, -22.0, 0.1);
  g_assert_cmpfloat_with_epsilon (paired.mean_high, 17.8, 0.1);
  g_assert_cmpfloat_with_epsilon (paired.agree_low, -78.1, 0.05);
  g_assert_cmpfloat_with_epsilon (paired.agree_high, 73.9, 0.05);
  /* Half widths: 2.12 · 16.3 = 34.6, with the full variance 0.7 % more. */
  g_assert_cmpfloat_with_epsilon (paired.agree_low - paired.agree_low_low, 34.6, 0.3);
  g_assert_cmpfloat_with_epsilon (paired.agree_high_high - paired.agree_high, 34.6, 0.3);
  g_assert_false (tm_paired (large, mini, 1, &paired));
  g_assert_false (tm_paired (large, mini, 0, &paired));
}

static TmReading *
read_by (TmJob *job, TmFeature *feature, TmPiece *piece, const char *station, const char *method,
         const char *value)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->place = 1;
  reading->station = station;
  reading->method = method;
  g_assert_cmpint (tm_quantity_read (value, TM_UNIT_MM, &reading->value), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

/* What the two methods differ by is what is left once the known errors are taken out. */
static void
assert_corrected (TmJob *job, TmFeature *bore)
{
  TmCalibration *calibration = tm_calibration_new ();
  g_autofree double *a = NULL, *b = NULL;

  calibration->gauge = "BM-2";
  calibration->date = "2026-01-10";
  g_assert_cmpint (tm_quantity_read ("0.002", TM_UNIT_MM, &calibration->error), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  g_assert_cmpuint (tm_paired_values (job, bore, "bore micrometer", "BM-2", &a, &b), ==, 1);
  g_assert_cmpfloat_with_epsilon (b[0], 25.005, 1e-12);
}

/* Repeats are averaged, stations are pairs of their own however they are written, a reading by one method
 * alone is no pair, and a reading that names no method is the feature's. */
static void
test_paired_values (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = tm_feature_new ();
  TmPiece *piece = tm_piece_new ();
  g_autofree double *a = NULL, *b = NULL;

  bore->balloon = "1";
  bore->kind = TM_KIND_BORE;
  bore->unit = TM_UNIT_MM;
  bore->places = 1;
  bore->method = "bore micrometer";
  piece->serial = "001";
  g_assert_cmpint (tm_job_add_feature (job, bore), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  read_by (job, bore, piece, "5/12", "", "25.010");
  read_by (job, bore, piece, "5/12", "", "25.012");
  read_by (job, bore, piece, "5.0/12", "BM-2", "25.007");
  read_by (job, bore, piece, "bottom", "BM-2", "25.001");
  g_assert_cmpuint (tm_paired_values (job, bore, "bore micrometer", "BM-2", &a, &b), ==, 1);
  g_assert_cmpfloat_with_epsilon (a[0], 25.011, 1e-12);
  g_assert_cmpfloat_with_epsilon (b[0], 25.007, 1e-12);
  assert_corrected (job, bore);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study-plan/order-is-fixed", test_order_is_fixed);
  g_test_add_func ("/study-plan/order-is-random", test_order_is_random);
  g_test_add_func ("/study-plan/next", test_next);
  g_test_add_func ("/study-plan/band", test_band);
  g_test_add_func ("/study-plan/endless", test_endless);
  g_test_add_func ("/study-plan/budget", test_budget);
  g_test_add_func ("/study-plan/budget-refused", test_budget_refused);
  g_test_add_func ("/study-plan/paired", test_paired);
  g_test_add_func ("/study-plan/paired-values", test_paired_values);
  return g_test_run ();
}
