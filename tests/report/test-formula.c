/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The verdict's formula comes to the judged verdict at and around every limit and guard, count by
 * count, in both units and by both rules.
 */

#include "report-support.h"

#include <float.h>
#include <math.h>

#include "report-formula.h"
#include "report-workbook.h"

static const TmRowCells cells = { "H5", "I5", "J5", "K5", "L5", "U5", "V5", "W5", "X5" };

typedef struct {
  const char *name;
  TmUnit unit;
  TmDecision decision;
  const char *lower, *upper;
  const char *resolution, *limit;
} Case;

static const Case cases[] = {
  { "mm guarded", TM_UNIT_MM, TM_DECISION_GUARDED, "25.000", "25.021", "0.001", "0.002" },
  { "in guarded", TM_UNIT_IN, TM_DECISION_GUARDED, "0.7500", "0.7508", "0.0001", "0.0001" },
  { "mm simple", TM_UNIT_MM, TM_DECISION_SIMPLE, "25.000", "25.100", "0.001", "0.002" },
  { "in simple", TM_UNIT_IN, TM_DECISION_SIMPLE, "0.7500", "0.7508", "0.0001", "0.00005" },
  { "simple, not good enough", TM_UNIT_MM, TM_DECISION_SIMPLE, "25.000", "25.021", "0.01", "0.02" },
  { "cannot settle", TM_UNIT_MM, TM_DECISION_GUARDED, "25.000", "25.002", "0.001", "0.004" },
  { "minimum", TM_UNIT_MM, TM_DECISION_GUARDED, "18", "", "0.01", "0.02" },
  { "maximum", TM_UNIT_IN, TM_DECISION_GUARDED, "", "0.063", "0.0001", "0.0001" },
};

static TmJob *
make_case_job (const Case *at, TmFeature **feature, TmPiece **piece)
{
  TmJob *job = tm_job_new ();

  job->unit = at->unit;
  job->decision = at->decision;
  add_gauge (job, "M-1", at->resolution, at->limit, "2027-01-05");
  add_method (job, "m", "M-1", NULL);
  *feature = add_feature (job, "1", TM_KIND_BORE, "", at->lower, at->upper, "m");
  *piece = add_piece (job, "001", TRUE);
  return job;
}

static void
check_size (TmJob *job, const TmFeature *feature, const TmPiece *piece, TmReading *reading, gint64 count)
{
  TmReportLine line = { .feature = feature, .piece = piece, .place = 1 };
  TmRowValues values;
  g_autofree char *formula = NULL;

  reading->value = tm_quantity_new (count, feature->unit, 6);
  tm_judge (job, piece, feature, 1, &line.judgement);
  values = tm_row_values (&line);
  formula = tm_formula_verdict (job, &line, &values, &cells);
  if (formula == NULL)
    g_test_message ("%s: no formula at %" G_GINT64_FORMAT, feature->balloon, count);
  g_assert_nonnull (formula);
  tm_judgement_clear (&line.judgement);
}

static void
test_case (gconstpointer data)
{
  const Case *at = data;
  TmFeature *feature;
  TmPiece *piece;
  g_autoptr (TmJob) job = make_case_job (at, &feature, &piece);
  TmReading *reading = add_reading (job, piece, feature, "", *at->lower != '\0' ? at->lower : at->upper);
  g_auto (TmJudgement) judgement = { 0 };
  const gint64 limits[] = { feature->lower.count, feature->upper.count };

  tm_judge (job, piece, feature, 1, &judgement);
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      const gint64 edges[]
          = { 0, judgement.guard, -judgement.guard, judgement.guard_out, -judgement.guard_out };
      if (limits[i] == 0)
        continue;
      for (gsize k = 0; k < G_N_ELEMENTS (edges); k++)
        for (gint64 step = -3; step <= 3; step++)
          check_size (job, feature, piece, reading, limits[i] + edges[k] + step);
      for (gint64 step = -50; step <= 50; step++)
        check_size (job, feature, piece, reading, limits[i] + step * 100003);
    }
}

/* The formula of one row, word for word: a customer reads it. */
static void
test_words (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmReportLine *line = g_ptr_array_index (content->lines, 0);
  const TmRowValues values = tm_row_values (line);
  g_autofree char *verdict = tm_formula_verdict (job, line, &values, &cells);
  g_autofree char *deviation = tm_formula_deviation (&values, &cells, tm_formula_digits (TM_UNIT_MM));

  g_assert_cmpstr (verdict, ==,
                   "=IF(COUNT(K5,L5)=0,\"not measured\",IF(OR(ROUND(K5,9)<ROUND(I5-V5,9),"
                   "ROUND(L5,9)>ROUND(J5+V5,9)),\"out\",IF(W5=\"cannot\",\"too close\","
                   "IF(AND(ROUND(K5,9)>=ROUND(I5+U5,9),ROUND(L5,9)<=ROUND(J5-U5,9)),"
                   "IF(X5>0,\"not measured\",\"in\"),\"too close\"))))");
  g_assert_cmpstr (deviation, ==, "=IF(COUNT(K5,L5)=0,\"\",ROUND(IF(ABS(K5-H5)>ABS(L5-H5),K5,L5)-H5,9))");
  /* 25.010 - 25 in doubles is 0.010000000000001563: the rounding is what is wanted. */
  g_assert_true (tm_deviation_value (&values, 9) == 0.01);
}

/* As fine as the counts: 1 pm in mm, 3.9e-11 in, a millionth of an arc second in degrees. */
static void
test_digits (void)
{
  g_assert_cmpuint (tm_formula_digits (TM_UNIT_MM), ==, 9);
  g_assert_cmpuint (tm_formula_digits (TM_UNIT_IN), ==, 11);
  g_assert_cmpuint (tm_formula_digits (TM_UNIT_UM), ==, 6);
  g_assert_cmpuint (tm_formula_digits (TM_UNIT_DEGREE), ==, 10);
  g_assert_cmpuint (tm_formula_digits (TM_UNIT_COUNT), ==, 0);
}

/* The double nearest to the value's decimal text, where that is no half. */
static void
test_round (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260504);

  for (guint i = 0; i < 50000; i++)
    {
      const guint digits = i % 13;
      const double value = g_rand_double_range (rand, -1.0, 1.0) * pow (10.0, g_rand_int_range (rand, -6, 9));
      const double scaled = fabs (value) * pow (10.0, digits);
      g_autofree char *text = g_strdup_printf ("%.*f", (int)digits, value);

      /* So near a half that two roundings, of the value and of the product, may have moved it there. */
      if (scaled < 1e15 && fabs (scaled - floor (scaled) - 0.5) <= 2.0 * DBL_EPSILON * scaled)
        continue;
      g_assert_true (tm_formula_round (value, digits) == g_ascii_strtod (text, NULL));
    }
  g_assert_true (tm_formula_round (123456789012345678.0, 3) == 123456789012345678.0);
}

/* A half goes away from zero, whether its double lies on it, above or below: what LibreOffice 7 and
 * Gnumeric 1.12 answer to ROUND of the same decimals; in IEEE 754 double only the first two lie on it. */
static void
test_halves (void)
{
  static const struct {
    double value;
    guint digits;
    double rounded;
  } halves[] = {
    { 0.5, 0, 1.0 },
    { 2.5, 0, 3.0 },
    { 2.675, 2, 2.68 },
    { 1.005, 2, 1.01 },
    { 0.0000375, 6, 0.000038 },
    { 0.0003875, 6, 0.000388 },
    { 1260.0000375, 6, 1260.000038 },
    { 0.4999999999, 0, 0.0 },
    { 2.674999999999, 2, 2.67 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (halves); i++)
    {
      g_assert_true (tm_formula_round (halves[i].value, halves[i].digits) == halves[i].rounded);
      g_assert_true (tm_formula_round (-halves[i].value, halves[i].digits) == -halves[i].rounded);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/formula/words", test_words);
  g_test_add_func ("/formula/digits", test_digits);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *name = g_strdup_printf ("/formula/agrees/%s", cases[i].name);
      g_test_add_data_func (name, &cases[i], test_case);
    }
  g_test_add_func ("/formula/round", test_round);
  g_test_add_func ("/formula/halves", test_halves);
  return g_test_run ();
}
