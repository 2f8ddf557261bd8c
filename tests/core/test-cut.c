/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The belief of a run of cuts against a dense least-squares solution of the whole record at once, and against
 * published worked filters; the chances against simulated draws; the plan's promises.
 */

#include <gsl/gsl_blas.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core-cut-private.h"
#include "judge-support.h"
#include "support-csv.h"

#define UM 1e6

/* -------- A record made up at random, and its dense solution -------- */

#define MOST_EVENTS 24

typedef struct {
  gboolean is_cut;
  guint station, method;
  double value; /* reading, or change */
  double own;
} Event;

typedef struct {
  guint n_stations, n_cuts, n_events;
  double shared[2];
  Event events[MOST_EVENTS];
} Record;

/* Not a simulation: any numbers will do, as long as every station is read once. */
static void
make_record (gsl_rng *rng, Record *record)
{
  *record = (Record) { .n_stations = 1 + (guint)gsl_rng_uniform_int (rng, 3), .n_events = 14 };
  record->shared[0] = 2 * UM;
  record->shared[1] = 0.7 * UM;
  for (guint i = 0; i < record->n_events; i++)
    {
      Event *event = &record->events[i];

      event->is_cut = i >= record->n_stations && gsl_rng_uniform (rng) < 0.3;
      event->station = i < record->n_stations ? i : (guint)gsl_rng_uniform_int (rng, record->n_stations);
      event->method = (guint)gsl_rng_uniform_int (rng, 2);
      event->own = (0.5 + gsl_rng_uniform (rng)) * UM;
      event->value = event->is_cut ? 40 * gsl_rng_uniform (rng) * UM : 60 * gsl_rng_uniform (rng) * UM;
      record->n_cuts += event->is_cut;
    }
}

/* Unknowns in one vector: b, two biases, the first size at each station (of which nothing is known), e of
 * each cut.  A reading is a row of this model; the size now is a row of the same form. */
typedef struct {
  gsl_matrix *information;
  gsl_vector *right;
  gsl_vector *row;
  double constant; /* -2 log of the density, less what does not depend on s_e */
  double square;
} Dense;

static guint
count_unknowns (const Record *record)
{
  return 3 + record->n_stations + record->n_cuts;
}

static void
fill_row (const Record *record, guint until, guint station, gboolean grows, gsl_vector *row)
{
  double sign = grows ? 1 : -1;
  guint cut = 0;

  gsl_vector_set_zero (row);
  gsl_vector_set (row, 3 + station, 1);
  for (guint i = 0; i < until; i++)
    if (record->events[i].is_cut)
      {
        *gsl_vector_ptr (row, 0) += sign * record->events[i].value;
        gsl_vector_set (row, 3 + record->n_stations + cut++, sign);
      }
}

static void
add_row (Dense *dense, double value, double sd)
{
  gsl_blas_dger (1 / (sd * sd), dense->row, dense->row, dense->information);
  gsl_blas_daxpy (value / (sd * sd), dense->row, dense->right);
  dense->square += value * value / (sd * sd);
  dense->constant += 2 * log (sd);
}

static void
add_prior (Dense *dense, guint at, double mean, double sd)
{
  gsl_vector_set_zero (dense->row);
  gsl_vector_set (dense->row, at, 1);
  add_row (dense, mean, sd);
}

static void
fill_dense (const Record *record, gboolean grows, double scatter, Dense *dense)
{
  guint n = count_unknowns (record);

  *dense = (Dense) { gsl_matrix_calloc (n, n), gsl_vector_calloc (n), gsl_vector_calloc (n), 0, 0 };
  add_prior (dense, 0, 1, TM_CUT_RESPONSE_SD);
  for (guint m = 0; m < 2; m++)
    add_prior (dense, 1 + m, 0, record->shared[m]);
  for (guint i = 0; i < record->n_cuts; i++)
    add_prior (dense, 3 + record->n_stations + i, 0, scatter);
  for (guint i = 0; i < record->n_events; i++)
    if (!record->events[i].is_cut)
      {
        fill_row (record, i, record->events[i].station, grows, dense->row);
        gsl_vector_set (dense->row, 1 + record->events[i].method, 1);
        add_row (dense, record->events[i].value, record->events[i].own);
      }
}

/* Mean and standard deviation of the size at @station now, and -2 log of the density of all readings. */
static void
solve_dense (const Record *record, gboolean grows, double scatter, guint station, double *mean, double *sd,
             double *density)
{
  guint n = count_unknowns (record);
  Dense dense;
  gsl_vector *solution = gsl_vector_alloc (n), *scale = gsl_vector_alloc (n);
  double determinant = 0, explained;

  fill_dense (record, grows, scatter, &dense);
  gsl_linalg_cholesky_decomp2 (dense.information, scale);
  gsl_linalg_cholesky_solve2 (dense.information, scale, dense.right, solution);
  for (guint i = 0; i < n; i++)
    determinant += 2 * log (gsl_matrix_get (dense.information, i, i) / gsl_vector_get (scale, i));
  gsl_blas_ddot (dense.right, solution, &explained);
  *density = dense.constant + determinant + dense.square - explained;
  fill_row (record, record->n_events, station, grows, dense.row);
  gsl_blas_ddot (dense.row, solution, mean);
  gsl_linalg_cholesky_solve2 (dense.information, scale, dense.row, solution);
  gsl_blas_ddot (dense.row, solution, sd);
  *sd = sqrt (*sd);
  gsl_matrix_free (dense.information);
  gsl_vector_free (dense.right);
  gsl_vector_free (dense.row);
  gsl_vector_free (solution);
  gsl_vector_free (scale);
}

static TmCutBelief *
filter_record (const Record *record, gboolean grows)
{
  TmCutBelief *belief = tm_cut_belief_new (record->n_stations, grows);

  for (guint i = 0; i < record->n_events; i++)
    {
      const Event *event = &record->events[i];

      if (event->is_cut)
        tm_cut_belief_cut (belief, event->value);
      else
        tm_cut_belief_read (belief, event->station, event->method, event->value, event->own,
                            record->shared[event->method]);
    }
  return belief;
}

/* Every node on its own, and how the nodes are weighed: log w = -t²/2 + log density.  The dense solution
 * squares numbers of 1e8 and solves for them at once, so it keeps about 1e-7 of them. */
static void
test_dense (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);

  for (guint round = 0; round < 30; round++)
    {
      gboolean grows = round % 2 == 0;
      Record record;
      g_autoptr (TmCutBelief) belief = NULL;
      double first = 0;

      make_record (rng, &record);
      belief = filter_record (&record, grows);
      for (guint j = 0; j < TM_CUT_NODES; j++)
        for (guint k = 0; k < record.n_stations; k++)
          {
            const TmCutNode *node = &belief->nodes[j];
            guint at = TM_CUT_AT_STATION (k);
            double t = TM_CUT_NODE_STEP * (j - (TM_CUT_NODES - 1) / 2.0), mean, sd, density, difference;

            solve_dense (&record, grows, node->scatter, k, &mean, &sd, &density);
            assert_near (grows ? node->mean[at] : -node->mean[at], mean, 1e-4 * UM);
            assert_near (sqrt (node->covariance[at * (belief->n + 1)]), sd, 1e-4 * UM);
            difference = node->log_weight + t * t / 2 + density / 2;
            if (j == 0 && k == 0)
              first = difference;
            assert_near (difference, first, 1e-4 * MAX (1, fabs (density)));
          }
    }
  gsl_rng_free (rng);
}

/* -------- Published filters -------- */

/* A. Becker, "Kalman Filter in one dimension" (kalmanfilter.net): height of a building, guessed as 60 m with
 * a variance of 225 m²; ten measurements of variance 25 m² (his list) give 49.57 m and 2.47 m² (his result,
 * from memory). */
static void
test_published_constant (void)
{
  static const double measured[] = { 48.54, 47.11, 55.01, 55.15, 49.89, 40.85, 46.72, 50.05, 51.27, 49.95 };
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);
  double size, u;

  tm_cut_belief_read (belief, 0, 0, 60 * 1e9, 15 * 1e9, 0);
  for (guint i = 0; i < G_N_ELEMENTS (measured); i++)
    tm_cut_belief_read (belief, 0, 0, measured[i] * 1e9, 5 * 1e9, 0);
  tm_cut_belief_size (belief, 0, &size, &u);
  assert_near (size / 1e9, 49.57, 0.005);
  assert_near (u * u / 1e18, 2.47, 0.005);
}

/* Readings at one station by methods without a bias are a weighted mean: D. L. Duewer, Accred. Qual. Assur.
 * 13 (2008), table 1; mean and uncertainty as in test-weighted.c. */
static void
test_published_mean (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("weighted_mean_duewer.csv");
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);
  double size, u;

  for (guint i = 0; i < csv->rows->len; i++)
    {
      char **row = g_ptr_array_index (csv->rows, i);

      tm_cut_belief_read (belief, 0, 0, g_ascii_strtod (row[0], NULL) * 1e9,
                          g_ascii_strtod (row[1], NULL) * 1e9, 0);
    }
  tm_cut_belief_size (belief, 0, &size, &u);
  assert_near (size / 1e9, 103.187909322, 1e-8);
  assert_near (u / 1e9, 0.123215654, 1e-8);
}

/* -------- Bias and priors -------- */

/* The bias of the method is in every size and in no difference: the response comes out the same to the last
 * digit that a double holds of it, however large the bias may be. */
static void
test_bias_cancels (void)
{
  TmCutResponse plain, biased;

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);
      double shared = i == 0 ? 0 : 10 * UM;

      tm_cut_belief_read (belief, 0, 0, 0, 0.5 * UM, shared);
      tm_cut_belief_cut (belief, 100 * UM);
      tm_cut_belief_read (belief, 0, 0, 90 * UM, 0.5 * UM, shared);
      tm_cut_belief_response (belief, i == 0 ? &plain : &biased);
    }
  assert_near (plain.factor, biased.factor, 1e-12);
  assert_near (plain.factor_sd, biased.factor_sd, 1e-12);
  assert_near (plain.scatter, biased.scatter, 1e-3);
  g_assert_cmpuint (biased.n_answers, ==, 1);
  g_assert_cmpfloat (biased.factor, <, 1);
}

static void
test_priors (void)
{
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);
  TmCutResponse response;

  tm_cut_belief_response (belief, &response);
  assert_near (response.factor, 1, 1e-12);
  assert_near (response.factor_sd, TM_CUT_RESPONSE_SD, 1e-12);
  /* A log-normal's middle 95 %: median times factor to the ±1.96; a step of the grid is a tenth of that. */
  assert_near (response.scatter / 5e6, 1, 0.01);
  assert_near (log2 (response.scatter_high / 5e6), 1.96, 0.06);
  assert_near (log2 (response.scatter_low / 5e6), -1.96, 0.06);
  g_assert_cmpuint (response.n_answers, ==, 0);
  g_assert_false (tm_cut_belief_has_size (belief));
}

/* Many answers of a tool replace what was assumed: factor 0.95 with a scatter of 2 µm. */
static void
test_learns (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);
  TmCutResponse response;

  for (guint i = 0; i < 40; i++)
    {
      TmCutAnswer answer = { 100 * UM, 95 * UM + gsl_ran_gaussian (rng, 2 * UM), 0 };

      tm_cut_belief_learn (belief, &answer);
    }
  tm_cut_belief_response (belief, &response);
  assert_near (response.factor, 0.95, 0.01); /* 3 standard errors: 3·2/(100·√40) */
  assert_near (log2 (response.scatter / (2 * UM)), 0, 0.5);
  g_assert_cmpfloat (response.scatter_high, <, 5 * UM);
  g_assert_cmpuint (response.n_answers, ==, 40);
  gsl_rng_free (rng);
}

/* -------- Chances -------- */

/* Shares of @n draws from the belief after a cut. */
static void
draw_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, guint n, gsl_rng *rng,
             TmCutShares *out)
{
  double weights[TM_CUT_NODES];
  gsl_ran_discrete_t *nodes;
  guint m = belief->n;
  gsl_matrix *roots[TM_CUT_NODES];
  gsl_vector *normal = gsl_vector_alloc (m);

  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      weights[j] = belief->nodes[j].weight;
      roots[j] = gsl_matrix_alloc (m, m);
      for (guint i = 0; i < m * m; i++)
        gsl_matrix_set (roots[j], i / m, i % m,
                        belief->nodes[j].covariance[i] + (i / m == i % m && i > 0 ? 1 : 0));
      gsl_linalg_cholesky_decomp1 (roots[j]);
    }
  nodes = gsl_ran_discrete_preproc (TM_CUT_NODES, weights);
  *out = (TmCutShares) { 0, 0, 0 };
  for (guint i = 0; i < n; i++)
    {
      gsize j = gsl_ran_discrete (rng, nodes);
      const TmCutNode *node = &belief->nodes[j];
      double shift = gsl_ran_gaussian (rng, target->mate_u), e = gsl_ran_gaussian (rng, node->scatter);
      double near = MAX (target->drawing.near, target->mate.near + shift);
      double far = MIN (target->drawing.far, target->mate.far + shift);
      gboolean gone = FALSE, left = FALSE;

      for (guint k = 0; k < m; k++)
        gsl_vector_set (normal, k, gsl_ran_gaussian_ziggurat (rng, 1));
      gsl_blas_dtrmv (CblasLower, CblasNoTrans, CblasNonUnit, roots[j], normal);
      for (guint a = 0; a < belief->n_read; a++)
        {
          guint at = TM_CUT_AT_STATION (belief->read_stations[a]);
          double size = node->mean[at] + gsl_vector_get (normal, at)
                        + (node->mean[0] + gsl_vector_get (normal, 0)) * change + (change > 0 ? e : 0);

          gone = gone || size > far;
          left = left || size < near;
        }
      out->gone += gone;
      out->left += !gone && left;
    }
  out->gone /= n;
  out->left /= n;
  out->in = 1 - out->gone - out->left;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    gsl_matrix_free (roots[j]);
  gsl_vector_free (normal);
  gsl_ran_discrete_free (nodes);
}

/* How the stations were read: @uneven reads some of them before the cut alone, some by another method, so
 * that what they share is no longer one thing. */
static TmCutBelief *
make_belief (guint n_stations, double shared, double own, gboolean uneven)
{
  TmCutBelief *belief = tm_cut_belief_new (n_stations, TRUE);

  for (guint k = 0; k < n_stations; k++)
    tm_cut_belief_read (belief, k, 0, (-80 + 3.0 * k) * UM, own, shared);
  tm_cut_belief_cut (belief, 60 * UM);
  for (guint k = 0; k < n_stations; k++)
    if (!uneven || k % 2 == 0)
      tm_cut_belief_read (belief, k, uneven && k % 4 == 0, (-20 + 3.0 * k) * UM, own, shared);
  return belief;
}

/* Four standard errors of 100,000 draws are at most 0.0063; so far below them that it does not show lies what
 * the one common part leaves out where stations were read unevenly. */
static void
test_chances (void)
{
  static const struct {
    guint n;
    double shared, own, change, mate_u;
    gboolean uneven;
  } rows[] = {
    { 1, 2, 1, 20, 0, FALSE },   { 2, 2, 1, 22, 0, FALSE },     { 4, 2, 0.5, 20, 0, FALSE },
    { 4, 0, 3, 18, 0, FALSE },   { 3, 3, 0.001, 18, 0, FALSE }, { 3, 1, 1, 20, 2, FALSE },
    { 8, 2, 1.5, 12, 0, FALSE }, { 4, 2, 1, 20, 0, TRUE },      { 2, 4, 1, 22, 0, TRUE },
    { 6, 1, 2, 12, 3, TRUE },    { 3, 2, 1, 0, 0, FALSE },      { 12, 1, 0.5, 5, 0, FALSE },
  };
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (TmCutBelief) belief
          = make_belief (rows[i].n, rows[i].shared * UM, rows[i].own * UM, rows[i].uneven);
      TmCutBand band = { 0, 21 * UM, -INFINITY, INFINITY, 0 };
      TmCutTarget target;
      TmCutShares shares, drawn;
      const double allowed = 0.0063;

      if (rows[i].mate_u > 0)
        band = (TmCutBand) { 0, 21 * UM, 2 * UM, 15 * UM, rows[i].mate_u * UM };
      target = tm_cut_target (belief, &band);
      tm_cut_shares (belief, &target, rows[i].change * UM, 0, &shares);
      draw_shares (belief, &target, rows[i].change * UM, 100000, rng, &drawn);
      g_test_message ("row %d: gone %.4f, drawn %.4f; left %.4f, drawn %.4f", (int)i, shares.gone, drawn.gone,
                      shares.left, drawn.left);
      assert_near (shares.gone, drawn.gone, allowed);
      assert_near (shares.left, drawn.left, allowed);
      assert_near (shares.in, drawn.in, allowed);
      assert_near (shares.gone + shares.left + shares.in, 1, 1e-12);
      assert_near (tm_cut_share_gone (belief, &target, rows[i].change * UM), shares.gone, 1e-12);
    }
  gsl_rng_free (rng);
}

/* -------- The quadrature -------- */

typedef struct {
  const TmCutSpread *spread;
  double limit;
} Beyond;

static double
beyond_integrand_cb (double z, void *data)
{
  const Beyond *self = data;
  double none = 1;

  for (guint k = 0; k < self->spread->n; k++)
    none *= gsl_cdf_ugaussian_P ((self->limit - self->spread->mean[k] - self->spread->common[k] * z)
                                 / self->spread->own[k]);
  return (1 - none) * gsl_ran_ugaussian_pdf (z);
}

/* The chance of metal gone against GSL's adaptive quadrature of the same integral: what the fixed points, the
 * tails and the stations left out cost is a share of 1e-3 of it, and 1e-6. */
static void
test_quadrature (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_integration_workspace *room = gsl_integration_workspace_alloc (1000);

  for (guint round = 0; round < 400; round++)
    {
      TmCutSpread spread = { .n = 1 + (guint)gsl_rng_uniform_int (rng, 6) };
      TmCutLimits limits = { -INFINITY, 30 * gsl_rng_uniform (rng) };
      Beyond beyond = { &spread, limits.far };
      gsl_function function = { beyond_integrand_cb, &beyond };
      double common = 0.1 + 8 * gsl_rng_uniform (rng), own = exp (log (20) * (gsl_rng_uniform (rng) * 2 - 1));
      double wanted, error, gone;

      for (guint k = 0; k < spread.n; k++)
        {
          spread.mean[k] = 6 * gsl_rng_uniform (rng);
          spread.common[k] = common * (0.8 + 0.4 * gsl_rng_uniform (rng));
          spread.own[k] = own * (0.8 + 0.4 * gsl_rng_uniform (rng));
        }
      gsl_integration_qag (&function, -9, 9, 1e-12, 1e-9, 1000, GSL_INTEG_GAUSS31, room, &wanted, &error);
      tm_cut_spread_chances (&spread, &limits, &gone, NULL);
      assert_near (gone, wanted, 1e-3 * wanted + 1e-6);
    }
  gsl_integration_workspace_free (room);
  gsl_rng_free (rng);
}

/* -------- The plan -------- */

static TmCutWish
make_wish (double risk)
{
  return (TmCutWish) {
    .band = { 0, 21 * UM, -INFINITY, INFINITY, 0 },
    .step = 2 * UM,
    .least = 2 * UM,
    .risk = risk,
    .next_own = 0.5 * UM,
    .next_shared = 1 * UM,
    .guard = 2 * UM,
    .further = 1,
  };
}

static void
assert_finite (const TmCutPlan *plan)
{
  const double numbers[] = {
    plan->change, plan->predicted,  plan->predicted_u,  plan->second,
    plan->value,  plan->chances.in, plan->chances.left, plan->chances.gone,
    plan->now.in, plan->now.left,   plan->now.gone,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    g_assert_true (isfinite (numbers[i]));
}

static void
read_all (TmCutBelief *belief, guint n, double size, double own, double shared)
{
  for (guint k = 0; k < n; k++)
    tm_cut_belief_read (belief, k, 0, size, own, shared);
}

/* Whole steps, and never more than the risk: one step more would be. */
static void
test_risk (void)
{
  static const double risks[] = { 1e-4, 1e-3, 0.01, 0.05, 0.2 };
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (2, TRUE);
  double before = 0;

  read_all (belief, 2, -200 * UM, 0.5 * UM, 1 * UM);
  for (gsize i = 0; i < G_N_ELEMENTS (risks); i++)
    {
      TmCutWish wish = make_wish (risks[i]);
      TmCutPlan plan, more;

      tm_cut_plan (belief, &wish, &plan);
      assert_finite (&plan);
      g_assert_true (plan.status == TM_CUT_OK || plan.status == TM_CUT_PROVE);
      assert_near (fmod (plan.change, wish.step), 0, 1e-6);
      g_assert_cmpfloat (plan.chances.gone, <=, risks[i]);
      g_assert_cmpfloat (plan.change, >=, before);
      tm_cut_try (belief, &wish, plan.change, &more);
      assert_near (more.chances.gone, plan.chances.gone, 1e-12);
      assert_near (more.predicted, plan.predicted, 1e-3);
      tm_cut_try (belief, &wish, plan.change + wish.step, &more);
      g_assert_cmpfloat (more.chances.gone, >, plan.chances.gone);
      before = plan.change;
    }
}

/* A shaft is a bore with its sign changed. */
static void
test_mirror (void)
{
  g_autoptr (TmCutBelief) bore = tm_cut_belief_new (2, TRUE);
  g_autoptr (TmCutBelief) shaft = tm_cut_belief_new (2, FALSE);
  TmCutWish wish = make_wish (0.01);
  TmCutPlan grown, shrunk;

  for (guint k = 0; k < 2; k++)
    {
      tm_cut_belief_read (bore, k, 0, (-60 + 4.0 * k) * UM, 0.5 * UM, UM);
      tm_cut_belief_read (shaft, k, 0, (60 - 4.0 * k) * UM, 0.5 * UM, UM);
    }
  tm_cut_plan (bore, &wish, &grown);
  wish.band = (TmCutBand) { -21 * UM, 0, -INFINITY, INFINITY, 0 };
  tm_cut_plan (shaft, &wish, &shrunk);
  assert_near (grown.change, shrunk.change, 1e-6);
  assert_near (grown.predicted, -shrunk.predicted, 1e-3);
  assert_near (grown.chances.gone, shrunk.chances.gone, 1e-12);
  assert_near (grown.chances.proven, shrunk.chances.proven, 1e-12);
}

static void
test_statuses (void)
{
  static const struct {
    double size, own, shared, lower, upper, least;
    TmCutStatus status;
  } rows[] = {
    { 10, 0.5, 1, 0, 21, 2, TM_CUT_NOTHING_LEFT },
    { 40, 0.5, 1, 0, 21, 2, TM_CUT_METAL_GONE },
    { -60, 0.5, 40, 0, 21, 2, TM_CUT_TOO_COARSE },
    { -30, 0.5, 1, 0, 60, 100, TM_CUT_UNDER_LEAST },
    { -60, 0.5, 1, 21, 0, 2, TM_CUT_BAD_BAND },
    { -60, 0.5, 1, -INFINITY, INFINITY, 2, TM_CUT_NO_LIMITS },
    { -60, 0.5, 1, -INFINITY, 21, 2, TM_CUT_NOTHING_LEFT },
    { -60, 0.5, 1, 0, INFINITY, 2, TM_CUT_OK },
    { -60, 0, 0, 0, 21, 2, TM_CUT_PROVE },
    { -60, 1e9, 1e9, 0, 21, 2, TM_CUT_TOO_COARSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (TmCutBelief) belief = tm_cut_belief_new (2, TRUE);
      TmCutWish wish = make_wish (0.01);
      TmCutPlan plan;

      wish.band.lower = rows[i].lower * UM;
      wish.band.upper = rows[i].upper * UM;
      wish.least = rows[i].least * UM;
      tm_cut_plan (belief, &wish, &plan);
      assert_finite (&plan);
      read_all (belief, 2, rows[i].size * UM, rows[i].own * UM, rows[i].shared * UM);
      tm_cut_plan (belief, &wish, &plan);
      assert_finite (&plan);
      g_test_message ("row %d: %s, change %g, in %g left %g gone %g value %g", (int)i,
                      tm_cut_status_word (plan.status), plan.change / UM, plan.chances.in, plan.chances.left,
                      plan.chances.gone, plan.value);
      g_assert_cmpint (plan.status, ==, rows[i].status);
      g_assert_true ((plan.change > 0) == (plan.status == TM_CUT_OK || plan.status == TM_CUT_PROVE));
    }
}

/* Stations further apart than the band can never all be in. */
static void
test_uneven (void)
{
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (2, TRUE);
  TmCutWish wish = make_wish (0.01);
  TmCutPlan plan;

  tm_cut_belief_read (belief, 0, 0, -60 * UM, 0.5 * UM, UM);
  tm_cut_belief_read (belief, 1, 0, -20 * UM, 0.5 * UM, UM);
  tm_cut_plan (belief, &wish, &plan);
  g_assert_cmpint (plan.status, ==, TM_CUT_UNEVEN);
}

/* Whatever is asked, and however absurd, no number is none and no chance is outside 0 to 1. */
static void
test_absurd (void)
{
  static const double lengths[] = { 0, 1, 1e3, 1e6, 1e9, 1e13, 4e18 };
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);

  for (guint round = 0; round < 300; round++)
    {
      g_autoptr (TmCutBelief) belief = tm_cut_belief_new (3, round % 2 == 0);
      TmCutWish wish = make_wish (gsl_rng_uniform (rng));
      double numbers[12];
      TmCutPlan plan;

      for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
        numbers[i] = lengths[gsl_rng_uniform_int (rng, G_N_ELEMENTS (lengths))] * gsl_rng_uniform (rng);
      wish.band
          = (TmCutBand) { numbers[0] - numbers[1], numbers[0] + numbers[2], -INFINITY, INFINITY, numbers[3] };
      if (round % 3 == 0)
        wish.band.mate_lower = numbers[4] - numbers[5];
      wish.step = 1 + numbers[6];
      wish.least = numbers[7];
      wish.next_own = numbers[8];
      wish.next_shared = numbers[9];
      wish.aim = round % 5 == 0 ? TM_AIM_PROVEN : TM_AIM_IN;
      wish.guard = numbers[10];
      for (guint k = 0; k < 3; k++)
        tm_cut_belief_read (belief, k, 0, numbers[k] - numbers[11], numbers[8], numbers[9]);
      tm_cut_belief_cut (belief, numbers[6]);
      tm_cut_belief_read (belief, 0, 0, numbers[1], numbers[8], numbers[9]);
      tm_cut_plan (belief, &wish, &plan);
      assert_finite (&plan);
      g_assert_cmpfloat (plan.chances.gone, >=, 0);
      g_assert_cmpfloat (plan.chances.left, >=, 0);
      g_assert_cmpfloat (plan.chances.in, >=, 0);
      g_assert_cmpfloat (plan.value, <=, 1 + 1e-9);
      tm_cut_try (belief, &wish, numbers[7], &plan);
      assert_finite (&plan);
    }
  gsl_rng_free (rng);
}

/* Nothing read: no plan, and no number that is none. */
static void
test_not_read (void)
{
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (2, TRUE);
  TmCutWish wish = make_wish (0.01);
  TmCutPlan plan;
  double size, u;

  tm_cut_plan (belief, &wish, &plan);
  g_assert_cmpint (plan.status, ==, TM_CUT_NOT_READ);
  assert_finite (&plan);
  tm_cut_belief_cut (belief, 10 * UM);
  tm_cut_belief_size (belief, 0, &size, &u);
  g_assert_true (isnan (size) && isnan (u));
  wish.step = 0;
  tm_cut_belief_read (belief, 0, 0, -60 * UM, 0, 0);
  tm_cut_plan (belief, &wish, &plan);
  g_assert_cmpint (plan.status, ==, TM_CUT_NO_DIAL);
}

static void
test_rejected (void)
{
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);

  g_test_expect_message ("tenthmark", G_LOG_LEVEL_CRITICAL, "*isfinite (size)*");
  tm_cut_belief_read (belief, 0, 0, NAN, UM, UM);
  g_test_assert_expected_messages ();
  g_test_expect_message ("tenthmark", G_LOG_LEVEL_CRITICAL, "*isfinite (change)*");
  tm_cut_belief_cut (belief, INFINITY);
  g_test_assert_expected_messages ();
  g_assert_false (tm_cut_belief_has_size (belief));
}

static void
test_words (void)
{
  for (guint i = 0; i < TM_N_CUT_STATUSES; i++)
    {
      g_assert_cmpstr (tm_cut_status_word (i), !=, "");
      for (guint j = 0; j < i; j++)
        g_assert_cmpstr (tm_cut_status_word (i), !=, tm_cut_status_word (j));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut/belief/dense", test_dense);
  g_test_add_func ("/cut/belief/published-constant", test_published_constant);
  g_test_add_func ("/cut/belief/published-mean", test_published_mean);
  g_test_add_func ("/cut/belief/bias-cancels", test_bias_cancels);
  g_test_add_func ("/cut/belief/priors", test_priors);
  g_test_add_func ("/cut/belief/learns", test_learns);
  g_test_add_func ("/cut/belief/rejected", test_rejected);
  g_test_add_func ("/cut/chances/drawn", test_chances);
  g_test_add_func ("/cut/chances/quadrature", test_quadrature);
  g_test_add_func ("/cut/plan/risk", test_risk);
  g_test_add_func ("/cut/plan/mirror", test_mirror);
  g_test_add_func ("/cut/plan/statuses", test_statuses);
  g_test_add_func ("/cut/plan/uneven", test_uneven);
  g_test_add_func ("/cut/plan/not-read", test_not_read);
  g_test_add_func ("/cut/plan/absurd", test_absurd);
  g_test_add_func ("/cut/words", test_words);
  return g_test_run ();
}
