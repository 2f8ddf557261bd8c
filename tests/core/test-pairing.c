/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The assignment of least cost, against every permutation of small ones, and the pairing of batches.
 */

#include "core-pairing.h"

#include "support-fits.h"

#define SEED 20260914

/* -------- Assignment -------- */

/* The cheapest of all ways to give the rows from @row on to columns not in @used; a row may go without only
 * while there are more of them than columns. */
static double
try_all (const double *cost, guint n_rows, guint n_columns, guint row, guint used, guint left_over)
{
  double best = INFINITY;

  if (row == n_rows)
    return 0;
  for (guint column = 0; column < n_columns; column++)
    if (!(used & (1u << column)))
      best = MIN (best, cost[row * n_columns + column]
                            + try_all (cost, n_rows, n_columns, row + 1, used | (1u << column), left_over));
  if (left_over > 0)
    best = MIN (best, try_all (cost, n_rows, n_columns, row + 1, used, left_over - 1));
  return best;
}

/* Each column once at most, as many pairs as there can be, and the total that was told. */
static void
assert_assignment (const double *cost, guint n_rows, guint n_columns, const guint *column_of, double total)
{
  g_autofree gboolean *used = g_new0 (gboolean, n_columns + 1);
  double sum = 0;
  guint n = 0;

  for (guint row = 0; row < n_rows; row++)
    {
      if (column_of[row] == TM_ASSIGN_NONE)
        continue;
      g_assert_cmpuint (column_of[row], <, n_columns);
      g_assert_false (used[column_of[row]]);
      used[column_of[row]] = TRUE;
      sum += cost[row * n_columns + column_of[row]];
      n++;
    }
  g_assert_cmpuint (n, ==, MIN (n_rows, n_columns));
  g_assert_cmpfloat_with_epsilon (sum, total, 1e-12 * (1 + fabs (sum)));
}

/* Sums of at most seven numbers of the same size: 1e-12 of them is far above their rounding. */
static void
test_permutations (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (guint kind = 0; kind < SUPPORT_N_COSTS; kind++)
    for (guint n_rows = 1; n_rows <= 7; n_rows++)
      for (guint n_columns = 1; n_columns <= 7; n_columns++)
        {
          g_autofree double *cost = support_matrix (rand, kind, n_rows, n_columns);
          guint left_over = n_rows > n_columns ? n_rows - n_columns : 0;
          double best = try_all (cost, n_rows, n_columns, 0, 0, left_over);
          guint column_of[7];
          double total = tm_assign (cost, n_rows, n_columns, column_of);

          assert_assignment (cost, n_rows, n_columns, column_of, total);
          g_assert_cmpfloat_with_epsilon (total, best, 1e-12 * (1 + fabs (best)));
        }
}

/* Of 3 × 3 the greedy choice (1 first) costs 1 + 6 + 9; worked by hand: 2 + 4 + 5. */
static void
test_by_hand (void)
{
  static const double cost[] = { 1, 2, 8, 4, 6, 7, 3, 5, 9 };
  guint column_of[3];

  /* All six: 1+6+9, 1+7+5, 2+4+9, 2+7+3, 8+4+5, 8+6+3. */
  g_assert_cmpfloat (tm_assign (cost, 3, 3, column_of), ==, 12);
  g_assert_cmpuint (column_of[0], ==, 1);
  g_assert_cmpuint (column_of[1], ==, 2);
  g_assert_cmpuint (column_of[2], ==, 0);
}

static void
test_edges (void)
{
  static const double cost[] = { 5, 3, 4 };
  guint column_of[3] = { 7, 7, 7 };

  g_assert_cmpfloat (tm_assign (NULL, 0, 0, NULL), ==, 0);
  g_assert_cmpfloat (tm_assign (NULL, 0, 3, column_of), ==, 0);
  g_assert_cmpfloat (tm_assign (NULL, 3, 0, column_of), ==, 0);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpuint (column_of[i], ==, TM_ASSIGN_NONE);
  g_assert_cmpfloat (tm_assign (cost, 1, 3, column_of), ==, 3);
  g_assert_cmpuint (column_of[0], ==, 1);
  g_assert_cmpfloat (tm_assign (cost, 3, 1, column_of), ==, 3);
  g_assert_cmpuint (column_of[0], ==, TM_ASSIGN_NONE);
  g_assert_cmpuint (column_of[1], ==, 0);
  g_assert_cmpuint (column_of[2], ==, TM_ASSIGN_NONE);
}

/* The product of two rising rows is least when one is taken backwards (rearrangement inequality):
 * Σ i (n + 1 - i) = n (n + 1)(n + 2) / 6. */
static void
test_products (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autofree double *cost = support_matrix (rand, SUPPORT_COSTS_PRODUCT, 200, 200);
  g_autofree guint *column_of = g_new (guint, 200);

  g_assert_cmpfloat (tm_assign (cost, 200, 200, column_of), ==, 200.0 * 201 * 202 / 6);
  for (guint row = 0; row < 200; row++)
    g_assert_cmpuint (column_of[row], ==, 199 - row);
}

/* -------- Pairing -------- */

static const TmFitWant press = { TRUE, TRUE, -30000000, -20000000 }; /* 20 to 30 µm of interference */

/* Bores 25 mm, bushes 25 µm larger, both spread by 4 µm: the first does for the second and the other way
 * round. */
static void
test_two (void)
{
  TmFitPart bores[]
      = { { 25004000000, 25004000000, 1e6, NAN, 0, 20 }, { 24996000000, 24996000000, 1e6, NAN, 0, 20 } };
  TmFitPart bushes[]
      = { { 25021000000, 25021000000, 1e6, NAN, 0, 20 }, { 25029000000, 25029000000, 1e6, NAN, 0, 20 } };
  g_auto (TmPairing) pairing = { NULL };
  guint culprit;

  g_assert_cmpint (tm_pair_fits (bores, 2, bushes, 2, &press, &pairing, &culprit), ==, TM_FIT_OK);
  g_assert_cmpuint (culprit, ==, TM_ASSIGN_NONE);
  g_assert_cmpuint (pairing.n_pairs, ==, 2);
  g_assert_cmpuint (pairing.pairs[0].shaft, ==, 1);
  g_assert_cmpuint (pairing.pairs[1].shaft, ==, 0);
  g_assert_cmpfloat (pairing.pairs[0].check.least, ==, -25e6);
  /* 5 µm of room on both sides, u = √2 µm: twice 1 - Φ(3.5355) = 2.035e-4 (tables); first come 3 µm outside
   * on one side: Φ(2.1213) = 0.98305 each. */
  g_assert_cmpfloat_with_epsilon (pairing.expected_outside, 4 * 2.035e-4, 1e-6);
  g_assert_cmpfloat_with_epsilon (pairing.first_come, 2 * 0.98305, 1e-4);
}

/* All of these fit surely; what is in the middle of the range goes first. */
static void
test_middle_first (void)
{
  TmFitPart bore = { 25000000000, 25000000000, 1, NAN, 0, 20 };
  TmFitPart bushes[] = { { 25022000000, 25022000000, 1, NAN, 0, 20 },
                         { 25025500000, 25025500000, 1, NAN, 0, 20 },
                         { 25029000000, 25029000000, 1, NAN, 0, 20 } };
  g_auto (TmPairing) pairing = { NULL };

  g_assert_cmpint (tm_pair_fits (&bore, 1, bushes, 3, &press, &pairing, NULL), ==, TM_FIT_OK);
  g_assert_cmpuint (pairing.pairs[0].shaft, ==, 1);
  g_assert_cmpfloat (pairing.expected_outside, ==, 0);
}

/* Exact sizes: within or not, by whole counts, the end included. */
static void
test_exact (void)
{
  TmFitPart bores[]
      = { { 25000000000, 25000000000, 0, NAN, 0, 20 }, { 25000000000, 25000000000, 0, NAN, 0, 20 } };
  TmFitPart bushes[]
      = { { 25030000001, 25030000001, 0, NAN, 0, 20 }, { 25030000000, 25030000000, 0, NAN, 0, 20 } };
  g_auto (TmPairing) pairing = { NULL };

  g_assert_cmpint (tm_pair_fits (bores, 2, bushes, 2, &press, &pairing, NULL), ==, TM_FIT_OK);
  g_assert_cmpfloat (pairing.expected_outside, ==, 1);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpfloat (pairing.pairs[i].outside, ==, pairing.pairs[i].shaft == 0);
}

static void
test_left_over (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autofree TmFitPart *bores = support_parts (rand, 5, 0, 4, 1, 1);
  g_autofree TmFitPart *bushes = support_parts (rand, 3, 25, 4, 1, 1);
  g_auto (TmPairing) few = { NULL };
  g_auto (TmPairing) many = { NULL };
  g_auto (TmPairing) none = { NULL };
  guint alone = 0;

  g_assert_cmpint (tm_pair_fits (bores, 5, bushes, 3, &press, &few, NULL), ==, TM_FIT_OK);
  g_assert_cmpuint (few.n_pairs, ==, 5);
  for (guint i = 0; i < few.n_pairs; i++)
    {
      g_assert_cmpuint (few.pairs[i].bore, ==, i);
      if (few.pairs[i].shaft != TM_ASSIGN_NONE)
        continue;
      alone++;
      g_assert_true (isnan (few.pairs[i].outside) && isnan (few.pairs[i].check.least));
    }
  g_assert_cmpuint (alone, ==, 2);
  g_assert_cmpint (tm_pair_fits (bores, 2, bushes, 3, &press, &many, NULL), ==, TM_FIT_OK);
  g_assert_cmpuint (many.n_pairs, ==, 2);
  g_assert_cmpint (tm_pair_fits (bores, 5, NULL, 0, &press, &none, NULL), ==, TM_FIT_OK);
  g_assert_cmpuint (none.n_pairs, ==, 5);
  g_assert_cmpuint (none.pairs[4].shaft, ==, TM_ASSIGN_NONE);
  g_assert_cmpfloat (none.expected_outside, ==, 0);
}

static void
test_refusals (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autofree TmFitPart *bores = support_parts (rand, TM_PAIR_MOST + 1, 0, 4, 1, 1);
  g_autofree TmFitPart *bushes = support_parts (rand, 3, 25, 4, 1, 1);
  g_auto (TmPairing) pairing = { NULL };
  const TmFitWant any = { FALSE };
  const TmFitWant crossed = { TRUE, TRUE, 1, 0 };
  guint culprit;

  g_assert_cmpint (tm_pair_fits (bores, 3, bushes, 3, &any, &pairing, &culprit), ==, TM_FIT_NO_WANT);
  g_assert_cmpuint (culprit, ==, TM_ASSIGN_NONE);
  g_assert_cmpint (tm_pair_fits (bores, 3, bushes, 3, &crossed, &pairing, &culprit), ==, TM_FIT_BAD_WANT);
  g_assert_cmpuint (culprit, ==, TM_ASSIGN_NONE);
  g_assert_cmpint (tm_pair_fits (bores, TM_PAIR_MOST + 1, bushes, 3, &press, &pairing, &culprit), ==,
                   TM_FIT_TOO_MANY);
  bushes[1].u = NAN;
  g_assert_cmpint (tm_pair_fits (bores, 3, bushes, 3, &press, &pairing, &culprit), ==, TM_FIT_NO_METHOD);
  g_assert_cmpuint (culprit, ==, 4);
  bores[2].smallest = 0;
  g_assert_cmpint (tm_pair_fits (bores, 3, bushes, 3, &press, &pairing, &culprit), ==, TM_FIT_BAD_PART);
  g_assert_cmpuint (culprit, ==, 2);
  g_assert_null (pairing.pairs);
  g_assert_cmpuint (pairing.n_pairs, ==, 0);
}

/* -------- How many pairs fall inside -------- */

static int
compare_parts (gconstpointer a, gconstpointer b)
{
  gint64 left = ((const TmFitPart *)a)->smallest, right = ((const TmFitPart *)b)->smallest;

  return (left > right) - (left < right);
}

/* What the bench does by eye: the smallest bush into the smallest bore, and so on up. */
static double
sum_sorted (const TmFitPart *bores, const TmFitPart *bushes, guint n, const TmFitWant *want)
{
  g_autofree TmFitPart *sorted_bores = g_memdup2 (bores, n * sizeof *bores);
  g_autofree TmFitPart *sorted_bushes = g_memdup2 (bushes, n * sizeof *bushes);
  g_auto (TmPairing) pairing = { NULL };

  qsort (sorted_bores, n, sizeof *sorted_bores, compare_parts);
  qsort (sorted_bushes, n, sizeof *sorted_bushes, compare_parts);
  g_assert_cmpint (tm_pair_fits (sorted_bores, n, sorted_bushes, n, want, &pairing, NULL), ==, TM_FIT_OK);
  return pairing.first_come;
}

/* Fifty bores and fifty bushes of each invented batch.  Sorting does well while the bushes are right on the
 * whole; where they are too large it spoils nearly every pair a little, and the best pairing gives up some
 * for the others.  The figures are this seed's; test-pairing-solver finds the same best ones by another
 * solver. */
static void
test_batches (void)
{
  static const struct {
    double best, sorted, first_come;
  } outside[] = {
    { 0.023423, 0.027683, 17.858638 },
    { 7.461684, 14.316769, 19.892634 },
    { 8.378430, 13.302671, 27.944090 },
    { 26.090896, 49.978976, 39.621630 },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (support_batches); i++)
    {
      g_autofree TmFitPart *bores = NULL;
      g_autofree TmFitPart *bushes = NULL;
      g_auto (TmPairing) pairing = { NULL };
      double sorted;

      support_batch (rand, &support_batches[i], 50, &bores, &bushes);
      sorted = sum_sorted (bores, bushes, 50, &press);
      g_assert_cmpint (tm_pair_fits (bores, 50, bushes, 50, &press, &pairing, NULL), ==, TM_FIT_OK);
      g_test_message ("expected outside of 50: best %.6f, sorted %.6f, first come %.6f",
                      pairing.expected_outside, sorted, pairing.first_come);
      g_assert_cmpfloat (pairing.expected_outside, <=, sorted + 1e-9);
      g_assert_cmpfloat (pairing.expected_outside, <=, pairing.first_come + 1e-9);
      g_assert_cmpfloat_with_epsilon (pairing.expected_outside, outside[i].best, 1e-6);
      g_assert_cmpfloat_with_epsilon (sorted, outside[i].sorted, 1e-6);
      g_assert_cmpfloat_with_epsilon (pairing.first_come, outside[i].first_come, 1e-6);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/assign/permutations", test_permutations);
  g_test_add_func ("/assign/by-hand", test_by_hand);
  g_test_add_func ("/assign/edges", test_edges);
  g_test_add_func ("/assign/products", test_products);
  g_test_add_func ("/pairing/two", test_two);
  g_test_add_func ("/pairing/middle-first", test_middle_first);
  g_test_add_func ("/pairing/exact", test_exact);
  g_test_add_func ("/pairing/left-over", test_left_over);
  g_test_add_func ("/pairing/refusals", test_refusals);
  g_test_add_func ("/pairing/batches", test_batches);
  return g_test_run ();
}
