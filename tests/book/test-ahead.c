/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Facts made ahead on a thread are those made one at a time, however far it was let go.
 */

#include "book-ahead.h"
#include "book-fixture.h"

#define JOB 7

/* More than all portions together hold, and no whole number of them. */
#define N_ROWS 2100

static const TmChain start = { 41, { 0x5a, 1, 2, 3 } };

static TmJob *
make_job (guint n_readings)
{
  TmJob *job = make_bench_job ("ahead", 1);

  for (guint i = 0; i < n_readings; i++)
    {
      g_autofree char *size = g_strdup_printf ("25.%03u", i % 1000);
      TmReading *reading = make_reading (job, "", "001", size);

      /* A text with what a payload escapes, of another length in each row. */
      reading->overdue_reason = tm_job_intern (job, i % 7 == 0 ? "at the\nmachine \\ cold" : "");
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
  return job;
}

static void
test_same (void)
{
  g_autoptr (TmJob) job = make_job (N_ROWS);
  g_autoptr (TmAhead) ahead = tm_ahead_new (TM_BOOK_READING, JOB, job->readings, &start);
  g_autoptr (GString) payload = g_string_new (NULL);
  TmChain chain = start;
  TmCells cells;

  g_assert_nonnull (ahead);
  tm_cells_init (&cells);
  for (guint i = 0; i < N_ROWS; i++)
    {
      const TmFact *fact = tm_ahead_next (ahead);

      g_string_truncate (payload, 0);
      tm_cells_from_struct (&cells, TM_BOOK_READING, NULL, g_ptr_array_index (job->readings, i));
      tm_cells_payload (&cells, TM_BOOK_READING, payload);
      tm_hash_fact (chain.hash, ++chain.seq, JOB, "reading", payload->str, payload->len, chain.hash);
      g_assert_cmpmem (fact->payload, (int)fact->length, payload->str, (int)payload->len);
      g_assert_cmpmem (fact->hash, TM_HASH_BYTES, chain.hash, TM_HASH_BYTES);
    }
  tm_cells_clear (&cells);
}

/* Whoever stops, because the disk is full or the person has thought better of it, waits for nothing. */
static void
test_stopped (void)
{
  static const guint taken[] = { 0, 1, 512, 513, N_ROWS };
  g_autoptr (TmJob) job = make_job (N_ROWS);

  for (gsize i = 0; i < G_N_ELEMENTS (taken); i++)
    {
      g_autoptr (TmAhead) ahead = tm_ahead_new (TM_BOOK_READING, JOB, job->readings, &start);

      for (guint k = 0; k < taken[i]; k++)
        g_assert_cmpuint (tm_ahead_next (ahead)->length, >, 0);
    }
}

static void
test_nothing (void)
{
  g_autoptr (TmJob) job = make_job (0);
  g_autoptr (TmAhead) ahead = tm_ahead_new (TM_BOOK_READING, JOB, job->readings, &start);

  g_assert_nonnull (ahead);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_assert_true (tm_hash_init ());
  g_test_add_func ("/book/ahead/same", test_same);
  g_test_add_func ("/book/ahead/stopped", test_stopped);
  g_test_add_func ("/book/ahead/nothing", test_nothing);
  return g_test_run ();
}
