/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-start: how long from the start of the program until its window is first drawn, with a book of
 * 50 jobs, beside the least window of libadwaita.  The two are started by turns, so that what else the
 * machine does meets both.
 */

#include <gio/gio.h>

#include "bench-figures.h"
#include "book-store.h"
#include "support-big-job.h"

#define N_JOBS     50
#define N_FEATURES 20
#define N_READINGS 400
#define N_RUNS     9 /* of each, after one that warms the file cache */

#define MAX_RATIO 2.0

/* @data: the path of the book. */
static double
make_book (gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmBook) book = tm_book_open (data, TM_BOOK_OPEN_NORMAL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < N_JOBS; i++)
    {
      g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
      g_autofree char *id = g_strdup_printf ("b0000000-0000-4000-8000-%012u", i);
      g_autofree char *part = g_strdup_printf ("PART-%03u", i);

      job->id = tm_job_intern (job, id);
      job->part_number = tm_job_intern (job, part);
      tm_book_add_job (book, job, NULL, NULL, NULL, &error);
      g_assert_no_error (error);
    }
  return 0;
}

/* Milliseconds from spawning the program to its first drawing. */
static double
start_program (const char *const *argv)
{
  g_autofree char *said = NULL;
  g_autoptr (GError) error = NULL;
  gint64 started = g_get_monotonic_time ();
  int status = 0;

  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &said, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return (double)(g_ascii_strtoll (said, NULL, 10) - started) / 1000.0;
}

int
main (int argc, char *argv[])
{
  char *folder = tm_scratch_new ();
  g_autofree char *book = g_build_filename (folder, "shop.tmbook", NULL);
  g_autofree char *title = g_strdup_printf ("Start to first drawing, middle of %d runs", N_RUNS);
  g_autoptr (GArray) bare = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) ours = g_array_new (FALSE, FALSE, sizeof (double));
  const char *start_bare[] = { argv[1], NULL };
  const char *start_ours[] = { argv[2], "--book", book, NULL };
  TmFigures *figures = tm_figures_new (title);

  g_assert_cmpint (argc, ==, 3);
  tm_phase_run (make_book, book);
  for (guint i = 0; i <= N_RUNS; i++)
    {
      double ms[] = { start_program (start_bare), start_program (start_ours) };

      if (i == 0)
        continue;
      g_array_append_val (bare, ms[0]);
      g_array_append_val (ours, ms[1]);
    }
  tm_figures_add (figures, "the least window of libadwaita", tm_percentile (bare, 50), "ms", TM_NO_BOUND);
  tm_figures_add (figures, "ours with a book of 50 jobs", tm_percentile (ours, 50), "ms", TM_NO_BOUND);
  tm_figures_add (figures, "ours by the least", tm_percentile (ours, 50) / tm_percentile (bare, 50), "x",
                  MAX_RATIO);
  tm_scratch_remove (folder);
  return tm_figures_finish (figures);
}
