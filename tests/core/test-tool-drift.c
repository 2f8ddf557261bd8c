/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One tool, several features: invented sizes whose wear is known.
 */

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#include "core-tool-drift.h"
#include "series-support.h"

static TmFeature *
add_cut_feature (TmJob *job, const char *balloon, TmKind kind)
{
  TmFeature *feature = add_feature (job, balloon, kind, "24.5", "25.5", "");

  feature->tool = "bar";
  return feature;
}

/* Two bores of four pieces and a shaft of five.  By hand: bore 1 has slope -1 and residuals 1 -1 -1 1 / 2, s²
 * = 1/2, sxx 5, se² 0.1; bore 2 slope -2, residuals twice as large, se² 0.4; the shaft slope 1.2, residuals
 * 0, 1, -2, 1, 0 over 2, s² = 1.5/3, sxx 10, se² 0.05.  Wear 1, 2, 1.2 with weights 10, 2.5, 20: 39/32.5
 * = 1.2; χ² = 10·0.04 + 2.5·0.64 + 0 = 2. */
static void
test_combined (void)
{
  static const double residuals[] = { 0.5, -0.5, -0.5, 0.5 }, shaft_residuals[] = { 0, 0.5, -1, 0.5, 0 };
  g_autoptr (TmJob) job = make_batch_job (5);
  TmFeature *first = add_cut_feature (job, "1", TM_KIND_BORE);
  TmFeature *second = add_cut_feature (job, "2", TM_KIND_BORE);
  TmFeature *shaft = add_cut_feature (job, "3", TM_KIND_SHAFT);
  TmFeature *other = add_cut_feature (job, "4", TM_KIND_BORE);
  g_auto (TmToolDrift) drift = { 0 };

  other->tool = "drill";
  for (guint i = 0; i < 5; i++)
    {
      if (i < 4)
        read_piece (job, first, i, "", -1.0 * i + residuals[i]);
      if (i < 4)
        read_piece (job, second, i, "", 50 - 2.0 * i + 2 * residuals[i]);
      read_piece (job, shaft, i, "", -30 + 1.2 * i + shaft_residuals[i]);
      read_piece (job, other, i, "", 9.0 * i);
    }
  g_assert_true (tm_tool_drift_init (&drift, job, "bar", NULL, NULL));
  g_assert_cmpuint (drift.n_rows, ==, 3);
  g_assert_cmpuint (drift.n_used, ==, 3);
  assert_near (drift.rows[0].slope / MICRON, -1, 1e-9);
  assert_near (drift.rows[0].slope_se / MICRON, sqrt (0.1), 1e-9);
  assert_near (drift.rows[0].wear / MICRON, 1, 1e-9);
  assert_near (drift.rows[2].wear / MICRON, 1.2, 1e-9);
  assert_near (drift.rows[2].slope_se / MICRON, sqrt (0.05), 1e-9);
  assert_near (drift.wear / MICRON, 1.2, 1e-9);
  assert_near (drift.chi_square, 2, 1e-9);
  g_assert_false (drift.disagree);
  g_assert_true (drift.shown);
  g_assert_cmpfloat (drift.lower, <, drift.wear);
}

/* The tool was changed before the 5th piece and the offset before the 9th: only the wear since the change
 * counts, and the correction is no wear. */
static void
test_since_change (void)
{
  g_autoptr (TmJob) job = make_batch_job (12);
  TmFeature *bore = add_cut_feature (job, "1", TM_KIND_BORE);
  g_auto (TmToolDrift) drift = { 0 };

  add_event (job, "tool", "P5", "", "bar");
  add_event (job, "offset", "P9", "", "");
  for (guint i = 0; i < 12; i++)
    read_piece (job, bore, i, "",
                (i < 4 ? 9.0 * i : -2.0 * i + (i >= 8 ? 40 : 0)) + (i % 4 == 1 || i % 4 == 2));
  g_assert_true (tm_tool_drift_init (&drift, job, "bar", NULL, NULL));
  g_assert_cmpuint (drift.rows[0].from, ==, 4);
  g_assert_cmpuint (drift.rows[0].n, ==, 8);
  assert_near (drift.wear / MICRON, 2, 1e-9);
  assert_near (drift.rows[0].dof, 5, 1e-12); /* 8 pieces, two levels, one slope */
}

/* Sizes on a line but for their rounding to picometres and what doubles lose: no row that says it is certain.
 */
static void
test_exact_line (void)
{
  g_autoptr (TmJob) job = make_batch_job (7);
  TmFeature *bore = add_cut_feature (job, "1", TM_KIND_BORE);
  g_auto (TmToolDrift) drift = { 0 };

  for (guint i = 0; i < 7; i++)
    read_piece (job, bore, i, "", 100 + 0.7 * i);
  g_assert_true (tm_tool_drift_init (&drift, job, "bar", NULL, NULL));
  g_assert_cmpint (drift.rows[0].status, ==, TM_TOOL_ROW_NO_SPREAD);
  g_assert_cmpuint (drift.n_used, ==, 0);
}

static void
test_left_out (void)
{
  g_autoptr (TmJob) job = make_batch_job (6);
  TmFeature *bore = add_cut_feature (job, "1", TM_KIND_BORE);
  TmFeature *length = add_cut_feature (job, "2", TM_KIND_LENGTH);
  TmFeature *depth = add_cut_feature (job, "3", TM_KIND_DEPTH);
  TmFeature *exact = add_cut_feature (job, "4", TM_KIND_BORE);
  g_auto (TmToolDrift) drift = { 0 };
  g_auto (TmToolDrift) none = { 0 };

  add_cut_feature (job, "5", TM_KIND_BORE);
  for (guint i = 0; i < 6; i++)
    {
      read_piece (job, bore, i, "", (i % 2));
      read_piece (job, length, i, "", (i % 2));
      read_piece (job, depth, i, "", (i % 2));
      read_piece (job, exact, i, "", 3);
    }
  g_assert_true (tm_tool_drift_init (&drift, job, "bar", NULL, NULL));
  g_assert_cmpint (drift.rows[0].status, ==, TM_TOOL_ROW_USED);
  g_assert_cmpint (drift.rows[1].status, ==, TM_TOOL_ROW_NO_SIDE);
  g_assert_cmpint (drift.rows[2].status, ==, TM_TOOL_ROW_NO_DIAMETER);
  g_assert_cmpint (drift.rows[3].status, ==, TM_TOOL_ROW_NO_SPREAD);
  g_assert_cmpint (drift.rows[4].status, ==, TM_TOOL_ROW_TOO_FEW);
  g_assert_cmpuint (drift.n_used, ==, 1);
  g_assert_true (isnan (drift.chi_square));
  g_assert_false (drift.shown);

  g_assert_true (tm_tool_drift_init (&none, job, "no such tool", NULL, NULL));
  g_assert_cmpuint (none.n_rows, ==, 0);
  g_assert_true (isnan (none.wear));
  g_assert_false (none.shown);
}

/* Of 1000 tools that wear by 0.3 the interval of three bores holds it in 95 % (four standard errors of the
 * count: 0.7 % each), and they are said to disagree in about one of twenty. */
static void
test_coverage (void)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  guint held = 0, disagree = 0;

  gsl_rng_set (random, 12);
  for (guint run = 0; run < 1000; run++)
    {
      g_autoptr (TmJob) job = make_batch_job (15);
      g_auto (TmToolDrift) drift = { 0 };

      for (guint bore = 0; bore < 3; bore++)
        {
          static const char *const names[] = { "1", "2", "3" };
          TmFeature *feature = add_cut_feature (job, names[bore], TM_KIND_BORE);

          for (guint i = 0; i < 15; i++)
            read_piece (job, feature, i, "", -0.3 * i + gsl_ran_gaussian (random, 1 + bore));
        }
      g_assert_true (tm_tool_drift_init (&drift, job, "bar", NULL, NULL));
      held += drift.lower <= 0.3 * MICRON && drift.upper >= 0.3 * MICRON;
      disagree += drift.disagree;
    }
  g_test_message ("held %u, disagree %u of 1000", held, disagree);
  g_assert_cmpuint (held, >=, 930);
  g_assert_cmpuint (held, <=, 980);
  g_assert_cmpuint (disagree, <=, 110);
  gsl_rng_free (random);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tool-drift/combined", test_combined);
  g_test_add_func ("/tool-drift/since-change", test_since_change);
  g_test_add_func ("/tool-drift/exact-line", test_exact_line);
  g_test_add_func ("/tool-drift/left-out", test_left_out);
  g_test_add_func ("/tool-drift/coverage", test_coverage);
  return g_test_run ();
}
