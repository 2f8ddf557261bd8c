/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-pairing: which bush to which bore, of 200 and of 500: the assignment alone of several kinds of costs,
 * and bores and bushes with the chances of their fits.
 */

#include "bench-figures.h"
#include "support-fits.h"
#ifdef TM_HAVE_GLPK
#include "support-glpk.h"
#endif

#define SEED 20260914
#define RUNS 5

static const TmFitWant press = { TRUE, TRUE, -30000000, -20000000 };

/* The slowest of RUNS. */
static double
time_assignment (GRand *rand, SupportCosts kind, guint n)
{
  double worst = 0;

  for (guint run = 0; run < RUNS; run++)
    {
      g_autofree double *cost = support_matrix (rand, kind, n, n);
      g_autofree guint *column_of = g_new (guint, n);
      double start = tm_steady_seconds ();

      tm_assign (cost, n, n, column_of);
      worst = MAX (worst, tm_steady_seconds () - start);
    }
  return worst * 1000;
}

static double
time_pairing (GRand *rand, const SupportBatch *batch, guint n)
{
  double worst = 0;

  for (guint run = 0; run < RUNS; run++)
    {
      g_autofree TmFitPart *bores = NULL;
      g_autofree TmFitPart *bushes = NULL;
      g_auto (TmPairing) pairing = { NULL };
      double start;

      support_batch (rand, batch, n, &bores, &bushes);
      start = tm_steady_seconds ();
      g_assert_cmpint (tm_pair_fits (bores, n, bushes, n, &press, &pairing, NULL), ==, TM_FIT_OK);
      worst = MAX (worst, tm_steady_seconds () - start);
    }
  return worst * 1000;
}

static void
add_size (TmFigures *figures, GRand *rand, guint n, double bound)
{
  for (guint kind = 0; kind < SUPPORT_N_COSTS; kind++)
    {
      g_autofree char *what = g_strdup_printf ("%u x %u, %s", n, n, support_costs_names[kind]);

      tm_figures_add (figures, what, time_assignment (rand, kind, n), "ms", bound);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (support_batches); i++)
    {
      g_autofree char *what
          = g_strdup_printf ("%u bores with %u bushes, chances and all, batch %u", n, n, (guint)i + 1);

      tm_figures_add (figures, what, time_pairing (rand, &support_batches[i], n), "ms", bound);
    }
}

#ifdef TM_HAVE_GLPK
/* The same total, and what the general-purpose solver takes for it. */
static void
add_solver (TmFigures *figures, GRand *rand, guint n)
{
  g_autofree double *cost = support_matrix (rand, SUPPORT_COSTS_RANDOM, n, n);
  g_autofree guint *column_of = g_new (guint, n);
  double start = tm_steady_seconds ();
  double solver = support_glpk_simplex (cost, n, n);
  g_autofree char *what = g_strdup_printf ("%u x %u, random, by GLPK's simplex method", n, n);

  tm_figures_add (figures, what, (tm_steady_seconds () - start) * 1000, "ms", TM_NO_BOUND);
  tm_figures_add (figures, "the two totals differ by, 1e-9 of a cost a row",
                  fabs (tm_assign (cost, n, n, column_of) - solver) / n * 1e9, "", 1);
}
#endif

int
main (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  TmFigures *figures = tm_figures_new ("Pairing: the slowest of five");

  add_size (figures, rand, 200, 100);
  add_size (figures, rand, 500, TM_NO_BOUND);
#ifdef TM_HAVE_GLPK
  add_solver (figures, rand, 200);
#endif
  return tm_figures_finish (figures);
}
