/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said of one feature over a batch, on invented pieces whose truth is known.
 */

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#include "series-support.h"
#include "support-csv.h"

static gsl_rng *random_source;

static void
fill (double *microns, guint n, double level, double slope, double sigma)
{
  for (guint i = 0; i < n; i++)
    microns[i] = level + slope * i + gsl_ran_gaussian (random_source, sigma);
}

static void
look (TmJob *job, TmFeature *feature, TmBatch *batch)
{
  g_assert_true (tm_batch_init (batch, job, feature, 1, NULL, NULL, NULL));
}

/* D. C. Montgomery, Introduction to Statistical Quality Control, table 6.3: no group out on either chart; the
 * limits as recomputed exactly from the printed values. */
static void
test_piston_rings (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("piston_rings.csv");
  g_autoptr (TmJob) job = make_batch_job (125);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "73.95", "74.05", "");
  g_auto (TmBatch) batch = { 0 };
  const TmChartGroup *group;

  feature->group_size = 5;
  for (guint i = 0; i < 125; i++)
    {
      g_autofree char *name = g_strdup_printf ("x%u", i % 5 + 1);
      double size = g_ascii_strtod (support_csv_get (csv, i / 5, name), NULL);

      read_piece (job, feature, i, "", round ((size - 25) * 1e6) / 1e3);
    }
  look (job, feature, &batch);
  group = &batch.chart.groups[0];
  g_assert_cmpuint (batch.chart.n_groups, ==, 25);
  assert_near (batch.chart.centre / MICRON, 1.176, 1e-6);
  assert_near (group->location_lower / MICRON, -12.229, 0.0005);
  assert_near (group->location_upper / MICRON, 14.581, 0.0005);
  assert_near (group->dispersion_upper / MICRON, 49.141, 0.0005);
  g_assert_cmpuint (batch.location_hits->len, ==, 0);
  g_assert_cmpuint (batch.dispersion_hits->len, ==, 0);
  /* As recomputed exactly from the printed values, for 73.95 to 74.05. */
  assert_near (batch.capability.cp.value, 1.66805, 1e-5);
  assert_near (batch.capability.cpk.value, 1.62882, 1e-5);
  assert_near (batch.capability.pp.value, 1.63417, 1e-5);
  assert_near (batch.capability.ppk.value, 1.59573, 1e-5);
  assert_near (batch.rules_length, 370.398, 0.001);
  g_assert_true (batch.rules_exact);
  g_assert_cmpuint (batch.chart.groups[3].from, ==, 15);
}

/* One reading, all equal, a missing piece, events at both ends, three pieces: a state, and no number that is
 * none where one is promised. */
static void
test_little (void)
{
  static const struct {
    double sizes[5];
    guint n;
    gboolean ends;
    TmBatchState state;
  } cases[] = {
    { { 0 }, 0, FALSE, TM_BATCH_NOT_MEASURED },
    { { NAN, NAN }, 2, TRUE, TM_BATCH_NOT_MEASURED },
    { { 3 }, 1, FALSE, TM_BATCH_TOO_FEW },
    { { 3, 1, 2 }, 3, FALSE, TM_BATCH_TOO_FEW },
    { { 3, 3, 3, 3, 3 }, 5, FALSE, TM_BATCH_STEADY },
    { { 1, NAN, 2, 1, 2 }, 5, FALSE, TM_BATCH_STEADY },
    { { 1, 3, 2, 1, 2 }, 5, TRUE, TM_BATCH_TOO_FEW }, /* a new stretch without a piece */
    { { 21 }, 1, FALSE, TM_BATCH_OUT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmFeature *feature;
      g_autoptr (TmJob) job = make_bore_job (cases[i].sizes, cases[i].n, &feature);
      g_auto (TmBatch) batch = { 0 };

      if (cases[i].ends)
        {
          add_event (job, "tool", "P1", "", "");
          add_event (job, "offset", "", "", "");
        }
      look (job, feature, &batch);
      g_assert_cmpint (tm_batch_state (&batch), ==, cases[i].state);
      g_assert_false (batch.forecast.given);
      g_assert_true (isnan (batch.pieces_left));
      g_assert_cmpuint (batch.hold->len, ==, 0);
      g_assert_cmpuint (batch.stretch_from, ==, cases[i].ends ? cases[i].n : 0);
      if (cases[i].n <= 2 || cases[i].ends)
        g_assert_cmpint (batch.offset.status, ==, TM_OFFSET_TOO_FEW);
    }
}

/* A bore that grows by 0.5 µm a piece with scatter 0.5: from 0 it meets 20 µm with piece 41. */
static void
test_drift (void)
{
  double sizes[20];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };

  fill (sizes, 20, 0, 0.5, 0.5);
  job = make_bore_job (sizes, 20, &feature);
  look (job, feature, &batch);
  g_assert_cmpint (tm_batch_state (&batch), ==, TM_BATCH_DRIFTING);
  g_assert_false (batch.change.found);
  g_assert_true (batch.forecast.given && batch.forecast.upper);
  assert_near (batch.forecast.at, 41, 4);
  assert_near (batch.pieces_left, batch.forecast.at - 20, 1e-9);
  g_assert_cmpfloat (batch.pieces_left_low, <, batch.pieces_left);
  g_assert_cmpfloat (batch.pieces_left_high, >, batch.pieces_left);
  g_assert_true (batch.offset.drifting);
  assert_near (batch.offset.size_change / MICRON, -9, 1.01);
  g_assert_cmpint (batch.offset.steps, ==, (gint64)(batch.offset.size_change / MICRON));
}

/* Read to a micrometre, 5 7 8 after a change lie within a step of many lines: no slope of exactly one, and of
 * three pieces no forecast however straight. */
static void
test_coarse (void)
{
  static const double coarse[] = { 3, 4, 6, 7, NAN, 5, 7, 8 }, straight[] = { 1, 3, 5 };
  static const double steep[] = { 1, 3, 5, 7, 9, 11 };
  const double *sizes[] = { coarse, straight, steep };
  static const guint n[] = { G_N_ELEMENTS (coarse), G_N_ELEMENTS (straight), G_N_ELEMENTS (steep) };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      TmFeature *feature;
      g_autoptr (TmJob) job = make_bore_job (sizes[i], n[i], &feature);
      g_auto (TmBatch) batch = { 0 };

      look (job, feature, &batch);
      g_test_message ("slope %.3f (%.3f to %.3f), p %.3g, change p %.3g", batch.trend.slope / MICRON,
                      batch.trend.slope_lower / MICRON, batch.trend.slope_upper / MICRON, batch.trend.p,
                      batch.change.p);
      g_assert_cmpfloat ((batch.trend.slope_upper - batch.trend.slope_lower) / MICRON, >, 0.2);
      g_assert_cmpint (batch.forecast.given, ==, i == 2);
    }
}

/* A gauge so coarse that its guards take the whole band: the drift is shown, and meets no end of nothing. */
static void
test_no_band (void)
{
  for (guint coarse = 0; coarse < 2; coarse++)
    {
      double sizes[20];
      g_autoptr (TmJob) job = make_batch_job (20);
      TmFeature *feature;
      g_auto (TmBatch) batch = { 0 };

      add_gauge (job, "G1", "0.001", coarse ? "0.030" : "0.002");
      add_method (job, "M", "G1", "0.0003", "20");
      feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "M");
      fill (sizes, 20, -8, 0.5, 0.5);
      for (guint i = 0; i < 20; i++)
        read_piece (job, feature, i, "", sizes[i]);
      look (job, feature, &batch);
      g_assert_cmpfloat (batch.series.guard, >, 0);
      g_assert_cmpfloat (batch.trend.p, <, 0.001);
      g_assert_cmpint (batch.forecast.given, ==, !coarse);
      g_assert_cmpint (isnan (batch.pieces_left) != 0, ==, coarse);
    }
}

/* The largest station meets the upper limit before the mean does. */
static void
test_stations (void)
{
  g_autoptr (TmJob) job = make_batch_job (12);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
  g_auto (TmBatch) batch = { 0 };

  for (guint i = 0; i < 12; i++)
    {
      read_piece (job, feature, i, "mouth", i + 4.0 + (i % 2) * 0.2);
      read_piece (job, feature, i, "bottom", i - 4.0 + (i % 2) * 0.2);
    }
  look (job, feature, &batch);
  assert_near (batch.trend.mean_y / MICRON, 5.6, 1e-6);
  assert_near (batch.forecast.at, 17, 0.2); /* mouth: i + 4 = 20 at the piece numbered i + 1 */
}

/* A shift of 8 µm before the 16th of 24 pieces, scatter 1. */
static void
test_shift (void)
{
  double sizes[24];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };

  fill (sizes, 15, 0, 0, 1);
  fill (sizes + 15, 9, 8, 0, 1);
  job = make_bore_job (sizes, 24, &feature);
  look (job, feature, &batch);
  g_assert_cmpint (tm_batch_state (&batch), ==, TM_BATCH_SHIFTED);
  g_assert_cmpuint (batch.change.at, ==, 15);
  g_assert_cmpuint (batch.change.low, <=, 15);
  assert_near (batch.change.after / MICRON, 8, 1.4);
  g_assert_cmpuint (batch.hold->len, ==, 24 - batch.change.low);
  g_assert_cmpuint (batch.trend.n, ==, 9); /* the step is no slope */
  g_assert_cmpint (batch.offset.status, ==, TM_OFFSET_ADVISED);
  assert_near (batch.offset.level / MICRON, 8, 1.5);
}

/* Wear of -0.6 µm a piece, and an insert that chipped by 10 µm before the 21st of 32. */
static void
test_both (void)
{
  double sizes[32];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };

  fill (sizes, 20, 8, -0.6, 0.5);
  fill (sizes + 20, 12, 6, -0.6, 0.5);
  job = make_bore_job (sizes, 32, &feature);
  look (job, feature, &batch);
  g_assert_cmpint (tm_batch_state (&batch), ==, TM_BATCH_SHIFTED);
  g_assert_cmpuint (batch.change.at, ==, 20);
  assert_near ((batch.change.after - batch.change.before) / MICRON, 10, 1.2);
  assert_near (batch.trend.slope / MICRON, -0.6, 0.2);
  g_assert_true (batch.forecast.given && !batch.forecast.upper);
}

/* A recorded correction begins a stretch of its own, with its own centre and no rule that speaks of it. */
static void
test_correction (void)
{
  double sizes[30];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };
  TmBatchOptions frozen = { .baseline = 15 };

  fill (sizes, 15, 9, 0, 1);
  fill (sizes + 15, 15, 0, 0, 1);
  job = make_bore_job (sizes, 30, &feature);
  add_event (job, "offset", "P16", "", "");
  look (job, feature, &batch);
  g_assert_cmpint (tm_batch_state (&batch), ==, TM_BATCH_STEADY);
  g_assert_cmpuint (batch.location_hits->len, ==, 0);
  g_assert_cmpint (batch.first_ewma, ==, -1);
  g_assert_cmpint (batch.first_cusum, ==, -1);
  g_assert_cmpuint (batch.stretch_from, ==, 15);
  assert_near (batch.chart.groups[0].location_lower + batch.chart.groups[0].location_upper, 18 * MICRON,
               1.6 * MICRON);
  assert_near (batch.chart.groups[20].location_lower + batch.chart.groups[20].location_upper, 0,
               1.6 * MICRON);
  g_assert_true (isnan (batch.chart.groups[15].dispersion)); /* no moving range over the event */

  tm_batch_clear (&batch);
  g_assert_true (tm_batch_init (&batch, job, feature, 1, &frozen, NULL, NULL));
  g_assert_cmpuint (batch.location_hits->len, >, 10); /* limits frozen before it */
}

/* Three pieces after a correction show no drift of their own; the tool wears on all the same. */
static void
test_wear_goes_on (void)
{
  double sizes[33];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 }, changed = { 0 };

  fill (sizes, 30, 0, 0.4, 1);
  fill (sizes + 30, 3, 0, 0.4, 1);
  job = make_bore_job (sizes, 33, &feature);
  add_event (job, "offset", "P31", "", "");
  look (job, feature, &batch);
  g_assert_cmpuint (batch.trend.n, ==, 3);
  g_assert_true (batch.offset.drifting);
  assert_near (batch.offset.lag / MICRON, 0.4 * 4, 0.4); /* slope (1 - λ)/λ */
  assert_near (batch.offset.level,
               (batch.series.points[30].mean + batch.series.points[31].mean + batch.series.points[32].mean)
                       / 3
                   + batch.offset.lag / 4,
               1);

  add_event (job, "tool", "P31", "", ""); /* another tool: nothing is known of it */
  look (job, feature, &changed);
  g_assert_false (changed.offset.drifting);
}

/* Every fifth piece is measured: moving ranges between those, groups of them where a group is asked for. */
static void
test_sparse (void)
{
  double sizes[60], some[60];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 }, grouped = { 0 };
  TmBatchOptions threes = { .group_size = 3 };

  fill (some, 60, 0, 0, 1);
  for (guint i = 0; i < 60; i++)
    sizes[i] = i % 5 == 0 ? some[i] : NAN;
  job = make_bore_job (sizes, 60, &feature);
  look (job, feature, &batch);
  g_assert_cmpint (batch.chart.status, ==, TM_CHART_OK);
  g_assert_cmpuint (batch.chart.n_groups, ==, 12);
  g_assert_cmpuint (batch.chart.groups[2].from, ==, 10);
  g_assert_true (tm_batch_init (&grouped, job, feature, 1, &threes, NULL, NULL));
  g_assert_cmpint (grouped.chart.status, ==, TM_CHART_OK);
  g_assert_cmpuint (grouped.chart.n_groups, ==, 4);
  g_assert_cmpuint (grouped.chart.groups[1].from, ==, 15);
}

/* A piece of a group that was not measured leaves its group smaller and the next one where it was. */
static void
test_gap (void)
{
  double sizes[12];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };

  fill (sizes, 12, 0, 0, 1);
  sizes[4] = NAN;
  job = make_bore_job (sizes, 12, &feature);
  feature->group_size = 3;
  look (job, feature, &batch);
  g_assert_cmpuint (batch.chart.n_groups, ==, 4);
  g_assert_cmpuint (batch.chart.groups[1].n, ==, 2);
  g_assert_cmpuint (batch.chart.groups[2].from, ==, 6);
  /* Exact: the first group's variance λ² σ²/3, the second's from it. */
  assert_near (batch.ewma[1].upper - batch.ewma[1].lower,
               2 * TM_BATCH_EWMA_REACH * batch.chart.sigma * 0.2 * sqrt (0.64 / 3 + 0.5), 1);
}

static void
test_rules (void)
{
  static const double sizes[] = { 3, 4, 3, 4, 3, 4, 3, 4, 6, 7, 6, 7, 6, 7, 6, 7 };
  TmFeature *feature;
  g_autoptr (TmJob) job = make_bore_job (sizes, 16, &feature);
  g_auto (TmBatch) batch = { 0 };
  TmBatchOptions options = { .rules = TM_RULE_BIT (TM_RULE_9_ONE_SIDE), .step = 5 };

  feature->chart_rules = "8-one-side no-such-rule beyond-3s";
  look (job, feature, &batch);
  g_assert_cmpuint (batch.options.rules, ==,
                    TM_RULE_BIT (TM_RULE_8_ONE_SIDE) | TM_RULE_BIT (TM_RULE_BEYOND_3S));
  assert_near (batch.rules_length, 152.730, 0.001); /* C. W. Champ, W. H. Woodall, Technometrics 29 (1987) */
  g_assert_cmpuint (batch.location_hits->len, ==, 2);
  g_assert_true (batch.signalled);
  tm_batch_clear (&batch);
  g_assert_true (tm_batch_init (&batch, job, feature, 1, &options, NULL, NULL));
  g_assert_cmpuint (batch.location_hits->len, ==, 0);
  g_assert_cmpint (batch.options.step, ==, 5);
}

/* A tool that wears and is set back: all pieces spread much, each stretch about its line little.  Of 200
 * pieces of scatter 1 the deviation has a standard error of 5 %: four of them. */
static void
test_capability_apart (void)
{
  double sizes[200];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };

  for (guint i = 0; i < 4; i++)
    fill (sizes + 50 * i, 50, -6, 0.25, 1);
  job = make_bore_job (sizes, 200, &feature);
  add_event (job, "offset", "P51", "", "");
  add_event (job, "offset", "P101", "", "");
  add_event (job, "tool", "P151", "", "");
  look (job, feature, &batch);
  assert_near (batch.capability.overall / MICRON, sqrt (1 + 2500 * 0.0625 / 12), 0.4);
  assert_near (batch.capability_apart.overall / MICRON, 1, 0.2);
  assert_near (batch.capability_apart.mean, batch.capability.mean, 1);
  assert_near (batch.capability_apart.pp.value, 40.0 / 6, 1.4);
  g_assert_true (isnan (batch.capability.pp.value)
                 || batch.capability.pp.value < 3);  /* even wear is no normal scatter */
  g_assert_true (isnan (batch.capability.cm.value)); /* a drifting process has no machine capability */
}

/* Machine capability is of consecutive pieces: not of every second one, nor over an event. */
static void
test_machine (void)
{
  for (guint i = 0; i < 3; i++)
    {
      double sizes[120];
      TmFeature *feature;
      g_autoptr (TmJob) job = NULL;
      g_auto (TmBatch) batch = { 0 };

      for (guint k = 0; k < 120; k++) /* level, and as even as can be */
        sizes[k] = i == 1 && k % 2 == 1
                       ? NAN
                       : tm_shape_quantile (&(TmFittedShape) { .b = 1 }, ((k * 37) % 120 + 0.5) / 120);
      job = make_bore_job (sizes, 120, &feature);
      if (i == 2)
        add_event (job, "lot", "P61", "", "");
      look (job, feature, &batch);
      g_assert_cmpint (batch.capability.status, ==, TM_CAPABLE_OK);
      g_assert_false (isnan (batch.capability.pp.value));
      g_assert_cmpint (isnan (batch.capability.cm.value) != 0, ==, i > 0);
    }
}

/* Nor of pieces that drifted, whether or not an event after the last of them has begun a stretch without any.
 */
static void
test_machine_before_event (void)
{
  for (guint i = 0; i < 4; i++)
    {
      const gboolean drifts = i % 2 == 1, ended = i >= 2;
      double sizes[120];
      TmFeature *feature;
      g_autoptr (TmJob) job = NULL;
      g_auto (TmBatch) batch = { 0 };

      for (guint k = 0; k < 120; k++)
        sizes[k] = tm_shape_quantile (&(TmFittedShape) { .b = 1 }, ((k * 37) % 120 + 0.5) / 120)
                   + (drifts ? 0.0125 * k : 0);
      job = make_bore_job (sizes, 120, &feature);
      if (ended)
        add_event (job, "tool", "", "", "");
      look (job, feature, &batch);
      g_assert_cmpuint (batch.stretch_from, ==, ended ? 120 : 0);
      g_assert_cmpint (batch.drifted, ==, drifts && ended);
      g_assert_false (isnan (batch.capability.pp.value));
      g_assert_cmpint (isnan (batch.capability.cm.value) != 0, ==, drifts);
      g_assert_cmpint (isnan (batch.capability.cmk.value) != 0, ==, drifts);
    }
}

/* A shift within the stretch is no scatter of the pieces: four standard errors of 80 pieces are 32 %. */
static void
test_shift_apart (void)
{
  double sizes[80];
  TmFeature *feature;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmBatch) batch = { 0 };

  fill (sizes, 40, 0, 0, 1);
  fill (sizes + 40, 40, 8, 0, 1);
  job = make_bore_job (sizes, 80, &feature);
  look (job, feature, &batch);
  g_assert_true (batch.change.found);
  g_assert_cmpfloat (batch.capability.overall / MICRON, >, 3);
  assert_near (batch.capability_apart.overall / MICRON, 1, 0.32);
}

static gboolean
count_down_cb (gpointer data)
{
  guint *left = data;

  return (*left)-- == 0;
}

static void
test_cancelled (void)
{
  static const double sizes[] = { 1, 2, 1, 2, 1 };
  TmFeature *feature;
  g_autoptr (TmJob) job = make_bore_job (sizes, 5, &feature);

  for (guint asked = 0; asked < 4; asked++)
    {
      guint left = asked;
      TmBatch batch;

      g_assert_false (tm_batch_init (&batch, job, feature, 1, NULL, count_down_cb, &left));
      g_assert_null (batch.series.points);
      g_assert_null (batch.chart.groups);
    }
}

/* -------- Anything that may come -------- */

static guint
draw (guint n)
{
  return (guint)gsl_rng_uniform_int (random_source, n);
}

/* Up to 60 pieces: level, drift, steps, ties, gaps, wild ones, read in steps from coarse to fine. */
static guint
draw_sizes (double *sizes)
{
  static const double steps[] = { 5, 1, 0.1, 1e-4 };
  const guint n = draw (61);
  const double step = steps[draw (4)], scatter = draw (4) * 1.5, slope = draw (3) * 0.3 - 0.3;
  const guint gap = 2 + draw (8), jump = draw (61);

  for (guint i = 0; i < n; i++)
    {
      double size = slope * i + gsl_ran_gaussian (random_source, scatter) + (i >= jump ? 6 : 0);

      if (draw (50) == 0)
        size *= 1000;
      sizes[i] = i % gap == 1 ? NAN : step * round (size / step);
    }
  return n;
}

static void
add_some_events (TmJob *job, guint n)
{
  static const char *const kinds[] = { "tool", "offset", "lot", "other" };

  for (guint left = draw (5); left > 0; left--)
    {
      g_autofree char *before = g_strdup_printf ("P%u", 1 + draw (n + 1));

      add_event (job, kinds[draw (4)], draw (6) == 0 ? "" : before, "", "");
    }
}

static void
assert_index (const TmIndex *index)
{
  if (isnan (index->value))
    g_assert_true (isnan (index->low) && isnan (index->high));
  else
    {
      g_assert_cmpfloat (index->low, <=, index->value);
      g_assert_cmpfloat (index->value, <=, index->high);
    }
}

static void
assert_sane (const TmBatch *batch)
{
  const TmCapability *c = &batch->capability;
  const TmIndex *indexes[] = { &c->cp, &c->cpk, &c->pp, &c->ppk, &c->cpm, &c->cm, &c->cmk };

  for (guint i = 0; i < G_N_ELEMENTS (indexes); i++)
    assert_index (indexes[i]);
  g_assert_cmpint (batch->forecast.given, ==, !isnan (batch->pieces_left));
  if (batch->forecast.given)
    {
      g_assert_cmpfloat (batch->pieces_left_low, >=, 0);
      g_assert_cmpfloat (batch->pieces_left_low, <=, batch->pieces_left);
      g_assert_cmpfloat (batch->pieces_left, <=, batch->pieces_left_high);
      g_assert_cmpfloat (batch->forecast.single, <=, batch->forecast.at + 1e-6);
    }
  for (guint i = 0; i < batch->hold->len; i++)
    {
      const TmHoldRow *row = &g_array_index (batch->hold, TmHoldRow, i);

      g_assert_true (row->out >= 0 && row->out <= 1);
      g_assert_cmpuint (row->point, <, batch->series.n_points);
    }
  g_assert_cmpint (batch->offset.steps != 0, ==, batch->offset.status == TM_OFFSET_ADVISED);
  if (batch->offset.status == TM_OFFSET_ADVISED)
    g_assert_true ((batch->offset.size_change > 0) == (batch->offset.level < batch->series.target));
  g_assert_cmpint (tm_batch_state (batch), <, TM_N_BATCH_STATES);
}

/* Whatever is read, the library never gives up (which would end this test) and what is said holds together.
 */
static void
test_anything (void)
{
  for (guint run = 0; run < 300; run++)
    {
      double sizes[60];
      const guint n = draw_sizes (sizes);
      const TmBatchOptions options = { .group_size = draw (7), .baseline = draw (4), .rules = 1 + draw (15) };
      TmFeature *feature;
      g_autoptr (TmJob) job = make_bore_job (sizes, n, &feature);
      g_auto (TmBatch) batch = { 0 };

      add_some_events (job, n);
      add_gauge (job, "G1", "0.001", draw (2) ? "0.030" : "0.002");
      add_method (job, "M", "G1", draw (2) ? "0.0030" : "0.0003", "20");
      feature->method = draw (3) == 0 ? "" : "M";
      if (draw (4) == 0)
        feature->lower.given = FALSE;
      g_assert_true (tm_batch_init (&batch, job, feature, 1, &options, NULL, NULL));
      assert_sane (&batch);
    }
}

typedef struct {
  guint steady, drifting, shifted;
} Tally;

static Tally
simulate (guint runs, guint n, double slope, double shift, guint shift_at)
{
  const TmBatchOptions brief = { .brief = TRUE };
  Tally tally = { 0 };

  for (guint run = 0; run < runs; run++)
    {
      g_autofree double *sizes = g_new (double, n);
      TmFeature *feature;
      g_autoptr (TmJob) job = NULL;
      g_auto (TmBatch) batch = { 0 };

      fill (sizes, n, 0, slope, 1);
      for (guint i = shift_at; i < n; i++)
        sizes[i] += shift;
      job = make_bore_job (sizes, n, &feature);
      g_assert_true (tm_batch_init (&batch, job, feature, 1, &brief, NULL, NULL));
      g_assert_cmpint (batch.capability.status, ==, TM_CAPABLE_TOO_FEW);
      if (batch.change.found)
        tally.shifted++;
      else if (batch.trend.p <= 0.05)
        tally.drifting++;
      else
        tally.steady++;
    }
  return tally;
}

/* A steady process is called steady, a drift a drift and a shift a shift.  Bounds: the 5 % of each test, and
 * four standard errors of 300 runs. */
static void
test_telling_apart (void)
{
  Tally steady = simulate (300, 30, 0, 0, 0), drift = simulate (300, 30, 0.2, 0, 0);
  Tally middle = simulate (300, 30, 0, 4, 15), late = simulate (300, 30, 0, 5, 25);

  g_test_message ("steady %u %u %u, drift %u %u %u, shift %u %u %u, late %u %u %u", steady.steady,
                  steady.drifting, steady.shifted, drift.steady, drift.drifting, drift.shifted, middle.steady,
                  middle.drifting, middle.shifted, late.steady, late.drifting, late.shifted);
  g_assert_cmpuint (steady.steady, >=, 255);
  g_assert_cmpuint (drift.drifting, >=, 270);
  g_assert_cmpuint (middle.shifted, >=, 285);
  g_assert_cmpuint (late.shifted, >=, 285);
}

int
main (int argc, char *argv[])
{
  int result;

  g_test_init (&argc, &argv, NULL);
  random_source = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_rng_set (random_source, 7);
  g_test_add_func ("/batch/piston-rings", test_piston_rings);
  g_test_add_func ("/batch/little", test_little);
  g_test_add_func ("/batch/drift", test_drift);
  g_test_add_func ("/batch/coarse", test_coarse);
  g_test_add_func ("/batch/no-band", test_no_band);
  g_test_add_func ("/batch/stations", test_stations);
  g_test_add_func ("/batch/shift", test_shift);
  g_test_add_func ("/batch/both", test_both);
  g_test_add_func ("/batch/correction", test_correction);
  g_test_add_func ("/batch/wear-goes-on", test_wear_goes_on);
  g_test_add_func ("/batch/sparse", test_sparse);
  g_test_add_func ("/batch/gap", test_gap);
  g_test_add_func ("/batch/rules", test_rules);
  g_test_add_func ("/batch/capability-apart", test_capability_apart);
  g_test_add_func ("/batch/machine", test_machine);
  g_test_add_func ("/batch/machine-before-event", test_machine_before_event);
  g_test_add_func ("/batch/shift-apart", test_shift_apart);
  g_test_add_func ("/batch/cancelled", test_cancelled);
  g_test_add_func ("/batch/telling-apart", test_telling_apart);
  g_test_add_func ("/batch/anything", test_anything);
  result = g_test_run ();
  gsl_rng_free (random_source);
  return result;
}
