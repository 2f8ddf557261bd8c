/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The assignment of least cost against a general-purpose solver on the same matrix.
 */

#include "core-pairing.h"

#include "support-fits.h"
#include "support-glpk.h"

#define SEED 20260914

static double
assign (const double *cost, guint n_rows, guint n_columns)
{
  g_autofree guint *column_of = g_new (guint, n_rows);

  return tm_assign (cost, n_rows, n_columns, column_of);
}

/* 1e-9 a row: the simplex method's own tolerance of a reduced cost is 1e-7, its vertices are whole. */
static void
assert_same (const double *cost, guint n_rows, guint n_columns)
{
  double solver = support_glpk_simplex (cost, n_rows, n_columns);

  g_assert_cmpfloat_with_epsilon (assign (cost, n_rows, n_columns), solver,
                                  1e-9 * n_rows * (1 + fabs (solver)));
}

/* Square, and with bushes to spare; turned round the same matrix costs the same. */
static void
test_simplex (void)
{
  static const guint sizes[][2] = { { 1, 1 }, { 2, 9 }, { 12, 12 }, { 25, 40 }, { 60, 60 } };
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (guint kind = 0; kind < SUPPORT_N_COSTS; kind++)
    for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        guint n_rows = sizes[i][0], n_columns = sizes[i][1];
        g_autofree double *cost = support_matrix (rand, kind, n_rows, n_columns);
        g_autofree double *turned = g_new (double, (gsize)n_rows *n_columns);

        for (guint row = 0; row < n_rows; row++)
          for (guint column = 0; column < n_columns; column++)
            turned[column * n_rows + row] = cost[row * n_columns + column];
        g_test_message ("%s, %u x %u", support_costs_names[kind], n_rows, n_columns);
        assert_same (cost, n_rows, n_columns);
        g_assert_cmpfloat_with_epsilon (assign (turned, n_columns, n_rows), assign (cost, n_rows, n_columns),
                                        1e-9);
      }
}

/* 20 to 30 µm of interference. */
static const TmFitWant press = { TRUE, TRUE, -30000000, -20000000 };

/* Chances of fits: many of them 0 or 1 as near as a double tells. What tm_pair_fits() finds may cost 1e-9
 * more for the sake of the middle of the range.  The batches are those of test-pairing, in its order. */
static void
test_fits (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (support_batches); i++)
    {
      g_autofree TmFitPart *bores = NULL;
      g_autofree TmFitPart *bushes = NULL;
      g_autofree double *cost = NULL;
      g_auto (TmPairing) pairing = { NULL };
      double solver;

      support_batch (rand, &support_batches[i], 50, &bores, &bushes);
      cost = support_costs (bores, 50, bushes, 50, &press);
      solver = support_glpk_simplex (cost, 50, 50);
      g_assert_cmpint (tm_pair_fits (bores, 50, bushes, 50, &press, &pairing, NULL), ==, TM_FIT_OK);
      g_test_message ("expected outside of 50: %.6f", solver);
      g_assert_cmpfloat_with_epsilon (assign (cost, 50, 50), solver, 1e-9 * 50);
      g_assert_cmpfloat_with_epsilon (pairing.expected_outside, solver, 1e-9 * 50);
    }
}

/* 100 bores with 100 bushes, in millionths: both add whole numbers, so the totals are equal to the last. */
static void
test_whole (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (gsize i = 0; i < 2; i++)
    {
      g_autofree TmFitPart *bores = NULL;
      g_autofree TmFitPart *bushes = NULL;
      g_autofree double *cost = NULL;

      support_batch (rand, &support_batches[i], 100, &bores, &bushes);
      cost = support_costs (bores, 100, bushes, 100, &press);
      for (guint j = 0; j < 100 * 100; j++)
        cost[j] = round (cost[j] * 1e6);
      g_assert_cmpfloat (assign (cost, 100, 100), ==, support_glpk_whole (cost, 100));
    }
}

/* The same as it is, chances and all. */
static void
test_two_hundred (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autofree TmFitPart *bores = NULL;
  g_autofree TmFitPart *bushes = NULL;
  g_autofree double *cost = NULL;
  g_auto (TmPairing) pairing = { NULL };
  double solver;

  support_batch (rand, &support_batches[1], 200, &bores, &bushes);
  cost = support_costs (bores, 200, bushes, 200, &press);
  solver = support_glpk_simplex (cost, 200, 200);
  g_assert_cmpint (tm_pair_fits (bores, 200, bushes, 200, &press, &pairing, NULL), ==, TM_FIT_OK);
  g_test_message ("expected outside of 200: %.6f", solver);
  g_assert_cmpfloat_with_epsilon (assign (cost, 200, 200), solver, 1e-9 * 200);
  g_assert_cmpfloat_with_epsilon (pairing.expected_outside, solver, 1e-9 * 200);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pairing-solver/simplex", test_simplex);
  g_test_add_func ("/pairing-solver/fits", test_fits);
  g_test_add_func ("/pairing-solver/whole", test_whole);
  g_test_add_func ("/pairing-solver/two-hundred", test_two_hundred);
  return g_test_run ();
}
