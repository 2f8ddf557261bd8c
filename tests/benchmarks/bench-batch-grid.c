/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-batch-grid: the grid of the Batch page with 2,000 pieces × 200 features, all measured (invented): how
 * long a frame takes the program while it scrolls, across, down and both at once, how long all of it takes to
 * be judged, and how long that ever keeps the main loop.
 *
 * A frame is from the beginning of its layout to the end of its drawing; the processor time of the main
 * thread is what the program itself takes on a machine that others use as well.  What the X server takes to
 * copy and show it stands beside that: with a virtual screen it works on the same processor.
 */

#include <adwaita.h>
#include <stdlib.h>
#include <time.h>

#include "app-batch-grid.h"
#include "app-resources.h"
#include "bench-figures.h"
#include "screen-server.h"
#include "support-big-job.h"

#define N_FEATURES 200
#define N_PIECES   2000
#define N_READINGS (N_PIECES * (N_FEATURES * 9 / 10 * 2 + N_FEATURES / 10))
#define N_FRAMES   300 /* of each way to scroll */
#define FRAME_MS   8.0
#define LOOP_MS    8.0 /* that judging may keep the main loop at once */

enum { ACROSS, DOWN, BOTH, N_WAYS };

typedef struct {
  GtkAdjustment *adjustments[2];
  guint n;
  double from;
  double from_processor;
  double frames[N_WAYS * N_FRAMES]; /* ms */
  double processor[N_WAYS * N_FRAMES];
} Run;

static double
processor_seconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* Half a cell further than a whole one, so that no two frames look alike. */
static void
scroll (GtkAdjustment *adjustment, double by)
{
  double end = gtk_adjustment_get_upper (adjustment) - gtk_adjustment_get_page_size (adjustment);
  double to = gtk_adjustment_get_value (adjustment) + by;

  gtk_adjustment_set_value (adjustment, to > end ? 0 : to);
}

static void
before_paint_cb (GdkFrameClock *clock, Run *run)
{
  guint way = run->n / N_FRAMES;

  run->from = tm_steady_seconds ();
  run->from_processor = processor_seconds ();
  if (run->n >= N_WAYS * N_FRAMES)
    return;
  if (way != DOWN)
    scroll (run->adjustments[GTK_ORIENTATION_HORIZONTAL], 197);
  if (way != ACROSS)
    scroll (run->adjustments[GTK_ORIENTATION_VERTICAL], 41);
}

static void
after_paint_cb (GdkFrameClock *clock, Run *run)
{
  if (run->n >= N_WAYS * N_FRAMES)
    return;
  run->frames[run->n] = 1000 * (tm_steady_seconds () - run->from);
  run->processor[run->n] = 1000 * (processor_seconds () - run->from_processor);
  run->n++;
}

static int
compare_cb (const void *a, const void *b)
{
  double one = *(const double *)a, other = *(const double *)b;

  return (one > other) - (one < other);
}

/* Returns: whether 99 of 100 frames keep within the time. */
static gboolean
print_ways (const char *what, const double *frames)
{
  static const char *const names[N_WAYS] = { "across", "down", "both" };
  gboolean good = TRUE;

  for (guint way = 0; way < N_WAYS; way++)
    {
      double sorted[N_FRAMES];
      double late;

      memcpy (sorted, frames + way * N_FRAMES, sizeof sorted);
      qsort (sorted, N_FRAMES, sizeof *sorted, compare_cb);
      late = sorted[N_FRAMES * 99 / 100];
      good = good && late < FRAME_MS;
      g_print ("  %-16s %-7s median %5.2f ms, 99 of 100 within %5.2f ms, largest %5.2f ms (wanted: %.0f)\n",
               what, names[way], sorted[N_FRAMES / 2], late, sorted[N_FRAMES - 1], FRAME_MS);
    }
  return good;
}

static GtkWidget *
open_grid (TmBatchCells *cells, Run *run)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), tm_batch_grid_new (cells));
  gtk_window_set_child (GTK_WINDOW (window), scroller);
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 720);
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_present (GTK_WINDOW (window));
  while (!gtk_widget_get_mapped (window) || gtk_widget_get_width (window) == 0)
    g_main_context_iteration (NULL, TRUE);
  run->adjustments[GTK_ORIENTATION_HORIZONTAL]
      = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scroller));
  run->adjustments[GTK_ORIENTATION_VERTICAL]
      = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  return window;
}

/* Until all are judged; returns the longest turn of the main loop, ms of its processor time, and @all, s. */
static double
wait_judged (TmBatchCells *cells, double *all)
{
  double longest = 0, start = processor_seconds ();

  while (tm_batch_cells_progress (cells) < 1)
    {
      double from = processor_seconds ();

      g_main_context_iteration (NULL, TRUE);
      longest = MAX (longest, 1000 * (processor_seconds () - from));
    }
  *all = processor_seconds () - start;
  return longest;
}

int
main (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (TmBatchCells) cells = tm_batch_cells_new ();
  static Run run;
  double start, longest, all, server;
  GtkWidget *window;
  GdkFrameClock *clock;
  gboolean good;

  adw_init ();
  start = tm_steady_seconds ();
  tm_batch_cells_set_job (cells, job);
  g_print ("%u pieces × %u features, %u readings: first cells after %.0f ms", job->pieces->len,
           job->features->len, job->readings->len, 1000 * (tm_steady_seconds () - start));
  longest = wait_judged (cells, &all);
  g_print (", all judged after %.1f s; of the main loop's time %.1f s, at most %.1f ms at once (wanted: "
           "%.0f)\n",
           tm_steady_seconds () - start, all, longest, LOOP_MS);
  window = open_grid (cells, &run);
  clock = gdk_surface_get_frame_clock (gtk_native_get_surface (GTK_NATIVE (window)));
  g_signal_connect (clock, "before-paint", G_CALLBACK (before_paint_cb), &run);
  g_signal_connect (clock, "after-paint", G_CALLBACK (after_paint_cb), &run);
  gdk_frame_clock_begin_updating (clock);
  server = tm_screen_server_seconds (gtk_widget_get_display (window));
  while (run.n < N_WAYS * N_FRAMES)
    g_main_context_iteration (NULL, TRUE);
  server = tm_screen_server_seconds (gtk_widget_get_display (window)) - server;
  gdk_frame_clock_end_updating (clock);
  print_ways ("frame", run.frames);
  good = print_ways ("processor alone", run.processor);
  g_print ("  the X server's own: mean %.2f ms a frame\n", 1000 * server / (N_WAYS * N_FRAMES));
  gtk_window_destroy (GTK_WINDOW (window));
  return good && longest < LOOP_MS ? EXIT_SUCCESS : EXIT_FAILURE;
}
