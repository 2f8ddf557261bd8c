/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sizes of one place over the pieces of a job.  Figures are worked by hand from the invented readings.
 */

#include "core-series.h"
#include "series-support.h"

static void
test_sizes (void)
{
  g_autoptr (TmJob) job = make_batch_job (3);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.03", "");
  g_auto (TmSeries) series = { 0 };

  read_piece (job, feature, 0, "mouth", 1);
  read_piece (job, feature, 0, "mouth", 2); /* a repeat: 1.5 at the mouth */
  read_piece (job, feature, 0, "bottom", 8);
  read_piece (job, feature, 2, "mouth", 31);
  tm_series_init (&series, job, feature, 1);

  g_assert_cmpuint (series.n_points, ==, 3);
  g_assert_cmpuint (series.n_measured, ==, 2);
  g_assert_cmpint (series.reference, ==, 25005000000); /* the middle of the limits */
  assert_near (series.points[0].mean / MICRON, 4.75 - 5, 1e-9);
  assert_near (series.points[0].smallest / MICRON, 1.5 - 5, 1e-9);
  assert_near (series.points[0].largest / MICRON, 8 - 5, 1e-9);
  g_assert_true (isnan (series.points[1].mean));
  g_assert_cmpint (series.points[1].verdict, ==, TM_VERDICT_NOT_MEASURED);
  g_assert_cmpint (series.points[2].verdict, ==, TM_VERDICT_OUT);
  assert_near (series.lower / MICRON, -25, 1e-9);
  assert_near (series.upper / MICRON, 25, 1e-9);
  assert_near (series.target, 0, 1e-9);
  g_assert_true (isnan (series.repeatability));
  assert_near (series.guard, 0, 1e-12);
}

static void
test_targets (void)
{
  static const struct {
    const char *nominal, *lower, *upper;
    double reference, target; /* µm from 25 mm; target NAN: none */
  } cases[] = {
    { "25", "24.98", "25.02", 0, 0 },    { "25", "25.01", "25.02", 0, 15 }, /* the nominal lies outside */
    { "25", "25", "25.021", 0, 10.5 },                                      /* H7: it is a limit */
    { "25", "24.99", "25.02", 0, 5 },    /* uneven: the middle leaves most room */
    { "25.02", NULL, "25.02", 20, NAN }, /* one limit, and the nominal is it */
    { "25.01", NULL, "25.02", 10, 10 },  /* one limit */
    { NULL, NULL, "25.02", 4, NAN },     /* the first size */
    { NULL, "24.99", "25.02", 5, 5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_batch_job (1);
      TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, cases[i].lower, cases[i].upper, "");
      g_auto (TmSeries) series = { 0 };

      feature->nominal = quantity (cases[i].nominal, TM_UNIT_MM);
      read_piece (job, feature, 0, "", 4);
      tm_series_init (&series, job, feature, 1);
      g_assert_cmpint (series.reference, ==, 25000000000 + (gint64)(cases[i].reference * MICRON));
      assert_near (series.points[0].mean / MICRON, 4 - cases[i].reference, 1e-9);
      if (isnan (cases[i].target))
        g_assert_true (isnan (series.target));
      else
        assert_near (series.target / MICRON, cases[i].target - cases[i].reference, 1e-9);
      g_assert_cmpint (isinf (series.lower) != 0, ==, cases[i].lower == NULL);
    }
}

static void
test_zero_bounded (void)
{
  g_autoptr (TmJob) job = make_batch_job (2);
  TmFeature *feature = add_feature (job, "1", TM_KIND_FORM, NULL, "0.01", "");
  g_auto (TmSeries) series = { 0 };

  read_size (job, feature, "", "0.004", "");
  tm_series_init (&series, job, feature, 1);
  g_assert_cmpint (series.reference, ==, 0);
  assert_near (series.points[0].mean / MICRON, 4, 1e-9);
  g_assert_true (isinf (series.lower) && series.lower < 0);
  assert_near (series.upper / MICRON, 10, 1e-9);
  g_assert_true (isnan (series.target));
}

static void
test_attributes (void)
{
  g_autoptr (TmJob) job = make_batch_job (2);
  TmFeature *feature = add_feature (job, "1", TM_KIND_THREAD, NULL, NULL, "");
  g_auto (TmSeries) series = { 0 };

  read_outcome (job, feature, TM_OUTCOME_FAIL);
  tm_series_init (&series, job, feature, 1);
  g_assert_cmpuint (series.n_measured, ==, 0);
  g_assert_true (isnan (series.points[0].mean));
  g_assert_cmpint (series.points[0].verdict, ==, TM_VERDICT_OUT);
}

static void
test_method (void)
{
  g_autoptr (TmJob) job = make_batch_job (2);
  TmFeature *feature;
  TmOutlook outlook;
  g_auto (TmSeries) series = { 0 };

  add_gauge (job, "G1", "0.001", "0.002");
  add_method (job, "M", "G1", "0.0006", "20");
  feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "M");
  /* Two stations on one piece, four readings on the other: variances of the mean 1/2 and 1/4. */
  read_piece (job, feature, 0, "mouth", 1);
  read_piece (job, feature, 0, "bottom", 2);
  for (guint i = 0; i < 4; i++)
    read_piece (job, feature, 1, "mouth", i);
  tm_series_init (&series, job, feature, 1);
  g_assert_true (tm_judge_outlook (job, feature, "M", &outlook));
  assert_near (series.guard, (double)outlook.guard, 0.1);
  g_assert_cmpfloat (series.guard, >, 0);
  assert_near (series.repeatability / MICRON, 0.6 * sqrt ((0.5 + 0.25) / 2), 1e-9);
  assert_near (series.rounding / MICRON, 1 / sqrt (12) * sqrt ((0.5 + 0.25) / 2), 1e-9);
}

/* No gauge is named: 4, 10 and 7.5 µm differ by multiples of 0.5. */
static void
test_rounding (void)
{
  g_autoptr (TmJob) job = make_batch_job (5);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
  g_auto (TmSeries) one = { 0 };
  g_auto (TmSeries) series = { 0 };

  read_piece (job, feature, 0, "", 4);
  tm_series_init (&one, job, feature, 1);
  assert_near (one.rounding, 0, 1e-12);
  read_piece (job, feature, 2, "", 10);
  read_piece (job, feature, 4, "", 7.5);
  tm_series_init (&series, job, feature, 1);
  assert_near (series.rounding / MICRON, 0.5 / sqrt (12), 1e-9);
}

/* Which events begin a stretch of feature 1, cut by the bar, of six pieces. */
static void
test_events (void)
{
  static const struct {
    const char *kind, *before, *feature, *tool;
    gboolean shown, resets;
  } cases[] = {
    { "tool", "P3", "", "", TRUE, TRUE },
    { "tool", "P3", "", "bar", TRUE, TRUE },
    { "tool", "P3", "", "drill", FALSE, FALSE },
    { "tool", "P3", "1", "drill", TRUE, TRUE },
    { "tool", "P3", "2", "bar", FALSE, FALSE },
    { "offset", "P3", "1", "", TRUE, TRUE },
    { "lot", "P3", "", "", TRUE, TRUE },
    { "other", "P3", "", "", TRUE, FALSE },
    { "other", "P3", "2", "", FALSE, FALSE },
    { "lot", "gone", "", "", FALSE, FALSE }, /* its piece is not there */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_batch_job (6);
      TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
      g_auto (TmSeries) series = { 0 };

      feature->tool = "bar";
      add_event (job, cases[i].kind, cases[i].before, cases[i].feature, cases[i].tool);
      tm_series_init (&series, job, feature, 1);
      g_assert_cmpuint (series.n_events, ==, cases[i].shown);
      g_assert_cmpuint (series.n_breaks, ==, cases[i].resets);
      if (cases[i].shown)
        g_assert_cmpuint (series.events[0].before, ==, 2);
    }
}

static void
test_stretches (void)
{
  g_autoptr (TmJob) job = make_batch_job (6);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
  g_auto (TmSeries) series = { 0 };

  /* Written out of order; two at one place; one at each end. */
  add_event (job, "offset", "P5", "", "");
  add_event (job, "tool", "P3", "", "");
  add_event (job, "lot", "P3", "", "");
  add_event (job, "tool", "P1", "", "");
  add_event (job, "offset", "", "", "");
  tm_series_init (&series, job, feature, 1);
  g_assert_cmpuint (series.n_events, ==, 5);
  g_assert_cmpstr (series.events[1].event->kind, ==, "tool");
  g_assert_cmpstr (series.events[2].event->kind, ==, "lot");
  g_assert_cmpuint (series.events[4].before, ==, 6);
  g_assert_cmpuint (series.n_breaks, ==, 2);
  g_assert_cmpuint (series.breaks[0], ==, 2);
  g_assert_cmpuint (series.breaks[1], ==, 4);
  g_assert_cmpuint (tm_series_stretch_start (&series, 1), ==, 0);
  g_assert_cmpuint (tm_series_stretch_start (&series, 2), ==, 2);
  g_assert_cmpuint (tm_series_stretch_end (&series, 2), ==, 4);
  g_assert_cmpuint (tm_series_stretch_end (&series, 5), ==, 6);
}

static void
test_plan (void)
{
  g_autoptr (TmJob) job = make_batch_job (5);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
  g_auto (TmSeries) series = { 0 };

  feature->check = "every 2";
  tm_series_init (&series, job, feature, 1);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpint (series.points[i].due, ==, i % 2 == 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/series/sizes", test_sizes);
  g_test_add_func ("/series/targets", test_targets);
  g_test_add_func ("/series/zero-bounded", test_zero_bounded);
  g_test_add_func ("/series/attributes", test_attributes);
  g_test_add_func ("/series/method", test_method);
  g_test_add_func ("/series/rounding", test_rounding);
  g_test_add_func ("/series/events", test_events);
  g_test_add_func ("/series/stretches", test_stretches);
  g_test_add_func ("/series/plan", test_plan);
  return g_test_run ();
}
