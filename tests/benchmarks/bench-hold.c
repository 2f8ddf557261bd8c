/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-hold: the pieces to hold back of a job of 200,000 readings on 2,106 pieces (invented), all of them
 * held: how long the list, its window, its table and its printing keep the main loop at once.
 *
 * What is told is processor time of the main thread in one turn of the loop: what the program itself takes on
 * a machine that others use as well.
 */

#include <adwaita.h>
#include <time.h>

#include "app-hold-dialog.h"
#include "app-hold-print.h"
#include "app-resources.h"
#include "bench-figures.h"
#include "book-store.h"
#include "support-big-job.h"

#define N_FEATURES 50
#define N_READINGS 200000
#define LOOP_MS    50.0
#define ROWS_S     1.0 /* in which the window has its rows */

/* Of the main loop since it last waited; ms. */
static double turn_from, longest_turn;

static double
processor_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return 1e3 * (double)now.tv_sec + 1e-6 * (double)now.tv_nsec;
}

/* Asked once in each turn, also of a loop that runs inside another. */
static gint
poll_cb (GPollFD *fds, guint n_fds, gint timeout)
{
  gint n_ready;

  longest_turn = MAX (longest_turn, processor_ms () - turn_from);
  n_ready = g_poll (fds, n_fds, timeout);
  turn_from = processor_ms ();
  return n_ready;
}

static void
begin_turns (void)
{
  longest_turn = 0;
  turn_from = processor_ms ();
}

/* With what was done since, in this turn too. */
static double
end_turns (void)
{
  return MAX (longest_turn, processor_ms () - turn_from);
}

static void
hold_all (TmBatch *batch, const TmJob *job)
{
  batch->series.n_points = job->pieces->len;
  batch->series.points = g_new0 (TmSeriesPoint, job->pieces->len);
  batch->hold = g_array_new (FALSE, TRUE, sizeof (TmHoldRow));
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmHoldRow row = { .point = i, .measured = TRUE, .out = 0.125 };

      batch->series.points[i].piece = g_ptr_array_index (job->pieces, i);
      g_array_append_val (batch->hold, row);
    }
}

/* Until all its rows are there. */
static double
open_window (GtkWidget *window, TmDocument *document, TmHoldList *list)
{
  const double start = tm_steady_seconds ();
  GtkWindow *dialog;
  double longest;

  begin_turns ();
  dialog = tm_hold_dialog_present (window, document, list);
  while (tm_steady_seconds () < start + ROWS_S)
    g_main_context_iteration (NULL, FALSE);
  longest = end_turns ();
  gtk_window_destroy (dialog);
  return longest;
}

static void
measure (TmFigures *figures, TmDocument *document, const char *folder)
{
  const TmJob *job = tm_document_job (document);
  GtkWidget *window = gtk_window_new ();
  g_autofree char *table = g_build_filename (folder, "held.csv", NULL);
  g_autofree char *pages = g_build_filename (folder, "held.pdf", NULL);
  g_autoptr (TmHoldList) list = NULL;
  TmBatch batch = { 0 };

  hold_all (&batch, job);
  gtk_window_present (GTK_WINDOW (window));
  begin_turns ();
  list = tm_hold_list_new (job, g_ptr_array_index (job->features, 0), &batch);
  tm_figures_add (figures, "the list is made", end_turns (), "ms", LOOP_MS);
  g_assert_cmpuint (list->n_held, ==, job->pieces->len);
  tm_figures_add (figures, "its window is opened", open_window (window, document, list), "ms", LOOP_MS);
  begin_turns ();
  g_assert_true (tm_hold_dialog_write (document, list, table, NULL));
  tm_figures_add (figures, "its table is written", end_turns (), "ms", LOOP_MS);
  begin_turns ();
  g_assert_true (tm_hold_print_run (GTK_WINDOW (window), list, job, pages, NULL));
  tm_figures_add (figures, "it is printed", end_turns (), "ms", LOOP_MS);
  gtk_window_destroy (GTK_WINDOW (window));
  g_free (batch.series.points);
  g_array_unref (batch.hold);
}

int
main (void)
{
  g_autofree char *folder = tm_scratch_new ();
  g_autofree char *path = g_build_filename (folder, "bench.tmbook", NULL);
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, NULL);
  TmJob *job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (TmDocument) document = NULL;
  TmFigures *figures = tm_figures_new ("The main loop at once, 2,106 pieces held back");
  gboolean added;

  g_assert_true (tm_book_add_job (book, job, NULL, NULL, &added, NULL));
  document = tm_document_new (book, job);
  adw_init ();
  g_main_context_set_poll_func (NULL, poll_cb);
  measure (figures, document, folder);
  tm_scratch_remove (folder);
  g_steal_pointer (&folder);
  return tm_figures_finish (figures);
}
