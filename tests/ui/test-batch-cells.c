/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cells of the grid, judged on a thread: the same as those judged one by one, whatever is recorded
 * meanwhile; what is in sight first; and a job that is closed is let go of at once.
 */

#include <math.h>

#include "app-batch-cells.h"
#include "app-batch-copy.h"
#include "app-batch-portion.h"
#include "support-big-job.h"
#include "support-random-job.h"

#define N_FEATURES 40
#define N_READINGS 30000

static gboolean
is_same (const TmGridCell *one, const TmGridCell *other)
{
  gboolean used = one->used == other->used || (isnan (one->used) && isnan (other->used));

  return used && one->verdict == other->verdict && one->side == other->side && one->due == other->due
         && one->point == other->point;
}

static void
assert_judged (TmBatchCells *cells, const TmJob *job)
{
  g_assert_cmpuint (tm_batch_cells_n_columns (cells), ==, job->pieces->len);
  for (guint i = 0; i < job->pieces->len; i++)
    for (guint j = 0; j < job->features->len; j++)
      {
        const TmGridCell *cell = tm_batch_cells_get (cells, i, j);
        TmGridCell wanted = tm_batch_judge_cell (job, i, g_ptr_array_index (job->features, j), NULL);

        g_assert_nonnull (cell);
        g_assert_true (is_same (cell, &wanted));
      }
}

static void
wait_all (TmBatchCells *cells)
{
  while (tm_batch_cells_progress (cells) < 1)
    g_main_context_iteration (NULL, TRUE);
}

/* Corrections, withdrawals, cuts, pins, positions and places: what counts of them is enough. */
static void
test_copy (void)
{
  for (guint seed = 0; seed < 60; seed++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
      g_autoptr (TmJob) job = tm_test_random_job (rand);
      guint from = 0;

      while (from < job->pieces->len)
        {
          guint to = job->pieces->len;
          g_autoptr (TmJob) copy = tm_batch_copy_pieces (job, from, &to, 1 + seed % 20);

          g_assert_cmpuint (to, >, from);
          for (guint i = from; i < to; i++)
            for (guint j = 0; j < job->features->len; j++)
              {
                TmGridCell one = tm_batch_judge_cell (job, i, g_ptr_array_index (job->features, j), NULL);
                TmGridCell other = tm_batch_judge_cell (copy, i, g_ptr_array_index (copy->features, j), NULL);

                g_assert_true (is_same (&one, &other));
              }
          from = to;
        }
    }
}

static void
test_all (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (TmBatchCells) cells = tm_batch_cells_new ();

  tm_batch_cells_set_job (cells, job);
  g_assert_cmpfloat (tm_batch_cells_progress (cells), <, 1);
  g_assert_null (tm_batch_cells_get (cells, job->pieces->len - 1, 0));
  wait_all (cells);
  assert_judged (cells, job);
  g_assert_cmpuint (tm_batch_cells_n_measured (cells), ==, job->pieces->len);
}

/* Out or in by turns, on another piece each time. */
static void
record (TmJob *job, TmBatchCells *cells, guint turn)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = g_ptr_array_index (job->pieces, turn * 7 % job->pieces->len);
  reading->row.feature = g_ptr_array_index (job->features, turn * 3 % (N_FEATURES / 10 * 9) / 9 * 10);
  reading->station = g_ptr_array_index (reading->row.feature->stations, 0);
  reading->method = reading->row.feature->method;
  reading->value
      = tm_quantity_new (G_GINT64_CONSTANT (1000000) * (turn % 2 == 0 ? 25500 : 25010), TM_UNIT_MM, 3);
  reading->typed = tm_job_intern (job, "typed");
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  tm_batch_cells_judge (cells, reading->row.piece, reading->row.feature);
}

static void
test_recorded_meanwhile (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (TmBatchCells) cells = tm_batch_cells_new ();
  guint turn = 0;

  tm_batch_cells_set_job (cells, job);
  while (tm_batch_cells_progress (cells) < 1)
    {
      if (turn < 4000)
        record (job, cells, turn++);
      g_main_context_iteration (NULL, FALSE);
    }
  g_assert_cmpuint (turn, >, 10);
  assert_judged (cells, job);
}

static void
test_in_sight_first (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (TmBatchCells) cells = tm_batch_cells_new ();
  guint last = job->pieces->len - 1;

  tm_batch_cells_set_job (cells, job);
  tm_batch_cells_see (cells, last - 5, last + 1);
  while (tm_batch_cells_get (cells, last, 0) == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpfloat (tm_batch_cells_progress (cells), <, 1);
  g_assert_null (tm_batch_cells_get (cells, last - 6, 0));
  wait_all (cells);
  assert_judged (cells, job);
}

/* At any moment: before anything was begun, while the thread waits, judges, or has just answered. */
static void
test_stopped (void)
{
  g_autoptr (TmBatchCells) cells = tm_batch_cells_new ();

  for (guint turns = 0; turns < 40; turns++)
    {
      g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS / 3);

      tm_batch_cells_set_job (cells, job);
      for (guint i = 0; i < turns / 2 && tm_batch_cells_progress (cells) < 1; i++)
        g_main_context_iteration (NULL, i % 2 == 1);
      if (turns % 3 == 0)
        g_usleep (turns * 50);
      tm_batch_cells_set_job (cells, NULL);
    }
  g_assert_cmpuint (tm_batch_cells_n_columns (cells), ==, 0);
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
count_cb (TmBatchCells *cells, guint *n)
{
  (*n)++;
}

/* Sorted only when all are known, and then at once. */
static void
test_sorted (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (TmBatchCells) cells = tm_batch_cells_new ();
  guint n = 0;

  tm_batch_cells_set_job (cells, job);
  tm_batch_cells_set_sort (cells, TM_BATCH_BY_WORST);
  record (job, cells, 0);
  g_assert_true (tm_batch_cells_piece (cells, 1) == g_ptr_array_index (job->pieces, 1));
  g_signal_connect (cells, "changed", G_CALLBACK (count_cb), &n);
  wait_all (cells);
  g_assert_cmpuint (n, >, 0);
  g_assert_cmpint (tm_batch_cells_get (cells, 0, 0)->verdict, ==, TM_VERDICT_OUT);
  g_assert_true (tm_batch_cells_piece (cells, 0) == g_ptr_array_index (job->pieces, 0));
  g_signal_handlers_disconnect_by_data (cells, &n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch-cells/copy", test_copy);
  g_test_add_func ("/batch-cells/all", test_all);
  g_test_add_func ("/batch-cells/recorded-meanwhile", test_recorded_meanwhile);
  g_test_add_func ("/batch-cells/in-sight-first", test_in_sight_first);
  g_test_add_func ("/batch-cells/stopped", test_stopped);
  g_test_add_func ("/batch-cells/sorted", test_sorted);
  return g_test_run ();
}
